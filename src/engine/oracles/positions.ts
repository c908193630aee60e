/**
 * The distinct sums that sizes can make up to a limit (normal positions, Herz 1972, Christofides and
 * Whitlock 1977). Every knapsack in the engine runs over these instead of over single steps, so that odd
 * sizes cost no more than round ones.
 */
export interface Positions {
  /** Ascending, the first is 0. */
  sums: readonly number[];
  limit: number;
}

/** All sums of `sizes`, each usable any number of times, up to `limit`. */
export function normalPositions(sizes: readonly number[], limit: number): Positions {
  const steps = [...new Set(sizes)].filter((size) => size <= limit).sort((a, b) => a - b);
  if (limit <= 2_000_000) {
    const reached = new Uint8Array(limit + 1);
    reached[0] = 1;
    for (const step of steps)
      for (let at = step; at <= limit; at++) if (reached[at - step] === 1) reached[at] = 1;
    const sums: number[] = [];
    for (let at = 0; at <= limit; at++) if (reached[at] === 1) sums.push(at);
    return { sums, limit };
  }
  const seen = new Set<number>([0]);
  const queue = [0];
  for (let i = 0; i < queue.length; i++)
    for (const step of steps) {
      const next = queue[i]! + step;
      if (next <= limit && !seen.has(next)) {
        seen.add(next);
        queue.push(next);
      }
    }
  return { sums: queue.sort((a, b) => a - b), limit };
}

/** For every position, the index of the last position that leaves room for `size`; -1 when none does. */
function stepBack(positions: Positions, size: number): Int32Array {
  const { sums } = positions;
  const back = new Int32Array(sums.length).fill(-1);
  let j = 0;
  for (let i = 0; i < sums.length; i++) {
    const room = sums[i]! - size;
    if (room < 0) continue;
    while (j + 1 < sums.length && sums[j + 1]! <= room) j++;
    back[i] = j;
  }
  return back;
}

/** Index of the last position that is at most `value`. */
export function lastAtMost(positions: Positions, value: number): number {
  const { sums } = positions;
  let low = 0;
  let high = sums.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (sums[middle]! <= value) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** Positions at which things are laid one after another. */
export interface Axis extends Positions {
  /** `stepBack` for a size, worked out once. */
  over(size: number): Int32Array;
}

/** The positions as an axis. */
export function axisOf(positions: Positions): Axis {
  const known = new Map<number, Int32Array>();
  return {
    ...positions,
    over(size) {
      let back = known.get(size);
      if (back === undefined) {
        back = stepBack(positions, size);
        known.set(size, back);
      }
      return back;
    },
  };
}
