type Spot = readonly [number, number];

/** A seam from end to end, in any unit. */
export interface Run {
  x1: number;
  y1: number;
  x2: number;
  y2: number;
}

/** Units within which a corner lies on a seam: places are whole ticks. */
const ON = 4;

/** A stretch this much shorter than the longest is taken when it is nearer to the seam's middle. */
const ALMOST = 0.75;

/**
 * Finds the free stretches of seams: between the corners of patches, where other seams meet them. Corners on level
 * and upright lines are kept by line, so that a large top takes no longer than its seams.
 */
export function freeStretches(
  corners: Iterable<Spot>,
): (seam: Run) => { x: number; y: number; length: number } {
  const [level, upright] = [new Map<number, Set<number>>(), new Map<number, Set<number>>()];
  const all: Spot[] = [];
  const put = (lines: Map<number, Set<number>>, at: number, place: number): void => {
    const line = lines.get(Math.round(at)) ?? new Set<number>();
    line.add(Math.round(place));
    lines.set(Math.round(at), line);
  };
  for (const [x, y] of corners) {
    put(level, y, x);
    put(upright, x, y);
    all.push([x, y]);
  }
  const near = (lines: Map<number, Set<number>>, at: number): number[] =>
    Array.from({ length: 2 * ON + 1 }, (_, i) => Math.round(at) + i - ON).flatMap((line) => [
      ...(lines.get(line) ?? []),
    ]);
  return (seam) => {
    const { x1, y1, x2, y2 } = seam;
    const length = Math.hypot(x2 - x1, y2 - y1);
    const [ux, uy] = [(x2 - x1) / length, (y2 - y1) / length];
    const places =
      y1 === y2
        ? near(level, y1).map((x) => (x - x1) * ux)
        : x1 === x2
          ? near(upright, x1).map((y) => (y - y1) * uy)
          : all.flatMap(([x, y]) =>
              Math.abs((x - x1) * uy - (y - y1) * ux) <= ON ? [(x - x1) * ux + (y - y1) * uy] : [],
            );
    const middle = stretchOf(places, length);
    return { x: x1 + ux * middle.at, y: y1 + uy * middle.at, length: middle.length };
  };
}

/** The middle of the stretch to take: nearest to the seam's middle among those about as long as the longest. */
function stretchOf(places: readonly number[], length: number): { at: number; length: number } {
  const inside = places.filter((place) => place > ON && place < length - ON).sort((a, b) => a - b);
  const ends = [0, ...inside, length];
  const stretches = ends.slice(1).map((end, i) => {
    const from = ends[i] ?? 0;
    return { at: (from + end) / 2, length: end - from };
  });
  const longest = Math.max(...stretches.map((stretch) => stretch.length));
  return stretches
    .filter((stretch) => stretch.length >= longest * ALMOST)
    .reduce((a, b) => (Math.abs(b.at - length / 2) < Math.abs(a.at - length / 2) - ON ? b : a));
}
