import { choose } from "../../src/engine/choose.ts";
import { pack, verify } from "../../src/engine/index.ts";
import type { PackingProblem } from "../../src/engine/types.ts";
import { leastCostBySubsets } from "../engine/exact/by-subsets.ts";
import { faultsOfFile, SEARCHES } from "./fuzz-plans.ts";
import { fuzzSewing } from "./fuzz-sewing.ts";
import { GRACE, processorTime, SLOW } from "./measure.ts";
import { randomCutList } from "./random-cut-lists.ts";
import { randomFile } from "./random-files.ts";
import { startWatchdog } from "./watchdog.ts";

/** Counted work one search may take: alone, and on the whole way, which asks for many searches. */
const EFFORT = { alone: 100, wholeWay: 40 } as const;

/** Sub-multisets up to which an answer is compared with the least cost found by working through them all. */
const SMALL = 120;

/** What is wrong with the engine's answer to the cut list of a seed; empty when nothing is. Looks at no clock. */
export async function faultsOfSeed(seed: number, effort: number): Promise<string[]> {
  const problem = randomCutList(seed);
  try {
    const result = await pack(problem, { effort });
    const faults = verify(problem, result);
    if (isSmall(problem)) {
      const least = leastCostBySubsets(problem);
      if (result.status === "infeasible") {
        if (Number.isFinite(least)) faults.push(`called infeasible, but ${least} can be reached`);
      } else {
        if (result.objective < least) faults.push(`value ${result.objective} below the least, ${least}`);
        if (result.bound.value > least) faults.push(`bound ${result.bound.value} above the least, ${least}`);
      }
    }
    return [...faults, ...(await faultsOfChoice(problem, effort))];
  } catch (error) {
    return [
      `crashed: ${error instanceof Error ? (error.stack ?? error.message).slice(0, 600) : String(error)}`,
    ];
  }
}

/** A portion of the roll in these fuzzed choices is so many times as long as the roll is wide, and there are so many. */
const PORTIONS = { part: 1 / 4, most: 120 } as const;

/** The same with every piece of cloth at the price of its area beside a roll sold by the quarter of its width. */
async function faultsOfChoice(problem: PackingProblem, effort: number): Promise<string[]> {
  const { roll, sheets } = problem;
  if (roll === null || sheets.length === 0) return [];
  const step = Math.ceil(roll.width * PORTIONS.part);
  const portions = Array.from({ length: PORTIONS.most }, (_, n) => ({
    length: n * step,
    price: n * step * roll.width,
  }));
  const prices = sheets.map(({ across, along }) => across * along);
  const result = await choose(problem, { portions, aims: [prices] }, { effort });
  const faults = verify(problem, result).map((fault) => `chosen: ${fault}`);
  const [price] = result.aims ?? [];
  if (price === undefined) return faults;
  const paid = result.layouts.reduce(
    (sum, { stock, sheet, count }) => (stock === "sheet" ? sum + prices[sheet]! * count : sum),
    portions.find(({ length }) => length >= result.rollLength)?.price ?? Infinity,
  );
  if (paid !== price.value) faults.push(`chosen for ${price.value}, its cloth comes to ${paid}`);
  if (price.bound > price.value) faults.push(`chosen for ${price.value}, less than its bound ${price.bound}`);
  if (!isSmall(problem)) return faults;
  const priced = sheets.map((sheet, i) => ({ ...sheet, cost: prices[i]! }));
  const byLength = { ...problem, sheets: priced, roll: { ...roll, costPerLength: roll.width } };
  const least = leastCostBySubsets(byLength);
  if (price.value < least) faults.push(`chosen for ${price.value}, below the least, ${least}`);
  // A portion is at most a step longer than what is cut from it.
  if (price.bound >= least + step * roll.width) faults.push(`price proved ${price.bound}, above ${least}`);
  return faults;
}

function isSmall(problem: PackingProblem): boolean {
  return problem.items.reduce((size, item) => size * (item.demand + 1), 1) <= SMALL;
}

/** The faults, and one more when finding them took far longer than their effort. */
async function timed(effort: number, find: () => Promise<string[]>): Promise<string[]> {
  const start = processorTime();
  const faults = await find();
  const ms = processorTime() - start;
  return ms > effort * SLOW + GRACE ? [...faults, `hung: took ${Math.round(ms)} ms of ${effort}`] : faults;
}

/**
 * Runs, for each of `count` seeds, a cut list through the engine alone and a file from its text to the
 * audited plan, and tells of those that go wrong; then sews random quilts and all units on paper. 1 when any is wrong.
 */
export async function fuzz(count: number, first: number, log: (line: string) => void): Promise<number> {
  const watchdog = startWatchdog();
  let wrong = 0;
  let slowest = { seed: first, ms: 0 };
  const start = performance.now();
  for (let seed = first; seed < first + count; seed++) {
    watchdog.beat(`random cut list ${seed}`, EFFORT.alone);
    const before = performance.now();
    const alone = await timed(EFFORT.alone, () => faultsOfSeed(seed, EFFORT.alone));
    if (alone.length > 0)
      log(`WRONG seed ${seed}: ${alone.join("; ")}\n  ${JSON.stringify(randomCutList(seed))}`);
    watchdog.beat(`random file ${seed}`, EFFORT.wholeWay);
    const wholeWay = await timed(EFFORT.wholeWay * SEARCHES, () => faultsOfFile(seed, EFFORT.wholeWay));
    if (wholeWay.length > 0) log(`WRONG file of seed ${seed}: ${wholeWay.join("; ")}\n${randomFile(seed)}`);
    const ms = performance.now() - before;
    if (ms > slowest.ms) slowest = { seed, ms };
    if (alone.length + wholeWay.length > 0) wrong++;
    if ((seed - first + 1) % 1000 === 0) log(`${seed - first + 1} cut lists, ${wrong} wrong`);
  }
  await watchdog.stop();
  const seconds = Math.round((performance.now() - start) / 1000);
  const slow = `slowest ${Math.round(slowest.ms)} ms (seed ${slowest.seed})`;
  const memory = `most memory ${Math.round(process.resourceUsage().maxRSS / 1024)} MB`;
  log(`${count} random cut lists from seed ${first}: ${wrong} wrong, ${seconds} s, ${slow}, ${memory}`);
  const sewn = fuzzSewing(count, first, log);
  return wrong + sewn > 0 ? 1 : 0;
}
