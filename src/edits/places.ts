import type { Document, Node } from "yaml";
import { nodeAt, type Path, readDocument } from "./text-parts.ts";

/** A place of a quilt that can be in hand on the page. */
export type QuiltPlace =
  | { kind: "square"; block: string; row: number; column: number }
  | { kind: "placed"; row: number; column: number }
  | { kind: "border"; index: number }
  | { kind: "fabric"; index: number };

/** Where in a text something stands: from its first letter to past its last. */
export interface Stretch {
  from: number;
  to: number;
}

function stretchOf(node: Node | null): Stretch | null {
  const range = node?.range;
  return range === null || range === undefined ? null : { from: range[0], to: range[1] };
}

/** The words of a drawing as they stand in the text, line by line; `b*3` stands for three places. */
function drawnWords(text: string, doc: Document.Parsed, path: Path): (Stretch & { times: number })[][] {
  const node = nodeAt(doc, path);
  const whole = stretchOf(node);
  if (whole === null) return [];
  const source = text.slice(whole.from, whole.to);
  // The head of a literal block, and the signs round a list or a quoted line, are no part of the drawing.
  const head = /^[|>][^\n]*\n/.exec(source)?.[0].length ?? 0;
  const literal = head > 0;
  const lines: (Stretch & { times: number })[][] = [];
  let at = whole.from + head;
  for (const line of source.slice(head).split("\n")) {
    const words = [...line.matchAll(literal ? /\S+/g : /[^\s,[\]"'#]+/g)]
      .filter((match) => literal || match[0] !== "-" || /\S/.test(line.slice(0, match.index)))
      .map((match) => ({
        from: at + match.index,
        to: at + match.index + match[0].length,
        times: Number(/\*(\d{1,3})$/.exec(match[0])?.[1] ?? 1),
      }));
    if (words.length > 0) lines.push(words);
    at += line.length + 1;
  }
  return lines;
}

function wordAt(line: readonly (Stretch & { times: number })[], column: number): Stretch | null {
  let passed = 0;
  for (const word of line) {
    passed += word.times;
    if (column < passed) return { from: word.from, to: word.to };
  }
  return null;
}

const pathOf = (place: QuiltPlace): Path => {
  switch (place.kind) {
    case "square":
      return ["blocks", place.block, "grid"];
    case "placed":
      return ["setting", "rows"];
    case "border":
      return ["borders", place.index];
    case "fabric":
      return ["fabrics", place.index];
  }
};

/** Where the text says what is in hand; null where it does not say it in one place. */
export function stretchFor(text: string, place: QuiltPlace): Stretch | null {
  const doc = readDocument(text);
  if (place.kind === "border" || place.kind === "fabric") return stretchOf(nodeAt(doc, pathOf(place)));
  const lines = drawnWords(text, doc, pathOf(place));
  if (lines.length === 0)
    return place.kind === "square" ? stretchOf(nodeAt(doc, ["blocks", place.block])) : null;
  // A drawing that is repeated says a place in the rows that are repeated.
  const line = lines[place.row % lines.length] ?? [];
  const count = line.reduce((sum, { times }) => sum + times, 0);
  return count === 0 ? null : wordAt(line, place.column % count);
}

/** What stands at a letter of the text; null where nothing does that can be in hand. */
export function placeFor(text: string, offset: number): QuiltPlace | null {
  const doc = readDocument(text);
  const within = (path: Path): boolean => {
    const stretch = stretchOf(nodeAt(doc, path));
    return stretch !== null && offset >= stretch.from && offset <= stretch.to;
  };
  const drawn = (path: Path): { row: number; column: number } | null => {
    const lines = drawnWords(text, doc, path);
    for (const [row, line] of lines.entries()) {
      let column = 0;
      for (const word of line) {
        if (offset >= word.from && offset <= word.to) return { row, column };
        column += word.times;
      }
    }
    return null;
  };
  const items = (key: string): number => {
    const node = nodeAt(doc, [key]) as { items?: unknown[] } | null;
    return node?.items?.length ?? 0;
  };
  for (const kind of ["fabric", "border"] as const) {
    const key = `${kind}s`;
    for (let index = 0; index < items(key); index++) if (within([key, index])) return { kind, index };
  }
  const placed = within(["setting", "rows"]) ? drawn(["setting", "rows"]) : null;
  if (placed !== null) return { kind: "placed", ...placed };
  const blocks = nodeAt(doc, ["blocks"]) as { items?: { key: { value?: unknown } }[] } | null;
  for (const { key } of blocks?.items ?? []) {
    const block = String(key.value ?? "");
    if (!within(["blocks", block])) continue;
    const square = within(["blocks", block, "grid"]) ? drawn(["blocks", block, "grid"]) : null;
    return { kind: "square", block, ...(square ?? { row: 0, column: 0 }) };
  }
  return null;
}
