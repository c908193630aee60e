import { turnedShape } from "../units/outlines/shapes.ts";
import type { Diagonal, PatchShape, Quarter } from "../units/types.ts";
import { asQuarter } from "./whole-turns.ts";

/*
 * The one place where cloth is turned (`turnIn` turns each of its corners). A patch is seen in three frames:
 *
 *     in its unit, as drawn  --  unit, block and placing turn it  -->  in the quilt
 *     in its unit, as drawn  --  turned so that its print's up is at the top  -->  as it is looked at when cut
 *     as it is looked at     --  a quarter more where the print's up runs across  -->  on the bolt
 *
 * Whatever belongs to the patch goes along: its sides, its diagonal, its outline.
 */

/** Degrees clockwise as whole quarters from 0 to 3. */
const quartersOf = (degrees: number): Quarter => asQuarter(degrees / 90);

/** A piece of cloth as it lies: its sides, the diagonal it is cut on, and what it is cut to. */
export interface Laid {
  across: number;
  along: number;
  diagonal: Diagonal;
  template: PatchShape | null;
}

/** The same cloth turned clockwise. A quarter takes `/` to `\`. */
export function turnLaid<T extends Laid>(laid: T, quarters: Quarter): T {
  const onItsSide = quarters % 2 === 1;
  const { across, along, diagonal, template } = laid;
  const other = diagonal === "rising" ? "falling" : "rising";
  return {
    ...laid,
    across: onItsSide ? along : across,
    along: onItsSide ? across : along,
    diagonal: diagonal === "any" || !onItsSide ? diagonal : other,
    template: template === null ? null : turnedShape(template, quarters),
  };
}

/**
 * How a patch lies when its print is looked at upright.
 * @param laid as it lies in its unit
 * @param print quarters clockwise by which the print's up points away from the unit's top
 */
export function withUpAtTop<T extends Laid>(laid: T, print: Quarter): T {
  return turnLaid(laid, quartersOf(-90 * print));
}

/**
 * Quarters clockwise from a piece with its print's up at the top to how it is cut, y along the selvage: a print whose up
 * runs across the fabric has it to the right; plain cloth lies with its longer side along the selvage.
 */
export function quartersToBolt(
  { across, along }: { across: number; along: number },
  print: { kind: string; axis: "along" | "across" },
): 0 | 1 {
  const onItsSide = print.kind === "none" ? across > along : print.axis === "across";
  return onItsSide ? 1 : 0;
}

/**
 * How it lies on the bolt, y along the selvage: a print whose up runs across the fabric has it to the right.
 * @param laid with its print's up at the top
 */
export function onBolt<T extends Laid>(laid: T, axis: "along" | "across"): T {
  return axis === "across" ? turnLaid(laid, 1) : laid;
}
