import { randomUUID } from "node:crypto";
import { realpath } from "node:fs/promises";
import { basename, dirname, join } from "node:path";
import { stashBusy, stashNotWritten } from "../diagnostics/stash.ts";
import type { Outcome } from "../diagnostics/types.ts";
import { type Disk, realDisk } from "./disk.ts";
import { takeLock } from "./lock.ts";

/** Milliseconds to wait for another run to finish its change. */
const PATIENCE = 10_000;

/** No run waits this long. In milliseconds. */
const OLD = 600_000;

/** The new bytes of a file made from its old ones (null: there is none), with whatever else is to be told. */
export type Change<T> = (old: Uint8Array | null) => Outcome<{ bytes: Uint8Array; told: T }>;

const codeOf = (error: unknown) => (error as NodeJS.ErrnoException).code ?? "UNKNOWN";

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

/**
 * Changes a file whole or not at all. The new one is written beside it, brought onto the disk and renamed into
 * place; the one before stays as NAME.bak. Whenever the machine stops, the file is the old or the new. Two runs at
 * once wait for one another. `named` is what the maker calls the file.
 */
export async function changeSafely<T>(
  { path: written, named }: { path: string; named: string },
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
      const old = await readOld(disk, path);
      const { value, diagnostics } = change(old);
      if (value === null) return { value: null, diagnostics };
      const part = () => join(folder, `.${name}.part-${randomUUID()}`);
      const made = part();
      try {
        const mode = old === null ? undefined : await disk.mode(path);
        await disk.write(made, value.bytes, mode);
        if (old !== null) {
          const before = part();
          await disk.link(path, before);
          await disk.rename(before, `${path}.bak`);
          // Renaming one name of a file onto another of its names leaves both.
          await disk.remove(before);
        }
        if (!(await lock.holds())) {
          await disk.remove(made);
          return { value: null, diagnostics: [stashBusy(named, lockPath)] };
        }
        await disk.rename(made, path);
      } catch (error) {
        await disk.remove(made).catch(() => undefined);
        throw error;
      }
      // The change is in place, whatever comes of this.
      await disk.settle(folder).catch(() => undefined);
      return { value: value.told, diagnostics };
    } finally {
      await lock.release().catch(() => undefined);
    }
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === undefined) throw error;
    return { value: null, diagnostics: [stashNotWritten(named, codeOf(error))] };
  }
}
