import { lastOf, nth } from "../../../length/nth.ts";
import type { Ticks } from "../../../length/types.ts";
import type { ShapePoint } from "../types.ts";

/*
 * Equal shapes that stand alternately in a strip, every second one turned half round:
 *
 *     +---------------------+      The strip is cut across along the lines between two shapes. Each shape begins an
 *     |\    /\    /\    /\  |      advance further along the strip than the one before; shapes that fit into the
 *     | \  /  \  /  \  /  \ |      other half of their box take two advances in turn, of which one may be 0.
 *     |  \/    \/    \/    \|
 *     +---------------------+
 *
 * Derived geometry: two shapes of one band do not overlap when at every height the first ends where the second begins or
 * before it, and both ends run straight from corner to corner, so that only the heights of corners need be looked at.
 */

/** How equal shapes stand in a strip. */
export interface NestRun {
  /** Height of the band that all of them lie in. */
  height: Ticks;
  /** What a run of one takes. */
  first: Ticks;
  /** How much further the next begins: one for all, or two in turn. */
  advances: readonly Ticks[];
  /** Every second one is turned half round. */
  alternates: boolean;
  /** The first one is the shape turned half round already. */
  startsTurned: boolean;
}

/** A closed outline whose corners all point outwards, in whole ticks. */
type Convex = readonly ShapePoint[];

/** Corners are rounded to ticks: what should be one advance may come out as two, so many ticks apart. */
const NEAR = 2;

/** The convex hull of some points, corners in one sense, without corners on straight edges. */
export function hullOf(points: readonly ShapePoint[]): ShapePoint[] {
  const sorted = [...points].sort((a, b) => a.x - b.x || a.y - b.y);
  const half = (list: readonly ShapePoint[]): ShapePoint[] => {
    const chain: ShapePoint[] = [];
    for (const point of list) {
      while (chain.length >= 2 && cross(chain.at(-2)!, lastOf(chain), point) <= 0) chain.pop();
      chain.push(point);
    }
    return chain.slice(0, -1);
  };
  return [...half(sorted), ...half(sorted.reverse())];
}

function cross(a: ShapePoint, b: ShapePoint, c: ShapePoint): number {
  return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}

/** The outline turned half round in the box it fills. */
export function halfTurned(outline: readonly ShapePoint[]): ShapePoint[] {
  const across = Math.max(...outline.map(({ x }) => x));
  const along = Math.max(...outline.map(({ y }) => y));
  return outline.map(({ x, y }) => ({ x: across - x, y: along - y }));
}

/** A fraction with a positive denominator, exact. */
interface Fraction {
  n: bigint;
  d: bigint;
}

/** Where the outline begins (`side` -1) or ends (1) at a height within it. */
function endAt(outline: Convex, y: number, side: -1 | 1): Fraction {
  let best: Fraction | null = null;
  const offer = (x: Fraction) => {
    const beyond = best === null ? 1n : (x.n * best.d - best.n * x.d) * BigInt(side);
    if (beyond > 0n) best = x;
  };
  outline.forEach((a, i) => {
    const b = nth(outline, (i + 1) % outline.length);
    if (a.y === y) offer({ n: BigInt(a.x), d: 1n });
    if ((a.y - y) * (b.y - y) >= 0) return;
    const [low, high] = a.y < b.y ? [a, b] : [b, a];
    const d = BigInt(high.y - low.y);
    offer({ n: BigInt(low.x) * d + BigInt(high.x - low.x) * BigInt(y - low.y), d });
  });
  return best ?? { n: 0n, d: 1n };
}

/**
 * The least whole number of ticks by which `next` begins after `before` so that they do not overlap, both with the left edge
 * and the top of their boxes at the origin.
 */
export function leastAdvance(before: Convex, next: Convex): Ticks {
  const heights = new Set([...before, ...next].map(({ y }) => y));
  let least: bigint | null = null;
  const within = (outline: Convex, y: number) =>
    outline.some((point) => point.y <= y) && outline.some((point) => point.y >= y);
  for (const y of heights) {
    if (!within(before, y) || !within(next, y)) continue;
    const [end, begin] = [endAt(before, y, 1), endAt(next, y, -1)];
    const needed = ceiling(end.n * begin.d - begin.n * end.d, end.d * begin.d);
    if (least === null || needed > least) least = needed;
  }
  return Math.max(0, Number(least ?? 0n));
}

function ceiling(n: bigint, d: bigint): bigint {
  return n > 0n ? (n + d - 1n) / d : n / d;
}

/**
 * How equal shapes lie closest in a strip, as straight cuts from edge to edge of it can part them.
 * @param outline the cut line, in ticks from the corner of its box; notches are taken as filled
 * @param halfTurns whether every second one may be turned half round: a print with an up forbids it
 */
export function nestRun(outline: readonly ShapePoint[], halfTurns: boolean): NestRun {
  const shape = hullOf(outline);
  const height = Math.max(...shape.map(({ y }) => y));
  const first = Math.max(...shape.map(({ x }) => x));
  const chord = leastAdvance(shape, shape);
  const plain: NestRun = { height, first, advances: [chord], alternates: false, startsTurned: false };
  if (!halfTurns) return plain;
  const turned = halfTurned(shape);
  const [out, back] = [leastAdvance(shape, turned), leastAdvance(turned, shape)];
  const startsTurned = back < out;
  const short = Math.min(out, back);
  // The one after next is a like shape: it stands clear of this one as well.
  const long = Math.max(out, back, chord - short);
  if (short + long >= 2 * chord) return plain;
  return {
    height,
    first,
    advances: long - short <= NEAR ? [long] : [short, long],
    alternates: true,
    startsTurned,
  };
}
