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

/** Up to this limit every place has a byte; beyond, the places reached are kept as a set. */
const MOST_BYTES = 2_000_000;

/** What remembers which places up to `limit` have been reached. */
function places(limit: number): { isNew(at: number): boolean } {
  if (limit > MOST_BYTES) {
    const seen = new Set<number>();
    return { isNew: (at) => seen.size < seen.add(at).size };
  }
  const seen = new Uint8Array(limit + 1);
  return {
    isNew(at) {
      const before = seen[at];
      seen[at] = 1;
      return before === 0;
    },
  };
}

/** All sums of `sizes`, each usable any number of times, up to `limit`. Takes time by the sums, not by the limit. */
export function normalPositions(sizes: readonly number[], limit: number): Positions {
  const steps = [...new Set(sizes)].filter((size) => size <= limit);
  const seen = places(limit);
  const sums = [0];
  seen.isNew(0);
  for (const step of steps)
    for (let i = 0; i < sums.length; i++) {
      const next = sums[i]! + step;
      if (next <= limit && seen.isNew(next)) sums.push(next);
    }
  // Typed arrays sort as numbers, several times as fast.
  return { sums: [...Float64Array.from(sums).sort()], limit };
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
