import { quote } from "./quote.ts";
import type { Diagnostic, Place } from "./types.ts";

const TABLE = "For example: fabric,width,length,how many,note";

/** A row of the maker's table of cloth that is left alone because it cannot be read. */
export function stashRowUnreadable(at: Place, problem: string): Diagnostic {
  return {
    code: "STASH-ROW-UNREADABLE",
    severity: "warning",
    message: `This row is left out, and kept as it is: ${problem}.`,
    hint: "A row has a fabric, its usable width and length with their measure, and how many: sky,21 in,18 in,3",
    path: "",
    at,
  };
}

export function stashNoHeadings(file: string, found: readonly string[]): Diagnostic {
  const seen = found.filter((cell) => cell.trim() !== "");
  const what = seen.length === 0 ? "nothing" : seen.slice(0, 6).map(quote).join(", ");
  return {
    code: "STASH-NO-HEADINGS",
    severity: "error",
    message: `The first row should name the columns fabric, width and length; it has ${what}.`,
    hint: TABLE,
    path: "",
    at: { file, line: 1, column: 1 },
  };
}

/** A quote that is opened and never closed swallows the rest of the table. */
export function stashUnclosed(file: string, line: number): Diagnostic {
  return {
    code: "STASH-UNCLOSED",
    severity: "error",
    message: "A quote that is opened in or before this line is never closed. Nothing was read or changed.",
    hint: 'A cell that starts with a quote ends with one; an inch mark inside it is written twice: "2 1/2"" wide"',
    path: "",
    at: { file, line, column: 1 },
  };
}

export function stashMeasureTaken(file: string, measure: string): Diagnostic {
  return {
    code: "STASH-MEASURE-TAKEN",
    severity: "info",
    message: `${file}: numbers without a measure are read as ${measure}. A heading such as \`width (${measure})\` settles it.`,
    hint: "",
    path: "",
    at: null,
  };
}

/** The table does not hold what is to be taken from it. */
export function stashLacks(file: string, lacking: readonly string[]): Diagnostic {
  return {
    code: "STASH-LACKS",
    severity: "error",
    message: `${file} does not hold what this plan uses: ${lacking.join("; ")}. Nothing was changed.`,
    hint: "Has it been taken already? Look with `crossgrain stash show`, or plan again with --stash.",
    path: "",
    at: null,
  };
}

/** A cloth of the table has nearly the name of a fabric of the quilt. */
export function stashNearName(fabric: string, inStash: string): Diagnostic {
  return {
    code: "STASH-NEAR-NAME",
    severity: "info",
    message: `The stash has no ${quote(fabric)}, but it has ${quote(inStash)}. Cloth is used where the names are the same.`,
    hint: "",
    path: "",
    at: null,
  };
}

/** What was given as a cloth to add is none. */
export function stashClothUnreadable(problem: string): Diagnostic {
  return {
    code: "STASH-CLOTH-UNREADABLE",
    severity: "error",
    message: `This cannot be added to the stash: ${problem}.`,
    hint: 'For example: crossgrain stash add "sky" "21 x 18 in" --count 3',
    path: "",
    at: null,
  };
}

export function stashBusy(file: string, lock: string): Diagnostic {
  return {
    code: "STASH-BUSY",
    severity: "error",
    message: `${file} is being changed by another run of this program. Nothing was changed.`,
    hint: `Try again in a moment. If no other run is going on, remove ${lock}.`,
    path: "",
    at: null,
  };
}

/** Somebody saved the table each time it was about to be changed. */
export function stashEdited(file: string): Diagnostic {
  return {
    code: "STASH-EDITED",
    severity: "error",
    message: `${file} is being saved by another program again and again. Nothing was changed.`,
    hint: "Close it in the spreadsheet, or wait until it is saved, and run the command again.",
    path: "",
    at: null,
  };
}

export function stashNothingToUndo(file: string): Diagnostic {
  return {
    code: "STASH-NOTHING-TO-UNDO",
    severity: "error",
    message: `No change of ${file} is kept that could be taken back.`,
    hint: "`crossgrain stash add` and `stash take` keep the table before them; a table edited by hand is not kept.",
    path: "",
    at: null,
  };
}

/** How a size that may be meant otherwise was taken. */
export function stashSizeTaken(size: string, taken: string, otherwise: string): Diagnostic {
  return {
    code: "STASH-SIZE-TAKEN",
    severity: "info",
    message: `${quote(size)} is taken as ${taken}. ${otherwise}`,
    hint: "",
    path: "",
    at: null,
  };
}

const WHY: Readonly<Record<string, string>> = {
  EACCES: "you have no permission to write in its folder",
  EPERM: "you have no permission to write in its folder",
  EROFS: "it lies on a disk that is read-only",
  ENOSPC: "the disk is full",
  EDQUOT: "your share of the disk is full",
  EFBIG: "the disk takes no file of that size",
  ENOENT: "its folder does not exist",
  EISDIR: "it is a folder",
};

/** The table could not be written. The old one stands as it was. */
export function stashNotWritten(file: string, systemCode: string): Diagnostic {
  return {
    code: "STASH-NOT-WRITTEN",
    severity: "error",
    message: `${file} was not changed: ${WHY[systemCode] ?? `the system says ${systemCode}`}. It stands as it was.`,
    hint: "Copy it to a folder you can write in, or make room, and run the command again.",
    path: "",
    at: null,
  };
}

/** A plan file to take from that is no plan of this program. */
export function planUnreadable(file: string, found: string): Diagnostic {
  return {
    code: "PLAN-UNREADABLE",
    severity: "error",
    message: `${file} is not a plan written by this program: ${found}.`,
    hint: "Name the plan.json that `crossgrain plan FILE --stash STASH.csv` writes into its folder.",
    path: "",
    at: { file, line: 1, column: 1 },
  };
}

export function stashFileMissing(file: string): Diagnostic {
  return {
    code: "STASH-FILE-MISSING",
    severity: "error",
    message: `There is no stash file ${file}.`,
    hint: 'Name it with --stash, or start one: crossgrain stash add "sky" "21 x 18 in" --count 3',
    path: "",
    at: null,
  };
}
