import { roundUpToMark } from "../length/marks.ts";
import {
  add,
  div,
  equal,
  fromInteger,
  mul,
  ONE,
  type Rational,
  sub,
  toTicksExact,
} from "../length/rational.ts";
import type { QuiltSpec } from "../spec/quilt-types.ts";
import type { UnitDesign, UnitKind } from "./units/types.ts";

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
 * A unit's design as it is sewn in such a block, every length of it with the cells it covers. One that has no such
 * size of its kind stays as it is.
 */
export function designAsSewn(
  kind: UnitKind,
  design: UnitDesign,
  factor: { across: Rational; along: Rational },
): UnitDesign {
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
  return kind.check(larger) === null ? larger : design;
}
