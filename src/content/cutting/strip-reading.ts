import type { Ticks } from "../../length/types.ts";
import type { Part } from "../../plan/types.ts";

/** A piece and how many of it. */
export interface Taken {
  piece: number;
  count: number;
}

/**
 * What one strip gives, in the words of its own frame: `run` is a size along the strip, `height` one square
 * to it, wherever the strip lies on the cloth.
 *
 * `whole`: as high as the strip. `trimmed`: the rest of the strip is trimmed to `height`, then subcut; or, where what
 * follows stays as high as the strip, a block of `cutOff` along the strip is cut off first (null elsewhere).
 * `stacked`: segments `run` long are cut again, along the strip, into rows.
 */
export type StripGroup =
  | { kind: "uncut"; piece: number }
  | { kind: "whole"; items: Taken[] }
  | { kind: "trimmed"; height: Ticks; cutOff: Ticks | null; items: Taken[] }
  | { kind: "stacked"; run: Ticks; count: number; rows: StackRow[] };

/** `count` equal rows of a stack; `items` is what all of them give. */
interface StackRow {
  height: Ticks;
  count: number;
  items: Taken[];
}

/** A strip or band found in a lay. */
export interface FoundStrip {
  strip: Part;
  /** It lies in the width left beside lengthwise bands. */
  besideBands: boolean;
}

/** The strip or band with this number in cutting order. */
export function findStrip(part: Part, number: number, besideBands = false): FoundStrip | null {
  if (part.role === "strip" || part.role === "band")
    return part.number === number ? { strip: part, besideBands } : null;
  for (const inner of part.parts) {
    const found = findStrip(inner, number, besideBands || part.role === "rest");
    if (found !== null) return found;
  }
  return null;
}

/** Every piece of a part; a run of shapes counts each of them. */
function piecesOf(part: Part): Taken[] {
  if (part.piece === null) return part.parts.flatMap(piecesOf);
  return [{ piece: part.piece, count: part.shapes?.length ?? 1 }];
}

/** Counts added up for each piece, in the order pieces first appear. */
export function gathered(items: readonly Taken[]): Taken[] {
  const counts = new Map<number, number>();
  for (const { piece, count } of items) counts.set(piece, (counts.get(piece) ?? 0) + count);
  return [...counts].map(([piece, count]) => ({ piece, count }));
}

function takenFrom(part: Part): Taken[] {
  return gathered(piecesOf(part));
}

/** Rows of one height and with the same pieces in them, told once. */
function alikeRows(rows: readonly StackRow[]): StackRow[] {
  const byLook = new Map<string, StackRow>();
  for (const row of rows) {
    const key = JSON.stringify([row.height, row.items.map(({ piece }) => piece)]);
    const known = byLook.get(key);
    byLook.set(key, {
      height: row.height,
      count: (known?.count ?? 0) + 1,
      items: gathered([...(known?.items ?? []), ...row.items]),
    });
  }
  return [...byLook.values()];
}

/** Reads a strip from its start to its end, like with like gathered. */
export function readStrip(strip: Part): StripGroup[] {
  const lies = strip.cut === "along" ? "across" : "along";
  const run = (part: Part): Ticks => part[lies];
  const height = (part: Part): Ticks => part[lies === "across" ? "along" : "across"];

  const groupOf = (segment: Part): StripGroup => {
    if (segment.piece !== null && segment.shapes === undefined && run(segment) === run(strip))
      return { kind: "uncut", piece: segment.piece };
    const rows = segment.cut === strip.cut ? [segment] : segment.parts.filter((row) => row.cause === null);
    const [first] = rows.length === 0 ? [segment] : rows;
    if (rows.length < 2 && first !== undefined) {
      const items = takenFrom(first);
      return height(first) === height(strip)
        ? { kind: "whole", items }
        : {
            kind: "trimmed",
            height: height(first),
            cutOff: segment === strip.parts.at(-1) ? null : run(segment),
            items,
          };
    }
    return {
      kind: "stacked",
      run: run(segment),
      count: 1,
      rows: alikeRows(rows.map((row) => ({ height: height(row), count: 1, items: takenFrom(row) }))),
    };
  };

  const groups: StripGroup[] = [];
  for (const segment of strip.parts.filter((part) => part.cause === null)) {
    const group = groupOf(segment);
    const equal = groups.find((known) => isLike(known, group));
    if (equal === undefined) groups.push(group);
    else if (equal.kind === "stacked") equal.count += 1;
    else if ("items" in equal && "items" in group) equal.items = gathered([...equal.items, ...group.items]);
  }
  return groups;
}

function isLike(a: StripGroup, b: StripGroup): boolean {
  if (a.kind === "whole") return b.kind === "whole";
  if (a.kind === "trimmed") return b.kind === "trimmed" && a.height === b.height && a.cutOff === b.cutOff;
  if (a.kind === "stacked" && b.kind === "stacked") {
    return a.run === b.run && JSON.stringify(a.rows) === JSON.stringify(b.rows);
  }
  return false;
}
