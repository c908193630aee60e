import { pack, ruleOfThumb, verify } from "../../src/engine/index.ts";
import type { CuttingStyle, PackingResult } from "../../src/engine/types.ts";
import type { BenchCase } from "./cases.ts";

/** What came of one case, in the case's own steps; the first eight fields are the published record. */
export interface BenchRecord {
  set: string;
  name: string;
  style: CuttingStyle;
  /** Null when no plan came out. */
  value: number | null;
  bound: number | null;
  proven: boolean;
  ms: number;
  ruleOfThumb: number | null;
  variant: string;
  optimum: number | null;
  reached: number | null;
  floor: number;
  /** What is wrong with the answer; empty when nothing is. */
  faults: string[];
}

/** Milliseconds past its limit after which a case counts as hung. */
export const GRACE = 2000;

/** Counted work may take so many times as long on a slow machine. */
export const SLOW = 10;

/** Milliseconds of processor time this process has had: other programs on the machine do not count. */
export function processorTime(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}

/**
 * Solves one case and judges the answer by everything known about it. The limit is time, or counted work, which says
 * the same on a busy machine.
 */
export async function measure(
  bench: BenchCase,
  limit: number,
  by: "budget" | "effort" = "budget",
): Promise<BenchRecord> {
  if (bench.run !== undefined) return measureRun(bench, bench.run, limit);
  const start = performance.now();
  let result: PackingResult | null = null;
  const faults: string[] = [];
  try {
    result = await pack(bench.problem, { [by]: limit });
  } catch (error) {
    faults.push(`crashed: ${error instanceof Error ? error.message.slice(0, 200) : String(error)}`);
  }
  const ms = performance.now() - start;
  if (by === "budget" && ms > limit + GRACE) faults.push(`hung: took ${Math.round(ms)} ms of ${limit}`);
  if (result !== null) faults.push(...judge(bench, result));
  const found = result !== null && result.status !== "infeasible" ? result : null;
  return {
    set: bench.set,
    name: bench.name,
    style: bench.style,
    value: found?.objective ?? null,
    bound: found?.bound.value ?? null,
    proven: found?.status === "proven",
    ms: Math.round(ms * 10) / 10,
    ruleOfThumb: ruleOfThumb(bench.problem) ?? bench.known.ruleOfThumb,
    variant: bench.variant,
    optimum: bench.known.optimum,
    reached: bench.known.reached,
    floor: bench.known.floor,
    faults,
  };
}

async function measureRun(
  bench: BenchCase,
  run: NonNullable<BenchCase["run"]>,
  limit: number,
): Promise<BenchRecord> {
  const { set, name, style, variant, known } = bench;
  const start = performance.now();
  const found = await run(limit);
  const ms = Math.round((performance.now() - start) * 10) / 10;
  const { value, bound, proven } = found;
  const faults: string[] = [];
  if (value === null && known.reached !== null) faults.push(`no plan, but ${known.reached} is reached`);
  if (value !== null && value < known.floor)
    faults.push(`value ${value} is below ${known.floor}, which nothing is`);
  if (proven && known.optimum !== null && value !== known.optimum)
    faults.push(`proven ${value}, but the least is ${known.optimum}`);
  const { optimum, reached, floor, ruleOfThumb: thumb } = known;
  return {
    set,
    name,
    style,
    value,
    bound,
    proven,
    ms,
    ruleOfThumb: thumb,
    variant,
    optimum,
    reached,
    floor,
    faults,
  };
}

/** Everything an answer must not be. */
function judge({ problem, known }: BenchCase, result: PackingResult): string[] {
  const faults = verify(problem, result).map((fault) => `verify: ${fault}`);
  const value = result.objective;
  const bound = result.bound.value;
  if (result.status === "infeasible") {
    if (known.reached !== null) faults.push(`no plan, but ${known.reached} is reached`);
    return faults;
  }
  if (result.bound.style !== problem.style) faults.push(`bound speaks of ${result.bound.style}`);
  if (value < known.floor) faults.push(`value ${value} is below ${known.floor}, which nothing is`);
  const least = known.optimum ?? known.reached;
  if (least !== null && bound > least) faults.push(`bound ${bound} is above ${least}, which is reached`);
  if (result.status === "proven" && known.optimum !== null && value !== known.optimum) {
    faults.push(`proven ${value}, but the least is ${known.optimum}`);
  }
  return faults;
}
