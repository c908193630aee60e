import * as q from "../../../length/rational.ts";
import { turnIn } from "../../turning/turn-in.ts";
import type { PatchShape, Quarter, ShapePoint } from "../types.ts";
import { bounds, type RootOutline, type RootPoint } from "./outlines.ts";
import type { RootSum } from "./roots.ts";
import * as r from "./roots.ts";

/*
 * Shapes that are cut to a line. They are compared as cut cloth is: turned by quarters on the straight
 * grain, and turned over as a paper template can be.
 */

/** A shape before it is rounded to ticks; all its lines in one frame, wherever its origin is. */
export interface ShapeDraft {
  cut: RootOutline;
  seam: RootOutline;
  marks: readonly RootPoint[];
}

/**
 * A shape whose edges all lie equally far from its middle, cut from a strip as wide as the ruler allows: the seam line
 * stays the patch's own, the cut line is the same shape enlarged about its middle.
 * @param seam the finished patch
 * @param factor how much larger the cut shape is than the finished one
 */
export function enlargedShape(seam: RootOutline, factor: RootSum): ShapeDraft {
  const share = r.whole(q.rational(1n, BigInt(seam.length)));
  const middle = {
    x: r.times(r.plus(...seam.map(({ x }) => x)), share),
    y: r.times(r.plus(...seam.map(({ y }) => y)), share),
  };
  const cut = seam.map(({ x, y }) => ({
    x: r.plus(middle.x, r.times(r.minus(x, middle.x), factor)),
    y: r.plus(middle.y, r.times(r.minus(y, middle.y), factor)),
  }));
  return { cut, seam, marks: [] };
}

/** Puts the origin in the corner of the box round the cut line and rounds to the nearest tick. */
export function finishShape({ cut, seam, marks }: ShapeDraft): PatchShape {
  const box = bounds(cut);
  const ticks = (points: readonly RootPoint[]): ShapePoint[] =>
    points.map(({ x, y }) => ({ x: r.nearest(r.minus(x, box.x)), y: r.nearest(r.minus(y, box.y)) }));
  return { cut: ticks(cut), seam: ticks(seam), marks: ticks(marks) };
}

/** Width and height of the box round the cut line. */
function boxOfShape({ cut }: PatchShape): { across: number; along: number } {
  return { across: Math.max(...cut.map(({ x }) => x)), along: Math.max(...cut.map(({ y }) => y)) };
}

function mapped(shape: PatchShape, move: (point: ShapePoint) => ShapePoint, turnsOver: boolean): PatchShape {
  const line = (points: readonly ShapePoint[]): ShapePoint[] => {
    const moved = points.map(move);
    return turnsOver ? moved.reverse() : moved;
  };
  return { cut: line(shape.cut), seam: line(shape.seam), marks: shape.marks.map(move) };
}

/** The shape turned clockwise by quarters, its corner back at the origin. */
export function turnedShape(shape: PatchShape, quarters: Quarter): PatchShape {
  const { across, along } = boxOfShape(shape);
  return mapped(shape, (point) => turnIn(point, 90 * quarters, across, along, (a, b) => a - b), false);
}

/** The shape as its template shows it lying face down, turned over from left to right. */
export function mirroredShape(shape: PatchShape): PatchShape {
  const { across } = boxOfShape(shape);
  return mapped(shape, ({ x, y }) => ({ x: across - x, y }), true);
}

/** How a shape may be turned: `free` by quarters, `half` by half-turns, `none` not at all. */
export type ShapeTurns = "free" | "half" | "none";

/** How one shape becomes another. */
export interface ShapeMatch {
  mirrored: boolean;
  /** The other's marks that both have. */
  marks: readonly ShapePoint[];
}

/** Ticks by which two roundings of the same point may differ. */
const NEAR = 2;

function near(a: ShapePoint, b: ShapePoint): boolean {
  return Math.abs(a.x - b.x) <= NEAR && Math.abs(a.y - b.y) <= NEAR;
}

/** Whether two closed lines have the same corners in the same order, wherever they start. */
function sameLine(a: readonly ShapePoint[], b: readonly ShapePoint[]): boolean {
  if (a.length !== b.length) return false;
  return a.some((_, start) => b.every((point, i) => near(point, a[(start + i) % a.length] ?? point)));
}

const QUARTERS: Readonly<Record<ShapeTurns, readonly Quarter[]>> = {
  free: [0, 1, 2, 3],
  half: [0, 2],
  none: [0],
};

/**
 * How `other` is made from `shape`'s template: as it is, or turned over. Null when it is another shape.
 * @param upright true when turning over must leave the shape's top where it is, false when its right side
 */
export function matchShapes(
  shape: PatchShape,
  other: PatchShape,
  turns: ShapeTurns,
  upright = true,
): ShapeMatch | null {
  const over = (given: PatchShape): PatchShape => {
    const turned = mirroredShape(given);
    return upright ? turned : turnedShape(turned, 2);
  };
  for (const mirrored of [false, true])
    for (const quarters of QUARTERS[turns]) {
      const laid = turnedShape(mirrored ? over(other) : other, quarters);
      if (!sameLine(shape.cut, laid.cut) || !sameLine(shape.seam, laid.seam)) continue;
      return { mirrored, marks: shape.marks.filter((mark) => laid.marks.some((each) => near(mark, each))) };
    }
  return null;
}
