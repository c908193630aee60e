import {
  copyFile,
  type FileHandle,
  link,
  lstat,
  mkdir,
  open,
  readdir,
  readFile,
  rename,
  rm,
  rmdir,
  stat,
} from "node:fs/promises";
import { systemCode } from "./system-code.ts";

/** What keeping files safe asks of the disk. A port, so that a test can let any step of it fail. */
export interface Disk {
  read(path: string): Promise<Uint8Array>;
  /** Writes a new file and does not return before it is on the disk. Nothing is left of one that fails. */
  write(path: string, bytes: Uint8Array, mode?: number): Promise<void>;
  /** The same for one that is never held whole. */
  writeLong(path: string, portions: Iterable<string>): Promise<void>;
  rename(from: string, to: string): Promise<void>;
  /** A second name for a file; a copy where the disk knows no second names. Fails when `to` is there. */
  link(from: string, to: string): Promise<void>;
  remove(path: string): Promise<void>;
  /** Names in a folder. */
  list(folder: string): Promise<string[]>;
  /** Makes a folder and those above it; the topmost that was made, null when all were there. */
  makeFolder(path: string): Promise<string | null>;
  /** Removes a folder that is empty, and fails for one that is not. */
  removeFolder(path: string): Promise<void>;
  /** What stands there, without following a link; null when nothing does. */
  kind(path: string): Promise<"file" | "folder" | "other" | null>;
  /** The same for every name and link that leads to one file; null when there is none. */
  identity(path: string): Promise<string | null>;
  mode(path: string): Promise<number>;
  /** Milliseconds since 1970. */
  modified(path: string): Promise<number>;
  /** Makes sure that renaming in a folder is on the disk too, where the system can. */
  settle(folder: string): Promise<void>;
}

/** Systems on which a file cannot have two names. */
const NO_LINKS = ["EPERM", "ENOTSUP", "EOPNOTSUPP", "ENOSYS", "EMLINK"];

async function nullWhenAbsent<T>(asked: Promise<T>): Promise<T | null> {
  try {
    return await asked;
  } catch (error) {
    if (systemCode(error) === "ENOENT") return null;
    throw error;
  }
}

async function sync(path: string, flags: string): Promise<void> {
  const file = await open(path, flags);
  try {
    await file.sync();
  } finally {
    await file.close();
  }
}

async function writeNew(
  path: string,
  fill: (file: FileHandle) => Promise<void>,
  mode = 0o666,
): Promise<void> {
  const file = await open(path, "wx", mode);
  try {
    await fill(file);
    await file.sync();
  } catch (error) {
    await rm(path, { force: true }).catch(() => undefined);
    throw error;
  } finally {
    await file.close();
  }
}

export const realDisk: Disk = {
  read: (path) => readFile(path),
  write: (path, bytes, mode) => writeNew(path, (file) => file.writeFile(bytes), mode),
  writeLong: (path, portions) =>
    writeNew(path, async (file) => {
      // One buffer for all: what each portion would leave behind is more than the plan itself.
      let room = new Uint8Array(0);
      for (const portion of portions) {
        if (room.length < 3 * portion.length) room = new Uint8Array(3 * portion.length);
        const { written } = new TextEncoder().encodeInto(portion, room);
        await file.writeFile(room.subarray(0, written));
      }
    }),
  rename,
  async link(from, to) {
    try {
      await link(from, to);
    } catch (error) {
      if (!NO_LINKS.includes(systemCode(error) ?? "")) throw error;
      await copyFile(from, to, 1);
      await sync(to, "r+");
    }
  },
  remove: (path) => rm(path, { force: true }),
  list: (folder) => readdir(folder),
  makeFolder: async (path) => (await mkdir(path, { recursive: true })) ?? null,
  removeFolder: rmdir,
  async kind(path) {
    const found = await nullWhenAbsent(lstat(path));
    if (found === null) return null;
    return found.isFile() ? "file" : found.isDirectory() ? "folder" : "other";
  },
  async identity(path) {
    const found = await nullWhenAbsent(stat(path, { bigint: true }));
    return found === null ? null : `${found.dev}:${found.ino}`;
  },
  mode: async (path) => (await stat(path)).mode & 0o777,
  modified: async (path) => (await stat(path)).mtimeMs,
  settle: (folder) => sync(folder, "r").catch(() => undefined),
};
