import { coverRows, meetsDemand } from "../filling/cover.ts";
import type { Filling, ListingLimit, StripOracle } from "../oracles/oracle.ts";
import type { StripCount } from "../problem/assemble.ts";
import type { Solver } from "../solver/types.ts";
import { mostShortfall, type TierBounds, type TierCut } from "./tiers.ts";

/**
 * Every filling that a plan within the bounds and no longer than `length` could use: at the cut's prices none
 * may fall short of its height's value by more than the whole gap (reduced-cost fixing). Fillings that a lower
 * strip holds as well are left out. Null when there are too many.
 */
export function fillingsOfTiers(
  oracle: StripOracle,
  demand: readonly number[],
  cut: TierCut,
  steps: readonly number[],
  bounds: TierBounds,
  length: number,
  limit: ListingLimit,
): Filling[] | null {
  const shortfall = mostShortfall(cut, steps, bounds, length);
  if (shortfall < 0) return [];
  const exact = oracle.values(cut.prices, demand);
  const listed: Filling[] = [];
  for (let level = 0; level < oracle.heights.length; level++) {
    const floor = cut.values[level]! - shortfall;
    if (bounds.most[level] === 0 || exact[level]! < floor) continue;
    const found = oracle.fillings(level, [{ prices: cut.prices, floor }], demand, {
      most: limit.most - listed.length,
      stop: limit.stop,
    });
    if (found === null) return null;
    const below = level === 0 ? 0 : oracle.heights[level - 1]!;
    for (const filling of found) if (needs(oracle, filling, below)) listed.push(filling);
  }
  return listed;
}

/** Some item of the filling is higher than the level below. */
function needs({ kinds }: StripOracle, filling: Filling, below: number): boolean {
  return filling.segments.some(
    ({ stack }) => stack.reduce((sum, { kind, lie }) => sum + kinds[kind]!.lies[lie]!.height, 0) > below,
  );
}

export type TierProgramOutcome =
  | { answer: "filled"; strips: StripCount[]; optimal: boolean }
  | { answer: "none" }
  | { answer: "unknown" };

/**
 * The whole-number program over the fillings listed, with the tiers as whole variables within their bounds:
 * the shortest plan no longer than `length`. `none` is a proof when the list is complete.
 */
export function tierProgram(
  fillings: readonly Filling[],
  demand: readonly number[],
  steps: readonly number[],
  bounds: TierBounds,
  length: number,
  solver: Solver,
  milliseconds: number,
): TierProgramOutcome {
  const rows = coverRows(
    fillings.map((filling) => filling.counts),
    demand,
  );
  if (rows === null) return { answer: "none" };
  const first = fillings.length;
  const byLevel = steps.map((): number[] => []);
  fillings.forEach((filling, p) => {
    byLevel[filling.level]!.push(p);
  });
  byLevel.forEach((columns, level) => {
    const last = level + 1 === steps.length;
    rows.push({
      lower: 0,
      upper: Infinity,
      columns: [...columns, first + level, ...(last ? [] : [first + level + 1])],
      values: [...columns.map(() => -1), 1, ...(last ? [] : [-1])],
    });
  });
  rows.push({
    lower: -Infinity,
    upper: length,
    columns: steps.map((_, l) => first + l),
    values: steps.slice(),
  });
  const outcome = solver.integer(
    {
      costs: [...fillings.map(() => 0), ...steps],
      lower: [...fillings.map(() => 0), ...bounds.least],
      upper: [...fillings.map(() => Infinity), ...bounds.most],
      whole: [...fillings.map(() => true), ...steps.map(() => true)],
      rows,
    },
    milliseconds,
  );
  if (outcome.status === "infeasible") return { answer: "none" };
  if (outcome.values === null) return { answer: "unknown" };
  const strips = fillings
    .map((filling, p) => ({ filling, count: Math.round(outcome.values![p]!) }))
    .filter(({ count }) => count > 0);
  if (!meetsDemand(strips, demand)) return { answer: "unknown" };
  return { answer: "filled", strips, optimal: outcome.status === "optimal" };
}
