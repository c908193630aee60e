/*
 * Patches that no straight line divides without cutting one need a seam sewn in part, or a patch set into a corner.
 * Here such a patch is divided, so that straight seams are enough:
 *
 *     +---+-+        +-+-+-+     the upper left rectangle of a whorl in two:
 *     |   | |        | | | |     then a line runs from top to bottom
 *     +-+-+ |   ->   +-+-+ |
 *     | | | |        | | | |
 *     | +-+-+        | +-+-+
 *     | |   |        | |   |
 *     +-+---+        +-+---+
 */

export interface FlatPoint {
  x: number;
  y: number;
}

/** A patch cut in two, from one point of its edge to another. */
export interface Divide {
  /** Index of the patch. */
  patch: number;
  from: FlatPoint;
  to: FlatPoint;
}

interface Part {
  patch: number;
  corners: readonly FlatPoint[];
}

/** A line as `a x + b y = c`, `a` and `b` of length 1. */
interface Line {
  a: number;
  b: number;
  c: number;
}

/** Ticks within which places are the same: roots are taken as plain numbers here. */
const NEAR = 0.5;
/** Lines tried where several cut equally few patches. */
const TRIED = 3;
/** More cuts than this are no help. */
const MOST_DIVIDES = 16;

/**
 * The fewest cuts found that let these patches be sewn in straight seams alone: empty when they can be already, null
 * when none were found. Looked for greedily, so fewer may do.
 */
export function straightSplit(patches: readonly (readonly FlatPoint[])[]): Divide[] | null {
  const parts = patches.map((corners, patch): Part => ({ patch, corners }));
  return split(parts, MOST_DIVIDES);
}

function split(parts: readonly Part[], most: number): Divide[] | null {
  if (parts.length < 2) return [];
  const lines = linesOf(parts)
    .map((line) => {
      const cut = parts.filter(({ corners }) => crosses(line, corners));
      return { line, cut, uneven: uneven(line, parts) };
    })
    .filter(({ line }) => bothSides(line, parts))
    .sort((p, q) => p.cut.length - q.cut.length || p.uneven - q.uneven);
  const fewest = lines[0]?.cut.length ?? Number.POSITIVE_INFINITY;
  if (fewest > most) return null;
  let best: Divide[] | null = null;
  // A line that cuts nothing will always do; of others a few are tried.
  for (const { line, cut } of lines
    .filter((each) => each.cut.length === fewest)
    .slice(0, fewest ? TRIED : 1)) {
    const own = cut.map(({ patch, corners }): Divide => ({ patch, ...chord(line, corners) }));
    let left = most - own.length;
    const found: Divide[] = [...own];
    let failed = false;
    for (const side of [1, -1] as const) {
      const inner = split(
        parts.flatMap((part) => clipped(line, part, side)),
        left,
      );
      if (inner === null) {
        failed = true;
        break;
      }
      left -= inner.length;
      found.push(...inner);
    }
    if (!failed && (best === null || found.length < best.length)) best = found;
  }
  return best;
}

/** Lines along the patches' edges, each once. */
function linesOf(parts: readonly Part[]): Line[] {
  const found = new Map<string, Line>();
  for (const { corners } of parts) {
    for (const [i, p] of corners.entries()) {
      const q = corners[(i + 1) % corners.length] ?? p;
      const run = Math.hypot(q.x - p.x, q.y - p.y);
      if (run < NEAR) continue;
      let [a, b] = [(q.y - p.y) / run, (p.x - q.x) / run];
      if (a < -1e-9 || (Math.abs(a) <= 1e-9 && b < 0)) [a, b] = [-a, -b];
      const c = a * p.x + b * p.y;
      found.set([Math.round(a * 1e6) || 0, Math.round(b * 1e6) || 0, Math.round(c)].join(), { a, b, c });
    }
  }
  return [...found.values()];
}

function beside({ a, b, c }: Line, { x, y }: FlatPoint): number {
  const off = a * x + b * y - c;
  return Math.abs(off) < NEAR ? 0 : off;
}

function crosses(line: Line, corners: readonly FlatPoint[]): boolean {
  return corners.some((p) => beside(line, p) > 0) && corners.some((p) => beside(line, p) < 0);
}

function bothSides(line: Line, parts: readonly Part[]): boolean {
  const on = (side: 1 | -1): boolean =>
    parts.some(({ corners }) => corners.some((p) => beside(line, p) * side > 0));
  return on(1) && on(-1);
}

/** How many patches more lie on one side than on the other: lines through the middle are looked at first. */
function uneven(line: Line, parts: readonly Part[]): number {
  const sides = parts.map(({ corners }) => Math.sign(corners.reduce((sum, p) => sum + beside(line, p), 0)));
  return Math.abs(sides.reduce((sum, side) => sum + side, 0));
}

/** Where a line runs through a patch: its outermost points on the patch's edges. */
function chord(line: Line, corners: readonly FlatPoint[]): { from: FlatPoint; to: FlatPoint } {
  const along = ({ x, y }: FlatPoint): number => line.b * x - line.a * y;
  const points = clipped(line, { patch: 0, corners }, 1)
    .flatMap((part) => part.corners)
    .filter((p) => beside(line, p) === 0)
    .sort((p, q) => along(p) - along(q));
  const [from = { x: 0, y: 0 }] = points;
  return { from, to: points.at(-1) ?? from };
}

/** What of a patch lies on one side of a line. */
function clipped(line: Line, { patch, corners }: Part, side: 1 | -1): Part[] {
  const kept: FlatPoint[] = [];
  for (const [i, p] of corners.entries()) {
    const q = corners[(i + 1) % corners.length] ?? p;
    const [d, e] = [beside(line, p) * side, beside(line, q) * side];
    if (d >= 0) kept.push(p);
    if (d * e < 0) kept.push({ x: p.x + ((q.x - p.x) * d) / (d - e), y: p.y + ((q.y - p.y) * d) / (d - e) });
  }
  return kept.some((p) => beside(line, p) !== 0) ? [{ patch, corners: kept }] : [];
}
