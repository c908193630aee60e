import { createHash } from "node:crypto";
import type { Disk } from "./disk.ts";

/** The file in which a folder keeps what the program has written there. */
export const MANIFEST_NAME = ".crossgrain.json";

const FORMAT = "crossgrain folder";
const VERSION = 1;

/** The command that wrote a file. One command takes away only what it wrote itself. */
export const WRITERS = ["plan", "compare", "arrange", "picture", "page", "savings"] as const;

export type Writer = (typeof WRITERS)[number];

/** A file as the program wrote it. */
export interface Written {
  by: Writer;
  /** SHA-256 of its bytes, in hexadecimal. */
  sha256: string;
}

/** By name. A file is the program's while it is listed and its bytes are those of the list. */
export type Manifest = ReadonlyMap<string, Written>;

/** A text too long to be held whole: told anew, a portion at a time, whenever it is asked for. No portion ends within a letter. */
interface LongText {
  portions(): Iterable<string>;
}

/** What a file holds. */
export type Content = string | Uint8Array | LongText;

export function fingerprint(content: Content): string {
  const hash = createHash("sha256");
  if (typeof content === "string" || content instanceof Uint8Array) hash.update(content);
  else for (const portion of content.portions()) hash.update(portion);
  return hash.digest("hex");
}

/** Whether a name stays inside its folder on every system. */
export function isPlainName(name: string): boolean {
  return name !== "" && name !== "." && name !== ".." && !/[/\\:\0]/.test(name);
}

/** The manifest as text: sorted, with nothing of the day or the machine in it. */
export function printManifest(manifest: Manifest): string {
  const files = [...manifest].sort(([a], [b]) => (a < b ? -1 : 1));
  const about = "What Crossgrain wrote here. It replaces and removes these files only, and only unchanged.";
  return `${JSON.stringify({ format: FORMAT, version: VERSION, about, files: Object.fromEntries(files) }, null, 1)}\n`;
}

function isWritten(value: unknown): value is Written {
  const { by, sha256 } = (value ?? {}) as Partial<Written>;
  return (
    WRITERS.some((writer) => writer === by) && typeof sha256 === "string" && /^[0-9a-f]{64}$/.test(sha256)
  );
}

/** Reads a manifest; null when this is none, as then nothing in the folder is known to be the program's. */
function readManifest(text: string): Manifest | null {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return null;
  }
  const { format, version, files } = (value ?? {}) as {
    format?: unknown;
    version?: unknown;
    files?: unknown;
  };
  if (format !== FORMAT || version !== VERSION || typeof files !== "object" || files === null) return null;
  const entries = Object.entries(files);
  return entries.every(([name, written]) => isPlainName(name) && isWritten(written))
    ? new Map(entries)
    : null;
}

/** What a folder says of itself: an empty manifest where there is none, null where it cannot be read. */
export async function manifestAt(disk: Disk, path: string): Promise<Manifest | null> {
  const kind = await disk.kind(path);
  if (kind === null) return new Map();
  return kind === "file" ? readManifest(new TextDecoder().decode(await disk.read(path))) : null;
}

/**
 * Listed files that a new plan leaves behind: those of the plan before that it does not write again, and pictures of
 * that plan's drawings that change or go. What other commands wrote stays.
 * @param made fingerprints of the new plan's files by name
 */
export function leftBehind(manifest: Manifest, made: ReadonlyMap<string, string>): string[] {
  const isStale = (name: string, { by }: Written): boolean => {
    const drawing = name.replace(/\.png$/, ".svg");
    const drawn = manifest.get(drawing);
    return by === "plan" || (by === "picture" && drawn?.by === "plan" && made.get(drawing) !== drawn.sha256);
  };
  return [...manifest].flatMap(([name, written]) =>
    !made.has(name) && isStale(name, written) ? [name] : [],
  );
}
