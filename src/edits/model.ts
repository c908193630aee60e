import {
  EIGHTH_INCH_RULER,
  parseLength,
  parseSize,
  QUARTER_CENTIMETRE_RULER,
  TICKS_PER,
  toNumber,
} from "../length/index.ts";
import { lastOf, nth } from "../length/nth.ts";
import { findUnitKind } from "../quilt/index.ts";
import { colourFor, type Layout, ON_POINT, readColour, readDrawing } from "../spec/index.ts";
import { fabricKey } from "../stock/index.ts";
import { FIELDS } from "./cell-fields.ts";
import { cellsOf, linesOf } from "./drawing-text.ts";
import { followsOf, type PrintFollows } from "./prints.ts";
import { readText } from "./text-edit.ts";
import { emptyIn, unitsIn } from "./units-in-drawing.ts";
import { keepingLast } from "./values.ts";

/*
 * What the page can show of a file, whatever state it is in: where something is missing or wrong, the rest is still
 * there. Nothing is checked here; faults are the planner's to find.
 */

export type Unit = "in" | "yd" | "mm" | "cm" | "m";
type Dict = Readonly<Record<string, unknown>>;

export interface FabricModel {
  name: string;
  colour: string;
  print: string;
  /** Its width where it has one of its own. */
  width: string;
  /** How often its print comes again, in ticks; null where the file does not say. */
  repeat: { across: number; down: number } | null;
  repeatText: string;
  index: number;
}

export interface CellModel {
  code: string;
  kind: string;
  /** Fabric words as written: by part, or in the unit's order. */
  words: string[] | Record<string, string>;
  turn: number;
  written: Dict;
}

export interface UnitModel {
  cell: CellModel;
  column: number;
  row: number;
  columns: number;
  rows: number;
  /** Degrees clockwise, the cell's own turn included. */
  turn: number;
}

export interface BlockModel {
  key: string;
  name: string;
  /** Finished size in ticks; null where the file does not say. */
  across: number | null;
  down: number | null;
  columns: number;
  rows: number;
  /** Sizes of columns and lines as written, with commas between; empty where all are alike. */
  ownColumns: string;
  ownLines: string;
  /** Where each column and line begins, and where the last ends, in ticks (or squares where no size is known). */
  xs: number[];
  ys: number[];
  units: UnitModel[];
  /** Squares nothing lies on. */
  empties: { column: number; row: number }[];
  cells: Record<string, CellModel>;
  roles: Record<string, string>;
  /** Drawn as a grid of codes, or one unit alone. */
  form: "grid" | "cell";
}

export interface PlacedModel {
  block: string;
  turn: number;
  colourway: string;
}

interface BorderModel {
  width: string;
  fabric: string;
  /** Block a pieced border is made of; empty for a plain one. */
  block: string;
  corners: string;
  name: string;
  /** Fabric, or block, of the squares in its corners; empty where there are none. */
  stones: string;
  stoneBlock: string;
}

interface SashingModel {
  width: string;
  fabric: string;
  /** Block the sashes are made of; empty for plain ones. */
  block: string;
  /** Fabric of the squares where sashes cross, or the block they are; empty where sashes run on. */
  cornerstones: string;
  stoneBlock: string;
  ring: boolean;
}

interface SettingModel {
  layout: Layout;
  /** Blocks as they stand, the drawing repeated to fill. */
  rows: PlacedModel[][];
  filled: boolean;
  /** Degrees the whole of it is turned, clockwise. */
  turn: number;
  triangles: string;
  sashing: SashingModel | null;
}

export interface QuiltModel {
  /** The text can be read whole, whatever it says. */
  sound: boolean;
  kind: "quilt" | "cut-list" | "unreadable";
  name: string;
  unit: Unit;
  fabrics: FabricModel[];
  blocks: BlockModel[];
  colourways: Record<string, Record<string, string>>;
  setting: SettingModel;
  borders: BorderModel[];
  binding: string;
  backing: string;
  wadding: boolean;
  methods: Record<string, string>;
  /** What the up of a print follows where a unit does not say. */
  prints: PrintFollows;
  /** What holds for all fabrics, as written. */
  cloth: Dict;
}

const dict = (value: unknown): Dict =>
  typeof value === "object" && value !== null && !Array.isArray(value) ? (value as Dict) : {};
const list = (value: unknown): unknown[] => (Array.isArray(value) ? value : []);
const text = (value: unknown): string =>
  typeof value === "string" || typeof value === "number" ? String(value) : "";

const NOWHERE = {
  value: null,
  valueAt: () => ({ file: "", line: 1, column: 1 }),
  keyAt: () => ({ file: "", line: 1, column: 1 }),
};

/** A length in ticks; null when it is none. */
export function ticksOf(written: unknown, unit: Unit): number | null {
  const read = parseLength(text(written), unit);
  return read.ok && toNumber(read.value) > 0 ? toNumber(read.value) : null;
}

/** The usual ruler in the measure of a file: eighths of an inch, or quarters of a centimetre. */
export function rulerOf({ unit }: Pick<QuiltModel, "unit">): typeof EIGHTH_INCH_RULER {
  return unit === "in" || unit === "yd" ? EIGHTH_INCH_RULER : QUARTER_CENTIMETRE_RULER;
}

function sizeOf(written: unknown, unit: Unit): { across: number; down: number } | null {
  const one = ticksOf(written, unit);
  if (one !== null) return { across: one, down: one };
  const two = parseSize(text(written), unit);
  return two.ok ? { across: toNumber(two.across), down: toNumber(two.along) } : null;
}

function unitOf(written: unknown): Unit {
  const read = parseLength(`1 ${text(written) || "in"}`, "in");
  return read.ok ? (read.unit ?? "in") : "in";
}

export function readCellModel(code: string, written: unknown): CellModel {
  const all = dict(written);
  const kind = Object.keys(all).find((key) => !FIELDS.has(key)) ?? "";
  const given = all[kind];
  const words = Array.isArray(given)
    ? given.map(text)
    : typeof given === "object" && given !== null
      ? Object.fromEntries(Object.entries(given).map(([part, word]) => [part, text(word)]))
      : [text(given)];
  const turn = Number.parseInt(text(all.turn) || "0", 10) || 0;
  return { code, kind: findUnitKind(kind)?.name ?? kind, words, turn, written: all };
}

function starts(count: number, whole: number | null, sizes: readonly (number | null)[]): number[] {
  const given = sizes.length === count && sizes.every((size) => size !== null);
  const each = whole === null ? TICKS_PER.in : whole / Math.max(1, count);
  const all = [0];
  for (let i = 0; i < count; i++) all.push(nth(all, i) + (given ? nth(sizes, i) : each));
  return all;
}

function readBlock(key: string, value: unknown, unit: Unit): BlockModel {
  const written = dict(value);
  const form = written.grid === undefined && written.cell !== undefined ? "cell" : "grid";
  const cells = Object.fromEntries(
    form === "cell"
      ? [["cell", readCellModel("cell", written.cell)]]
      : Object.entries(dict(written.cells)).map(([code, cell]) => [code, readCellModel(code, cell)]),
  );
  const known = new Set(Object.keys(cells));
  const drawn =
    form === "cell"
      ? [{ cells: [{ code: "cell", turn: 0 }] }]
      : readDrawing(linesOf(written.grid).join("\n"), [], known, NOWHERE, []);
  const rows = drawn.length;
  const columns = Math.max(0, ...drawn.map((row) => row.cells.length));
  const size = sizeOf(written.size, unit);
  const widths = list(written.columns).map((one) => ticksOf(one, unit));
  const ownLines = list(written.lines).map((one) => ticksOf(one, unit));
  const heights = ownLines.length > 0 ? ownLines : columns === rows ? widths : [];
  const xs = starts(columns, size?.across ?? null, widths);
  const ys = starts(rows, size?.down ?? null, heights);
  const units = unitsIn(drawn, cells);
  const empties = emptyIn(drawn, units);
  const roles = Object.fromEntries(
    Object.entries(dict(written.roles)).map(([role, word]) => [role, text(word)]),
  );
  const sized = size !== null || widths.length > 0;
  return {
    key,
    name: text(written.name) || key,
    across: sized ? lastOf(xs) : null,
    down: sized ? lastOf(ys) : null,
    columns,
    rows,
    ownColumns: list(written.columns).map(text).join(", "),
    ownLines: list(written.lines).map(text).join(", "),
    xs,
    ys,
    units,
    empties,
    cells,
    roles,
    form,
  };
}

function readPlaced(word: string, known: ReadonlySet<string>): PlacedModel {
  const [row] = readDrawing(word, [], known, NOWHERE, []);
  const cell = row?.cells[0];
  return { block: cell?.code ?? word, turn: cell?.turn ?? 0, colourway: cell?.colourway ?? "" };
}

function readSetting(value: unknown, known: ReadonlySet<string>): SettingModel {
  const written = dict(value);
  const layout = text(written.layout) === ON_POINT ? ON_POINT : "straight";
  const drawn = linesOf(written.rows).map((line) => cellsOf(line).map((word) => readPlaced(word, known)));
  const fill = /^(\d{1,3})\s*(?:x|×|by)\s*(\d{1,3})$/i.exec(text(written.fill));
  const rows = fill === null ? drawn : filled(drawn, Number(fill[1]), Number(fill[2]), layout === ON_POINT);
  const sashing = dict(written.sashing);
  const corner = sashing.cornerstones;
  return {
    layout,
    rows,
    filled: fill !== null,
    turn: (((Number.parseInt(text(written.turn) || "0", 10) || 0) % 360) + 360) % 360,
    triangles: text(written.triangles) || text(dict(written.triangles).sides),
    sashing:
      written.sashing === undefined
        ? null
        : {
            width: text(sashing.width),
            fabric: text(sashing.fabric),
            block: text(sashing.block),
            cornerstones: text(corner),
            stoneBlock: text(dict(corner).block),
            ring: sashing.ring === true,
          },
  };
}

/** The drawing repeated; on point the rows between have one block fewer. */
function filled(drawn: PlacedModel[][], across: number, down: number, onPoint: boolean): PlacedModel[][] {
  if (drawn.length === 0) return [];
  const count = onPoint ? 2 * down - 1 : down;
  return Array.from({ length: count }, (_, r) => {
    const row = drawn[r % drawn.length] ?? [];
    const length = onPoint && r % 2 === 1 ? across - 1 : across;
    return Array.from({ length }, (_, c) => nth(row, c % Math.max(1, row.length))).filter(
      (one) => one !== undefined,
    );
  });
}

const fabricOf = (value: unknown): string => text(value) || text(dict(value).fabric);

/** Everything the page shows of a file. Models are looked at, never changed: the last few are kept. */
export const readModel = keepingLast(4, modelOf);

function modelOf(source: string): QuiltModel {
  const read = readText(source);
  const file = dict(read.plain());
  const unit = unitOf(file.units);
  const fabrics = list(file.fabrics).map((one, index) => ({
    name: text(dict(one).name),
    colour: readColour(text(dict(one).colour)) ?? colourFor(index),
    print: text(dict(one).print) || text(dict(file["all-fabrics"]).print) || "none",
    width: text(dict(one).width),
    repeat: sizeOf(dict(one).repeat, unit),
    repeatText: text(dict(one).repeat),
    index,
  }));
  const blocks = Object.entries(dict(file.blocks)).map(([key, block]) => readBlock(key, block, unit));
  const known = new Set(blocks.map(({ key }) => key));
  return {
    sound: read.faults === 0,
    kind: file.blocks !== undefined ? "quilt" : file.fabrics !== undefined ? "cut-list" : "unreadable",
    name: text(file.name),
    unit,
    fabrics,
    blocks,
    colourways: Object.fromEntries(
      Object.entries(dict(file.colourways)).map(([name, roles]) => [
        name,
        Object.fromEntries(Object.entries(dict(roles)).map(([role, word]) => [role, text(word)])),
      ]),
    ),
    setting: readSetting(file.setting, known),
    borders: list(file.borders).map((one) => {
      const border = dict(one);
      return {
        width: text(border.width),
        fabric: text(border.fabric),
        block: text(border.block),
        corners: text(border.corners),
        name: text(border.name),
        stones: text(border.cornerstones),
        stoneBlock: text(dict(border.cornerstones).block),
      };
    }),
    binding: fabricOf(file.binding),
    backing: fabricOf(file.backing),
    wadding: file.wadding !== undefined,
    methods: Object.fromEntries(Object.entries(dict(file.methods)).map(([unit, way]) => [unit, text(way)])),
    prints: followsOf(file.prints) ?? "quilt",
    cloth: dict(file["all-fabrics"]),
  };
}

/** The fabric a word stands for in a block: itself, or what a role leads to. Null when it leads nowhere. */
export function fabricFor(
  word: string,
  block: Pick<BlockModel, "roles">,
  model: QuiltModel,
  colourway = "",
): FabricModel | null {
  let at = word;
  for (let hops = 0; hops < 12; hops++) {
    const fabric = model.fabrics.find(({ name }) => fabricKey(name) === fabricKey(at));
    const next = roleIn(colourway, at, model, 0) ?? block.roles[at];
    if (next === undefined || next === at) return fabric ?? null;
    // A word that means a fabric means that fabric, whatever its name may stand for elsewhere.
    const meant = model.fabrics.find(({ name }) => fabricKey(name) === fabricKey(next));
    if (meant !== undefined) return meant;
    at = next;
  }
  return null;
}

function roleIn(colourway: string, role: string, model: QuiltModel, depth: number): string | undefined {
  const roles = model.colourways[colourway];
  if (roles === undefined || depth > 12) return undefined;
  return roles[role] ?? roleIn(roles.like ?? "", role, model, depth + 1);
}
