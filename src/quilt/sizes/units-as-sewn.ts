import {
  add,
  compare,
  div,
  equal,
  fromInteger,
  mul,
  ONE,
  type Rational,
  ZERO,
} from "../../length/rational.ts";
import type { QuiltSpec } from "../../spec/quilt-types.ts";
import type { LaidUnit } from "../laid-types.ts";
import { designAsSewn, markFor, sewnFactor } from "./as-sewn.ts";

/** By column, or by line: how much larger it is sewn. */
export interface Factors {
  across: readonly Rational[];
  down: readonly Rational[];
}

/** Where columns end as they finish and as they are sewn. */
export function stops(
  sizes: readonly Rational[],
  factors: readonly Rational[],
): { at: Rational; to: Rational }[] {
  let [at, to] = [ZERO, ZERO];
  return sizes.map((size, i) => {
    at = add(at, size);
    to = add(to, mul(size, factors[i] ?? ONE));
    return { at, to };
  });
}

/** How much larger what covers some columns is sewn than it finishes. */
function factorOver(
  sizes: readonly Rational[],
  factors: readonly Rational[],
  from: number,
  count: number,
): Rational {
  const own = stops(sizes.slice(from, from + count), factors.slice(from, from + count)).at(-1);
  return own === undefined ? ONE : div(own.to, own.at);
}

function betweenMarks(design: LaidUnit["design"], { seam, ruler: { mark } }: QuiltSpec): boolean {
  return markFor(design, { seam: fromInteger(seam), mark }) !== mark;
}

/**
 * The units of a block as large as they are sewn: larger as its columns and its lines ask; alike both ways where a
 * unit would not keep its shape otherwise.
 */
export function asSewn(
  placed: readonly LaidUnit[],
  across: readonly Rational[],
  down: readonly Rational[],
  spec: QuiltSpec,
): { units: LaidUnit[]; factors: Factors } {
  const own = {
    across: across.map((size) => sewnFactor(size, spec)),
    down: down.map((size) => sewnFactor(size, spec)),
  };
  const most = [...own.across, ...own.down].reduce((a, b) => (compare(a, b) >= 0 ? a : b), ONE);
  const alike = { across: across.map(() => most), down: down.map(() => most) };
  for (const factors of [own, alike]) {
    const units = placed.map((unit) => {
      const factor = {
        across: factorOver(across, factors.across, unit.column, unit.columns),
        down: factorOver(down, factors.down, unit.row, unit.rows),
      };
      return sewnLarger(unit, factor, placed.length > 1 ? spec : null);
    });
    const known = units.filter((unit) => unit !== null);
    if (known.length === placed.length) return { units: known, factors };
  }
  return asDesigned(placed, across, down);
}

/** The units of a block that is sewn as large as it is designed: on printed lines no ruler decides. */
export function asDesigned(
  placed: readonly LaidUnit[],
  across: readonly Rational[],
  down: readonly Rational[],
): { units: LaidUnit[]; factors: Factors } {
  return { units: [...placed], factors: { across: across.map(() => ONE), down: down.map(() => ONE) } };
}

function sewnLarger(
  unit: LaidUnit,
  { across, down }: { across: Rational; down: Rational },
  /** Null where it has no neighbours in its block. */
  beside: QuiltSpec | null,
): LaidUnit | null {
  const own = unit.turn % 180 === 0 ? { across, along: down } : { across: down, along: across };
  const larger = designAsSewn(unit.kind, unit.design, own);
  if (larger === null) return null;
  const asItIs = equal(across, ONE) && equal(down, ONE);
  // Between the marks it must meet units of fewer cells that are not.
  const between = beside !== null && betweenMarks(larger, beside);
  return asItIs && !between ? unit : { ...unit, asSewn: larger };
}
