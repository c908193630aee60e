import { nearest } from "./nearest.ts";
import { quote } from "./quote.ts";
import type { InFile } from "./reading.ts";
import type { Diagnostic } from "./types.ts";

/** What can be said of the work while it is done. */
export const FACT_EXAMPLES =
  "Say it so: `cut to strip 12`, `strips 1, 3 and 5 cut`, `strip 4 cut off`, `strip 7 spoiled`, `6 of A cut`, " +
  "`2 of A spoiled`, `20 of A in the bag`, `all cut`, `40 in wide`, `1 1/2 yd left`, `12 x 20 in in hand`.";

function told(code: string, where: InFile, message: string, hint: string): Diagnostic {
  return { code, severity: "error", message, hint, path: where.path, at: where.at };
}

export function factUnreadable(where: InFile, written: string, why: string): Diagnostic {
  return told("FACT-UNREADABLE", where, `${quote(written)} is not read: ${why}.`, FACT_EXAMPLES);
}

export function workFabricUnknown(where: InFile, found: string, fabrics: readonly string[]): Diagnostic {
  const near = nearest(found, fabrics);
  const hint = near === null ? `Known here: ${fabrics.map(quote).join(", ")}.` : `Is ${quote(near)} meant?`;
  return told("WORK-FABRIC-UNKNOWN", where, `No fabric of this plan is called ${quote(found)}.`, hint);
}

/** Something is said with no word of which fabric is meant. */
export function workFabricUnsaid(said: string, fabrics: readonly string[]): Diagnostic {
  const first = fabrics[0] ?? "ivory";
  return told(
    "WORK-FABRIC-UNSAID",
    { path: "", at: null },
    `${quote(said)} does not say which fabric is meant. This plan has ${fabrics.map(quote).join(", ")}.`,
    `Write the fabric and a colon before it: "${first}: ${said}".`,
  );
}

export function workLetterUnknown(where: InFile, letter: string, letters: readonly string[]): Diagnostic {
  return told(
    "WORK-LETTER-UNKNOWN",
    where,
    `There is no bag [${letter}] of this fabric; it has ${letters.map((each) => `[${each}]`).join(", ")}.`,
    "The letters are those of the cutting diagram and of the bag labels.",
  );
}

export function workStripUnknown(
  where: InFile,
  strip: number,
  cloth: string,
  last: number,
  begun: boolean,
): Diagnostic {
  const there =
    last === 0
      ? "no strip of it is left to cut"
      : last === 1
        ? "it has strip 1 only"
        : `its strips are 1 to ${last}`;
  return told(
    "WORK-STRIP-UNKNOWN",
    where,
    `There is no strip ${strip} of ${cloth}: ${there}.`,
    begun
      ? "Numbers are those of the newest diagram. What was cut before is told by its bag: `2 of A spoiled`."
      : "Numbers are those of the cutting diagram.",
  );
}

export function workClothUnknown(where: InFile, cloth: string, known: readonly string[]): Diagnostic {
  return told(
    "WORK-CLOTH-UNKNOWN",
    where,
    cloth === ""
      ? "This fabric is cut from several cloths, and none is named."
      : `${quote(cloth)} is no cloth that this fabric is cut from.`,
    known.length === 0
      ? "Nothing of it is left to cut."
      : `Name one of: ${known.map(quote).join(", ")}; for example \`strip 1 of ${known[0]} cut\`.`,
  );
}

export function workTooMany(where: InFile, letter: string, count: number, most: number): Diagnostic {
  return told(
    "WORK-TOO-MANY",
    where,
    `${count} of [${letter}] are said to be cut; the plan cuts ${most} in all.`,
    "Say how many lie in the bag in all, those cut before included.",
  );
}

export function workTooFew(where: InFile, letter: string, count: number, cut: number): Diagnostic {
  return told(
    "WORK-TOO-FEW",
    where,
    `${count} of [${letter}] are said to be cut, but ${cut} are cut already by what is said before.`,
    `Say how many there are in all. If some are lost: \`${cut - count} of ${letter} spoiled\`, or \`${count} of ${letter} in the bag\`.`,
  );
}

export function workNoneToSpoil(where: InFile, letter: string, count: number, cut: number): Diagnostic {
  return told(
    "WORK-NONE-TO-SPOIL",
    where,
    `${count} of [${letter}] are said to be spoiled, but ${cut === 0 ? "none is" : cut === 1 ? "only 1 is" : `only ${cut} are`} cut.`,
    "Say first what is cut: `cut to strip 3`. Of a strip with everything in it: `strip 4 spoiled`.",
  );
}

export function workMeasureWrong(where: InFile, why: string): Diagnostic {
  return told(
    "WORK-MEASURE-WRONG",
    where,
    `${why}.`,
    "Measure between the selvages; a length from its straight end.",
  );
}

/** The file speaks of another plan than the one the quilt's file makes. */
export function workOtherPlan(where: InFile, fabric: string, first: boolean): Diagnostic {
  return told(
    "WORK-OTHER-PLAN",
    where,
    first
      ? `What is said here of ${quote(fabric)} was said of another plan: the quilt's file, or how it is planned, has changed since.`
      : `What is said here of ${quote(fabric)} was said of a plan that no longer is: something said before it has changed.`,
    first
      ? "Take the quilt's file as it was when the cutting began, or plan the changed one into a folder of its own with what is cut under `have:`."
      : "Put back what was taken out before it, or take this entry out too and say it again of the newest diagram.",
  );
}

export function workNotOurs(file: string, found: string): Diagnostic {
  return told(
    "WORK-NOT-OURS",
    { path: "", at: null },
    `${file} is no file of work that this program keeps: ${found}. It is left as it is.`,
    "Move or rename it, or name another folder with --out.",
  );
}

/** No plan lies in the folder. */
export function workNoPlan(folder: string): Diagnostic {
  return told(
    "WORK-NO-PLAN",
    { path: "", at: null },
    `There is no plan.json in ${folder}: nothing tells which plan the cutting began with.`,
    "Plan first (crossgrain plan FILE), or name the folder of the plan with --out.",
  );
}

/** The file was written into while the plan was worked out. */
export function workChangedMeanwhile(file: string): Diagnostic {
  return told(
    "WORK-CHANGED-MEANWHILE",
    { path: "", at: null },
    `${file} was changed while this was worked out. Nothing was written.`,
    "Say it again: the strip numbers may be others now.",
  );
}

/** The plan in the folder was made otherwise. */
export function workPlannedOtherwise(folder: string, fabrics: readonly string[]): Diagnostic {
  return told(
    "WORK-PLANNED-OTHERWISE",
    { path: "", at: null },
    `The plan in ${folder} is not the one that this command starts from: ${
      fabrics.length === 0
        ? "its fabrics are others"
        : `${fabrics.map(quote).join(", ")} ${fabrics.length === 1 ? "is" : "are"} cut otherwise there`
    }.`,
    "Name the same quilt and the same options it was planned with, such as --kits 12 or --stash stash.csv; or plan again first.",
  );
}

export function workPlannedFixed(option: string): Diagnostic {
  return told(
    "WORK-PLANNED-FIXED",
    { path: "", at: null },
    `${option} is settled by the plan that the cutting began with, and cannot change in the middle.`,
    "Leave the option out.",
  );
}

/** What was said is kept, and the files of the plan could not be written. */
export function workLeftOut(file: string): Diagnostic {
  return {
    code: "WORK-LEFT-OUT",
    severity: "warning",
    message: `What you said is kept in ${file}; the files of the plan are still those from before it.`,
    hint: "Once nothing is in the way, run crossgrain go-on FILE with nothing new said.",
    path: "",
    at: null,
  };
}

/** The very same was said last. */
export function workSaidAgain(fabric: string): Diagnostic {
  return {
    code: "WORK-SAID-AGAIN",
    severity: "warning",
    message: `The same was said of ${quote(fabric)} last: it is taken as said once.`,
    hint: "If it has happened once more, to the newest diagram, say it with --again.",
    path: "",
    at: null,
  };
}

export function workNothingToUndo(file: string): Diagnostic {
  return told(
    "WORK-NOTHING-TO-UNDO",
    { path: "", at: null },
    `${file} says nothing that could be taken back.`,
    "",
  );
}

/** The folder holds a work file, and a plan from the beginning is written into it. */
export function workLeftAside(file: string): Diagnostic {
  return {
    code: "WORK-LEFT-ASIDE",
    severity: "warning",
    message: `${file} says what is cut already. This plan is from the beginning and takes nothing of it into account.`,
    hint: "To go on from what is cut: crossgrain go-on FILE",
    path: "",
    at: null,
  };
}
