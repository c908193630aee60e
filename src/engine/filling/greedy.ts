import { type Filling, firstSheet, type Segment, type StripOracle } from "../oracles/oracle.ts";
import { type StripCount, widthOf } from "../problem/assemble.ts";
import type { Kind } from "../problem/reduce.ts";

/**
 * Fills the sheets on the table and then strip after strip by price per step of height: always the best
 * filling of what is still wanted, as often as it fits. Returns null when some kind fits nowhere.
 * `sheets[level]` says how many sheets of each level there are.
 */
export function greedyStrips(
  oracle: StripOracle,
  demand: readonly number[],
  prices: Float64Array,
  sheets: readonly number[],
): StripCount[] | null {
  const { strips, left } = greedySheets(oracle, demand, prices, sheets);
  const floor = prices.map((price) => Math.max(1, price));
  for (const { first, end, length } of oracle.rests ?? []) {
    const levels = Array.from({ length: end - first }, (_, i) => first + i);
    let room = length;
    for (;;) {
      const next = bestByHeight(oracle, left.slice(), floor, levels, room);
      if (next === null) break;
      strips.push({ filling: next, count: 1 });
      take(left, next, 1);
      room -= next.height;
    }
  }
  const levels = Array.from({ length: oracle.stripLevels }, (_, level) => level);
  for (;;) {
    if (left.every((count) => count === 0)) return strips;
    const filling = bestByHeight(oracle, left.slice(), floor, levels, Infinity);
    if (filling === null) return null;
    let times = Infinity;
    filling.counts.forEach((copies, k) => {
      if (copies > 0) times = Math.min(times, Math.floor(left[k]! / copies));
    });
    strips.push({ filling, count: times });
    take(left, filling, times);
  }
}

/**
 * The best filling per step of height among strips no higher than the room, holding no more than is wanted.
 * @param caps a fresh array every time: oracles keep tables for the arrays they were last asked about
 */
function bestByHeight(
  oracle: StripOracle,
  caps: number[],
  prices: Float64Array,
  levels: readonly number[],
  room: number,
): Filling | null {
  const values = oracle.values(prices, caps, levels);
  let best = -1;
  for (const level of levels) {
    const height = oracle.heights[level]!;
    if (height > room || values[level]! <= 0) continue;
    if (best < 0 || values[level]! * oracle.heights[best]! > values[best]! * height) best = level;
  }
  return best < 0 ? null : fitTo(oracle.kinds, oracle.filling(best, prices, caps), caps);
}

/** Fills the sheets one after another, the one worth most first; tells what is left over. */
export function greedySheets(
  oracle: StripOracle,
  demand: readonly number[],
  prices: Float64Array,
  sheets: readonly number[],
): { strips: StripCount[]; left: number[] } {
  const left = demand.slice();
  const free = sheets.slice();
  const strips: StripCount[] = [];
  const floor = prices.map((price) => Math.max(1, price));
  for (;;) {
    const levels = free.flatMap((count, level) => (count > 0 && level >= firstSheet(oracle) ? [level] : []));
    if (levels.length === 0 || left.every((count) => count === 0)) return { strips, left };
    const caps = left.slice();
    const values = oracle.values(floor, caps, levels);
    const best = levels.reduce((a, b) => (values[b]! > values[a]! ? b : a));
    if (values[best]! <= 0) return { strips, left };
    const filling = oracle.filling(best, floor, caps);
    let times = free[best]!;
    filling.counts.forEach((copies, k) => {
      if (copies > 0) times = Math.min(times, Math.floor(left[k]! / copies));
    });
    strips.push({ filling, count: times });
    free[best]! -= times;
    take(left, filling, times);
  }
}

function take(left: number[], filling: Filling, times: number): void {
  filling.counts.forEach((copies, k) => {
    left[k]! -= copies * times;
  });
}

/** Leaves out items beyond the caps (stacks of one strip may together hold too many of a kind). */
export function fitTo(kinds: readonly Kind[], filling: Filling, caps: readonly number[]): Filling {
  if (filling.counts.every((copies, k) => copies <= caps[k]!)) return filling;
  const counts = filling.counts.map(() => 0);
  const segments = filling.segments
    .map((segment): Segment => {
      const stack = segment.stack.filter(({ kind }) => {
        if (counts[kind]! >= caps[kind]!) return false;
        counts[kind]!++;
        return true;
      });
      // A shorter run of shapes takes less of the strip; a lower stack is as wide as it was.
      const shorter = stack.length > 0 && kinds[stack[0]!.kind]!.nested !== undefined;
      return { width: shorter ? widthOf(kinds, stack) : segment.width, stack };
    })
    .filter((segment) => segment.stack.length > 0);
  const { end } = filling;
  // Of the end of a strip no more counts than its run still wants.
  if (end !== undefined) counts[end.kind] = Math.min(filling.counts[end.kind]!, caps[end.kind]!);
  if (end === undefined || counts[end.kind]! > 0) return { ...filling, counts, segments };
  const { end: _, ...bare } = filling;
  return { ...bare, counts, segments };
}
