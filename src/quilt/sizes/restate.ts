import type { Restatable } from "../../diagnostics/choices.ts";
import { rulerWithSeams } from "../../length/marks.ts";
import { familyOf } from "../../length/measures.ts";
import {
  add,
  div,
  floor,
  fromInteger,
  mul,
  type Rational,
  rational,
  toNumber,
  ZERO,
} from "../../length/rational.ts";
import type { SpokenLength } from "../../length/spoken.ts";
import { SQUARED_END } from "../../length/squared-end.ts";
import type { Ruler, Ticks } from "../../length/types.ts";
import type { BlockSpec, BorderSpec, CellSpec, FractionTicks, QuiltSpec } from "../../spec/quilt-types.ts";
import type { Assumed, Assumption, FabricSpec } from "../../spec/types.ts";
import { fractionOfRational, rationalOfFraction } from "../exact.ts";
import { layOutQuilt } from "../lay-out-quilt.ts";
import { sayLength } from "../say.ts";
import { commonFactor, finishedSizes, onWholeGrid, usualFactor } from "./restate-factor.ts";

/** One size that is no longer what it was. */
interface SizeChange {
  path: string;
  what: Restatable;
  before: SpokenLength;
  after: SpokenLength;
}

export interface Restated {
  spec: QuiltSpec;
  changes: SizeChange[];
  /** What every finished size was multiplied by, when one factor serves them all; null when each was rounded. */
  factor: { n: number; d: number } | null;
}

/**
 * Restates a design for another ruler, finished sizes moved to its marks. One factor for the whole design
 * keeps every sum true: the largest length that all finished sizes are multiples of goes to the nearest mark
 * (1 in to 2.5 cm). When that would stretch the quilt by more than 6 %, each part goes to its own nearest mark and
 * sums are made of the parts again; where they then no longer meet, 2.5 cm stand for an inch throughout, and what is
 * cut is rounded up to the marks. Cloth is what it is: widths of fabric and pieces written out are left alone.
 */
export function restate(spec: QuiltSpec, ruler: Ruler): Restated {
  const common = commonFactor(finishedSizes(spec), ruler);
  if (common !== null) return restateBy(onWholeGrid(common, spec), spec, ruler);
  // Squares are printed alike: what lies on them cannot go to marks of its own.
  if (spec.foundation === null) {
    const parts = restateBy(null, spec, ruler);
    if (!layOutQuilt(parts.spec).diagnostics.some(({ severity }) => severity === "error")) return parts;
  }
  return restateBy(usualFactor(spec, ruler), spec, ruler);
}

/** How the sizes of a quilt move to the marks of another ruler, each change noted. */
function movesTo(factor: Rational | null, from: Ruler, ruler: Ruler) {
  const changes: SizeChange[] = [];
  const nearest = (value: Rational): Rational => {
    if (value.n === 0n) return value;
    const marks = floor(add(div(value, fromInteger(ruler.mark)), rational(1n, 2n)));
    return mul(rational(marks < 1n ? 1n : marks), fromInteger(ruler.mark));
  };
  const move = (value: FractionTicks, cells = 1): FractionTicks => {
    const old = rationalOfFraction(value);
    const count = fromInteger(cells);
    return fractionOfRational(factor === null ? mul(nearest(div(old, count)), count) : mul(old, factor));
  };
  const note = (
    path: string,
    what: Restatable,
    before: FractionTicks,
    after: FractionTicks,
  ): FractionTicks => {
    const [old, now] = [rationalOfFraction(before), rationalOfFraction(after)];
    if (toNumber(old) !== toNumber(now)) {
      changes.push({ path, what, before: sayLength(old, from), after: sayLength(now, ruler) });
    }
    return after;
  };
  const told = (path: string, what: Restatable, value: FractionTicks, cells = 1): FractionTicks =>
    note(path, what, value, move(value, cells));
  /** Ticks at the nearest mark, unnoted. */
  const onMark = (value: Ticks): Ticks => fractionOfRational(nearest(fromInteger(value))).n;
  const ticks = (path: string, what: Restatable, value: Ticks): Ticks =>
    value === 0 ? 0 : note(path, what, { n: value, d: 1 }, { n: onMark(value), d: 1 }).n;
  return { changes, move, note, told, onMark, ticks };
}

type Moves = ReturnType<typeof movesTo>;

/** Binding, backing, wadding and the distance of quilting lines. */
function restateFinish(
  { binding, backing, wadding, quilting }: QuiltSpec,
  { ticks, onMark }: Moves,
): Pick<QuiltSpec, "binding" | "backing" | "wadding" | "quilting"> {
  return {
    binding: binding && {
      ...binding,
      width: ticks("binding.width", { of: "binding-width" }, binding.width),
      extra: ticks("binding.extra", { of: "binding-extra" }, binding.extra),
    },
    backing: backing && {
      ...backing,
      overhang: ticks("backing.overhang", { of: "backing-overhang" }, backing.overhang),
    },
    wadding: wadding && {
      ...wadding,
      overhang: ticks("wadding.overhang", { of: "wadding-overhang" }, wadding.overhang),
    },
    quilting: {
      ...quilting,
      spacing: quilting.told
        ? ticks("quilting.spacing", { of: "quilting-spacing" }, quilting.spacing)
        : onMark(quilting.spacing),
    },
  };
}

/** By one factor, or when it is null every part to its own nearest mark. */
function restateBy(factor: Rational | null, spec: QuiltSpec, ruler: Ruler): Restated {
  const moves = movesTo(factor, spec.ruler, ruler);
  const { changes, move, note, told, onMark, ticks } = moves;
  const grid =
    spec.foundation === null ? null : told("foundation.grid", { of: "printed-squares" }, gridOf(spec));
  const folded = spec.foundation?.way === "folded" ? spec.foundation : null;
  // Folded lines are sewn on printed ones: the seam allowance is as many squares as before.
  const seam =
    folded === null || grid === null
      ? ticks("seam", { of: "seam" }, spec.seam)
      : note("seam", { of: "seam" }, { n: spec.seam, d: 1 }, { n: grid.n * folded.allowance, d: 1 }).n;
  const foundation = restateFoundation(spec, grid?.n ?? 0, seam, ticks);
  const blocks = spec.blocks.map((block) => restateBlock(block, move, told, note));
  const { sashing } = spec.setting;
  const fabrics = spec.fabrics.map((fabric) => onNewLines(fabric, spec.foundation, foundation));
  const moved = (of: Assumed, ticks: Ticks): Ticks => {
    if (of.is === "straightening-to-line") return straightened;
    return ticks === spec.seam ? seam : onMark(ticks);
  };
  const straightened = fabrics.find(({ name }) => name === foundation?.fabric.word)?.straighten ?? 0;
  const restated: QuiltSpec = {
    ...spec,
    ruler: rulerWithSeams(ruler, seam),
    defaultUnit: ruler.unit,
    seam,
    oversize: ticks("oversize", { of: "oversize" }, spec.oversize),
    straightenSets: spec.straightenSets.told
      ? {
          off: ticks("straighten-sets", { of: "straighten-sets" }, spec.straightenSets.off),
          told: true,
        }
      : { off: SQUARED_END[familyOf(ruler.unit)], told: false },
    blocks,
    setting: {
      ...spec.setting,
      sashing:
        sashing === null
          ? null
          : { ...sashing, width: told(`${sashing.path}.width`, { of: "sashing" }, sashing.width) },
    },
    borders: spec.borders.map((border) => restateBorder(border, told, ticks)),
    ...restateFinish(spec, moves),
    foundation,
    fabrics,
    assumptions: [
      ...spec.assumptions
        .filter(({ of }) => of.is !== "ruler-marks" && of.is !== "bare-numbers")
        .map((one) => onRuler(one, moved)),
      { fabric: "", of: { is: "restated", mark: ruler.mark } },
    ],
  };
  return { spec: restated, changes, factor: factor === null ? null : fractionOfRational(factor) };
}

function gridOf({ foundation }: QuiltSpec): FractionTicks {
  return { n: foundation?.grid ?? 0, d: 1 };
}

/** Foundation printed for the other ruler: its squares go with the finished sizes. */
function restateFoundation(
  { foundation }: QuiltSpec,
  grid: Ticks,
  newSeam: Ticks,
  ticks: (path: string, what: Restatable, value: Ticks) => Ticks,
): QuiltSpec["foundation"] {
  if (foundation === null) return null;
  const { way, allowance } = foundation;
  return {
    ...foundation,
    grid,
    allowance: way === "folded" ? allowance : Math.max(allowance, Math.ceil(newSeam / grid)),
    ease: ticks("foundation.ease", { of: "foundation-ease" }, foundation.ease),
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

/** An assumption for another ruler, the lengths of the design moved as they are. */
function onRuler(assumption: Assumption, moved: (of: Assumed, ticks: Ticks) => Ticks): Assumption {
  const { of } = assumption;
  return "moves" in of ? { ...assumption, of: { ...of, length: moved(of, of.length) } } : assumption;
}

type Move = (value: FractionTicks, cells?: number) => FractionTicks;
type Note = (path: string, what: Restatable, before: FractionTicks, after: FractionTicks) => FractionTicks;
type Told = (path: string, what: Restatable, value: FractionTicks, cells?: number) => FractionTicks;

/**
 * Strips that add up to a cell or several are moved first, and the block is what they add up to then.
 * @returns the block's new size; null where no strips say how large a cell is
 */
function cellByStrips(
  cells: readonly CellSpec[],
  size: FractionTicks,
  count: number,
  move: Move,
): FractionTicks | null {
  const cell = div(rationalOfFraction(size), fromInteger(count));
  for (const { strips } of cells) {
    const sum = (strips ?? []).map(rationalOfFraction).reduce(add, ZERO);
    const held = div(sum, cell);
    if (strips === null || held.d !== 1n || held.n < 1n || held.n > BigInt(count)) continue;
    const moved = strips.map((each) => rationalOfFraction(move(each))).reduce(add, ZERO);
    return fractionOfRational(mul(div(moved, rational(held.n)), fromInteger(count)));
  }
  return null;
}

function restateBlock(block: BlockSpec, move: Move, told: Told, note: Note): BlockSpec {
  const columns = block.grid[0]?.cells.length ?? 1;
  const rows = block.grid.length;
  const size = (axis: "across" | "down", count: number): FractionTicks | null => {
    const value = block[axis];
    const strips = value === null ? null : cellByStrips(block.cells, value, count, move);
    // With uneven columns the size is their sum, whatever each was moved to.
    const uneven =
      axis === "across" ? block.columns : (block.lines ?? (columns === rows ? block.columns : null));
    if (value === null) return null;
    if (uneven !== null)
      return fractionOfRational(uneven.map((each) => rationalOfFraction(move(each))).reduce(add));
    if (strips !== null && value !== null)
      return note(`${block.path}.size`, { of: "block", block: block.name, axis }, value, strips);
    return told(`${block.path}.size`, { of: "block", block: block.name, axis }, value, count);
  };
  return {
    ...block,
    across: size("across", columns),
    down: size("down", rows),
    columns:
      block.columns?.map((each, i) =>
        told(`${block.path}.columns[${i}]`, { of: "column", block: block.name }, each),
      ) ?? null,
    lines:
      block.lines?.map((each, i) =>
        told(`${block.path}.lines[${i}]`, { of: "line", block: block.name }, each),
      ) ?? null,
    cells: block.cells.map((cell) => restateCell(cell, told)),
  };
}

function restateCell(cell: CellSpec, told: Told): CellSpec {
  const one = (field: "corner" | "centre"): FractionTicks | null => {
    const value = cell[field];
    return value === null ? null : told(`${cell.path}.${field}`, { of: field, unit: cell.unit }, value);
  };
  // Corners counted in squares go with the unit.
  const drawn = cell.drawnOn === null ? cell.patches : null;
  return {
    ...cell,
    corner: one("corner"),
    centre: one("centre"),
    strips:
      cell.strips?.map((each, i) =>
        told(`${cell.path}.strips[${i}]`, { of: "strip", unit: cell.unit }, each),
      ) ?? null,
    patches:
      drawn?.map((patch) => ({
        ...patch,
        corners: patch.corners.map(({ x, y }) => ({
          x: told(`${cell.path}.patches`, { of: "patch", role: patch.role }, x),
          y: told(`${cell.path}.patches`, { of: "patch", role: patch.role }, y),
        })),
      })) ?? cell.patches,
  };
}

function restateBorder(
  border: BorderSpec,
  told: Told,
  ticks: (path: string, what: Restatable, value: Ticks) => Ticks,
): BorderSpec {
  if (border.fit) {
    const long = ticks(`${border.path}.over-long`, { of: "over-long", border: border.name }, border.extra);
    return { ...border, extra: long };
  }
  const same = border.side.n * border.end.d === border.end.n * border.side.d;
  const side = told(`${border.path}.width`, { of: "border", border: border.name }, border.side);
  return {
    ...border,
    side,
    end: same ? side : told(`${border.path}.width`, { of: "border-ends", border: border.name }, border.end),
    extra: ticks(`${border.path}.over-long`, { of: "over-long", border: border.name }, border.extra),
  };
}
