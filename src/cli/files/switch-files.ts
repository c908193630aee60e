import { join } from "node:path";
import { folderHalfWritten, folderKeptBoth, folderMended } from "../../diagnostics/folders.ts";
import type { Outcome } from "../../diagnostics/types.ts";
import type { Disk } from "./disk.ts";
import { type Content, fingerprint, isPlainName } from "./manifest.ts";
import { systemCode } from "./system-code.ts";

/** One file of a folder that is replaced, added (`old` null) or taken away (`bytes` null). */
export interface Step {
  name: string;
  /** Fingerprint of the file that stands there; null when none does. */
  old: string | null;
  bytes: Content | null;
  /** Fingerprint of the new bytes, where it is known already. */
  made?: string;
}

/** What the journal says of a step. */
interface Noted {
  name: string;
  old: string | null;
  made: string | null;
}

/** What went wrong with a file of the folder, beside the system's own word for it. */
export type FolderError = NodeJS.ErrnoException & { file?: string };

/** Code of the error thrown where a file is no longer what it was found to be. */
export const CHANGED = "CHANGED-MEANWHILE";

/** Folder inside the target that new and old files wait in. Gone when all went well. */
export const WORK = ".crossgrain-work";
/** Lists the steps, for as long as they may have to be undone. */
const JOURNAL = "journal.json";
const UNFINISHED = "journal.part";

const WAITING = /^\d+\.(?:new|old)$/;

/** Names the file that an error speaks of. */
async function of<T>(file: string, asked: Promise<T>): Promise<T> {
  try {
    return await asked;
  } catch (error) {
    throw Object.assign(error as FolderError, { file });
  }
}

/** Fingerprint of what stands there; null when nothing does, empty when it is no plain file. */
export async function fingerprintAt(disk: Disk, folder: string, name: string): Promise<string | null> {
  const path = join(folder, name);
  const kind = await of(name, disk.kind(path));
  if (kind === null) return null;
  return kind === "file" ? fingerprint(await of(name, disk.read(path))) : "";
}

function changed(file: string): FolderError {
  return Object.assign(new Error(`${file} was changed meanwhile`), { code: CHANGED, file });
}

/**
 * Takes the steps, all or none. New files are first written whole beside their places. Then the old ones are moved
 * aside, which is where one that is held open refuses, and looked at again; then the new ones are moved to places that
 * are free. From the first move on a journal tells how to undo it, until removing that journal makes the new files count.
 * Whenever it is stopped, the folder holds some of the old files or some of the new ones, never some of both.
 * @param mayGoOn asked before the first move; when it may not, nothing is moved and the answer is false
 * @throws when it stopped on the way; `mend` then undoes it, now or in the next run
 */
export async function switchFiles(
  disk: Disk,
  folder: string,
  steps: readonly Step[],
  mayGoOn: () => Promise<boolean>,
): Promise<boolean> {
  if (steps.length === 0) return true;
  const work = join(folder, WORK);
  const at = (name: string) => join(work, name);
  await disk.makeFolder(work);
  // An old file left from another time would be put back in the place of one that never moved.
  await empty(disk, work);
  const encoded = (bytes: string | Uint8Array) =>
    typeof bytes === "string" ? new TextEncoder().encode(bytes) : bytes;
  for (const [i, { bytes }] of steps.entries()) {
    if (bytes === null) continue;
    const isShort = typeof bytes === "string" || bytes instanceof Uint8Array;
    if (isShort) await disk.write(at(`${i}.new`), encoded(bytes));
    else await disk.writeLong(at(`${i}.new`), bytes.portions());
  }
  const notes = steps.map(
    ({ name, old, bytes, made }): Noted => ({
      name,
      old,
      made: bytes === null ? null : (made ?? fingerprint(bytes)),
    }),
  );
  await disk.write(at(UNFINISHED), encoded(JSON.stringify(notes)));
  if (!(await mayGoOn())) return false;
  await disk.rename(at(UNFINISHED), at(JOURNAL));
  await disk.settle(work);
  for (const [i, { name, old }] of steps.entries()) {
    if (old === null) continue;
    await of(name, disk.rename(join(folder, name), at(`${i}.old`)));
    if ((await fingerprintAt(disk, work, `${i}.old`)) !== old) throw changed(name);
  }
  for (const [i, { name, bytes }] of steps.entries()) {
    if (bytes === null) continue;
    // Renaming would replace what somebody put there since.
    if ((await of(name, disk.kind(join(folder, name)))) !== null) throw changed(name);
    await of(name, disk.rename(at(`${i}.new`), join(folder, name)));
  }
  await disk.settle(folder);
  await disk.remove(at(JOURNAL));
  // The new files count. What is left over is no matter, and goes when the next run comes.
  await disk.settle(work).catch(() => undefined);
  await clear(disk, work).catch(() => undefined);
  return true;
}

/** Removes what waits in a work folder that has no journal to go by. */
async function empty(disk: Disk, work: string): Promise<void> {
  for (const name of await disk.list(work)) {
    if (WAITING.test(name) || name === UNFINISHED) await disk.remove(join(work, name));
  }
}

async function clear(disk: Disk, work: string): Promise<void> {
  await empty(disk, work);
  await disk.removeFolder(work).catch(() => undefined);
}

function readNotes(text: string): Noted[] | null {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return null;
  }
  if (!Array.isArray(value)) return null;
  const isMark = (mark: unknown) => mark === null || typeof mark === "string";
  const areNotes = value.every((note: Partial<Noted> | null) => {
    const { name, old, made } = note ?? {};
    return typeof name === "string" && isPlainName(name) && isMark(old) && isMark(made);
  });
  return areNotes ? (value as Noted[]) : null;
}

/** A name nothing has yet, like that of a file: `steps (before).txt`. */
async function freeName(disk: Disk, folder: string, name: string): Promise<string> {
  const [, stem = name, ending = ""] = /^(.+?)(\.[^.]*)?$/.exec(name) ?? [];
  for (let i = 1; ; i++) {
    const free = `${stem} (before${i === 1 ? "" : ` ${i}`})${ending}`;
    if ((await disk.kind(join(folder, free))) === null) return free;
  }
}

/**
 * Undoes the steps of a journal. New files go first, so that old and new never stand side by side. What stands in a
 * file's place and is not the new one was put there since, by somebody else: it stays, and the old one comes beside it.
 * @returns those files, each with the name of the one beside it
 */
async function putBack(disk: Disk, folder: string, notes: readonly Noted[]): Promise<[string, string][]> {
  const aside = (i: number) => join(folder, WORK, `${i}.old`);
  const beside: [string, string][] = [];
  for (const [i, { name, old, made }] of notes.entries()) {
    if (made === null || (await fingerprintAt(disk, folder, name)) !== made) continue;
    if (old === null || (await disk.kind(aside(i))) !== null) await disk.remove(join(folder, name));
  }
  for (const [i, { name, old }] of notes.entries()) {
    if (old === null || (await disk.kind(aside(i))) === null) continue;
    const isFree = (await disk.kind(join(folder, name))) === null;
    const to = isFree ? name : await freeName(disk, folder, name);
    await disk.rename(aside(i), join(folder, to));
    if (!isFree) beside.push([name, to]);
  }
  return beside;
}

/**
 * Brings a folder back to where it was before a run that was stopped on the way, or clears up after one that was
 * stopped when all was in place. To be called under the folder's lock. No value: what stood there cannot be put back now.
 * @param named what the maker calls the folder
 * @throws the system's error when it cannot be found out whether there is something to mend
 */
export async function mend(disk: Disk, folder: string, named: string): Promise<Outcome<true>> {
  const work = join(folder, WORK);
  const kept = join(named, WORK);
  const kind = await disk.kind(work);
  if (kind === null) return { value: true, diagnostics: [] };
  if (kind !== "folder") throw Object.assign(new Error(`${WORK} is in the way`), { code: "EEXIST" });
  if (!(await disk.list(work)).includes(JOURNAL)) {
    await clear(disk, work).catch(() => undefined);
    return { value: true, diagnostics: [] };
  }
  try {
    const notes = readNotes(new TextDecoder().decode(await disk.read(join(work, JOURNAL))));
    if (notes === null) return { value: null, diagnostics: [folderHalfWritten(named, kept, false)] };
    const beside = await putBack(disk, folder, notes);
    await disk.settle(folder);
    await disk.remove(join(work, JOURNAL));
    await clear(disk, work).catch(() => undefined);
    const told = beside.map(([name, free]) => folderKeptBoth(named, name, free));
    return { value: true, diagnostics: [folderMended(named), ...told] };
  } catch (error) {
    if (systemCode(error) === undefined) throw error;
    return { value: null, diagnostics: [folderHalfWritten(named, kept, true)] };
  }
}
