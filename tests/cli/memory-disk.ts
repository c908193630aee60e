import { basename, dirname } from "node:path";
import type { Disk } from "../../src/cli/files/disk.ts";

interface Kept {
  bytes: Uint8Array;
  modified: number;
  inode: number;
}

function fail(code: string): never {
  throw Object.assign(new Error(code), { code });
}

/** A disk in memory, so that a run can be stopped at every one of its steps in no time. Folders start at `/`. */
export class MemoryDisk implements Disk {
  private readonly files: Map<string, Kept>;
  private readonly folders: Set<string>;
  private inodes = 0;

  constructor(like?: MemoryDisk) {
    // What a file holds is never changed in place, so that copies may share it.
    this.files = new Map(like?.files);
    this.folders = new Set(like?.folders ?? ["/"]);
    this.inodes = like?.inodes ?? 0;
  }

  /** Puts a file there as an editor would, whatever stood there. */
  put(path: string, content: string | Uint8Array, modified = Date.now()): void {
    const bytes = typeof content === "string" ? new TextEncoder().encode(content) : content.slice();
    this.files.set(path, { bytes, modified, inode: this.inodes++ });
  }

  /** Files of a folder by name, as text. */
  textsIn(folder: string): Record<string, string> {
    const inside = [...this.files].filter(([path]) => dirname(path) === folder).sort();
    return Object.fromEntries(
      inside.map(([path, { bytes }]) => [basename(path), new TextDecoder().decode(bytes)]),
    );
  }

  private at(path: string): Kept {
    return this.files.get(path) ?? fail(this.folders.has(path) ? "EISDIR" : "ENOENT");
  }

  private mayStandAt(path: string): void {
    if (this.folders.has(path)) fail("EISDIR");
    if (!this.folders.has(dirname(path))) fail("ENOENT");
  }

  async read(path: string) {
    return this.at(path).bytes.slice();
  }
  async write(path: string, bytes: Uint8Array) {
    if (this.files.has(path)) fail("EEXIST");
    this.mayStandAt(path);
    this.put(path, bytes);
  }
  async writeLong(path: string, portions: Iterable<string>) {
    await this.write(path, new TextEncoder().encode([...portions].join("")));
  }
  async rename(from: string, to: string) {
    const file = this.at(from);
    this.mayStandAt(to);
    this.files.delete(from);
    this.files.set(to, file);
  }
  async link(from: string, to: string) {
    const file = this.at(from);
    if (this.files.has(to) || this.folders.has(to)) fail("EEXIST");
    this.mayStandAt(to);
    this.files.set(to, file);
  }
  async remove(path: string) {
    if (this.folders.has(path)) fail("EISDIR");
    this.files.delete(path);
  }
  async list(folder: string) {
    if (!this.folders.has(folder)) fail(this.files.has(folder) ? "ENOTDIR" : "ENOENT");
    const all = [...this.files.keys(), ...this.folders].filter((path) => path !== "/");
    return all.filter((path) => dirname(path) === folder).map((path) => basename(path));
  }
  async makeFolder(path: string): Promise<string | null> {
    if (this.files.has(path)) fail("EEXIST");
    if (this.folders.has(path)) return null;
    const above = await this.makeFolder(dirname(path));
    this.folders.add(path);
    return above ?? path;
  }
  async removeFolder(path: string) {
    if ((await this.list(path)).length > 0) fail("ENOTEMPTY");
    this.folders.delete(path);
  }
  async kind(path: string) {
    return this.files.has(path) ? "file" : this.folders.has(path) ? "folder" : null;
  }
  async identity(path: string) {
    return this.files.has(path) ? String(this.at(path).inode) : null;
  }
  async mode(path: string) {
    this.at(path);
    return 0o644;
  }
  async modified(path: string) {
    return this.at(path).modified;
  }
  async settle() {}
}
