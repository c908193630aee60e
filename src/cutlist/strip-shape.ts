import type { Ruler, Ticks } from "../length/types.ts";
import type { PatchShape, ShapePoint } from "../quilt/units/types.ts";
import type { ShapeSpec } from "../spec/types.ts";
import type { SlantSetting } from "./types.ts";

/*
 * Shapes that are cut aslant from a strip: two edges lie on the strip's, the slanting ones are made by one angled setting.
 *
 *        left        top         right        Derived geometry. An edge that leans by c for one of height moves by
 *           \  +------------+  /              seam x root(1 + c^2) along the strip when it moves out by a seam, and
 *            \/              \/               by c for every one that the strip is higher.
 *            +----------------+
 *                  base
 *
 * The strip and what is measured are rounded up to the ruler's marks while the angle stays, so no edge has less than its
 * allowance. Sizes are doubles: a true size is a root or a tangent and lies on no mark, and one that does is no further
 * from it here than `NEAR`.
 */

/** Ticks by which a double may lie above a mark that it stands for. */
const NEAR = 1e-6;

/** What is cut from the strip: its outline, and how the cuts are set. */
export interface StripShape extends PatchShape {
  height: Ticks;
  setting: SlantSetting;
}

/** A shape in the strip, y upwards from its base, whose left end is at 0. Edges lean inwards by `left` and `right`. */
interface Slanted {
  base: number;
  height: number;
  left: number;
  right: number;
}

type Point = readonly [x: number, y: number];

/** Corners from the top left, clockwise as seen; the top of a triangle is one corner. */
function cornersOf({ base, height, left, right }: Slanted): Point[] {
  const [from, to] = [left * height, base - right * height];
  const top: Point[] =
    to - from < 1
      ? [[from, height]]
      : [
          [from, height],
          [to, height],
        ];
  return [...top, [base, 0], [0, 0]];
}

/** The finished shape. */
function finishedOf({ kind, side, height, angle }: ShapeSpec): Slanted {
  const radians = ((angle ?? 60) * Math.PI) / 180;
  const [lean, rise] = [1 / Math.tan(radians), Math.sin(radians)];
  switch (kind) {
    case "triangle": {
      const high = height ?? side / 2 / lean;
      return { base: side, height: high, left: side / 2 / high, right: side / 2 / high };
    }
    case "right triangle":
      return { base: side, height: height ?? side, left: 0, right: side / (height ?? side) };
    case "diamond":
      return { base: side, height: side * rise, left: lean, right: -lean };
    case "parallelogram":
      return { base: side, height: height ?? side, left: lean, right: -lean };
    case "trapezoid":
      return { base: side, height: height ?? side, left: lean, right: lean };
    case "half hexagon":
      return { base: 2 * side, height: side * rise, left: lean, right: lean };
  }
}

/** The angle that a ruler has a line for, or null. */
function ruled({ left, right }: Slanted): SlantSetting["angle"] {
  const lean = left === 0 ? right : left;
  const degrees = (Math.atan2(1, lean) * 180) / Math.PI;
  return ([30, 45, 60] as const).find((known) => Math.abs(known - degrees) < 1e-9) ?? null;
}

/** How far the base reaches when every edge moves out by a seam. */
function baseWithSeams({ base, left, right }: Slanted, seam: number): number {
  return base + seam * (Math.hypot(1, left) + left + Math.hypot(1, right) + right);
}

/** What is cut of a shape, and where in it the corner of the seam line's base lies. */
interface Laid {
  cut: Slanted;
  seam: Point;
  setting: SlantSetting;
}

/** Diamonds and parallelograms: the ruler is moved on square to the cut, and the allowance is shared out on both sides. */
function laidParallel(shape: Slanted, seam: number, up: (size: number) => Ticks): Laid {
  const angle = ruled(shape);
  const slope = Math.hypot(1, shape.left);
  const step = up(shape.base / slope + 2 * seam);
  const cut = { ...shape, base: step * slope, height: up(shape.height + 2 * seam) };
  const rise = (cut.height - shape.height) / 2;
  const middle = (cut.base - shape.base) / 2 + shape.left * rise;
  return { cut, seam: [middle, rise], setting: { angle, by: angle === null ? "template" : "square", step } };
}

/** Two right triangles are a rectangle on the marks, cut from corner to corner. */
function laidInRectangle(shape: Slanted, seam: number, up: (size: number) => Ticks): Laid {
  const base = baseWithSeams(shape, seam);
  const [step, height] = [up(base), up(base / shape.right)];
  const cut = { base: step, height, left: 0, right: step / height };
  return { cut, seam: [seam, seam], setting: { angle: null, by: "rectangles", step } };
}

/** Triangles whose point is left on, cut from point to point. */
function laidWithPoint(shape: Slanted, seam: number, up: (size: number) => Ticks): Laid {
  const angle = ruled(shape);
  const base = baseWithSeams(shape, seam);
  const height = up(base / (shape.left + shape.right));
  if (angle === null) {
    // The marks of both edges are to lie on the ruler's: the angle gives way a little, outwards.
    const step = 2 * up(base / 2);
    const lean = step / 2 / height;
    const cut = { base: step, height, left: lean, right: lean };
    return { cut, seam: [(step - shape.base) / 2, seam], setting: { angle, by: "marks", step } };
  }
  // The cut triangle is the finished one enlarged about its middle: the allowance is even.
  const cut = { ...shape, base: height * (shape.left + shape.right), height };
  const inner = (of: Slanted) => (of.base * of.height) / (of.base + 2 * Math.hypot(of.base / 2, of.height));
  const setting = { angle, by: "points" as const, step: 0 };
  return { cut, seam: [(cut.base - shape.base) / 2, inner(cut) - inner(shape)], setting };
}

/** Shapes with a shorter side on top: each is measured by its longer one. */
function laidWithTop(shape: Slanted, seam: number, up: (size: number) => Ticks, mark: Ticks): Laid {
  const angle = ruled(shape);
  const height = up(shape.height + 2 * seam);
  let step = up(baseWithSeams(shape, seam));
  while (step - height * (shape.left + shape.right) < 1) step += mark;
  const cut = { ...shape, base: step, height };
  return {
    cut,
    seam: [(step - shape.base) / 2, seam],
    setting: { angle, by: angle === null ? "template" : "edge", step },
  };
}

function laid(spec: ShapeSpec, ruler: Ruler): Laid {
  const { kind, seam, tips } = spec;
  const { mark } = ruler;
  const up = (size: number): Ticks => Math.ceil((size - NEAR) / mark) * mark;
  const shape = finishedOf(spec);
  if (kind === "diamond" || kind === "parallelogram") return laidParallel(shape, seam, up);
  if (kind === "right triangle") return laidInRectangle(shape, seam, up);
  if (kind === "triangle" && (tips === "sharp" || seam === 0)) return laidWithPoint(shape, seam, up);
  return laidWithTop(shape, seam, up, mark);
}

/**
 * The shape as it is cut from a strip on the ruler's marks, its base at the strip's lower edge, seam allowance outside
 * every edge.
 * @returns outline and seam line in whole ticks, from the corner of the box round the outline
 */
export function stripShape(spec: ShapeSpec, ruler: Ruler): StripShape {
  const { cut, seam, setting } = laid(spec, ruler);
  const outline = cornersOf(cut);
  const inner = cornersOf(finishedOf(spec)).map(([x, y]): Point => [x + seam[0], y + seam[1]]);
  const first = Math.min(...outline.map(([x]) => x));
  const across = Math.round(Math.max(...outline.map(([x]) => x)) - first);
  const mirrored = spec.lean === "left";
  const line = (points: readonly Point[]): ShapePoint[] => {
    const placed = points.map(([x, y]) => {
      const right = Math.round(x - first);
      return { x: mirrored ? across - right : right, y: Math.round(cut.height - y) };
    });
    return mirrored ? placed.reverse() : placed;
  };
  return { cut: line(outline), seam: line(inner), marks: [], height: cut.height, setting };
}
