import type { LengthFault } from "../length/problem.ts";
import { NOWHERE, tell } from "./tell.ts";
import type { Diagnostic, Place } from "./types.ts";

/** Why a row, or a cloth to add, is none. */
export type StashFault =
  | { is: "no-fabric" }
  | { is: "no-name" }
  | { is: "count"; found: string; least: number; most: number }
  | { is: "strips-no-length"; example: boolean; size: string }
  | { is: "no-width" }
  | { is: "no-length-given" }
  | { is: "length"; text: string; fault: LengthFault }
  | { is: "size"; text: string; fault: LengthFault }
  | { is: "no-cloth"; text: string };

/** How a size that may be meant otherwise was taken. Lengths as printed. */
export type SizeTaken =
  | { as: "whole-width"; across: string; along: string }
  /** The other way round it is the size of the name. */
  | { as: "written"; across: string; along: string; name: string };

/** So many pieces of a fabric in a size as printed. */
export interface Lacking {
  count: number;
  fabric: string;
  size: string;
}

/** What is told of each, to be put in words. */
export interface StashFacts {
  stashRowUnreadable: { problem: StashFault };
  stashNoHeadings: { file: string; found: readonly string[] };
  stashUnclosed: { file: string; line: number };
  stashMeasureTaken: { file: string; measure: string };
  stashLacks: { file: string; lacking: readonly Lacking[] };
  stashNearName: { fabric: string; inStash: string };
  stashClothUnreadable: { problem: StashFault };
  stashBusy: { file: string; lock: string };
  stashEdited: { file: string };
  stashNothingToUndo: { file: string };
  stashSizeTaken: { size: string; taken: SizeTaken };
  stashNotWritten: { file: string; systemCode: string };
  planUnreadable: { file: string; found: "no-json" | "other-format" };
  stashFileMissing: { file: string };
}

/** A row of the maker's table of cloth that is left alone because it cannot be read. */
export function stashRowUnreadable(at: Place, problem: StashFault): Diagnostic {
  return tell("STASH-ROW-UNREADABLE", "warning", { path: "", at }, "stashRowUnreadable", { problem });
}

export function stashNoHeadings(file: string, found: readonly string[]): Diagnostic {
  return tell(
    "STASH-NO-HEADINGS",
    "error",
    { path: "", at: { file, line: 1, column: 1 } },
    "stashNoHeadings",
    { file, found },
  );
}

/** A quote that is opened and never closed swallows the rest of the table. */
export function stashUnclosed(file: string, line: number): Diagnostic {
  return tell("STASH-UNCLOSED", "error", { path: "", at: { file, line, column: 1 } }, "stashUnclosed", {
    file,
    line,
  });
}

export function stashMeasureTaken(file: string, measure: string): Diagnostic {
  return tell("STASH-MEASURE-TAKEN", "info", NOWHERE, "stashMeasureTaken", { file, measure });
}

/** The table does not hold what is to be taken from it. */
export function stashLacks(file: string, lacking: readonly Lacking[]): Diagnostic {
  return tell("STASH-LACKS", "error", NOWHERE, "stashLacks", { file, lacking });
}

/** A cloth of the table has nearly the name of a fabric of the quilt. */
export function stashNearName(fabric: string, inStash: string): Diagnostic {
  return tell("STASH-NEAR-NAME", "info", NOWHERE, "stashNearName", { fabric, inStash });
}

/** What was given as a cloth to add is none. */
export function stashClothUnreadable(problem: StashFault): Diagnostic {
  return tell("STASH-CLOTH-UNREADABLE", "error", NOWHERE, "stashClothUnreadable", { problem });
}

export function stashBusy(file: string, lock: string): Diagnostic {
  return tell("STASH-BUSY", "error", NOWHERE, "stashBusy", { file, lock });
}

/** Somebody saved the table each time it was about to be changed. */
export function stashEdited(file: string): Diagnostic {
  return tell("STASH-EDITED", "error", NOWHERE, "stashEdited", { file });
}

export function stashNothingToUndo(file: string): Diagnostic {
  return tell("STASH-NOTHING-TO-UNDO", "error", NOWHERE, "stashNothingToUndo", { file });
}

/** How a size that may be meant otherwise was taken. */
export function stashSizeTaken(size: string, taken: SizeTaken): Diagnostic {
  return tell("STASH-SIZE-TAKEN", "info", NOWHERE, "stashSizeTaken", { size, taken });
}

/** The table could not be written. The old one stands as it was. */
export function stashNotWritten(file: string, systemCode: string): Diagnostic {
  return tell("STASH-NOT-WRITTEN", "error", NOWHERE, "stashNotWritten", { file, systemCode });
}

/** A plan file to take from that is no plan of this program. */
export function planUnreadable(file: string, found: "no-json" | "other-format"): Diagnostic {
  return tell("PLAN-UNREADABLE", "error", { path: "", at: { file, line: 1, column: 1 } }, "planUnreadable", {
    file,
    found,
  });
}

export function stashFileMissing(file: string): Diagnostic {
  return tell("STASH-FILE-MISSING", "error", NOWHERE, "stashFileMissing", { file });
}
