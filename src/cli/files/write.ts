import { dirname, join } from "node:path";
import { folderNotWritable } from "../../diagnostics/files.ts";
import {
  folderBusy,
  folderChangedMeanwhile,
  folderFileHeld,
  folderHalfWritten,
  folderInTheWay,
  folderOldLeft,
} from "../../diagnostics/folders.ts";
import type { Diagnostic, Outcome } from "../../diagnostics/types.ts";
import { type Result, whatToWrite } from "../results/what-to-write.ts";
import { type Disk, realDisk } from "./disk.ts";
import { sweepLocks, takeLock } from "./lock.ts";
import { CHANGED, type FolderError, mend, switchFiles, WORK } from "./switch-files.ts";

export type { Files } from "../results/what-to-write.ts";

/** Milliseconds to wait for another run that writes into the same folder. */
const PATIENCE = 10_000;

const LOCK = ".crossgrain-lock";

/** What systems say of a file that a program holds open, or that may not be moved. */
const HELD = ["EBUSY", "EPERM", "EACCES", "ETXTBSY"];

function toldOf(error: FolderError, { named, by }: Result): Diagnostic {
  const { code, file } = error;
  // An error without a code of the system's is a fault of this program.
  if (code === undefined) throw error;
  if (file !== undefined && code === CHANGED) return folderChangedMeanwhile(named, file);
  if (file !== undefined && HELD.includes(code)) return folderFileHeld(named, file, by !== "picture");
  return folderNotWritable(named, code);
}

/** Where not even the disk can be asked, the worst is told. */
function unknown(named: string): Outcome<true> {
  return { value: null, diagnostics: [folderHalfWritten(named, join(named, WORK), true)] };
}

/** Writes the result, or undoes what was begun. */
async function write(
  disk: Disk,
  result: Result,
  mayGoOn: () => Promise<boolean>,
): Promise<Outcome<string[]>> {
  const { folder, named, by } = result;
  await sweepLocks(disk, join(folder, LOCK));
  const mended = await mend(disk, folder, named);
  if (mended.value === null) return { value: null, diagnostics: mended.diagnostics };
  const told = mended.diagnostics;
  const { steps, obstacles, left } = await whatToWrite(disk, result);
  if (obstacles.length > 0)
    return { value: null, diagnostics: [...told, folderInTheWay(named, obstacles, by !== "picture")] };
  try {
    const done = await switchFiles(disk, folder, steps, mayGoOn);
    if (!done) {
      await mend(disk, folder, named);
      return { value: null, diagnostics: [...told, folderBusy(named, join(named, LOCK))] };
    }
  } catch (error) {
    const undone = await mend(disk, folder, named).catch(() => unknown(named));
    if (undone.value === null) return { value: null, diagnostics: [...told, ...undone.diagnostics] };
    const beside = undone.diagnostics.filter(({ severity }) => severity === "warning");
    return { value: null, diagnostics: [...told, ...beside, toldOf(error as FolderError, result)] };
  }
  if (left.length > 0) told.push(folderOldLeft(named, left));
  return { value: Object.keys(result.files), diagnostics: told };
}

/** Removes folders that were made for a result that did not come, if nothing has been put into them. */
async function unmake(disk: Disk, folder: string, topmost: string): Promise<void> {
  for (let path = folder; ; path = dirname(path)) {
    await disk.removeFolder(path);
    if (path === topmost || path === dirname(path)) return;
  }
}

/**
 * Writes all files of a result into a folder, or none, and remembers them in the folder's manifest. Nothing but what
 * this program wrote there and nobody changed since is replaced or taken away; whatever else is in the way is named in
 * the refusal. However the run is stopped, the next one into this folder puts back what stood there.
 * @returns the names of the result's files
 */
export async function writeFiles(
  result: Result,
  disk: Disk = realDisk,
  patience: number = PATIENCE,
): Promise<Outcome<string[]>> {
  const { folder, named } = result;
  let made: string | null = null;
  let outcome: Outcome<string[]>;
  try {
    made = await disk.makeFolder(folder);
    const lock = await takeLock(disk, join(folder, LOCK), patience);
    if (lock === null) return { value: null, diagnostics: [folderBusy(named, join(named, LOCK))] };
    try {
      outcome = await write(disk, result, () => lock.holds());
    } finally {
      await lock.release().catch(() => undefined);
    }
  } catch (error) {
    outcome = { value: null, diagnostics: [toldOf(error as FolderError, result)] };
  }
  if (outcome.value === null && made !== null) await unmake(disk, folder, made).catch(() => undefined);
  return outcome;
}
