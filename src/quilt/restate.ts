import { formatLength } from "../length/format.ts";
import { familyOf } from "../length/measures.ts";
import { add, div, floor, fromInteger, mul, type Rational, rational, toNumber } from "../length/rational.ts";
import { SQUARED_END } from "../length/squared-end.ts";
import type { Ruler, Ticks } from "../length/types.ts";
import type { BlockSpec, BorderSpec, CellSpec, FractionTicks, QuiltSpec } from "../spec/quilt-types.ts";
import type { FabricSpec } from "../spec/types.ts";
import { fractionOfRational, rationalOfFraction } from "./exact.ts";
import { sayLength } from "./say.ts";

/** One size that is no longer what it was. */
export interface SizeChange {
  path: string;
  /** In trade words: `size of block star`, `seam allowance`. */
  what: string;
  before: string;
  after: string;
}

export interface Restated {
  spec: QuiltSpec;
  changes: SizeChange[];
  /** What every finished size was multiplied by, when one factor serves them all; null when each was rounded. */
  factor: { n: number; d: number } | null;
}

/** A factor further from 1 than this would make another quilt of it. */
const MOST_STRETCH = 0.06;

/**
 * Restates a design for another ruler, finished sizes moved to its marks. One factor for the whole design
 * keeps every sum true: the largest length that all finished sizes are multiples of goes to the nearest mark
 * (1 in to 2.5 cm). When that would stretch the quilt by more than 6 %, each cell and width goes to its own
 * nearest mark instead. Cloth is what it is: widths of fabric and pieces written out are left alone.
 */
export function restate(spec: QuiltSpec, ruler: Ruler): Restated {
  const factor = commonFactor(finishedSizes(spec), ruler);
  const changes: SizeChange[] = [];
  const nearest = (value: Rational): Rational => {
    const marks = floor(add(div(value, fromInteger(ruler.mark)), rational(1n, 2n)));
    return mul(rational(marks < 1n ? 1n : marks), fromInteger(ruler.mark));
  };
  const move = (value: FractionTicks, cells = 1): FractionTicks => {
    const old = rationalOfFraction(value);
    const count = fromInteger(cells);
    return fractionOfRational(factor === null ? mul(nearest(div(old, count)), count) : mul(old, factor));
  };
  const note = (path: string, what: string, before: FractionTicks, after: FractionTicks): FractionTicks => {
    const [old, now] = [rationalOfFraction(before), rationalOfFraction(after)];
    if (toNumber(old) !== toNumber(now)) {
      changes.push({ path, what, before: sayLength(old, spec.ruler), after: sayLength(now, ruler) });
    }
    return after;
  };
  const told = (path: string, what: string, value: FractionTicks, cells = 1): FractionTicks =>
    note(path, what, value, move(value, cells));
  const ticks = (path: string, what: string, value: Ticks): Ticks =>
    value === 0 ? 0 : note(path, what, { n: value, d: 1 }, fractionOfRational(nearest(fromInteger(value)))).n;

  const seam = ticks("seam", "seam allowance", spec.seam);
  const foundation = restateFoundation(spec, seam, told, ticks);
  const blocks = spec.blocks.map((block) => restateBlock(block, move, told));
  const { sashing } = spec.setting;
  const restated: QuiltSpec = {
    ...spec,
    ruler,
    defaultUnit: ruler.unit,
    seam,
    oversize: ticks("oversize", "room for trimming", spec.oversize),
    straightenSets: spec.straightenSets.told
      ? {
          off: ticks("straighten-sets", "straightening of each strip set", spec.straightenSets.off),
          told: true,
        }
      : { off: SQUARED_END[familyOf(ruler.unit)], told: false },
    blocks,
    setting: {
      ...spec.setting,
      sashing:
        sashing === null
          ? null
          : { ...sashing, width: told(`${sashing.path}.width`, "sashing", sashing.width) },
    },
    borders: spec.borders.map((border) => restateBorder(border, told, ticks)),
    binding:
      spec.binding === null
        ? null
        : {
            ...spec.binding,
            width: ticks("binding.width", "binding strips", spec.binding.width),
            extra: ticks("binding.extra", "binding to spare", spec.binding.extra),
          },
    backing:
      spec.backing === null
        ? null
        : {
            ...spec.backing,
            overhang: ticks("backing.overhang", "overhang of the backing", spec.backing.overhang),
          },
    wadding:
      spec.wadding === null
        ? null
        : {
            ...spec.wadding,
            overhang: ticks("wadding.overhang", "overhang of the wadding", spec.wadding.overhang),
          },
    foundation,
    fabrics: spec.fabrics.map((fabric) => onNewLines(fabric, spec.foundation, foundation)),
    quilting: {
      ...spec.quilting,
      spacing: spec.quilting.told
        ? ticks("quilting.spacing", "distance between lines of quilting", spec.quilting.spacing)
        : fractionOfRational(nearest(fromInteger(spec.quilting.spacing))).n,
    },
    assumptions: [
      ...spec.assumptions.filter(({ subject }) => subject !== "ruler marks" && subject !== "bare numbers"),
      {
        fabric: "",
        subject: "restated",
        value: `for a ruler with marks every ${formatLength(ruler.mark, ruler)}`,
      },
    ],
  };
  return { spec: restated, changes, factor: factor === null ? null : fractionOfRational(factor) };
}

/**
 * Foundation printed for the other ruler: its squares go with the finished sizes, or when its lines are folded with
 * the seam allowance, which stays as many squares as before. Whether all seams lie on lines still, the layout says.
 */
function restateFoundation(
  { foundation }: QuiltSpec,
  newSeam: Ticks,
  told: Told,
  ticks: (path: string, what: string, value: Ticks) => Ticks,
): QuiltSpec["foundation"] {
  if (foundation === null) return null;
  const { way, allowance, halves } = foundation;
  const moved = told("foundation.grid", "printed squares", { n: foundation.grid, d: 1 });
  const grid = way === "folded" ? Math.round(newSeam / allowance) : roundToEven(moved.n / moved.d, halves);
  return {
    ...foundation,
    grid,
    allowance: way === "folded" ? allowance : Math.max(allowance, Math.ceil(newSeam / grid)),
    ease: ticks("foundation.ease", "ease of patches on the foundation", foundation.ease),
  };
}

/** The foundation is straightened by as many printed squares as before. */
function onNewLines(
  fabric: FabricSpec,
  before: QuiltSpec["foundation"],
  after: QuiltSpec["foundation"],
): FabricSpec {
  if (before === null || after === null || fabric.name !== before.fabric.word) return fabric;
  return { ...fabric, straighten: Math.ceil(fabric.straighten / before.grid) * after.grid };
}

/** Whole ticks, an even number of them where squares are halved. */
function roundToEven(value: number, halves: boolean): Ticks {
  return halves ? 2 * Math.round(value / 2) : Math.round(value);
}

type Move = (value: FractionTicks, cells?: number) => FractionTicks;
type Told = (path: string, what: string, value: FractionTicks, cells?: number) => FractionTicks;

function restateBlock(block: BlockSpec, move: Move, told: Told): BlockSpec {
  const columns = block.grid[0]?.cells.length ?? 1;
  const rows = block.grid.length;
  const size = (axis: "across" | "down", count: number): FractionTicks | null => {
    const value = block[axis];
    // With uneven columns the size is their sum, whatever each was moved to.
    const uneven =
      axis === "across" ? block.columns : (block.lines ?? (columns === rows ? block.columns : null));
    if (value === null) return null;
    if (uneven !== null)
      return fractionOfRational(uneven.map((each) => rationalOfFraction(move(each))).reduce(add));
    return told(`${block.path}.size`, `size of block ${block.name}, ${axis}`, value, count);
  };
  return {
    ...block,
    across: size("across", columns),
    down: size("down", rows),
    columns:
      block.columns?.map((each, i) =>
        told(`${block.path}.columns[${i}]`, `column of block ${block.name}`, each),
      ) ?? null,
    lines:
      block.lines?.map((each, i) => told(`${block.path}.lines[${i}]`, `line of block ${block.name}`, each)) ??
      null,
    cells: block.cells.map((cell) => restateCell(cell, told)),
  };
}

function restateCell(cell: CellSpec, told: Told): CellSpec {
  const one = (field: "corner" | "centre"): FractionTicks | null => {
    const value = cell[field];
    return value === null ? null : told(`${cell.path}.${field}`, `${field} of ${cell.unit}`, value);
  };
  // Corners counted in squares go with the unit.
  const drawn = cell.drawnOn === null ? cell.patches : null;
  return {
    ...cell,
    corner: one("corner"),
    centre: one("centre"),
    strips:
      cell.strips?.map((each, i) => told(`${cell.path}.strips[${i}]`, `strip of ${cell.unit}`, each)) ?? null,
    patches:
      drawn?.map((patch) => ({
        ...patch,
        corners: patch.corners.map(({ x, y }) => ({
          x: told(`${cell.path}.patches`, `patch ${patch.role}`, x),
          y: told(`${cell.path}.patches`, `patch ${patch.role}`, y),
        })),
      })) ?? cell.patches,
  };
}

function restateBorder(
  border: BorderSpec,
  told: Told,
  ticks: (path: string, what: string, value: Ticks) => Ticks,
): BorderSpec {
  if (border.fit) {
    const long = ticks(`${border.path}.over-long`, `over-long allowance of ${border.name}`, border.extra);
    return { ...border, extra: long };
  }
  const same = border.side.n * border.end.d === border.end.n * border.side.d;
  const side = told(`${border.path}.width`, border.name, border.side);
  return {
    ...border,
    side,
    end: same ? side : told(`${border.path}.width`, `${border.name}, top and bottom`, border.end),
    extra: ticks(`${border.path}.over-long`, `over-long allowance of ${border.name}`, border.extra),
  };
}

/** Every finished length a cut depends on; a block's size counts by its cells. */
function finishedSizes(spec: QuiltSpec): Rational[] {
  const sizes: Rational[] = [];
  const put = (value: FractionTicks | null, cells = 1): void => {
    if (value !== null && value.n !== 0)
      sizes.push(div(rationalOfFraction(value), fromInteger(Math.max(1, cells))));
  };
  for (const block of spec.blocks) {
    const uneven = block.columns !== null;
    if (!uneven) put(block.across, block.grid[0]?.cells.length);
    if (block.lines === null && !uneven) put(block.down, block.grid.length);
    for (const each of [...(block.columns ?? []), ...(block.lines ?? [])]) put(each);
    for (const cell of block.cells) {
      put(cell.corner);
      put(cell.centre);
      for (const strip of cell.strips ?? []) put(strip);
      for (const patch of cell.drawnOn === null ? (cell.patches ?? []) : []) {
        for (const { x, y } of patch.corners) {
          put(x);
          put(y);
        }
      }
    }
  }
  put(spec.setting.sashing?.width ?? null);
  for (const border of spec.borders) {
    put(border.side);
    put(border.end);
  }
  return sizes;
}

function gcd(a: bigint, b: bigint): bigint {
  return b === 0n ? a : gcd(b, a % b);
}

/** The factor that takes the largest common measure of all sizes to the nearest mark; null when it is too far. */
function commonFactor(sizes: readonly Rational[], ruler: Ruler): Rational | null {
  const first = sizes[0];
  if (first === undefined) return null;
  const measure = sizes.reduce((a, b) => rational(gcd(a.n * b.d, b.n * a.d), a.d * b.d), first);
  const marks = floor(add(div(measure, fromInteger(ruler.mark)), rational(1n, 2n)));
  if (marks < 1n) return null;
  const factor = div(mul(rational(marks), fromInteger(ruler.mark)), measure);
  return Math.abs(toNumber(factor) - 1) <= MOST_STRETCH ? factor : null;
}
