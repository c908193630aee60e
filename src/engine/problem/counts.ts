/** One number for every kind: copies in a filling, copies wanted. */
export type Counts = readonly number[];

/** One number for every level: strips of each height, and sheets of each kind. */
export type Vector = readonly number[];

/** The sum of what each comes to. */
export function sum<T>(list: readonly T[], of: (one: T, at: number) => number): number {
  let total = 0;
  for (let at = 0; at < list.length; at++) total += of(list[at]!, at);
  return total;
}

/** Adds so many times what `counts` holds. */
export function addCounts(to: number[], counts: Counts, times = 1): void {
  for (let k = 0; k < counts.length; k++) to[k]! += counts[k]! * times;
}

/** How often it goes into what is left of every kind; Infinity for nothing. */
export function timesWithin(left: Counts, counts: Counts): number {
  let times = Infinity;
  for (let k = 0; k < counts.length; k++)
    if (counts[k]! > 0) times = Math.min(times, Math.floor(left[k]! / counts[k]!));
  return times;
}

/** Nothing is left of any kind. */
export function isEmpty(counts: Counts): boolean {
  return counts.every((count) => count <= 0);
}
