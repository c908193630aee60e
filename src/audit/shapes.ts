/** A corner in whole ticks. */
export interface Spot {
  x: number;
  y: number;
}

/** Area within an outline, negative where it runs the other way round: a whole or half number of square ticks. */
export function signedAreaOf(line: readonly Spot[]): number {
  const twice = line.reduce((sum, a, i) => {
    const b = line[(i + 1) % line.length] ?? a;
    return sum + a.x * b.y - b.x * a.y;
  }, 0);
  return twice / 2;
}

export function areaOf(line: readonly Spot[]): number {
  return Math.abs(signedAreaOf(line));
}

/** The box round an outline. */
export function boxOf(line: readonly Spot[]): { left: number; right: number; top: number; bottom: number } {
  const [xs, ys] = [line.map(({ x }) => x), line.map(({ y }) => y)];
  return { left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) };
}

/** Every corner turns the same way. */
export function isConvex(line: readonly Spot[]): boolean {
  const turns = line.map((a, i) => {
    const [b, c] = [line[(i + 1) % line.length] ?? a, line[(i + 2) % line.length] ?? a];
    return Math.sign((b.x - a.x) * (c.y - b.y) - (b.y - a.y) * (c.x - b.x));
  });
  return line.length >= 3 && new Set(turns.filter((turn) => turn !== 0)).size === 1;
}

/** Least and greatest of an outline's corners square to a direction. Whole numbers, exact. */
function reach(line: readonly Spot[], from: Spot, to: Spot): [number, number] {
  const all = line.map(({ x, y }) => (to.x - from.x) * y - (to.y - from.y) * x);
  return [Math.min(...all), Math.max(...all)];
}

/**
 * Whether two outlines without inward corners have cloth in common. They have none when an edge of one of them parts
 * them: then all of one lies on one side of it or on it, and all of the other on the other side or on it.
 */
export function overlap(a: readonly Spot[], b: readonly Spot[]): boolean {
  return [a, b].every((line) =>
    line.every((from, i) => {
      const to = line[(i + 1) % line.length] ?? from;
      const [[leastA, mostA], [leastB, mostB]] = [reach(a, from, to), reach(b, from, to)];
      return mostA > leastB && mostB > leastA;
    }),
  );
}

/** An edge of an outline: where it begins, its direction of length one, and how long it is. */
export interface Edge {
  from: Spot;
  run: Spot;
  length: number;
}

export function edgesOf(line: readonly Spot[]): Edge[] {
  return line.map((from, i) => {
    const to = line[(i + 1) % line.length] ?? from;
    const length = Math.hypot(to.x - from.x, to.y - from.y) || 1;
    return { from, run: { x: (to.x - from.x) / length, y: (to.y - from.y) / length }, length };
  });
}
