import { familyOf } from "../../length/measures.ts";
import {
  add,
  compare,
  div,
  floor,
  fromInteger,
  mul,
  ONE,
  type Rational,
  rational,
  sub,
  toNumber,
} from "../../length/rational.ts";
import type { Ruler } from "../../length/types.ts";
import type { FractionTicks, QuiltSpec } from "../../spec/quilt-types.ts";
import { rationalOfFraction } from "../exact.ts";

/** A factor further from 1 than this would make another quilt of it. */
const MOST_STRETCH = 0.06;

/** Every finished length a cut depends on; a block's size counts by its cells. */
export function finishedSizes(spec: QuiltSpec): Rational[] {
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
  // Printed squares go with what is pieced on them, or its seams would miss their lines.
  const { foundation } = spec;
  if (foundation?.way === "pieced") put({ n: foundation.grid, d: foundation.halves ? 2 : 1 });
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
export function commonFactor(sizes: readonly Rational[], ruler: Ruler): Rational | null {
  const first = sizes[0];
  if (first === undefined) return null;
  const measure = sizes.reduce((a, b) => rational(gcd(a.n * b.d, b.n * a.d), a.d * b.d), first);
  const marks = floor(add(div(measure, fromInteger(ruler.mark)), rational(1n, 2n)));
  if (marks < 1n) return null;
  const factor = div(mul(rational(marks), fromInteger(ruler.mark)), measure);
  return Math.abs(toNumber(factor) - 1) <= MOST_STRETCH ? factor : null;
}

/** 2.5 cm for an inch: common practice, no source. */
const CM_FOR_INCH = rational(250n, 254n);

/**
 * The factor makers use where no better one serves: 2.5 cm for an inch and the other way round, 1 within one system.
 * Every sum stays true by it; some sizes lie between the marks, and what is cut is then rounded up to them.
 */
export function usualFactor(spec: QuiltSpec, ruler: Ruler): Rational {
  const [from, to] = [familyOf(spec.ruler.unit), familyOf(ruler.unit)];
  if (from === to) return ONE;
  return onWholeGrid(to === "metric" ? CM_FOR_INCH : div(ONE, CM_FOR_INCH), spec);
}

/** The factor nearest to one by which the printed squares of a foundation (and halves of them) stay whole ticks. */
export function onWholeGrid(factor: Rational, { foundation }: QuiltSpec): Rational {
  if (foundation === null) return factor;
  const least = fromInteger(foundation.halves ? 2 : 1);
  const times = div(mul(fromInteger(foundation.grid), factor), least);
  const below = floor(times);
  const up = compare(sub(times, rational(below)), rational(1n, 2n)) >= 0;
  return div(mul(rational(up ? below + 1n : below), least), fromInteger(foundation.grid));
}
