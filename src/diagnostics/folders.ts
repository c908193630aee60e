import { NOWHERE, tell } from "./tell.ts";

import type { Diagnostic } from "./types.ts";

/** Why a file that stands where a result belongs is left alone. */
export type InTheWay = "unknown" | "changed" | "input" | "no-file";

/** A file, by its name in the folder, that nothing may be written over. */
export interface Obstacle {
  name: string;
  why: InTheWay;
}

/** What is told of each, to be put in words. */
export interface FoldersFacts {
  folderInTheWay: { folder: string; obstacles: readonly Obstacle[]; takesOut: boolean };
  folderFileHeld: { folder: string; file: string; takesOut: boolean };
  folderChangedMeanwhile: { folder: string; file: string };
  folderBusy: { folder: string; lock: string };
  folderHalfWritten: { folder: string; kept: string; mayMend: boolean };
  folderMended: { folder: string };
  folderKeptBoth: { folder: string; file: string; beside: string };
  folderOldLeft: { folder: string; files: readonly string[] };
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
  return tell("FOLDER-IN-THE-WAY", "error", NOWHERE, "folderInTheWay", { folder, obstacles, takesOut });
}

/** A file of the folder cannot be moved, as where a viewer holds it open. The folder is as it was. */
export function folderFileHeld(folder: string, file: string, takesOut: boolean): Diagnostic {
  return tell("FOLDER-FILE-HELD", "error", NOWHERE, "folderFileHeld", { folder, file, takesOut });
}

/** Somebody changed a file in the moment it was to be replaced. The folder is as it was. */
export function folderChangedMeanwhile(folder: string, file: string): Diagnostic {
  return tell("FOLDER-CHANGED-MEANWHILE", "error", NOWHERE, "folderChangedMeanwhile", { folder, file });
}

export function folderBusy(folder: string, lock: string): Diagnostic {
  return tell("FOLDER-BUSY", "error", NOWHERE, "folderBusy", { folder, lock });
}

/**
 * Writing stopped between two files and the old ones cannot be put back now.
 * The next run tries again, if it `mayMend`: can read how.
 */
export function folderHalfWritten(folder: string, kept: string, mayMend: boolean): Diagnostic {
  return tell("FOLDER-HALF-WRITTEN", "error", NOWHERE, "folderHalfWritten", { folder, kept, mayMend });
}

/** What an earlier run was stopped at has been undone. */
export function folderMended(folder: string): Diagnostic {
  return tell("FOLDER-MENDED", "info", NOWHERE, "folderMended", { folder });
}

/** A file was made or changed between a run that was stopped and this one; the one before lies beside it. */
export function folderKeptBoth(folder: string, file: string, beside: string): Diagnostic {
  return tell("FOLDER-KEPT-BOTH", "warning", NOWHERE, "folderKeptBoth", { folder, file, beside });
}

/** Files of an earlier plan that would have been taken away, had nobody changed them. */
export function folderOldLeft(folder: string, files: readonly string[]): Diagnostic {
  return tell("FOLDER-OLD-LEFT", "warning", NOWHERE, "folderOldLeft", { folder, files });
}
