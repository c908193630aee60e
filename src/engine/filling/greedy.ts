import { type Filling, firstSheet, type Segment, type StripOracle } from "../oracles/oracle.ts";
import { type StripCount, widthOf } from "../problem/assemble.ts";
import { addCounts, type Counts, isEmpty, timesWithin, type Vector } from "../problem/counts.ts";
import type { Kind } from "../problem/reduce.ts";

/**
 * Fills the sheets on the table and then strip after strip by price per step of height: always the best
 * filling of what is still wanted, as often as it fits. Returns null when some kind fits nowhere.
 * `sheets[level]` says how many sheets of each level there are.
 */
export function greedyStrips(
  oracle: StripOracle,
  demand: Counts,
  prices: Float64Array,
  sheets: Vector,
): StripCount[] | null {
  const { strips, left } = greedySheets(oracle, demand, prices, sheets);
  const floor = prices.map((price) => Math.max(1, price));
  const take = (filling: Filling, count: number) => {
    strips.push({ filling, count });
    addCounts(left, filling.counts, -count);
  };
  for (const { first, end, length } of oracle.rests ?? []) {
    const levels = Array.from({ length: end - first }, (_, i) => first + i);
    for (let room = length; ; ) {
      const next = bestByHeight(oracle, left.slice(), floor, levels, room);
      if (next === null) break;
      take(next, 1);
      room -= next.height;
    }
  }
  const levels = Array.from({ length: oracle.stripLevels }, (_, level) => level);
  while (!isEmpty(left)) {
    const filling = bestByHeight(oracle, left.slice(), floor, levels, Infinity);
    if (filling === null) return null;
    take(filling, timesWithin(left, filling.counts));
  }
  return strips;
}

/**
 * The best filling per step of height among strips no higher than the room, holding no more than is wanted.
 * @param caps a fresh array every time: oracles keep tables for the arrays they were last asked about
 */
function bestByHeight(
  oracle: StripOracle,
  caps: Counts,
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
  demand: Counts,
  prices: Float64Array,
  sheets: Vector,
): { strips: StripCount[]; left: number[] } {
  const left = demand.slice();
  const free = sheets.slice();
  const strips: StripCount[] = [];
  const floor = prices.map((price) => Math.max(1, price));
  for (;;) {
    const levels = free.flatMap((count, level) => (count > 0 && level >= firstSheet(oracle) ? [level] : []));
    if (levels.length === 0 || isEmpty(left)) return { strips, left };
    const caps = left.slice();
    const values = oracle.values(floor, caps, levels);
    const best = levels.reduce((a, b) => (values[b]! > values[a]! ? b : a));
    if (values[best]! <= 0) return { strips, left };
    const filling = oracle.filling(best, floor, caps);
    const count = Math.min(free[best]!, timesWithin(left, filling.counts));
    strips.push({ filling, count });
    free[best]! -= count;
    addCounts(left, filling.counts, -count);
  }
}

/** Leaves out items beyond the caps (stacks of one strip may together hold too many of a kind). */
export function fitTo(kinds: readonly Kind[], filling: Filling, caps: Counts): Filling {
  if (filling.counts.every((copies, k) => copies <= caps[k]!)) return filling;
  const counts = filling.counts.map(() => 0);
  const cut = filling.segments.map((segment): Segment => {
    const stack = segment.stack.filter(({ kind }) => {
      if (counts[kind]! >= caps[kind]!) return false;
      counts[kind]!++;
      return true;
    });
    // A shorter run of shapes takes less of the strip; a lower stack is as wide as it was.
    const shorter = stack.length > 0 && kinds[stack[0]!.kind]!.nested !== undefined;
    return { width: shorter ? widthOf(kinds, stack) : segment.width, stack };
  });
  const segments = cut.filter(({ stack }) => stack.length > 0);
  const { end, ...bare } = filling;
  // Of the end of a strip no more counts than its run still wants.
  if (end !== undefined) counts[end.kind] = Math.min(filling.counts[end.kind]!, caps[end.kind]!);
  const isKept = end !== undefined && counts[end.kind]! > 0;
  return { ...bare, counts, segments, ...(isKept && { end }) };
}
