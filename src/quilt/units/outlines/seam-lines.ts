import type { RootOutline } from "./outlines.ts";
import * as r from "./roots.ts";

/*
 * Where patches and groups of them run along one another. Plain numbers serve: they say which patch lies on which
 * side and how long a seam is for thread, never how anything is cut.
 */

export interface Spot {
  x: number;
  y: number;
}

/** A patch as it lies in the finished unit. */
export interface Shape {
  spot: string;
  corners: Spot[];
}

/** A stretch of a seam, in finished ticks. */
export interface Stretch {
  from: Spot;
  to: Spot;
}

/** Ticks within which a point counts as lying on a line. */
export const ON_LINE = 0.5;

export function plainShape(spot: string, outline: RootOutline): Shape {
  return { spot, corners: outline.map(({ x, y }) => ({ x: r.rootsToNumber(x), y: r.rootsToNumber(y) })) };
}

/** Distance of a point from the line through two others; its sign says on which side. */
export function beside(p: Spot, a: Spot, b: Spot): number {
  return ((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x)) / Math.hypot(b.x - a.x, b.y - a.y);
}

export function edgesOf(corners: readonly Spot[]): [Spot, Spot][] {
  return corners.map((a, i) => [a, corners[(i + 1) % corners.length] ?? a]);
}

/** Every stretch along which the outlines of two groups touch. */
export function sharedStretches(one: readonly Shape[], other: readonly Shape[]): Stretch[] {
  const found: Stretch[] = [];
  for (const [a, b] of one.flatMap(({ corners }) => edgesOf(corners))) {
    const run = Math.hypot(b.x - a.x, b.y - a.y);
    const unit = { x: (b.x - a.x) / run, y: (b.y - a.y) / run };
    const at = (p: Spot): number => (p.x - a.x) * unit.x + (p.y - a.y) * unit.y;
    const point = (along: number): Spot => ({ x: a.x + along * unit.x, y: a.y + along * unit.y });
    for (const [c, d] of other.flatMap(({ corners }) => edgesOf(corners))) {
      if (Math.abs(beside(c, a, b)) > ON_LINE || Math.abs(beside(d, a, b)) > ON_LINE) continue;
      const [begin, end] = [Math.max(0, Math.min(at(c), at(d))), Math.min(run, Math.max(at(c), at(d)))];
      if (end - begin > ON_LINE) found.push({ from: point(begin), to: point(end) });
    }
  }
  return found;
}

export function lengthOf(stretches: readonly Stretch[]): number {
  return stretches.reduce((sum, { from, to }) => sum + Math.hypot(to.x - from.x, to.y - from.y), 0);
}

const meet = (a: Spot, b: Spot): boolean => Math.hypot(a.x - b.x, a.y - b.y) <= 2 * ON_LINE;

function slant({ from, to }: Stretch): Spot {
  const run = Math.hypot(to.x - from.x, to.y - from.y);
  return { x: (to.x - from.x) / run, y: (to.y - from.y) / run };
}

/** True where two stretches do not lie in one direction. */
function bends(a: Stretch, b: Stretch): boolean {
  const [one, other] = [slant(a), slant(b)];
  return Math.abs(one.x * other.y - one.y * other.x) > 1e-6;
}

/** The points where a seam along these stretches turns a corner. */
export function turnsOf(stretches: readonly Stretch[]): Spot[] {
  const turns: Spot[] = [];
  for (const [i, a] of stretches.entries())
    for (const b of stretches.slice(i + 1)) {
      if (!bends(a, b)) continue;
      const found = [a.from, a.to].find((end) => meet(end, b.from) || meet(end, b.to));
      if (found !== undefined && !turns.some((each) => meet(each, found))) turns.push(found);
    }
  return turns;
}

/** True where no straight seam joins the groups: it turns, or runs in stretches that do not line up. */
export function isSetIn(stretches: readonly Stretch[]): boolean {
  const [first] = stretches;
  return stretches.some((each) => first !== undefined && bends(first, each));
}

/** True for a stretch off the straight grain. */
export function slants({ from, to }: Stretch): boolean {
  return Math.abs(from.x - to.x) > ON_LINE && Math.abs(from.y - to.y) > ON_LINE;
}

/** Patches of a group that touch a point. */
export function touching(shapes: readonly Shape[], point: Spot): string[] {
  const isNear = (a: Spot, b: Spot): boolean => {
    const run = Math.hypot(b.x - a.x, b.y - a.y);
    const along = ((point.x - a.x) * (b.x - a.x) + (point.y - a.y) * (b.y - a.y)) / run;
    return Math.abs(beside(point, a, b)) <= 2 * ON_LINE && along > -ON_LINE && along < run + ON_LINE;
  };
  return shapes
    .filter(({ corners }) => edgesOf(corners).some(([a, b]) => isNear(a, b)))
    .map(({ spot }) => spot);
}
