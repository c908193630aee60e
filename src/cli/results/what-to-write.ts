import { join } from "node:path";
import type { InTheWay, Obstacle } from "../../diagnostics/folders.ts";
import type { Disk } from "../files/disk.ts";
import {
  type Content,
  fingerprint,
  leftBehind,
  MANIFEST_NAME,
  type Manifest,
  manifestAt,
  printManifest,
  type Writer,
  type Written,
} from "../files/manifest.ts";
import { fingerprintAt, type Step } from "../files/switch-files.ts";

/** Names and contents of the files of one result. */
export type Files = Readonly<Record<string, Content>>;

/** What a command writes, and what it may do for it. */
export interface Result {
  /** Absolute path of the folder. */
  folder: string;
  /** What the maker calls it. */
  named: string;
  by: Writer;
  files: Files;
  /** Absolute paths of everything the command has read: never written over. */
  inputs: readonly string[];
  /** Whether files the program did not write, or not so, may be written over. */
  replace: boolean;
}

/** The steps that make a folder hold a result, and what stands against them. */
export interface Intent {
  steps: Step[];
  obstacles: Obstacle[];
  /** Files of an earlier plan that somebody has changed and that are therefore left. */
  left: string[];
}

/** What is to be done about one name. */
interface Finding {
  /** Fingerprint of what stands there; null when nothing does, empty when it is no plain file. */
  old: string | null;
  why: InTheWay | null;
}

/** Looks at the place of a file. What already holds the very bytes is never in the way: nothing would be lost. */
async function look(
  disk: Disk,
  { folder, replace }: Result,
  { name, made, listed }: { name: string; made: string; listed: string | null },
  inputs: ReadonlySet<string>,
): Promise<Finding> {
  const old = await fingerprintAt(disk, folder, name);
  if (old === null || old === made) return { old, why: null };
  if (old === "") return { old, why: "no-file" };
  if (inputs.has((await disk.identity(join(folder, name))) ?? "")) return { old, why: "input" };
  if (replace || old === listed) return { old, why: null };
  return { old, why: listed === null ? "unknown" : "changed" };
}

/**
 * Works out what to do in a folder so that it holds a result: only files the program wrote there, and nobody changed
 * since, are replaced or taken away. Looks only.
 */
export async function whatToWrite(disk: Disk, result: Result): Promise<Intent> {
  const { folder, by, files, replace } = result;
  const found = await manifestAt(disk, join(folder, MANIFEST_NAME));
  const manifest: Manifest = found ?? new Map();
  const identities = await Promise.all(result.inputs.map((path) => disk.identity(path)));
  const inputs = new Set(identities.filter((identity) => identity !== null));
  const made = new Map(Object.entries(files).map(([name, bytes]) => [name, fingerprint(bytes)]));
  const written = new Map<string, Written>(manifest);
  const intent: Intent = { steps: [], obstacles: [], left: [] };

  for (const [name, sha256] of made) {
    const listed = manifest.get(name)?.sha256 ?? null;
    const { old, why } = await look(disk, result, { name, made: sha256, listed }, inputs);
    if (why !== null) intent.obstacles.push({ name, why });
    else if (old !== sha256) intent.steps.push({ name, old, bytes: files[name] ?? "", made: sha256 });
    // A file of hers that happens to be the same stays hers.
    if (old !== sha256 || listed !== null || replace) written.set(name, { by, sha256 });
  }

  for (const name of by === "plan" ? leftBehind(manifest, made) : []) {
    const old = await fingerprintAt(disk, folder, name);
    written.delete(name);
    if (old === null || inputs.has((await disk.identity(join(folder, name))) ?? "")) continue;
    if (old === manifest.get(name)?.sha256) intent.steps.push({ name, old, bytes: null });
    else intent.left.push(name);
  }

  // Where all is hers there is nothing to remember.
  if (written.size === 0 && manifest.size === 0) return intent;
  const bytes = printManifest(written);
  const sha256 = fingerprint(bytes);
  // One that cannot be read is somebody else's file, or damaged, and is not written over unasked.
  const readable = found === null ? null : await fingerprintAt(disk, folder, MANIFEST_NAME);
  const own = await look(disk, result, { name: MANIFEST_NAME, made: sha256, listed: readable }, inputs);
  if (own.why !== null) intent.obstacles.push({ name: MANIFEST_NAME, why: own.why });
  else if (own.old !== sha256) intent.steps.push({ name: MANIFEST_NAME, old: own.old, bytes });
  return intent;
}
