/**
 * One step of a bounded knapsack table: a bundle of `copies` equal things that may be taken once.
 * Binary bundles (1, 2, 4, ... and a remainder) make every count up to the bound reachable.
 */
export interface Bundle {
  thing: number;
  copies: number;
}

/** Bundles that reach every count from 0 to `bound` of one thing. */
export function bundles(thing: number, bound: number): Bundle[] {
  const list: Bundle[] = [];
  let left = bound;
  for (let size = 1; left > 0; size *= 2) {
    const copies = Math.min(size, left);
    list.push({ thing, copies });
    left -= copies;
  }
  return list;
}

/**
 * Adds a thing that may be taken any number of times to a table of best values per position.
 * `taken` notes in which positions the last addition was this thing, for walking back.
 */
export function addFree(best: Float64Array, back: Int32Array, value: number, taken: Uint8Array | null): void {
  for (let i = 0; i < best.length; i++) {
    const j = back[i]!;
    if (j < 0) continue;
    const candidate = best[j]! + value;
    if (candidate > best[i]!) {
      best[i] = candidate;
      if (taken !== null) taken[i] = 1;
    }
  }
}

/** Adds a bundle that may be taken once: positions are visited from the far end. */
export function addOnce(best: Float64Array, back: Int32Array, value: number, taken: Uint8Array | null): void {
  for (let i = best.length - 1; i >= 0; i--) {
    const j = back[i]!;
    if (j < 0) break;
    const candidate = best[j]! + value;
    if (candidate > best[i]!) {
      best[i] = candidate;
      if (taken !== null) taken[i] = 1;
    }
  }
}
