import { type Layout, ON_POINT } from "../spec/index.ts";
import { lengthText, sizeBlock } from "./block-edits.ts";
import { asLines, cellsOf, inTheForm, linesOf, marked, withWord } from "./drawing-text.ts";
import { type PlacedModel, readModel, ticksOf } from "./model.ts";
import { readText, valueAt, withItem, withoutValue, withValue } from "./text-edit.ts";
import type { Value } from "./values.ts";

/** A place in the rows of the setting, from 0. */
export interface Place {
  row: number;
  column: number;
}

/** A placed block as a word of a row. */
export const wordOf = ({ block, turn, colourway }: PlacedModel): string =>
  marked(block, turn) + (colourway === "" ? "" : `/${colourway}`);

/** The rows with every block written out, so that one alone can be changed. */
function spelledOut(text: string): string {
  const { setting } = readModel(text);
  if (!setting.filled) return text;
  const rows = setting.rows.map((row) => row.map(wordOf));
  const written = withValue(text, ["setting", "rows"], `${asLines(rows)}\n`);
  return withoutValue(written, ["setting", "fill"]);
}

/** The rows with some places filled otherwise; the text as it was where a place is none. */
export function withPlaced(text: string, places: readonly { at: Place; placed: PlacedModel }[]): string {
  const made = spelledOut(text);
  const written = valueAt(readText(made), ["setting", "rows"]);
  const lines = linesOf(written);
  for (const { at, placed } of places) {
    const line = lines[at.row];
    if (line === undefined || cellsOf(line)[at.column] === undefined) return text;
    lines[at.row] = withWord(line, at.column, wordOf(placed));
  }
  return withValue(made, ["setting", "rows"], inTheForm(written, lines) as Value);
}

/** The rows of the setting as they are to be written; a text that has them in another form keeps that form. */
export function withRows(text: string, rows: readonly string[]): string {
  const made = spelledOut(text);
  const written = valueAt(readText(made), ["setting", "rows"]);
  return linesOf(written).join("\n") === rows.join("\n")
    ? text
    : withValue(made, ["setting", "rows"], inTheForm(written, [...rows]) as Value);
}

const placedAt = (text: string, { row, column }: Place): PlacedModel | null =>
  readModel(text).setting.rows[row]?.[column] ?? null;

/** Turns one placed block to so many degrees. */
export function turnPlaced(text: string, at: Place, turn: number): string {
  const placed = placedAt(text, at);
  return placed === null ? text : withPlaced(text, [{ at, placed: { ...placed, turn } }]);
}

/** Puts another block in a place, as drawn. */
export function putBlock(text: string, at: Place, block: string): string {
  const placed = placedAt(text, at);
  return placed === null || placed.block === block
    ? text
    : withPlaced(text, [{ at, placed: { block, turn: 0, colourway: "" } }]);
}

/** Swaps two placed blocks, each with its turn. */
export function swapPlaced(text: string, a: Place, b: Place): string {
  const [one, two] = [placedAt(text, a), placedAt(text, b)];
  if (one === null || two === null) return text;
  return withPlaced(text, [
    { at: a, placed: two },
    { at: b, placed: one },
  ]);
}

/** Rules that turn all blocks of one design, and how each says the turn of a place. */
export type FillRule = "alike" | "by-turns" | "round" | "chance";

/** A whole number from two others and a seed, the same on every machine (a multiply and shift mix). */
function mixed(seed: number, row: number, column: number): number {
  let h =
    Math.imul(seed + 1, 0x9e3779b1) ^ Math.imul(row + 1, 0x85ebca6b) ^ Math.imul(column + 1, 0xc2b2ae35);
  h = Math.imul(h ^ (h >>> 15), 0x2c1b3c6d);
  h = Math.imul(h ^ (h >>> 12), 0x297a2d39);
  return (h ^ (h >>> 15)) >>> 0;
}

export function turnBy(
  rule: FillRule,
  { row, column }: Place,
  size: { rows: number; columns: number },
  first: number,
  seed: number,
): number {
  switch (rule) {
    case "alike":
      return first;
    case "by-turns":
      return (first + 90 * ((row + column) % 2)) % 360;
    case "round": {
      // Each quarter of the quilt is turned a quarter further, so that the whole runs round its middle.
      const [lower, right] = [row >= size.rows / 2, column >= size.columns / 2];
      return (first + 90 * (lower ? (right ? 2 : 3) : right ? 1 : 0)) % 360;
    }
    case "chance":
      return 90 * (mixed(seed, row, column) % 4);
  }
}

/** Turns every placed block of a design by a rule. */
export function fillTurns(text: string, block: string, rule: FillRule, first: number, seed = 1): string {
  const { rows } = readModel(text).setting;
  const size = { rows: rows.length, columns: Math.max(0, ...rows.map((row) => row.length)) };
  const places = rows.flatMap((row, r) =>
    row.flatMap((placed, c) =>
      placed.block !== block
        ? []
        : [
            {
              at: { row: r, column: c },
              placed: { ...placed, turn: turnBy(rule, { row: r, column: c }, size, first, seed) },
            },
          ],
    ),
  );
  return places.length === 0 ? text : withPlaced(text, places);
}

/** Rules that put one block in many places. */
export type PutRule = "everywhere" | "every-other" | "rows" | "columns" | "edge" | "this-row" | "this-column";

const PUTS: Readonly<Record<PutRule, (at: Place, last: Place, hand: Place) => boolean>> = {
  everywhere: () => true,
  "every-other": ({ row, column }) => (row + column) % 2 === 1,
  rows: ({ row }) => row % 2 === 1,
  columns: ({ column }) => column % 2 === 1,
  edge: ({ row, column }, last) => row === 0 || column === 0 || row === last.row || column === last.column,
  "this-row": ({ row }, _, hand) => row === hand.row,
  "this-column": ({ column }, _, hand) => column === hand.column,
};

/**
 * Puts a block, as drawn, in every place a rule names.
 * @param hand the place in hand, for the rules that speak of its row or column
 */
export function fillBlocks(text: string, block: string, rule: PutRule, hand: Place): string {
  const { rows } = readModel(text).setting;
  const places = rows.flatMap((row, r) =>
    row.flatMap((placed, c) => {
      const last = { row: rows.length - 1, column: row.length - 1 };
      const named = PUTS[rule]({ row: r, column: c }, last, hand);
      return !named || placed.block === block
        ? []
        : [{ at: { row: r, column: c }, placed: { block, turn: 0, colourway: "" } }];
    }),
  );
  return places.length === 0 ? text : withPlaced(text, places);
}

/** Another number of blocks across and down; the drawing is repeated or cut short. */
export function sizeQuilt(text: string, across: number, down: number): string {
  if (across < 1 || down < 1 || across > 100 || down > 100) return text;
  const model = readModel(text);
  const { setting } = model;
  const fill = `${across} x ${down}`;
  if (setting.filled) return withValue(text, ["setting", "fill"], fill);
  const { rows } = setting;
  const first = rows[0] ?? [];
  const onPoint = setting.layout === ON_POINT;
  const count = onPoint ? 2 * down - 1 : down;
  // Rows that hold unequal numbers of blocks grow and shrink by as many as the longest does.
  const by = across - Math.max(0, ...rows.map((row) => row.length));
  // What stands stays; new places repeat it, the whole drawing again and again.
  const made = Array.from({ length: count }, (_, r) => {
    const row = rows[r % Math.max(1, rows.length)] ?? first;
    const length = onPoint ? across - (r % 2) : Math.max(1, row.length + by);
    return Array.from({ length }, (_, c) => {
      const placed = row[c % Math.max(1, row.length)] ?? first[0];
      return placed === undefined ? "" : wordOf(placed);
    });
  });
  return withValue(text, ["setting", "rows"], `${asLines(made)}\n`);
}

/** Blocks in straight rows, or standing on a corner. */
export function setLayout(text: string, layout: Layout, triangles: string): string {
  const model = readModel(text);
  if (model.setting.layout === layout) return text;
  const rows = model.setting.rows;
  const across = Math.max(1, ...rows.map((row) => row.length));
  const down = model.setting.layout === ON_POINT ? (rows.length + 1) / 2 : rows.length;
  if (layout === "straight") {
    let made = withoutValue(withoutValue(text, ["setting", "layout"]), ["setting", "triangles"]);
    const kept = rows.filter((_, r) => r % 2 === 0).map((row) => row.map(wordOf));
    if (!model.setting.filled) made = withValue(made, ["setting", "rows"], `${asLines(kept)}\n`);
    return made;
  }
  let made = withValue(text, ["setting", "layout"], ON_POINT);
  made = withValue(made, ["setting", "triangles"], triangles);
  if (model.setting.filled) return made;
  // Rows with one block fewer come to stand between the rows there are.
  const stepped = Array.from({ length: 2 * Math.ceil(down) - 1 }, (_, r) => {
    const row = rows[r % 2 === 0 ? r / 2 : (r - 1) / 2] ?? [];
    return row.slice(0, r % 2 === 0 ? across : across - 1).map(wordOf);
  });
  return withValue(made, ["setting", "rows"], `${asLines(stepped)}\n`);
}

/** Strips between the blocks; null takes them away. */
export function setSashing(text: string, sashing: { width: string; fabric: string } | null): string {
  if (sashing === null) return withoutValue(text, ["setting", "sashing"]);
  const there = readModel(text).setting.sashing;
  if (there === null)
    return withValue(text, ["setting", "sashing"], { width: sashing.width, fabric: sashing.fabric });
  let wide = withValue(text, ["setting", "sashing", "width"], sashing.width);
  const own = readModel(wide).blocks;
  // Blocks that sashes and their crossings are made of stay as wide as the sashes.
  const sash = own.find(({ key }) => key === there.block);
  if (sash?.down != null)
    wide = sizeBlock(wide, sash.key, `${sashing.width} x ${lengthText(sash.down, readModel(wide))}`);
  if (own.some(({ key }) => key === there.stoneBlock))
    wide = sizeBlock(wide, there.stoneBlock, sashing.width);
  if (there.block !== "") return wide;
  return sashing.fabric === there.fabric
    ? wide
    : withValue(wide, ["setting", "sashing", "fabric"], sashing.fabric);
}

/** Squares where sashes cross; null for long sashes without. */
export function setCornerstones(text: string, fabric: string | null): string {
  const path = ["setting", "sashing", "cornerstones"];
  return fabric === null ? withoutValue(text, path) : withValue(text, path, fabric);
}

/** Sashes all round the outside too. */
export function setSashRing(text: string, ring: boolean): string {
  const path = ["setting", "sashing", "ring"];
  return ring ? withValue(text, path, true) : withoutValue(text, path);
}

/** A plain border outside the others. */
export function addBorder(text: string, fabric: string, width: string): string {
  const { borders } = readModel(text);
  const border = { fabric, width };
  return borders.length === 0
    ? withValue(text, ["borders"], [border], "setting")
    : withItem(text, ["borders"], borders.length, border);
}

export function removeBorder(text: string, index: number): string {
  const { borders } = readModel(text);
  return borders.length <= 1 ? withoutValue(text, ["borders"]) : withoutValue(text, ["borders", index]);
}

export function setBorder(
  text: string,
  index: number,
  field: "fabric" | "width" | "corners",
  value: string,
): string {
  return withValue(text, ["borders", index, field], value);
}

/** A border wider or narrower by whole marks of the ruler; never thinner than one mark. */
export function widenBorder(text: string, index: number, marks: number, mark: number): string {
  const model = readModel(text);
  const now = ticksOf(model.borders[index]?.width, model.unit);
  if (now === null) return text;
  const width = Math.max(mark, Math.round(now / mark) * mark + marks * mark);
  return setBorder(text, index, "width", lengthText(width, model));
}

export type Finishing = "binding" | "backing" | "wadding";

/** Binding, backing or wadding of a fabric; null takes it away. */
export function setFinishing(text: string, what: Finishing, fabric: string | null): string {
  if (fabric === null) return withoutValue(text, [what]);
  const there = valueAt(readText(text), [what]);
  const inches = ["in", "yd"].includes(readModel(text).unit);
  if (what === "wadding")
    return there === undefined ? withValue(text, ["wadding"], { overhang: inches ? 4 : 10 }) : text;
  if (typeof there === "object" && there !== null) return withValue(text, [what, "fabric"], fabric);
  return withValue(text, [what], fabric);
}
