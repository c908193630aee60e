import { addColumn, addLimit, coverProgram, meetsDemand, stripsIn } from "../filling/cover.ts";
import type { Filling, ListingLimit, StripOracle } from "../oracles/oracle.ts";
import type { StripCount } from "../problem/assemble.ts";
import { sum } from "../problem/counts.ts";
import type { ProgramSolver } from "../solver/types.ts";
import type { TierMaster } from "./tier-master.ts";
import { mostShortfall, type TierBounds, type TierCut } from "./tiers.ts";

/**
 * Every filling that a plan within the bounds and no longer than `length` could use: at the cut's prices none
 * may fall short of its height's value by more than the whole gap (reduced-cost fixing). Fillings that a lower
 * strip holds as well are left out. Null when there are too many.
 */
export function fillingsOfTiers(
  { oracle, demand, steps }: TierMaster,
  cut: TierCut,
  bounds: TierBounds,
  length: number,
  { most, stop }: ListingLimit,
): Filling[] | null {
  const shortfall = mostShortfall(cut, steps, bounds, length);
  if (shortfall < 0) return [];
  const exact = oracle.values(cut.prices, demand);
  const listed: Filling[] = [];
  for (let level = 0; level < oracle.heights.length; level++) {
    const floor = cut.values[level]! - shortfall;
    if (bounds.most[level] === 0 || exact[level]! < floor) continue;
    const floors = [{ prices: cut.prices, floor }];
    const found = oracle.fillings(level, { floors, caps: demand, most: most - listed.length, stop });
    if (found === null) return null;
    const below = level === 0 ? 0 : oracle.heights[level - 1]!;
    listed.push(...found.filter((filling) => needs(oracle, filling, below)));
  }
  return listed;
}

/** Some item of the filling is higher than the level below. */
function needs({ kinds }: StripOracle, { segments }: Filling, below: number): boolean {
  return segments.some(({ stack }) => sum(stack, ({ kind, lie }) => kinds[kind]!.lies[lie]!.height) > below);
}

export type TierProgramOutcome =
  | { answer: "filled"; strips: StripCount[]; optimal: boolean }
  | { answer: "none" | "unknown" };

/**
 * The whole-number program over the fillings listed, with the tiers as whole variables within their bounds:
 * the shortest plan no longer than `length`. `none` is a proof when the list is complete.
 */
export function tierProgram(
  { demand, steps }: TierMaster,
  fillings: readonly Filling[],
  { least, most }: TierBounds,
  length: number,
  solve: ProgramSolver,
): TierProgramOutcome {
  const program = coverProgram(fillings, demand);
  if (program === null) return { answer: "none" };
  const tiers = steps.map((step, l) => addColumn(program, step, least[l]!, most[l]!, true));
  tiers.forEach((tier, level) => {
    const columns = fillings.flatMap((filling, p) => (filling.level === level ? [p] : []));
    const above = tiers.slice(level + 1, level + 2);
    program.rows.push({
      ...{ lower: 0, upper: Infinity, columns: [...columns, tier, ...above] },
      values: [...columns.map(() => -1), 1, ...above.map(() => -1)],
    });
  });
  addLimit(program, length, tiers, steps.slice());
  const { status, values } = solve(program);
  if (status === "infeasible") return { answer: "none" };
  if (values === null) return { answer: "unknown" };
  const strips = stripsIn(fillings, values);
  if (!meetsDemand(strips, demand)) return { answer: "unknown" };
  return { answer: "filled", strips, optimal: status === "optimal" };
}
