import { hullOf, nestRun } from "../quilt/units/outlines/nest.ts";
import { matchShapes, type ShapeMatch, type ShapeTurns } from "../quilt/units/outlines/shapes.ts";
import type { PatchShape } from "../quilt/units/types.ts";
import type { Print } from "../spec/types.ts";
import type { CutShape } from "./types.ts";

/*
 * When are two outlines one template? On plain cloth when one is the other turned by quarters, so that the
 * grain still runs along or across, or turned over. A print with an up leaves fewer turns: none when it reads
 * one way, half-turns when it reads two ways; turned over, its up stays where it is.
 */

const TURNS: Readonly<Record<Print["kind"], ShapeTurns>> = {
  none: "free",
  "two-way": "half",
  "one-way": "none",
};

/** How the second is cut with the template of the first, on cloth with that print; null when it is not. */
export function matchOnCloth(shape: PatchShape, other: PatchShape, print: Print): ShapeMatch | null {
  return matchShapes(shape, other, TURNS[print.kind], print.axis === "along");
}

/**
 * The place of a shape in a list of different ones; one not yet known is added at the end. What is cut with the template
 * turned face down is one with what is cut as drawn, unless it stands closer in strips: a run holds shapes of one hand only.
 */
export function shapeNumber(shapes: PatchShape[], shape: PatchShape, print: Print): number {
  const known = shapes.findIndex((each) => {
    const match = matchOnCloth(each, shape, print);
    return match !== null && !(match.mirrored && standsCloser(shape, print.kind !== "one-way"));
  });
  return known >= 0 ? known : shapes.push(shape) - 1;
}

/** Whether shapes like this one stand closer in a strip than their rectangles do, some of them turned half round or none. */
function standsCloser(shape: PatchShape, halfTurns: boolean): boolean {
  if (hullOf(shape.cut).length < shape.cut.length) return false;
  return [shape.cut, shape.cut.map(({ x, y }) => ({ x: y, y: x }))].some((line) => {
    const { first, advances } = nestRun(line, halfTurns);
    return advances.some((step) => step < first);
  });
}

/** Both counts under the first one's outline, with the marks both have. The shapes must match. */
export function addShapes(shape: CutShape, other: CutShape, print: Print): CutShape {
  const match = matchOnCloth(shape, other, print);
  if (match === null) throw new Error("two shapes under one letter do not match");
  const [asDrawn, reversed] = match.mirrored
    ? [other.reversed, other.asDrawn]
    : [other.asDrawn, other.reversed];
  return {
    ...shape,
    marks: match.marks,
    asDrawn: shape.asDrawn + asDrawn,
    reversed: shape.reversed + reversed,
  };
}

/** Whether pieces with a template of their own are cut from their bag's template turned half round. */
export function isHalfTurned(
  bag: PatchShape | undefined,
  own: PatchShape | undefined,
  print: Print,
): boolean {
  if (bag === undefined || own === undefined || print.kind !== "two-way") return false;
  const upright = print.axis === "along";
  const match = matchShapes(bag, own, "half", upright);
  const straight = matchShapes(bag, own, "none", upright);
  return match !== null && straight?.mirrored !== match.mirrored;
}
