import type { FilesFacts } from "../../../diagnostics/files.ts";
import type { WordsOf } from "../../diagnostics.ts";

/** Why a file could not be read, by the system's own error code. */
const WHY_UNREADABLE: Readonly<Record<string, string>> = {
  ENOENT: "there is no such file",
  ENOTDIR: "part of its path is a file, not a folder",
  EISDIR: "it is a folder",
  EACCES: "you have no permission to read it",
  EPERM: "you have no permission to read it",
};

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

export const files: WordsOf<FilesFacts> = {
  fileUnreadable: ({ file, systemCode, near }) => {
    const why = WHY_UNREADABLE[systemCode] ?? `the system says ${systemCode}`;
    const hint =
      near.length > 0
        ? `Did you mean ${near.join(" or ")}?`
        : "Check the name and the folder. A file named - is read from standard input.";
    return { message: `${file} cannot be read: ${why}.`, hint };
  },

  fileTooLarge: ({ file, most }) => ({
    message: `${file} is too large for a cut list: it has more than ${most / 1_000_000} MB.`,
    hint: "Is it the right file? A cut list is a short text; sizes that are alike go on one line with a count.",
  }),

  fileNotText: ({ file }) => ({
    message: `${file} is not a text file in UTF-8.`,
    hint: "Write the cut list in a plain text editor (not a word processor or spreadsheet) and save it as UTF-8.",
  }),

  folderNotWritable: ({ folder, systemCode }) => {
    const why = WHY_NOT_WRITABLE[systemCode] ?? `the system says ${systemCode}`;
    return {
      message: `Nothing was written: ${folder} cannot be written to, as ${why}.`,
      hint: "Name another folder, for example --out ~/quilts/my-plan.",
    };
  },
};
