import { addSize } from "../oracles/knapsack.ts";
import type { RestLevels, StripOracle } from "../oracles/oracle.ts";
import type { Vector } from "../problem/counts.ts";
import type { Stretch } from "../search/height-tables.ts";
import { type HeightCut, wantedBesideSheets } from "../search/master.ts";
import { heldWithin } from "./rests.ts";

/** Lengths of the roll and of every rest that together take so much more than the rests as they are. */
export interface Lengths {
  roll: number;
  rests: number[];
}

/** The longest a rest may be made when so much is dealt out. */
export function longestWithin({ length: least, ends }: RestLevels, length: number): number {
  return Math.max(least, ends.findLast((end) => end - least <= length) ?? 0);
}

/**
 * Every way of dealing a length out to the roll and to longer rests at which all cuts may hold. A rest made longer is
 * filled to its end: else less would do.
 */
export function lengthsOf(
  oracle: StripOracle,
  cuts: readonly HeightCut[],
  given: Vector,
  length: number,
  tired: () => boolean,
): Lengths[] | null {
  const { heights, stripLevels, rests = [] } = oracle;
  if (rests.every(({ ends }) => ends.length === 0))
    return [{ roll: length, rests: rests.map((rest) => rest.length) }];
  // reach[c][r][left]: the most that rest r and those after it and the roll can hold with `left` to deal out.
  const reach = cuts.map((cut) => {
    const roll = new Float64Array(length + 1).fill(-Infinity);
    roll[0] = 0;
    for (let level = 0; level < stripLevels; level++) addSize(roll, heights[level]!, cut.values[level]!);
    const within = rests.map((rest) => heldWithin(heights, rest, cut, longestWithin(rest, length)));
    const tables = [roll];
    for (let r = rests.length - 1; r >= 0; r--) {
      const rest = rests[r]!;
      const after = tables[0]!;
      const table = after.map((value) => value + within[r]![rest.length]!);
      for (const end of rest.ends) {
        const more = end - rest.length;
        if (more > length) break;
        const held = within[r]![end]!;
        for (let left = more; left <= length; left++) {
          const candidate = after[left - more]! + held;
          if (candidate > table[left]!) table[left] = candidate;
        }
      }
      tables.unshift(table);
    }
    return { tables, within, wanted: wantedBesideSheets(cut, given) };
  });
  const found: Lengths[] = [];
  const chosen: number[] = [];
  let full = false;
  const visit = (r: number, left: number, held: readonly number[]): void => {
    if (full || tired()) {
      full = true;
      return;
    }
    if (reach.some(({ tables, wanted }, c) => held[c]! + tables[r]![left]! < wanted)) return;
    const rest = rests[r];
    if (rest === undefined) {
      found.push({ roll: left, rests: chosen.slice() });
      return;
    }
    const twin = rests.findLastIndex((other, o) => o < r && other.twin === rest.twin);
    const least = twin < 0 ? 0 : chosen[twin]!;
    for (const end of [rest.length, ...rest.ends]) {
      const more = end - rest.length;
      if (more > left) break;
      if (end < least) continue;
      chosen.push(end);
      visit(
        r + 1,
        left - more,
        held.map((value, c) => value + reach[c]!.within[r]![end]!),
      );
      chosen.pop();
    }
  };
  visit(
    0,
    length,
    cuts.map(() => 0),
  );
  return full ? null : found;
}

/** The roll and every rest as stretches of strips, highest first: few of those fit, so the tree is narrow at its root. */
export function stretchesOf({ heights, stripLevels, rests = [] }: StripOracle, lengths: Lengths): Stretch[] {
  const levelsOf = (first: number, end: number, room: number) =>
    Array.from({ length: end - first }, (_, i) => end - 1 - i).filter((level) => heights[level]! <= room);
  return [
    { levels: levelsOf(0, stripLevels, lengths.roll), length: lengths.roll, exact: true },
    ...rests.map((rest, r) => {
      const length = lengths.rests[r]!;
      return { levels: levelsOf(rest.first, rest.end, length), length, exact: length > rest.length };
    }),
  ];
}
