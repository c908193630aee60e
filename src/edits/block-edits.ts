import { formatLength } from "../length/index.ts";
import { nth } from "../length/nth.ts";
import { findUnitKind } from "../quilt/index.ts";
import { asLines, cellsOf, inTheForm, linesOf, marked, withWord } from "./drawing-text.ts";
import {
  type BlockModel,
  type CellModel,
  type QuiltModel,
  readCellModel,
  readModel,
  rulerOf,
  type UnitModel,
} from "./model.ts";
import { readText, valueAt, withoutValue, withValue } from "./text-edit.ts";
import { outlinesOf, wordOf } from "./unit-patches.ts";
import { sameValue, type Value } from "./values.ts";

/** A place on the paper. */
export interface Square {
  column: number;
  row: number;
}

/** A rectangle of squares. */
export interface Area extends Square {
  columns: number;
  rows: number;
}

/** What is laid: a kind of unit and its fabrics in the unit's order, turned. */
export interface Laid {
  kind: string;
  words: readonly string[];
  turn: number;
  /** Patches by their corners, for what is drawn freely. */
  drawn?: { patches: Value; on: string; words: Record<string, string> };
}

const blockPath = (key: string) => ["blocks", key] as const;
const gridOf = (text: string, key: string): unknown => valueAt(readText(text), [...blockPath(key), "grid"]);

export function blockNamed(model: QuiltModel, key: string): BlockModel | null {
  return model.blocks.find((block) => block.key === key) ?? null;
}

/** The unit that covers a square; null on an empty one. */
export function unitOn(block: BlockModel, { column, row }: Square): UnitModel | null {
  return (
    block.units.find(
      (unit) =>
        column >= unit.column &&
        column < unit.column + unit.columns &&
        row >= unit.row &&
        row < unit.row + unit.rows,
    ) ?? null
  );
}

/** The words of a block's squares, one for each, `.` where nothing lies. */
function wordsOf(block: BlockModel): string[][] {
  const words = Array.from({ length: block.rows }, () => Array<string>(block.columns).fill("."));
  for (const unit of block.units) cover(words, unit, marked(unit.cell.code, unit.turn - unit.cell.turn));
  return words;
}

function cover(words: string[][], area: Area, word: string): void {
  for (let r = 0; r < area.rows; r++)
    for (let c = 0; c < area.columns; c++) {
      const line = words[area.row + r];
      if (line?.[area.column + c] === undefined) continue;
      line[area.column + c] = r === 0 && c === 0 ? word : c > 0 ? "-" : "|";
    }
}

function uncover(words: string[][], area: Area): void {
  for (let r = 0; r < area.rows; r++)
    for (let c = 0; c < area.columns; c++)
      if (words[area.row + r]?.[area.column + c] !== undefined)
        nth(words, area.row + r)[area.column + c] = ".";
}

/** Writes the squares back: a line is touched only where a word of it changed. */
function withWords(text: string, block: BlockModel, words: readonly (readonly string[])[]): string {
  const written = gridOf(text, block.key);
  const old = linesOf(written);
  const known = new Set([...Object.keys(block.cells), "-", "|", "."]);
  const same =
    old.length === words.length && old.every((line, r) => cellsOf(line).length === nth(words, r).length);
  // A drawing whose columns stand under one another is kept so; any other spacing is the maker's own.
  const trim = asLines(old.map(cellsOf)) === old.map((line) => line.trim()).join("\n");
  const lines =
    same && !trim
      ? old.map((line, r) =>
          nth(words, r).reduce((made, word, c) => {
            const kept = keptWord(cellsOf(made)[c] ?? "", word, known);
            return withWord(made, c, kept);
          }, line),
        )
      : asLines(
          same
            ? words.map((line, r) =>
                line.map((word, c) => keptWord(cellsOf(nth(old, r))[c] ?? "", word, known)),
              )
            : words,
        ).split("\n");
  const value = inTheForm(written, lines);
  return withValue(text, [...blockPath(block.key), "grid"], value as Value, "size");
}

/** The new word of a square, or the old one where that says the same: `g:90` and `g>` do, and any two marks of cover. */
function keptWord(was: string, word: string, known: ReadonlySet<string>): string {
  const covered = /^[-|.]$/;
  if (covered.test(was) && covered.test(word)) return word !== "." && was !== "." ? was : word;
  const [before, now] = [readCode(was, known), readCode(word, known)];
  return before.code === now.code && before.turn === now.turn ? was : word;
}

function readCode(word: string, known: ReadonlySet<string>): { code: string; turn: number } {
  if (known.has(word)) return { code: word, turn: 0 };
  const degrees = /^(.+?):(\d+)$/.exec(word);
  if (degrees !== null) return { code: nth(degrees, 1), turn: Number(degrees[2]) % 360 };
  const turn = { "^": 0, ">": 90, v: 180, "<": 270, "↑": 0, "→": 90, "↓": 180, "←": 270 }[word.at(-1) ?? ""];
  return turn === undefined ? { code: word, turn: 0 } : { code: word.slice(0, -1), turn };
}

/** A code no cell has: the first letter of what it is for, else letters one by one. */
export function freeCode(block: Pick<BlockModel, "cells">, wish: string): string {
  const taken = Object.keys(block.cells);
  const free = (code: string): boolean =>
    !taken.includes(code) &&
    // `gv` beside `g` could be read as `g` upside down.
    !taken.some((other) => code === `${other}v` || other === `${code}v`) &&
    code !== "v";
  const letters = [...wish.toLowerCase().replace(/[^a-z]/g, ""), ..."abcdefghijklmnopqrstuwxyz"];
  for (const letter of letters) if (free(letter)) return letter;
  for (let n = 1; ; n++) if (free(`c${n}`)) return `c${n}`;
}

function cellValue(laid: Laid): { [key: string]: Value } {
  if (laid.drawn !== undefined)
    return { [laid.kind]: laid.drawn.words, "drawn-on": laid.drawn.on, patches: laid.drawn.patches };
  const words = laid.words.length === 1 ? nth(laid.words, 0) : [...laid.words];
  return { [laid.kind]: words };
}

/** Fabrics of a unit in the unit's order, as short as they can be said. */
function wordsAsValue(parts: readonly string[], words: readonly string[]): Value {
  return parts.length === 1 || new Set(words).size === 1 ? (words[0] ?? "") : [...words];
}

/** A block of one unit becomes a block with squares, so that more can be drawn on it. */
function asGrid(text: string, block: BlockModel): string {
  if (block.form === "grid") return text;
  const cell = valueAt(readText(text), [...blockPath(block.key), "cell"]) as Value;
  const path = blockPath(block.key);
  const made = withValue(
    withValue(text, [...path, "grid"], "a", "size"),
    [...path, "cells"],
    { a: cell },
    "grid",
  );
  return withoutValue(made, [...path, "cell"]);
}

/** Takes out cells nothing in the drawing uses any more, of those the page could have made. */
function withoutUnused(text: string, key: string, code: string): string {
  const block = blockNamed(readModel(text), key);
  if (block === null || block.cells[code] === undefined) return text;
  if (block.units.some((unit) => unit.cell.code === code)) return text;
  return withoutValue(text, [...blockPath(key), "cells", code]);
}

/**
 * Lays a unit on an area. What lay there is taken off; a unit that reaches beyond the area goes whole.
 * @returns the text as it was when there is no such block or the area leaves the paper
 */
export function layUnit(text: string, key: string, area: Area, laid: Laid): string {
  const drawn = blockNamed(readModel(text), key);
  const gridded = drawn === null ? text : asGrid(text, drawn);
  const block = blockNamed(readModel(gridded), key);
  if (block === null || area.column + area.columns > block.columns || area.row + area.rows > block.rows)
    return text;
  if (area.column < 0 || area.row < 0) return text;
  const wanted = cellValue(laid);
  const there = Object.values(block.cells).find((cell) => sameCell(cell, wanted, laid.kind));
  const code = there?.code ?? freeCode(block, laid.kind);
  let made = gridded;
  if (there === undefined) made = withValue(made, [...blockPath(key), "cells", code], wanted, null);
  const words = wordsOf(block);
  const gone: string[] = [];
  for (const unit of block.units) {
    if (!overlaps(unit, area)) continue;
    uncover(words, unit);
    gone.push(unit.cell.code);
  }
  cover(words, area, marked(code, laid.turn - (there?.turn ?? 0)));
  made = withWords(made, { ...block, cells: { ...block.cells, [code]: readCellModel(code, wanted) } }, words);
  for (const old of new Set(gone)) if (old !== code) made = withoutUnused(made, key, old);
  return made;
}

function sameCell(cell: CellModel, wanted: { [key: string]: Value }, kind: string): boolean {
  if (cell.kind !== kind || cell.written.span !== undefined) return false;
  const { turn: _turn, ...written } = cell.written;
  const [name] = Object.keys(written).filter((each) => findUnitKind(each) !== null);
  if (name === undefined) return false;
  const { [name]: words, ...rest } = written;
  const { [kind]: asked, ...others } = wanted;
  return sameValue(words, asked) && sameValue(rest, others);
}

const overlaps = (a: Area, b: Area): boolean =>
  a.column < b.column + b.columns &&
  b.column < a.column + a.columns &&
  a.row < b.row + b.rows &&
  b.row < a.row + a.rows;

/** Takes off whatever lies on a square. */
export function emptySquare(text: string, key: string, square: Square): string {
  const block = blockNamed(readModel(text), key);
  const unit = block === null ? null : unitOn(block, square);
  if (block === null || unit === null) return text;
  const gridded = asGrid(text, block);
  const drawn = blockNamed(readModel(gridded), key)!;
  const words = wordsOf(drawn);
  uncover(words, unit);
  return withoutUnused(withWords(gridded, drawn, words), key, unit.cell.code);
}

/**
 * Turns the unit on a square by quarter-turns. A unit longer than wide turns about its first square, and only where
 * the paper and its neighbours leave room.
 */
export function turnUnit(text: string, key: string, square: Square, quarters: number): string {
  const block = blockNamed(readModel(text), key);
  const unit = block === null ? null : unitOn(block, square);
  if (block === null || unit === null) return text;
  const turn = (((unit.turn + 90 * quarters) % 360) + 360) % 360;
  const lies = quarters % 2 === 0 || unit.columns === unit.rows;
  const area: Area = lies ? unit : { ...unit, columns: unit.rows, rows: unit.columns };
  if (block.form === "cell") {
    const path = [...blockPath(key), "cell", "turn"];
    return turn === 0 ? withoutValue(text, path) : withValue(text, path, turn);
  }
  const fits = area.column + area.columns <= block.columns && area.row + area.rows <= block.rows;
  const free = fits && block.units.every((other) => other === unit || !overlaps(other, area));
  if (!free) {
    // No room to swing: it is turned end for end where it lies.
    const words = wordsOf(block);
    cover(words, unit, marked(unit.cell.code, unit.turn + 180 - unit.cell.turn));
    return withWords(text, block, words);
  }
  const words = wordsOf(block);
  uncover(words, unit);
  cover(words, area, marked(unit.cell.code, turn - unit.cell.turn));
  return withWords(text, block, words);
}

/** How far a colour goes: this patch alone, all like it in the block, or all of its word in this unit. */
export type Reach = "patch" | "alike";

/** Gives a patch a fabric: the one unit, or every unit in the block drawn with the same code. */
export function colourPatch(
  text: string,
  key: string,
  { part, ...square }: Square & { part: string },
  fabric: string,
  reach: Reach,
): string {
  const model = readModel(text);
  const block = blockNamed(model, key);
  const unit = block === null ? null : unitOn(block, square);
  if (block === null || unit === null) return text;
  const { cell } = unit;
  const made = outlinesOf(cell, ...sizeOf(block, unit), model.unit);
  const parts = made?.parts ?? [part];
  const word = wordOf(cell, parts, part);
  const path = block.form === "cell" ? [...blockPath(key), "cell"] : [...blockPath(key), "cells", cell.code];
  if (reach === "alike") {
    // A role of the block is one word for all patches like it: giving it another fabric colours them all.
    if (block.roles[word] !== undefined) return withValue(text, [...blockPath(key), "roles", word], fabric);
    return withPatchWord(text, path, cell, { parts, part }, fabric);
  }
  const alone = block.units.filter((other) => other.cell.code === cell.code).length === 1;
  if (alone) return withPatchWord(text, path, cell, { parts, part }, fabric);
  const words = parts.map((each) => (each === part ? fabric : wordOf(cell, parts, each)));
  const { turn: _turn, ...rest } = cell.written;
  const [name] = Object.keys(rest).filter((each) => findUnitKind(each) !== null);
  const value = { ...rest, [name ?? cell.kind]: wordsAsValue(parts, words) } as { [key: string]: Value };
  const there = Object.values(block.cells).find((other) => {
    const { turn: _also, ...own } = other.written;
    return sameValue(own, value);
  });
  const code = there?.code ?? freeCode(block, cell.kind);
  const grown = there === undefined ? withValue(text, [...blockPath(key), "cells", code], value) : text;
  const squares = wordsOf(block);
  cover(squares, unit, marked(code, unit.turn - (there?.turn ?? 0)));
  return withWords(
    grown,
    { ...block, cells: { ...block.cells, [code]: readCellModel(code, value) } },
    squares,
  );
}

function sizeOf(block: BlockModel, unit: UnitModel): [number, number] {
  const across = nth(block.xs, unit.column + unit.columns) - nth(block.xs, unit.column);
  const down = nth(block.ys, unit.row + unit.rows) - nth(block.ys, unit.row);
  return unit.turn % 180 === 0 ? [across, down] : [down, across];
}

/** One fabric word of a cell replaced, in the form the cell is written in. */
function withPatchWord(
  text: string,
  path: readonly string[],
  cell: CellModel,
  { parts, part }: { parts: readonly string[]; part: string },
  fabric: string,
): string {
  const [name] = Object.keys(cell.written).filter((each) => findUnitKind(each) !== null);
  if (name === undefined) return text;
  const written = cell.written[name];
  if (Array.isArray(written) && written.length > 1)
    return withValue(text, [...path, name, parts.indexOf(part)], fabric);
  if (typeof written === "object" && written !== null && !Array.isArray(written))
    return withValue(text, [...path, name, part], fabric);
  if (parts.length === 1) return withValue(text, [...path, name], fabric);
  const words = parts.map((each) => (each === part ? fabric : wordOf(cell, parts, each)));
  return withValue(text, [...path, name], wordsAsValue(parts, words));
}

/** Another number of squares; what no longer fits is taken off, what is new is empty. The finished size stays. */
export function resizeGrid(text: string, key: string, columns: number, rows: number): string {
  const first = blockNamed(readModel(text), key);
  if (first === null || columns < 1 || rows < 1 || columns > 40 || rows > 40) return text;
  let made = asGrid(text, first);
  const block = blockNamed(readModel(made), key)!;
  const words = Array.from({ length: rows }, () => Array<string>(columns).fill("."));
  const gone = new Set<string>();
  for (const unit of block.units) {
    if (unit.column + unit.columns > columns || unit.row + unit.rows > rows) gone.add(unit.cell.code);
    else cover(words, unit, marked(unit.cell.code, unit.turn - unit.cell.turn));
  }
  for (const uneven of ["columns", "lines"] as const) made = withoutValue(made, [...blockPath(key), uneven]);
  if (
    block.across !== null &&
    block.across !== undefined &&
    valueAt(readText(made), [...blockPath(key), "size"]) === undefined
  )
    made = withValue(made, [...blockPath(key), "size"], lengthText(block.across, readModel(made)));
  const bare = { ...block, cells: block.cells };
  made = withWords(made, bare, words);
  for (const code of gone) made = withoutUnused(made, key, code);
  return made;
}

/** A length the way the file's ruler reads, without its measure. */
export function lengthText(ticks: number, model: QuiltModel): string {
  return formatLength(Math.round(ticks), rulerOf(model), { unit: false });
}

/** Another finished size of a block. */
export function sizeBlock(text: string, key: string, size: string): string {
  let made = text;
  for (const uneven of ["columns", "lines"]) made = withoutValue(made, [...blockPath(key), uneven]);
  return withValue(made, [...blockPath(key), "size"], size);
}

/** A new empty block beside the others, of their size unless one is given; its key is the first free letter. */
export function addBlock(
  text: string,
  columns: number,
  rows: number,
  wished: string | null = null,
): { text: string; key: string } {
  const model = readModel(text);
  const taken = new Set(model.blocks.map(({ key }) => key));
  const key = [..."ABCDEFGHIJKLMNOPQRSTUWXYZ"].find((letter) => !taken.has(letter)) ?? `B${taken.size + 1}`;
  const like = model.blocks[0];
  const size = wished ?? (like?.across == null ? "8" : lengthText(like.across, model));
  const grid = asLines(Array.from({ length: rows }, () => Array<string>(columns).fill(".")));
  const value = { size, grid: `${grid}\n`, cells: {} };
  return { text: withValue(text, [...blockPath(key)], value), key };
}

/** A block just like another, to be changed by itself. */
export function copyBlock(text: string, key: string): { text: string; key: string } {
  const like = valueAt(readText(text), [...blockPath(key)]);
  const added = addBlock(text, 1, 1);
  if (typeof like !== "object" || like === null) return { text, key };
  const { name: _name, ...rest } = like as { [key: string]: Value };
  return { text: withValue(added.text, [...blockPath(added.key)], rest), key: added.key };
}

/** Another name for a block, as it is printed; the word in the rows stays. Empty takes the name away. */
export function nameBlock(text: string, key: string, name: string): string {
  return name === "" || name === key
    ? withoutValue(text, [...blockPath(key), "name"])
    : withValue(text, [...blockPath(key), "name"], name);
}
