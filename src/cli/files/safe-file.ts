import { randomUUID } from "node:crypto";
import { realpath } from "node:fs/promises";
import { basename, dirname, join } from "node:path";
import { stashBusy, stashEdited, stashNothingToUndo, stashNotWritten } from "../../diagnostics/stash.ts";
import type { Outcome } from "../../diagnostics/types.ts";
import { type Disk, realDisk } from "./disk.ts";
import { takeLock } from "./lock.ts";
import { systemCode } from "./system-code.ts";

/** Milliseconds to wait for another run to finish its change. */
const PATIENCE = 10_000;

/** How often a change is begun again because somebody else writes the file at the same time. */
const TRIES = 5;

/** How many states before this one can be kept. */
export const KEPT = 9;

/** No run waits this long. In milliseconds. */
const OLD = 600_000;

/** The new bytes of a file made from its old ones (null: there is none), with whatever else is to be told. */
export type Change<T> = (old: Uint8Array | null) => Outcome<{ bytes: Uint8Array; told: T }>;

const codeOf = (error: unknown) => systemCode(error) ?? "UNKNOWN";

async function readOld(disk: Disk, path: string): Promise<Uint8Array | null> {
  try {
    return await disk.read(path);
  } catch (error) {
    if (codeOf(error) === "ENOENT") return null;
    throw error;
  }
}

/** Halves of files that runs which were killed have left. Only looked for while the lock is held. */
async function sweep(disk: Disk, folder: string, name: string): Promise<void> {
  for (const each of await disk.list(folder)) {
    const path = join(folder, each);
    // Another run may be waiting with its lock made: such files go only when they are old.
    const waiting = each.startsWith(`.${name}.lock.`);
    const age = waiting ? Date.now() - (await disk.modified(path).catch(() => Date.now())) : 0;
    if (each.startsWith(`.${name}.part-`) || age > OLD) await disk.remove(path).catch(() => undefined);
  }
}

const sameBytes = (a: Uint8Array | null, b: Uint8Array | null) =>
  a === null || b === null ? a === b : Buffer.compare(a, b) === 0;

/** Where the state so many changes ago is kept: the last for all to see, those before it hidden. */
function stepPath(folder: string, name: string, step: number): string {
  return join(folder, step === 1 ? `${name}.bak` : `.${name}.before-${step}`);
}

/** Moves the states before this one a step on, so that `.bak` may be replaced; it stays where it is. */
async function keepSteps(disk: Disk, folder: string, name: string, keep: number): Promise<void> {
  if (keep < 2) return;
  const at = (step: number) => stepPath(folder, name, step);
  if ((await disk.kind(at(1))) === null) return;
  for (let step = keep - 1; step >= 2; step--)
    if ((await disk.kind(at(step))) !== null) await disk.rename(at(step), at(step + 1));
  const part = join(folder, `.${name}.part-${randomUUID()}`);
  await disk.link(at(1), part);
  await disk.rename(part, at(2));
  await disk.remove(part).catch(() => undefined);
}

/**
 * Changes a file whole or not at all. The new one is written beside it, brought onto the disk and renamed into
 * place; the one before stays as NAME.bak, and `keep` of them in all. Whenever the machine stops, the file is the old or the new. Two runs at
 * once wait for one another. Somebody who takes no lock, as a spreadsheet, may save the file meanwhile: it is read again
 * just before the new one takes its place, and when it is another one the change is begun again from that. `named` is
 * what the maker calls the file.
 */
export async function changeSafely<T>(
  { path: written, named, keep = 1 }: { path: string; named: string; keep?: number },
  change: Change<T>,
  disk: Disk = realDisk,
  patience: number = PATIENCE,
): Promise<Outcome<T>> {
  // A link leads to the file itself, which would otherwise be replaced by a file in the link's place.
  const path = await realpath(written).catch(() => written);
  const [folder, name] = [dirname(path), basename(path)];
  const lockPath = join(folder, `.${name}.lock`);
  try {
    const lock = await takeLock(disk, lockPath, patience);
    if (lock === null) return { value: null, diagnostics: [stashBusy(named, lockPath)] };
    try {
      await sweep(disk, folder, name);
      for (let tried = 0; tried < TRIES; tried++) {
        const done = await changeOnce(disk, { path, folder, name, keep }, change, () => lock.holds());
        if (done === "edited") continue;
        return done === "not-ours" ? { value: null, diagnostics: [stashBusy(named, lockPath)] } : done;
      }
      return { value: null, diagnostics: [stashEdited(named)] };
    } finally {
      await lock.release().catch(() => undefined);
    }
  } catch (error) {
    if (systemCode(error) === undefined) throw error;
    return { value: null, diagnostics: [stashNotWritten(named, codeOf(error))] };
  }
}

interface Where {
  path: string;
  folder: string;
  name: string;
  /** How many states before this one are kept. */
  keep: number;
}

/** One try at a change; `edited` when somebody else saved the file while it was worked out. */
async function changeOnce<T>(
  disk: Disk,
  { path, folder, name, keep }: Where,
  change: Change<T>,
  mayGoOn: () => Promise<boolean>,
): Promise<Outcome<T> | "edited" | "not-ours"> {
  const old = await readOld(disk, path);
  const { value, diagnostics } = change(old);
  if (value === null) return { value: null, diagnostics };
  const part = () => join(folder, `.${name}.part-${randomUUID()}`);
  const made = part();
  try {
    const mode = old === null ? undefined : await disk.mode(path);
    await disk.write(made, value.bytes, mode);
    if (old !== null) {
      await keepSteps(disk, folder, name, keep);
      const before = part();
      await disk.link(path, before);
      await disk.rename(before, stepPath(folder, name, 1));
      // Renaming one name of a file onto another of its names leaves both.
      await disk.remove(before);
    }
    if (!(await mayGoOn())) {
      await disk.remove(made);
      return "not-ours";
    }
    if (!sameBytes(await readOld(disk, path), old)) {
      await disk.remove(made);
      return "edited";
    }
    await disk.rename(made, path);
  } catch (error) {
    await disk.remove(made).catch(() => undefined);
    throw error;
  }
  // The change is in place, whatever comes of this.
  await disk.settle(folder).catch(() => undefined);
  return { value: value.told, diagnostics };
}

/**
 * Takes back the last changes of a file, as many as are kept and wanted. What stood there last stays as NAME.undone.
 * @returns how many were taken back, and how many could still be
 */
export async function undoSafely(
  { path: written, named }: { path: string; named: string },
  steps: number,
  disk: Disk = realDisk,
  patience: number = PATIENCE,
): Promise<Outcome<{ steps: number; left: number }>> {
  const path = await realpath(written).catch(() => written);
  const [folder, name] = [dirname(path), basename(path)];
  const lockPath = join(folder, `.${name}.lock`);
  const at = (step: number) => stepPath(folder, name, step);
  try {
    const lock = await takeLock(disk, lockPath, patience);
    if (lock === null) return { value: null, diagnostics: [stashBusy(named, lockPath)] };
    try {
      await sweep(disk, folder, name);
      let kept = 0;
      while (kept < KEPT && (await disk.kind(at(kept + 1))) !== null) kept += 1;
      const back = Math.min(steps, kept);
      if (back === 0) return { value: null, diagnostics: [stashNothingToUndo(named)] };
      const made = join(folder, `.${name}.part-${randomUUID()}`);
      const now = join(folder, `.${name}.part-${randomUUID()}`);
      await disk.write(made, await disk.read(at(back)));
      await disk.link(path, now);
      await disk.rename(now, `${path}.undone`);
      await disk.remove(now).catch(() => undefined);
      await disk.rename(made, path);
      // The table is back; the states before it move up.
      for (let step = 1; step <= kept; step++) {
        if (step + back <= kept) await disk.rename(at(step + back), at(step));
        else await disk.remove(at(step)).catch(() => undefined);
      }
      await disk.settle(folder).catch(() => undefined);
      return { value: { steps: back, left: kept - back }, diagnostics: [] };
    } finally {
      await lock.release().catch(() => undefined);
    }
  } catch (error) {
    if (systemCode(error) === undefined) throw error;
    return { value: null, diagnostics: [stashNotWritten(named, codeOf(error))] };
  }
}
