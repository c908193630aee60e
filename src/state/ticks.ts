import { nth } from "../length/nth.ts";
import type { FabricPlan } from "../plan/types.ts";
import type { SaidOf } from "../spec/index.ts";
import { clothName } from "../stock/index.ts";
import { laysCalled, numberedParts, type StripPlace, usualLay } from "./find-strips.ts";
import { type StripState, takeStock } from "./take-stock.ts";

/*
 * Strips ticked at the mat are one entry of the work, said again with every tick: its numbers are those of one diagram,
 * which stays as it is until something else is said. An entry is open as long as it tells of nothing but such strips.
 */

/** Ranges told in one fact: a fact is a line that can be read. */
const MOST_RANGES = 12;

/** `1 to 3, 5 and 7`. */
function listed(numbers: readonly number[]): string[] {
  const runs: [number, number][] = [];
  for (const number of [...numbers].sort((a, b) => a - b)) {
    const run = runs.at(-1);
    if (run !== undefined && run[1] === number - 1) run[1] = number;
    else runs.push([number, number]);
  }
  const told = runs.flatMap(([first, last]) =>
    last - first < 2 ? [first, last].slice(0, last - first + 1).map(String) : [`${first} to ${last}`],
  );
  const facts: string[] = [];
  for (let i = 0; i < told.length; i += MOST_RANGES) {
    const some = told.slice(i, i + MOST_RANGES);
    facts.push(some.length === 1 ? nth(some, 0) : `${some.slice(0, -1).join(", ")} and ${some.at(-1)}`);
  }
  return facts;
}

/** How a cloth of the plan is called in what is said of its strips; empty where it is meant without a word. */
function clothWord(fabric: FabricPlan, lay: number): string {
  if (usualLay(fabric) === lay) return "";
  const { lays } = fabric;
  const name = clothName(lays[lay]?.name ?? "");
  const alike = laysCalled(fabric, name);
  return alike.length < 2 ? name : `${name} ${alike.indexOf(lay) + 1}`;
}

const ofCloth = (word: string): string => (word === "" ? "" : ` of ${word}`);

/** Facts that tell of strips of one cloth. */
function told(numbers: readonly number[], cloth: string, what: string): string[] {
  return listed(numbers).map((list) => {
    const one = /^\d+$/.test(list);
    return `${one ? "strip" : "strips"} ${list}${ofCloth(cloth)} ${what}`;
  });
}

/** A cloth as it is spoken of: its word, and the numbers of its strips in cutting order. */
export interface SpokenCloth {
  word: string;
  strips: number[];
}

/** The cloths of a diagram as they are spoken of. */
export function clothsOf(fabric: FabricPlan): SpokenCloth[] {
  return fabric.lays.map(({ root }, lay) => ({
    word: clothWord(fabric, lay),
    strips: numberedParts(root).map(({ number }) => number),
  }));
}

function byCloth(cloths: readonly SpokenCloth[], places: readonly StripPlace[]) {
  return cloths.flatMap((cloth, lay) => {
    const numbers = places.filter((place) => place.lay === lay).map(({ number }) => number);
    return numbers.length === 0 ? [] : [{ ...cloth, numbers }];
  });
}

/** What is said of strips that are ticked: `strips 1 to 3 cut`. */
export function tickFacts(cloths: readonly SpokenCloth[], places: readonly StripPlace[]): string[] {
  return byCloth(cloths, places).flatMap(({ numbers, word }) => told(numbers, word, "cut"));
}

/**
 * What is said where the cutting stops for now, so that the rest is planned from there: `cut to strip 3`; where strips
 * before the last were left, which are cut and which are only cut off.
 */
export function stopFacts(cloths: readonly SpokenCloth[], places: readonly StripPlace[]): string[] {
  return byCloth(cloths, places).flatMap(({ strips, numbers, word }) => {
    const last = Math.max(...numbers);
    const left = strips.filter((number) => number < last && !numbers.includes(number));
    return left.length === 0
      ? [`cut to strip ${last}${ofCloth(word)}`]
      : [...told(numbers, word, "cut"), ...told(left, word, "cut off")];
  });
}

/** What is said of a strip that cannot be used. */
export function spoiledFact(cloths: readonly SpokenCloth[], { lay, number }: StripPlace): string {
  return nth(told([number], cloths[lay]?.word ?? "", "spoiled"), 0);
}

/** Whether an entry tells of strips ticked and of nothing else. */
function isTicks({ facts }: Pick<SaidOf, "facts">): boolean {
  return facts.length > 0 && facts.every(({ fact }) => fact.kind === "cut" && fact.what.of === "strips");
}

/** Index of the first entry that is still open: from there on every fabric is told of once, in ticks alone. */
export function openFrom(said: readonly SaidOf[]): number {
  const seen = new Set<string>();
  let first = said.length;
  for (let i = said.length - 1; i >= 0; i--) {
    const entry = nth(said, i);
    if (!isTicks(entry) || seen.has(entry.fabric)) break;
    seen.add(entry.fabric);
    first = i;
  }
  return first;
}

/** Strips that something is told of, those before them too; none where what is told does not fit the diagram. */
export function toldStrips(
  fabric: FabricPlan,
  said: Pick<SaidOf, "facts">,
): (StripPlace & { state: StripState })[] {
  const stock = takeStock(fabric, said);
  return (stock.value?.strips ?? []).flatMap((states, lay) =>
    [...states].map(([number, state]) => ({ lay, number, state })),
  );
}

/** Other facts of the work, as its file holds them. */
export const workFacts = {
  wide: (width: string): string => `${width} wide`,
  left: (length: string): string => `${length} left`,
  inBag: (count: number, letter: string): string => `${count} of ${letter} in the bag`,
};
