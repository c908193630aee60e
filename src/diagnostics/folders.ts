import { visible } from "./quote.ts";
import type { Diagnostic, Severity } from "./types.ts";

/** Why a file that stands where a result belongs is left alone. */
export type InTheWay = "unknown" | "changed" | "input" | "no-file";

/** A file, by its name in the folder, that nothing may be written over. */
export interface Obstacle {
  name: string;
  why: InTheWay;
}

const WHY: Readonly<Record<InTheWay, string>> = {
  unknown: "not written by this program",
  changed: "changed since this program wrote it",
  input: "it is what this command reads",
  "no-file": "a folder or a link, not a plain file",
};

function told(code: string, severity: Severity, message: string, hint: string): Diagnostic {
  return { code, severity, message, hint, path: "", at: null };
}

function named(names: readonly string[]): string {
  const all = names.map(visible);
  const last = all.pop() ?? "";
  return all.length === 0 ? last : `${all.join(", ")} and ${last}`;
}

/**
 * Files in the folder that are the maker's, or may be, have the names of files to be written. `takesOut`: whether the
 * command can write elsewhere.
 */
export function folderInTheWay(
  folder: string,
  obstacles: readonly Obstacle[],
  takesOut: boolean,
): Diagnostic {
  const list = obstacles.map(({ name, why }) => `\n  ${visible(name)} (${WHY[why]})`).join("");
  const firm = obstacles.filter(({ why }) => why === "input" || why === "no-file").map(({ name }) => name);
  const them = obstacles.length === 1 ? "it" : "them";
  const move = `Move or rename ${them}${takesOut ? ", or name another folder with --out" : ""}`;
  const replace =
    firm.length === 0
      ? `${move}; with --replace ${them === "it" ? "it is" : "they are"} written over.`
      : `${move}. --replace does not write over ${named(firm)}.`;
  return told(
    "FOLDER-IN-THE-WAY",
    "error",
    `Nothing was written into ${folder}, as this would be lost there:${list}`,
    replace,
  );
}

/** A file of the folder cannot be moved, as where a viewer holds it open. The folder is as it was. */
export function folderFileHeld(folder: string, file: string, takesOut: boolean): Diagnostic {
  return told(
    "FOLDER-FILE-HELD",
    "error",
    `Nothing was written into ${folder}: ${visible(file)} cannot be replaced. Another program holds it open, or you may not change it.`,
    `Close it there (a viewer, an editor) and run the command again${takesOut ? ", or name another folder with --out" : ""}.`,
  );
}

/** Somebody changed a file in the moment it was to be replaced. The folder is as it was. */
export function folderChangedMeanwhile(folder: string, file: string): Diagnostic {
  return told(
    "FOLDER-CHANGED-MEANWHILE",
    "error",
    `Nothing was written into ${folder}: ${visible(file)} was changed while this was about to be written.`,
    "Run the command again when nothing else writes there.",
  );
}

export function folderBusy(folder: string, lock: string): Diagnostic {
  return told(
    "FOLDER-BUSY",
    "error",
    `Nothing was written into ${folder}: another run of this program is writing there.`,
    `Try again in a moment. If no other run is going on, remove ${lock}.`,
  );
}

/**
 * Writing stopped between two files and the old ones cannot be put back now.
 * The next run tries again, if it `mayMend`: can read how.
 */
export function folderHalfWritten(folder: string, kept: string, mayMend: boolean): Diagnostic {
  const hint = mayMend
    ? "Close other programs that use the folder and run the command again, which first puts it back."
    : "Its journal there is damaged, so this is for you to do: take what you need from its files, then remove it.";
  return told(
    "FOLDER-HALF-WRITTEN",
    "error",
    `${folder} is incomplete: writing into it was stopped halfway, and what stood there before could not be put back. Do not cut by it.`,
    `Nothing is lost; what stood there is in ${kept}. ${hint}`,
  );
}

/** What an earlier run was stopped at has been undone. */
export function folderMended(folder: string): Diagnostic {
  return told(
    "FOLDER-MENDED",
    "info",
    `An earlier run was stopped while it wrote into ${folder}. What stood there before it is back in place.`,
    "",
  );
}

/** A file was made or changed between a run that was stopped and this one; the one before lies beside it. */
export function folderKeptBoth(folder: string, file: string, beside: string): Diagnostic {
  return told(
    "FOLDER-KEPT-BOTH",
    "warning",
    `${visible(file)} in ${folder} was changed after an earlier run was stopped, so it was left. What stood there before that run is now ${visible(beside)}.`,
    "Keep the one you want.",
  );
}

/** Files of an earlier plan that would have been taken away, had nobody changed them. */
export function folderOldLeft(folder: string, files: readonly string[]): Diagnostic {
  const [is, it] = files.length === 1 ? ["is", "it"] : ["are", "them"];
  return told(
    "FOLDER-OLD-LEFT",
    "warning",
    `${named(files)} in ${folder} ${is} of an earlier plan. You changed ${it}, so ${it === "it" ? "it was" : "they were"} left.`,
    `Move ${it} elsewhere, so that nobody cuts by ${it}.`,
  );
}
