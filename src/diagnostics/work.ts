import type { LengthFault } from "../length/problem.ts";
import { NOWHERE, tell } from "./tell.ts";

import type { Diagnostic, InFile, Nothing } from "./types.ts";

/** Why what is said of the work cannot be read. */
export type FactFault =
  | LengthFault
  | { is: "no-strip-range"; text: string }
  | { is: "no-strip-number"; text: string }
  | { is: "no-strips" }
  | { is: "no-piece-count"; text: string }
  | { is: "no-cloth-length"; text: string }
  | { is: "no-cloth-size"; text: string }
  | { is: "nothing" }
  | { is: "too-long" }
  | { is: "no-happening" }
  | { is: "bag-unlettered" }
  | { is: "pieces-cut-off" };

/** Why a file is none that keeps the work. */
export type NotOurs = { is: "no-group" } | { is: "no-format"; format: string };

/** What is told of each, to be put in words. */
export interface WorkFacts {
  factUnreadable: { written: string; fault: FactFault };
  workFabricUnknown: { found: string; fabrics: readonly string[] };
  workFabricUnsaid: { said: string; fabrics: readonly string[] };
  workLetterUnknown: { letter: string; letters: readonly string[] };
  workStripUnknown: { strip: number; cloth: string | null; fabric: string; last: number; begun: boolean };
  workClothUnknown: { cloth: string; known: readonly string[] };
  workTooMany: { letter: string; count: number; most: number };
  workTooFew: { letter: string; count: number; cut: number };
  workNoneToSpoil: { letter: string; count: number; cut: number };
  workMeasureWrong: { why: string };
  workOtherPlan: { fabric: string; first: boolean };
  workNotOurs: { file: string; found: NotOurs };
  workWidthTooWide: Nothing;
  workNoPlan: { folder: string };
  workChangedMeanwhile: { file: string };
  workPlannedOtherwise: { folder: string; fabrics: readonly string[] };
  workPlannedFixed: { option: string };
  workLeftOut: { file: string };
  workSaidAgain: { fabric: string };
  workNothingToUndo: { file: string };
  workLeftAside: { file: string };
}

export function factUnreadable(where: InFile, written: string, fault: FactFault): Diagnostic {
  return tell("FACT-UNREADABLE", "error", where, "factUnreadable", { written, fault });
}

export function workFabricUnknown(where: InFile, found: string, fabrics: readonly string[]): Diagnostic {
  return tell("WORK-FABRIC-UNKNOWN", "error", where, "workFabricUnknown", { found, fabrics });
}

/** Something is said with no word of which fabric is meant. */
export function workFabricUnsaid(said: string, fabrics: readonly string[]): Diagnostic {
  return tell("WORK-FABRIC-UNSAID", "error", { path: "", at: null }, "workFabricUnsaid", { said, fabrics });
}

export function workLetterUnknown(where: InFile, letter: string, letters: readonly string[]): Diagnostic {
  return tell("WORK-LETTER-UNKNOWN", "error", where, "workLetterUnknown", { letter, letters });
}

export function workStripUnknown(
  where: InFile,
  strip: number,
  of: { cloth: string | null; fabric: string },
  last: number,
  begun: boolean,
): Diagnostic {
  return tell("WORK-STRIP-UNKNOWN", "error", where, "workStripUnknown", { strip, ...of, last, begun });
}

export function workClothUnknown(where: InFile, cloth: string, known: readonly string[]): Diagnostic {
  return tell("WORK-CLOTH-UNKNOWN", "error", where, "workClothUnknown", { cloth, known });
}

export function workTooMany(where: InFile, letter: string, count: number, most: number): Diagnostic {
  return tell("WORK-TOO-MANY", "error", where, "workTooMany", { letter, count, most });
}

export function workTooFew(where: InFile, letter: string, count: number, cut: number): Diagnostic {
  return tell("WORK-TOO-FEW", "error", where, "workTooFew", { letter, count, cut });
}

export function workNoneToSpoil(where: InFile, letter: string, count: number, cut: number): Diagnostic {
  return tell("WORK-NONE-TO-SPOIL", "error", where, "workNoneToSpoil", { letter, count, cut });
}

/** More than the fabric is wide, its selvages and all. */
export function workWidthTooWide(where: InFile): Diagnostic {
  return tell("WORK-MEASURE-WRONG", "error", where, "workWidthTooWide", {});
}

export function workMeasureWrong(where: InFile, why: string): Diagnostic {
  return tell("WORK-MEASURE-WRONG", "error", where, "workMeasureWrong", { why });
}

/** The file speaks of another plan than the one the quilt's file makes. */
export function workOtherPlan(where: InFile, fabric: string, first: boolean): Diagnostic {
  return tell("WORK-OTHER-PLAN", "error", where, "workOtherPlan", { fabric, first });
}

export function workNotOurs(file: string, found: NotOurs): Diagnostic {
  return tell("WORK-NOT-OURS", "error", { path: "", at: null }, "workNotOurs", { file, found });
}

/** No plan lies in the folder. */
export function workNoPlan(folder: string): Diagnostic {
  return tell("WORK-NO-PLAN", "error", { path: "", at: null }, "workNoPlan", { folder });
}

/** The file was written into while the plan was worked out. */
export function workChangedMeanwhile(file: string): Diagnostic {
  return tell("WORK-CHANGED-MEANWHILE", "error", { path: "", at: null }, "workChangedMeanwhile", { file });
}

/** The plan in the folder was made otherwise. */
export function workPlannedOtherwise(folder: string, fabrics: readonly string[]): Diagnostic {
  return tell("WORK-PLANNED-OTHERWISE", "error", { path: "", at: null }, "workPlannedOtherwise", {
    folder,
    fabrics,
  });
}

export function workPlannedFixed(option: string): Diagnostic {
  return tell("WORK-PLANNED-FIXED", "error", { path: "", at: null }, "workPlannedFixed", { option });
}

/** What was said is kept, and the files of the plan could not be written. */
export function workLeftOut(file: string): Diagnostic {
  return tell("WORK-LEFT-OUT", "warning", NOWHERE, "workLeftOut", { file });
}

/** The very same was said last. */
export function workSaidAgain(fabric: string): Diagnostic {
  return tell("WORK-SAID-AGAIN", "warning", NOWHERE, "workSaidAgain", { fabric });
}

export function workNothingToUndo(file: string): Diagnostic {
  return tell("WORK-NOTHING-TO-UNDO", "error", { path: "", at: null }, "workNothingToUndo", { file });
}

/** The folder holds a work file, and a plan from the beginning is written into it. */
export function workLeftAside(file: string): Diagnostic {
  return tell("WORK-LEFT-ASIDE", "warning", NOWHERE, "workLeftAside", { file });
}
