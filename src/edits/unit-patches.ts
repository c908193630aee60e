import { fromInteger, parseLength, type Rational, rational, surdToNumber } from "../length/index.ts";
import { lastOf } from "../length/nth.ts";
import { findUnitKind, plainDesign } from "../quilt/index.ts";
import {
  type BlockModel,
  type CellModel,
  type FabricModel,
  fabricFor,
  type QuiltModel,
  type Unit,
  type UnitModel,
} from "./model.ts";
import { followsOf } from "./prints.ts";

/** A patch on the paper: corners in ticks from the block's top left, and what it is made of. */
export interface PaperPatch {
  corners: (readonly [number, number])[];
  part: string;
  /** The word of the file it takes its fabric by. */
  word: string;
  fabric: FabricModel | null;
  /** Where the print's up points in the frame of the block, in degrees clockwise; null where it has none. */
  up: number | null;
}

/** Where the up of a print points in a block that lies turned, as the block is drawn. */
function upOf(
  unit: UnitModel,
  fabric: FabricModel | null,
  model: QuiltModel,
  blockTurn: number,
): number | null {
  if (fabric === null || fabric.print === "none") return null;
  switch (followsOf(unit.cell.written.prints) ?? model.prints) {
    case "quilt":
      return (360 - blockTurn) % 360;
    case "block":
      return 0;
    case "unit":
      return unit.turn;
  }
}

/**
 * How a block looks in the quilt at a turn, as a text to be compared: where its patches lie, of which fabric, with
 * which way up.
 */
function lookOf(block: BlockModel, model: QuiltModel, colourway: string, turn: number): string {
  const [w, h] = [block.xs.at(-1) ?? 0, block.ys.at(-1) ?? 0];
  const patches = block.units.flatMap((unit) => patchesOf(unit, block, model, colourway, turn) ?? []);
  return patches
    .map(({ corners, fabric, up }) => {
      const lies = corners
        .map((point) =>
          turned(point, w, h, turn)
            .map((at) => Math.round(at / 16))
            .join(" "),
        )
        .sort();
      const twoWay = fabric?.print.startsWith("two-way") === true ? 180 : 360;
      return `${fabric?.name ?? ""} ${up === null ? "" : (up + turn) % twoWay} ${lies.join(",")}`;
    })
    .sort()
    .join(";");
}

/** The least turn at which a block looks as it does at this one. */
export function seenTurn(block: BlockModel, model: QuiltModel, colourway: string, turn: number): number {
  const look = lookOf(block, model, colourway, turn);
  return [0, 90, 180].find((less) => less < turn && lookOf(block, model, colourway, less) === look) ?? turn;
}

const lengthOf = (written: unknown, unit: Unit): Rational | null => {
  const read = parseLength(String(written ?? ""), unit);
  return read.ok ? read.value : null;
};

/** Words of a cell by part; one word alone stands for every part. */
export function wordOf(cell: Pick<CellModel, "words">, parts: readonly string[], part: string): string {
  const { words } = cell;
  if (!Array.isArray(words)) return words[part] ?? "";
  return words.length === 1 ? (words[0] ?? "") : (words[parts.indexOf(part)] ?? "");
}

/** Squares of a block whose sides a unit is looked for in. */
const MOST_SQUARES = 24;

/**
 * Sides of a unit. Squares of a block that does not divide into whole ticks are told here a part of a tick too long or
 * too short: sides that lie within two ticks of a proportion of whole squares have it exactly, as in the file.
 */
function sidesOf(across: number, down: number): [Rational, Rational] {
  const [wide, high] = [Math.round(across), Math.round(down)];
  const whole = Math.abs(across - wide) + Math.abs(down - high) < 1e-6;
  for (let of = whole ? MOST_SQUARES + 1 : 1; of <= MOST_SQUARES; of++) {
    const by = Math.round((across / down) * of);
    if (by < 1 || by > MOST_SQUARES || Math.abs(across * of - down * by) > 2 * of) continue;
    return [rational(BigInt(high) * BigInt(by), BigInt(of)), fromInteger(high)];
  }
  return [fromInteger(wide), fromInteger(high)];
}

/** Parts and outlines of a cell's unit at a size, before it is turned; null where the kind does not come in that size. */
export function outlinesOf(
  cell: CellModel,
  across: number,
  down: number,
  unit: Unit,
): { parts: readonly string[]; patches: { part: string; corners: [number, number][] }[] } | null {
  const kind = findUnitKind(cell.kind);
  if (kind === null || across <= 0 || down <= 0) return null;
  const [wide, high] = sidesOf(across, down);
  const base = plainDesign(wide, high);
  const { written } = cell;
  const strips = Array.isArray(written.strips)
    ? written.strips.map((one) => lengthOf(one, unit)).filter((one) => one !== null)
    : [];
  const named = Array.isArray(cell.words) && cell.words.length > 1 && kind.reads.includes("strips");
  const count = Number(written.count) || (named ? Number(cell.words.length) : base.count);
  const on = /^(\d+)\s*(?:x|×|by)\s*(\d+)$/.exec(String(written["drawn-on"] ?? ""));
  const corner = (x: unknown, whole: number, of: string | undefined): Rational => {
    if (of === undefined) return lengthOf(x, unit) ?? fromInteger(0);
    return fromInteger(Math.round((Number(x) * whole) / Number(of)));
  };
  const design = {
    ...base,
    corner: lengthOf(written.corner, unit),
    corners: Array.isArray(written.corners) ? (written.corners as typeof base.corners) : base.corners,
    strips,
    count: strips.length > 0 ? strips.length : count,
    centre: lengthOf(written.centre, unit),
    leaning: written.leaning === "falling" ? ("falling" as const) : ("rising" as const),
    patches: (Array.isArray(written.patches) ? written.patches : []).map(
      (one: { part?: unknown; corners?: unknown }, i) => ({
        role: String(one?.part ?? ""),
        spot: `${String(one?.part ?? "")} ${i + 1}`,
        corners: (Array.isArray(one?.corners) ? one.corners : []).map((point: unknown[]) => ({
          x: corner(point?.[0], across, on?.[1]),
          y: corner(point?.[1], down, on?.[2]),
        })),
      }),
    ),
  };
  try {
    if (kind.check(design) !== null) return null;
    return {
      parts: kind.roles(design),
      patches: kind.patches(design).map(({ role, outline }) => ({
        part: role,
        corners: outline.map(({ x, y }): [number, number] => [surdToNumber(x), surdToNumber(y)]),
      })),
    };
  } catch {
    // Half-written values can make a design that no kind has thought of: it is then drawn as an empty place.
    return null;
  }
}

/** A point of a unit of this size, turned clockwise with it. */
function turned(
  [x, y]: readonly [number, number],
  wide: number,
  high: number,
  turn: number,
): [number, number] {
  if (turn === 90) return [high - y, x];
  if (turn === 180) return [wide - x, high - y];
  if (turn === 270) return [y, wide - x];
  return [x, y];
}

/** Shapes a kind may come in where it does not come in the one it is laid in, across to down. */
const SHAPES = [
  [1, 1],
  [2, 1],
  [1, 2],
] as const;

/** The patches of a unit in a shape it does not come in, drawn out to it, so that what was laid is seen. */
export function squeezedOf(unit: UnitModel, block: BlockModel, model: QuiltModel): PaperPatch[] {
  const side = 1_000_000;
  for (const [columns, rows] of SHAPES) {
    const lies = unit.turn % 180 === 0;
    const own = { ...unit, column: 0, row: 0, columns: 1, rows: 1 };
    const [w, h] = lies ? [columns * side, rows * side] : [rows * side, columns * side];
    const made = patchesOf(own, { ...block, xs: [0, w], ys: [0, h] }, model);
    if (made === null) continue;
    const [x, y] = [block.xs[unit.column] ?? 0, block.ys[unit.row] ?? 0];
    const across = ((block.xs[unit.column + unit.columns] ?? lastOf(block.xs)) - x) / w;
    const down = ((block.ys[unit.row + unit.rows] ?? lastOf(block.ys)) - y) / h;
    return made.map((patch) => ({
      ...patch,
      corners: patch.corners.map(([px, py]) => [x + px * across, y + py * down] as const),
    }));
  }
  return [];
}

/** The patches of a unit where it lies in its block; null where its kind does not come in that shape. */
export function patchesOf(
  unit: UnitModel,
  block: BlockModel,
  model: QuiltModel,
  colourway = "",
  blockTurn = 0,
): PaperPatch[] | null {
  const { xs, ys } = block;
  const [x, y] = [xs[unit.column] ?? 0, ys[unit.row] ?? 0];
  const across = (xs[unit.column + unit.columns] ?? lastOf(xs)) - x;
  const down = (ys[unit.row + unit.rows] ?? lastOf(ys)) - y;
  const [wide, high] = unit.turn % 180 === 0 ? [across, down] : [down, across];
  const made = outlinesOf(unit.cell, wide, high, model.unit);
  if (made === null) return null;
  return made.patches.map(({ part, corners }) => {
    const word = wordOf(unit.cell, made.parts, part);
    const fabric = fabricFor(word, block, model, colourway);
    return {
      part,
      word,
      fabric,
      up: upOf(unit, fabric, model, blockTurn),
      corners: corners.map((point) => {
        const [px, py] = turned(point, wide, high, unit.turn);
        return [x + px, y + py] as const;
      }),
    };
  });
}
