import type { Diagnostic } from "./types.ts";

/** Codes that only the file system can bring about, so that no file in `fixtures/bad` shows them. */
export const FILE_SYSTEM_CODES: readonly string[] = ["FILE-UNREADABLE", "FOLDER-NOT-WRITABLE"];

/** Why a file could not be read, by the system's own error code. */
const WHY_UNREADABLE: Readonly<Record<string, string>> = {
  ENOENT: "there is no such file",
  ENOTDIR: "part of its path is a file, not a folder",
  EISDIR: "it is a folder",
  EACCES: "you have no permission to read it",
  EPERM: "you have no permission to read it",
};

function error(code: string, message: string, hint: string): Diagnostic {
  return { code, severity: "error", message, hint, path: "", at: null };
}

/** The file cannot be opened. `near` lists cut-list files in the same folder, to choose from. */
export function fileUnreadable(file: string, systemCode: string, near: readonly string[]): Diagnostic {
  const why = WHY_UNREADABLE[systemCode] ?? `the system says ${systemCode}`;
  const hint =
    near.length > 0
      ? `Did you mean ${near.join(" or ")}?`
      : "Check the name and the folder. A file named - is read from standard input.";
  return error("FILE-UNREADABLE", `${file} cannot be read: ${why}.`, hint);
}

/** A cut list is a few kilobytes; a file of megabytes is some other file. */
export function fileTooLarge(file: string, most: number): Diagnostic {
  return error(
    "FILE-TOO-LARGE",
    `${file} is too large for a cut list: it has more than ${most / 1_000_000} MB.`,
    "Is it the right file? A cut list is a short text; sizes that are alike go on one line with a count.",
  );
}

/** Bytes that are no UTF-8 text: a picture, a spreadsheet, or text in an old encoding. */
export function fileNotText(file: string): Diagnostic {
  return error(
    "FILE-NOT-TEXT",
    `${file} is not a text file in UTF-8.`,
    "Write the cut list in a plain text editor (not a word processor or spreadsheet) and save it as UTF-8.",
  );
}

const WHY_NOT_WRITABLE: Readonly<Record<string, string>> = {
  EACCES: "you have no permission to write there",
  EPERM: "you have no permission to write there",
  EROFS: "it lies on a disk that is read-only",
  ENOSPC: "the disk is full",
  EDQUOT: "your share of the disk is full",
  ENOENT: "the system allows no folder of that name, or it was removed meanwhile",
  EINVAL: "the system allows no folder of that name",
  ENAMETOOLONG: "a name is too long for the system",
  ENOTDIR: "part of its path is a file, not a folder",
  EEXIST: "there is a file of that name",
};

/** Results could not be written. The folder is as it was. */
export function folderNotWritable(folder: string, systemCode: string): Diagnostic {
  const why = WHY_NOT_WRITABLE[systemCode] ?? `the system says ${systemCode}`;
  return error(
    "FOLDER-NOT-WRITABLE",
    `Nothing was written: ${folder} cannot be written to, as ${why}.`,
    "Name another folder, for example --out ~/quilts/my-plan.",
  );
}
