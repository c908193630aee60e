import { stashClothUnreadable } from "../diagnostics/stash.ts";
import type { Outcome } from "../diagnostics/types.ts";
import { floor, parseSize } from "../length/index.ts";
import type { LengthUnit } from "../length/types.ts";
import { tradeSize } from "../stock/index.ts";
import type { StashCloth } from "./types.ts";

/** Reads a cloth as said on a command line: a fabric and a size, `21 x 18 in` or `fat quarter`. */
export function readCloth(
  fabric: string,
  size: string,
  count: number,
  note: string,
  bare: LengthUnit,
): Outcome<StashCloth> {
  const refuse = (problem: string): Outcome<StashCloth> => ({
    value: null,
    diagnostics: [stashClothUnreadable(problem)],
  });
  const name = fabric.trim();
  if (name === "" || /\p{Cc}/u.test(name))
    return refuse("the fabric has no name that can be kept in a table");
  if (!Number.isInteger(count) || count < 1 || count > 9999) {
    return refuse(`how many is ${count}; a whole number from 1 to 9999 is expected`);
  }
  const trade = tradeSize(size);
  if (trade !== null && trade.across !== null) {
    const { across, along } = trade;
    return { value: { fabric: name, across, along, count, note }, diagnostics: [] };
  }
  if (trade !== null)
    return refuse(`"${size}" says how wide the strips are; how long is wanted too, as 42 x 2 1/2 in`);
  const read = parseSize(size, bare);
  if (!read.ok) return refuse(`"${size}" is not a size: ${read.problem.message}`);
  const [across, along] = [Number(floor(read.across)), Number(floor(read.along))];
  if (across <= 0 || along <= 0) return refuse(`"${size}" is no size of a cloth`);
  return { value: { fabric: name, across, along, count, note }, diagnostics: [] };
}
