import { NOWHERE, tell } from "./tell.ts";

import type { Diagnostic } from "./types.ts";

/** Codes that only the file system can bring about, so that no file in `fixtures/bad` shows them. */
export const FILE_SYSTEM_CODES: readonly string[] = ["FILE-UNREADABLE", "FOLDER-NOT-WRITABLE"];

/** What is told of each, to be put in words. */
export interface FilesFacts {
  fileUnreadable: { file: string; systemCode: string; near: readonly string[] };
  fileTooLarge: { file: string; most: number };
  fileNotText: { file: string };
  folderNotWritable: { folder: string; systemCode: string };
}

/** The file cannot be opened. `near` lists cut-list files in the same folder, to choose from. */
export function fileUnreadable(file: string, systemCode: string, near: readonly string[]): Diagnostic {
  return tell("FILE-UNREADABLE", "error", NOWHERE, "fileUnreadable", { file, systemCode, near });
}

/** A cut list is a few kilobytes; a file of megabytes is some other file. */
export function fileTooLarge(file: string, most: number): Diagnostic {
  return tell("FILE-TOO-LARGE", "error", NOWHERE, "fileTooLarge", { file, most });
}

/** Bytes that are no UTF-8 text: a picture, a spreadsheet, or text in an old encoding. */
export function fileNotText(file: string): Diagnostic {
  return tell("FILE-NOT-TEXT", "error", NOWHERE, "fileNotText", { file });
}

/** Results could not be written. The folder is as it was. */
export function folderNotWritable(folder: string, systemCode: string): Diagnostic {
  return tell("FOLDER-NOT-WRITABLE", "error", NOWHERE, "folderNotWritable", { folder, systemCode });
}
