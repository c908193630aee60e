import { type Document, isMap, isScalar, isSeq, type Node, type Pair, parseDocument } from "yaml";
import { keepingLast } from "./values.ts";

/*
 * A text read part by part: each key of the file stands on a line of its own with what is indented below it, and can be
 * read by itself. A part that was read before is not read again, so that a change of one block costs the reading of the
 * blocks and nothing else. A text that does not fall into such parts for certain is read whole.
 */

export type Path = readonly (string | number)[];

/** A text or a part of it, as the YAML parser reads it. */
export const parsed = (text: string): Document.Parsed =>
  parseDocument(text, { strict: false, uniqueKeys: false, logLevel: "error" });

/** The same, kept: one gesture asks for it a dozen times. Documents read here are looked at, never changed. */
export const readDocument = keepingLast(40, parsed);

/** A key of the file with its value: its letters in the text, comments in front of it not among them. */
export interface Part {
  key: string;
  from: number;
  to: number;
}

/** The one key of a part and what it holds; null where the part is no key with its value, or cannot be read. */
const readPart = keepingLast(100, (text): { key: string; value: unknown } | null => {
  const doc = readDocument(text);
  const map = doc.contents as Node | null;
  if (!isMap(map) || map.items.length !== 1 || map.flow === true || doc.errors.length > 0) return null;
  const key = keyOf(map.items[0] as Pair);
  return { key, value: (doc.toJS() as Record<string, unknown>)[key] };
});

/** What a part can begin with: a plain key of the file at the very left. */
const HEAD = /^[A-Za-z][\w -]*:(\s|$)/;
/** Marks whose meaning may reach beyond the part they stand in: anchors, aliases, kept line ends. */
const REACHING = /(?:^|[\s[{,:-])[&*]\S|[|>]\d*\+/;

/** Where a new key begins, as its lines alone tell. */
function cut(text: string): Part[] | null {
  if (REACHING.test(text)) return null;
  const parts: Part[] = [];
  let at = 0;
  while (at < text.length) {
    const next = text.indexOf("\n", at);
    const end = next === -1 ? text.length : next + 1;
    const line = text.slice(at, end);
    const part = parts.at(-1);
    // A note at the very left within a part is read otherwise where keys follow it than where none do.
    const noted = part !== undefined && text.slice(part.to, at).includes("#");
    if (HEAD.test(line)) parts.push({ key: line.slice(0, line.indexOf(":")), from: at, to: end });
    else if (line.trim() !== "" && !line.startsWith("#")) {
      if (part === undefined || noted || !line.startsWith(" ")) return null;
      part.to = end;
    }
    at = end;
  }
  const keys = new Set(parts.map(({ key }) => key));
  return parts.length === 0 || keys.size < parts.length ? null : parts;
}

/** The parts of a text in their order; null where it has to be read whole. */
const partsOf = keepingLast(8, (text): Part[] | null => {
  const parts = cut(text);
  return parts?.every(({ key, from, to }) => readPart(text.slice(from, to))?.key === key) === true
    ? parts
    : null;
});

/** The part of a key; null where the text has none of it, or is not read in parts. */
export function partNamed(text: string, key: string | number | undefined): Part | null {
  return partsOf(text)?.find((part) => part.key === key) ?? null;
}

/** What a text says, whatever state it is in. Values are looked at, never changed. */
export interface TextRead {
  /** How much of it cannot be read. */
  faults: number;
  /** The whole as plain values; null of a file with aliases. */
  plain(): unknown;
  /** The plain value at a path; undefined where there is none. */
  value(path: Path): unknown;
}

export function keyOf(pair: Pair): string {
  return isScalar(pair.key) ? String(pair.key.value) : "";
}

/** The node at a path of a document; null where there is none. */
export function nodeAt(doc: Document.Parsed, path: Path): Node | null {
  let node = doc.contents as Node | null;
  for (const step of path) {
    if (isSeq(node)) node = (node.items[Number(step)] as Node | undefined) ?? null;
    else if (isMap(node))
      node = (node.items.find((pair) => keyOf(pair) === String(step))?.value as Node) ?? null;
    else return null;
  }
  return node;
}

/** The plain value at a path of a document; undefined where there is none. */
export function valueIn(doc: Document.Parsed, path: Path): unknown {
  return (nodeAt(doc, path) as { toJS?(doc: Document.Parsed): unknown } | null)?.toJS?.(doc);
}

function within(value: unknown, path: Path): unknown {
  let at = value;
  for (const step of path) {
    if (typeof at !== "object" || at === null) return undefined;
    const own = Array.isArray(at) ? Number(step) : String(step);
    if (!Object.hasOwn(at, own)) return undefined;
    at = (at as Record<string | number, unknown>)[own];
  }
  return at;
}

/** A file with aliases is refused by the reader of the file too, with the reason. */
function withoutAliases(doc: Document.Parsed): unknown {
  try {
    return doc.toJS({ maxAliasCount: 0 });
  } catch {
    return null;
  }
}

/** A text as far as it can be read. */
export const readText = keepingLast(8, (text): TextRead => {
  const parts = partsOf(text);
  if (parts === null) {
    const doc = readDocument(text);
    return {
      faults: doc.errors.length,
      plain: () => withoutAliases(doc),
      value: (path) => valueIn(doc, path),
    };
  }
  const all = Object.fromEntries(
    parts.map(({ key, from, to }) => [key, readPart(text.slice(from, to))?.value]),
  );
  return { faults: 0, plain: () => all, value: (path) => within(all, path) };
});
