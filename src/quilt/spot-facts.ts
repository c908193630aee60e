import { fromInteger, toNumber } from "../length/rational.ts";
import type { QuiltSpec } from "../spec/quilt-types.ts";
import type { LaidUnit } from "./laid-types.ts";
import { asEighth } from "./turning/whole-turns.ts";
import { toRoots, withSeams } from "./units/outlines/outlines.ts";
import { rootsToNumber } from "./units/outlines/roots.ts";
import type { Eighth } from "./units/types.ts";
import type { SpotFacts } from "./work-types.ts";

interface Spot {
  x: number;
  y: number;
}

/** Twice the area of a polygon by the shoelace sum. */
function area(outline: readonly Spot[]): number {
  let twice = 0;
  outline.forEach((a, i) => {
    const b = outline[(i + 1) % outline.length] ?? a;
    twice += a.x * b.y - b.x * a.y;
  });
  return Math.abs(twice) / 2;
}

/** Eighths clockwise from up of a direction, slanting ones by their quarter of the compass. */
function compass(x: number, y: number): Eighth {
  const [across, down] = [Math.abs(x) < ON_AXIS ? 0 : Math.sign(x), Math.abs(y) < ON_AXIS ? 0 : Math.sign(y)];
  const around = ["0,-1", "1,-1", "1,0", "1,1", "0,1", "-1,1", "-1,0", "-1,-1"];
  return asEighth(Math.max(0, around.indexOf(`${across},${down}`)));
}

/** Ticks by which a direction may be off an axis and still count as on it. */
const ON_AXIS = 1;

/** From the middle of the long side of a right-angled triangle to its right angle; null for other shapes. */
function pointingOf(outline: readonly Spot[]): Eighth | null {
  if (outline.length !== 3) return null;
  for (const [i, corner] of outline.entries()) {
    const [a, b] = [outline[(i + 1) % 3] ?? corner, outline[(i + 2) % 3] ?? corner];
    const dot = (a.x - corner.x) * (b.x - corner.x) + (a.y - corner.y) * (b.y - corner.y);
    const lengths = Math.hypot(a.x - corner.x, a.y - corner.y) * Math.hypot(b.x - corner.x, b.y - corner.y);
    if (Math.abs(dot) > lengths * 1e-6) continue;
    return compass(corner.x - (a.x + b.x) / 2, corner.y - (a.y + b.y) / 2);
  }
  return null;
}

/** The part of a polygon on one side of an upright or level line. */
function clip(outline: readonly Spot[], axis: "x" | "y", limit: number, keepBelow: boolean): Spot[] {
  const inside = (p: Spot): boolean => (keepBelow ? p[axis] <= limit : p[axis] >= limit);
  return outline.flatMap((a, i) => {
    const b = outline[(i + 1) % outline.length] ?? a;
    const kept = inside(a) ? [a] : [];
    if (inside(a) === inside(b)) return kept;
    const t = (limit - a[axis]) / (b[axis] - a[axis]);
    return [...kept, { x: a.x + t * (b.x - a.x), y: a.y + t * (b.y - a.y) }];
  });
}

/**
 * For every patch of a unit, its finished area and the area it fills in the sewn unit with its seam
 * allowances on: the patch with a seam added along every edge, within the raw unit. The difference lies
 * hidden in seams. Areas only, for the account of waste: to the nearest square tick.
 */
export function spotFacts(unit: LaidUnit, spec: QuiltSpec): SpotFacts[] {
  const seam = fromInteger(spec.seam);
  const [across, along] = [toNumber(unit.design.across), toNumber(unit.design.along)];
  return unit.kind.patches(unit.design).map((patch): SpotFacts => {
    const numbers = (outline: ReturnType<typeof toRoots>): Spot[] =>
      outline.map(({ x, y }) => ({ x: rootsToNumber(x), y: rootsToNumber(y) }));
    const outline = toRoots(patch.outline);
    let raw = numbers(withSeams(outline, seam));
    raw = clip(raw, "x", across + spec.seam, true);
    raw = clip(raw, "x", -spec.seam, false);
    raw = clip(raw, "y", along + spec.seam, true);
    raw = clip(raw, "y", -spec.seam, false);
    return {
      spot: patch.spot,
      role: patch.role,
      shape: patch.shape,
      facing: patch.facing,
      pointing: pointingOf(numbers(outline)),
      finished: Math.round(area(numbers(outline))),
      raw: Math.round(area(raw)),
    };
  });
}
