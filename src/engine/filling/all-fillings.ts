import type { Filling } from "../oracles/oracle.ts";
import type { StripCount } from "../problem/assemble.ts";
import type { Clock } from "../problem/clock.ts";
import type { HeightCut, Master } from "../search/master.ts";
import type { Solver } from "../solver/types.ts";
import type { SearchStats } from "../types.ts";
import { coverRows, meetsDemand } from "./cover.ts";

export type ProgramOutcome =
  | { answer: "better"; strips: StripCount[]; optimal: boolean }
  | { answer: "none" }
  | { answer: "unknown" };

const MOST_LISTED = 12_000;
const MOST_COLUMNS = 6_000;

/**
 * One whole-number program over every filling that a plan shorter than `upper` could use. At the prices of
 * the root cut a filling that falls short of the best rate by more than the whole gap cannot be in such a
 * plan (reduced-cost fixing, as in exact column enumeration for cutting stock). Fillings that two lower
 * strips replace are left out. `none` proves that nothing shorter than `upper` exists.
 */
export function programOverAll(
  master: Master,
  cut: HeightCut,
  upper: number,
  solver: Solver,
  clock: Clock,
  stats: SearchStats,
): ProgramOutcome {
  const { oracle, demand } = master;
  if (upper - 1 > oracle.listedTo) return { answer: "unknown" };
  let rate = 0;
  for (let level = 0; level < oracle.stripLevels; level++)
    rate = Math.max(rate, cut.values[level]! / oracle.heights[level]!);
  const slack = (upper - 1) * rate - cut.total;
  const listed: Filling[] = [];
  const limit = { most: MOST_LISTED, stop: () => clock.expired() };
  for (let level = 0; level < oracle.stripLevels; level++) {
    const height = oracle.heights[level]!;
    if (height >= upper) break;
    // Rounded down and one lower: a float must never leave out a filling that matters.
    const floor = Math.floor(height * rate - slack) - 1;
    if (cut.values[level]! < floor) continue;
    const found = oracle.fillings(level, [{ prices: cut.prices, floor }], demand, limit);
    if (found === null || listed.length + found.length > MOST_LISTED) return { answer: "unknown" };
    for (const filling of found) listed.push(filling);
  }
  const columns = irreplaceable(listed, demand, clock);
  if (columns === null || columns.length > MOST_COLUMNS) return { answer: "unknown" };
  const outcome = solve(columns, demand, upper, solver, clock, stats);
  return outcome;
}

function solve(
  columns: readonly Filling[],
  demand: readonly number[],
  upper: number,
  solver: Solver,
  clock: Clock,
  stats: SearchStats,
): ProgramOutcome {
  if (columns.length === 0) return { answer: "none" };
  const rows = coverRows(
    columns.map((filling) => filling.counts),
    demand,
  );
  if (rows === null) return { answer: "none" };
  rows.push({
    lower: -Infinity,
    upper: upper - 1,
    columns: columns.map((_, p) => p),
    values: columns.map((filling) => filling.height),
  });
  stats.mipSolves++;
  const outcome = solver.integer(
    {
      costs: columns.map((filling) => filling.height),
      lower: columns.map(() => 0),
      upper: columns.map(() => Infinity),
      whole: columns.map(() => true),
      rows,
    },
    clock.left(),
  );
  if (outcome.status === "infeasible") return { answer: "none" };
  if (outcome.values === null) return { answer: "unknown" };
  const strips = columns
    .map((filling, p) => ({ filling, count: Math.round(outcome.values![p]!) }))
    .filter(({ count }) => count > 0);
  if (!meetsDemand(strips, demand)) return { answer: "unknown" };
  return { answer: "better", strips, optimal: outcome.status === "optimal" };
}

/**
 * Leaves out fillings that a lower one covers, or that two lower strips of no more height together cover.
 * Null when time ran out.
 */
function irreplaceable(list: readonly Filling[], demand: readonly number[], clock: Clock): Filling[] | null {
  const capped = list
    .map((filling) => ({ filling, counts: filling.counts.map((copies, k) => Math.min(copies, demand[k]!)) }))
    .sort((p, q) => p.filling.height - q.filling.height || sum(q.counts) - sum(p.counts));
  const kept: typeof capped = [];
  for (const entry of capped) {
    if (clock.expired()) return null;
    const { height } = entry.filling;
    if (kept.some((other) => covers(other.counts, entry.counts))) continue;
    if (kept.length <= 1500 && coveredByTwo(kept, entry.counts, height)) continue;
    kept.push(entry);
  }
  return kept.map(({ filling }) => filling);
}

/** `kept` is sorted by height, lowest first. */
function coveredByTwo(
  kept: readonly { filling: Filling; counts: number[] }[],
  counts: readonly number[],
  height: number,
): boolean {
  for (const first of kept) {
    const left = height - first.filling.height;
    if (left <= 0 || first.filling.height > left) break;
    const rest = counts.map((count, k) => Math.max(0, count - first.counts[k]!));
    if (sum(rest) === sum(counts)) continue;
    for (const second of kept) {
      if (second.filling.height > left) break;
      if (covers(second.counts, rest)) return true;
    }
  }
  return false;
}

function covers(a: readonly number[], b: readonly number[]): boolean {
  for (let k = 0; k < b.length; k++) if (a[k]! < b[k]!) return false;
  return true;
}

function sum(counts: readonly number[]): number {
  return counts.reduce((total, count) => total + count, 0);
}
