import { roundUpToMark } from "../../length/marks.ts";
import {
  add,
  div,
  equal,
  fromInteger,
  mul,
  ONE,
  type Rational,
  sub,
  toNumber,
  toTicksExact,
} from "../../length/rational.ts";
import type { Ticks } from "../../length/types.ts";
import type { QuiltSpec } from "../../spec/quilt-types.ts";
import type { SewnStop } from "../types.ts";
import { toRoots } from "../units/outlines/outlines.ts";
import { rootsToNumber } from "../units/outlines/roots.ts";
import type { UnitDesign, UnitKind } from "../units/types.ts";

/*
 * A block divided into cells that lie off the ruler's marks is sewn a little larger and trimmed once it is whole: all
 * its units are made as if every cell reached to the mark above, so that they still meet edge to edge whatever cells
 * they cover. Trimming unit by unit would ask for sizes that no ruler has.
 */

/** How much larger a cell is sewn than it finishes, as a factor; 1 where it lies on the marks with its seams. */
export function sewnFactor(cell: Rational, spec: Pick<QuiltSpec, "seam" | "ruler">): Rational {
  const seams = fromInteger(2 * spec.seam);
  const raw = toTicksExact(add(cell, seams));
  if (raw !== null && raw % spec.ruler.mark === 0) return ONE;
  return div(sub(fromInteger(roundUpToMark(add(cell, seams), spec.ruler.mark)), seams), cell);
}

/**
 * A unit's design as it is sewn in such a block, every length of it with the cells it covers; null where its kind has
 * no such size, or another shape at it.
 */
export function designAsSewn(
  kind: UnitKind,
  design: UnitDesign,
  factor: { across: Rational; along: Rational },
): UnitDesign | null {
  const { across, along } = factor;
  if (equal(across, ONE) && equal(along, ONE)) return design;
  const wide = <T extends Rational | null>(value: T) => (value === null ? null : mul(value, across));
  const larger: UnitDesign = {
    ...design,
    across: mul(design.across, across),
    along: mul(design.along, along),
    corner: wide(design.corner),
    centre: wide(design.centre),
    strips: design.strips.map((strip) => mul(strip, along)),
    patches: design.patches.map((patch) => ({
      ...patch,
      corners: patch.corners.map(({ x, y }) => ({ x: mul(x, across), y: mul(y, along) })),
    })),
  };
  return kind.check(larger) === null && keepsShape(kind, design, larger) ? larger : null;
}

/** Whether every patch of the larger unit is that of the other, stretched: a corner of 45 degrees need not be. */
function keepsShape(kind: UnitKind, design: UnitDesign, larger: UnitDesign): boolean {
  const [wide, high] = [
    toNumber(larger.across) / toNumber(design.across),
    toNumber(larger.along) / toNumber(design.along),
  ];
  const spots = (one: UnitDesign): { x: number; y: number }[] =>
    kind
      .patches(one)
      .flatMap(({ outline }) =>
        toRoots(outline).map(({ x, y }) => ({ x: rootsToNumber(x), y: rootsToNumber(y) })),
      );
  const stretched = spots(design).map(({ x, y }) => ({ x: x * wide, y: y * high }));
  return spots(larger).every(({ x, y }, i) => {
    const other = stretched[i];
    return other !== undefined && Math.abs(x - other.x) < 1 && Math.abs(y - other.y) < 1;
  });
}

/** Where a place in a block comes to lie when it is sewn larger, in ticks; the place itself where it is not. */
export function sewnAt(stops: readonly SewnStop[] | undefined, place: number): number {
  let [at, to] = [0, 0];
  for (const stop of stops ?? []) {
    const [nextAt, nextTo] = [stop.at.n / stop.at.d, stop.to.n / stop.to.d];
    if (place <= nextAt || stop === stops?.at(-1)) return to + ((place - at) * (nextTo - to)) / (nextAt - at);
    [at, to] = [nextAt, nextTo];
  }
  return place;
}

const gcd = (a: number, b: number): number => (b === 0 ? a : gcd(b, a % b));

/**
 * The marks to which a unit is cut that covers several cells. Where two seam allowances lie off the ruler's marks, one
 * cell may come out on them and two cannot: then the unit is cut and trimmed between them, or it would not meet what
 * is sewn of single cells. Derived geometry.
 */
export function markFor(design: UnitDesign, { seam, mark }: { seam: Rational; mark: Ticks }): Ticks {
  const seams = toTicksExact(mul(seam, fromInteger(2)));
  if (seams === null || seams % mark === 0) return mark;
  const offMarks = [design.across, design.along].some((side) => {
    const [raw, own] = [toTicksExact(add(side, fromInteger(seams))), toTicksExact(side)];
    return raw !== null && own !== null && raw % mark !== 0 && raw % gcd(mark, seams) === 0;
  });
  return offMarks ? gcd(mark, seams) : mark;
}
