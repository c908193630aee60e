import { randomUUID } from "node:crypto";
import { hostname } from "node:os";
import { basename, dirname, join } from "node:path";
import type { Disk } from "./disk.ts";
import { systemCode } from "./system-code.ts";

/** A change takes milliseconds; a lock this old was left by a run that died. In milliseconds. */
const STALE = 600_000;

/** A lock that is held. `holds` is asked once more before anything is put in place. */
export interface Lock {
  path: string;
  holds(): Promise<boolean>;
  release(): Promise<void>;
}

interface Holder {
  pid: number;
  host: string;
  token: string;
}

function holderOf(text: string): Holder | null {
  try {
    const { pid, host, token } = JSON.parse(text) as Partial<Holder>;
    return typeof pid === "number" && typeof host === "string" && typeof token === "string"
      ? { pid, host, token }
      : null;
  } catch {
    return null;
  }
}

function runs(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return systemCode(error) === "EPERM";
  }
}

async function readLock(disk: Disk, path: string): Promise<string | null> {
  return disk.read(path).then(
    (bytes) => new TextDecoder().decode(bytes),
    () => null,
  );
}

/** Whether whoever made this lock is gone. One that is still being written says nothing yet: only its age does. */
async function isLeft(disk: Disk, path: string, text: string): Promise<boolean> {
  const age = Date.now() - (await disk.modified(path).catch(() => Date.now()));
  const holder = holderOf(text);
  if (holder !== null && holder.host === hostname() && !runs(holder.pid)) return true;
  return age > STALE;
}

/**
 * Takes a lock away whose maker is gone. It is moved aside first and looked at again: should it have become
 * another's in the meantime, it is put back.
 */
async function breakLock(disk: Disk, path: string, text: string): Promise<void> {
  const aside = `${path}.${randomUUID()}`;
  try {
    await disk.rename(path, aside);
  } catch {
    return;
  }
  if ((await readLock(disk, aside)) !== text) await disk.link(aside, path).catch(() => undefined);
  await disk.remove(aside).catch(() => undefined);
}

/** Removes what runs that died while they waited for this lock have left. */
export async function sweepLocks(disk: Disk, path: string): Promise<void> {
  const folder = dirname(path);
  for (const name of await disk.list(folder)) {
    if (!name.startsWith(`${basename(path)}.`)) continue;
    const waiting = join(folder, name);
    const text = await readLock(disk, waiting);
    if (text !== null && (await isLeft(disk, waiting, text)))
      await disk.remove(waiting).catch(() => undefined);
  }
}

/**
 * A lock file that one run at a time can hold: made whole beside its place and linked into it, which fails when
 * there is one already. A lock whose run has died is taken over.
 * @returns null when another run keeps it for longer than `patience` milliseconds
 * @throws the system's error when no file can be made there
 */
export async function takeLock(disk: Disk, path: string, patience: number): Promise<Lock | null> {
  const token = randomUUID();
  const own = JSON.stringify({ pid: process.pid, host: hostname(), token });
  const made = `${path}.${token}`;
  await disk.write(made, new TextEncoder().encode(own));
  const until = Date.now() + patience;
  try {
    for (;;) {
      try {
        await disk.link(made, path);
        break;
      } catch (error) {
        if (systemCode(error) !== "EEXIST") throw error;
      }
      const text = await readLock(disk, path);
      if (text !== null && (await isLeft(disk, path, text))) await breakLock(disk, path, text);
      else if (Date.now() > until) return null;
      else await new Promise((resolve) => setTimeout(resolve, 5 + Math.floor(20 * Math.random())));
    }
  } finally {
    await disk.remove(made).catch(() => undefined);
  }
  const holds = async () => holderOf((await readLock(disk, path)) ?? "")?.token === token;
  return {
    path,
    holds,
    release: async () => {
      if (await holds()) await disk.remove(path);
    },
  };
}
