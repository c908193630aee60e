import type { NestLie } from "../../../src/engine/nested/nest.ts";
import type { PackingItem, PackingProblem } from "../../../src/engine/types.ts";
import { lengthsOf, withOneMore } from "./by-subsets.ts";
import { type SubsetSpace, subsetSpace } from "./subsets.ts";

/** What stands in one strip by itself: how far along it, and how high. */
interface Stand {
  length: number;
  height: number;
}

/** How one item may lie in a strip; a rectangle is a run whose next begins where the last ends. */
function liesOf(
  item: PackingItem,
  run: "across" | "along",
): Pick<NestLie, "height" | "first" | "advances">[] {
  if (item.nest !== undefined) return [...item.nest[run]];
  const [length, height] = run === "across" ? [item.across, item.along] : [item.along, item.across];
  const upright = { height, first: length, advances: [length] };
  return item.turnable ? [upright, { height: length, first: height, advances: [height] }] : [upright];
}

/** Length of a run by walking it, one advance after another. */
function walked({ first, advances }: Pick<NestLie, "first" | "advances">, count: number): number {
  let length = 0;
  for (let i = 0; i < count; i++) length += i === 0 ? first : advances[(i - 1) % advances.length]!;
  return length;
}

/** Every way `count` of an item may be dealt out to its lies, one run for each. */
function standsOf(item: PackingItem, run: "across" | "along", count: number): Stand[] {
  return liesOf(item, run)
    .reduce<{ left: number; stand: Stand }[]>(
      (dealt, lie, i, lies) =>
        dealt.flatMap(({ left, stand }) => {
          const least = i === lies.length - 1 ? left : 0;
          return Array.from({ length: left - least + 1 }, (_, more) => {
            const taken = least + more;
            const height = taken === 0 ? stand.height : Math.max(stand.height, lie.height);
            return { left: left - taken, stand: { length: stand.length + walked(lie, taken), height } };
          });
        }),
      [{ left: count, stand: { length: 0, height: 0 } }],
    )
    .map(({ stand }) => stand);
}

/** Heights of the lowest strip of a width that holds each state by itself. */
function lowestStrips(
  space: SubsetSpace,
  items: readonly PackingItem[],
  run: "across" | "along",
  width: number,
) {
  return Array.from({ length: space.size }, (_, state) => {
    const stands = space.countsOf(state).reduce<Stand[]>(
      (all, count, i) =>
        count === 0
          ? all
          : all.flatMap((before) =>
              standsOf(items[i]!, run, count).map((more) => ({
                length: before.length + more.length,
                height: Math.max(before.height, more.height),
              })),
            ),
      [{ length: 0, height: 0 }],
    );
    return Math.min(
      Number.POSITIVE_INFINITY,
      ...stands.filter(({ length }) => length <= width).map(({ height }) => height),
    );
  });
}

/**
 * Least cost of a tiny problem of shapes that nest and rectangles, in strips of strips-2, from fixed pieces and a roll:
 * worked through state by state, from the definition of a run alone. Infinity when nothing holds it all.
 */
export function leastCostOfNested({ items, roll, sheets }: PackingProblem): number {
  const space = subsetSpace(items.map(({ demand }) => demand));
  const inStrips = (run: "across" | "along", width: number): number[] =>
    lengthsOf(space, lowestStrips(space, items, run, width));
  let cost = Array.from({ length: space.size }, (_, state) => (state === 0 ? 0 : Number.POSITIVE_INFINITY));
  for (const { across, along, available, cost: price, firstCut } of sheets) {
    const upright = inStrips("across", across);
    const sideways = firstCut === "either" ? inStrips("along", along) : null;
    const held = upright.map(
      (height, state) => state > 0 && (height <= along || (sideways !== null && sideways[state]! <= across)),
    );
    for (let copy = 0; copy < (available ?? 0); copy++) cost = withOneMore(space, cost, held, price);
  }
  if (roll === null) return cost[space.full]!;
  const lengths = inStrips("across", roll.width);
  return Math.min(
    ...lengths.map((length, state) =>
      length > (roll.available ?? Number.POSITIVE_INFINITY)
        ? Number.POSITIVE_INFINITY
        : length * roll.costPerLength + cost[space.full - state]!,
    ),
  );
}
