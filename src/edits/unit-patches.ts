import { fromInteger, parseLength, type Rational, surdToNumber } from "../length/index.ts";
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

/** A patch on the paper: corners in ticks from the block's top left, and what it is made of. */
export interface PaperPatch {
  corners: (readonly [number, number])[];
  part: string;
  /** The word of the file it takes its fabric by. */
  word: string;
  fabric: FabricModel | null;
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

/** Parts and outlines of a cell's unit at a size, before it is turned; null where the kind does not come in that size. */
export function outlinesOf(
  cell: CellModel,
  across: number,
  down: number,
  unit: Unit,
): { parts: readonly string[]; patches: { part: string; corners: [number, number][] }[] } | null {
  const kind = findUnitKind(cell.kind);
  if (kind === null || across <= 0 || down <= 0) return null;
  const [wide, high] = [fromInteger(Math.round(across)), fromInteger(Math.round(down))];
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

/** The patches of a unit where it lies in its block; null where its kind does not come in that shape. */
export function patchesOf(
  unit: UnitModel,
  block: BlockModel,
  model: QuiltModel,
  colourway = "",
): PaperPatch[] | null {
  const { xs, ys } = block;
  const [x, y] = [xs[unit.column] ?? 0, ys[unit.row] ?? 0];
  const across = (xs[unit.column + unit.columns] ?? xs.at(-1)!) - x;
  const down = (ys[unit.row + unit.rows] ?? ys.at(-1)!) - y;
  const [wide, high] = unit.turn % 180 === 0 ? [across, down] : [down, across];
  const made = outlinesOf(unit.cell, wide, high, model.unit);
  if (made === null) return null;
  return made.patches.map(({ part, corners }) => {
    const word = wordOf(unit.cell, made.parts, part);
    return {
      part,
      word,
      fabric: fabricFor(word, block, model, colourway),
      corners: corners.map((point) => {
        const [px, py] = turned(point, wide, high, unit.turn);
        return [x + px, y + py] as const;
      }),
    };
  });
}
