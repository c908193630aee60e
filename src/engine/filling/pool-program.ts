import { firstSheet } from "../oracles/oracle.ts";
import type { StripCount } from "../problem/assemble.ts";
import type { Master } from "../search/master.ts";
import type { IntegerProgram, Solver } from "../solver/types.ts";
import { coverRows } from "./cover.ts";

/** The best whole-number use of the fillings found so far. */
export function poolProgram(
  master: Master,
  given: readonly number[],
  solver: Solver,
  milliseconds: number,
): StripCount[] | null {
  const { pool, demand, oracle } = master;
  const sheetsFrom = firstSheet(oracle);
  const rows = coverRows(
    pool.map((filling) => filling.counts),
    demand,
  );
  if (rows === null) return null;
  const program = {
    costs: pool.map((filling) => (filling.level < oracle.stripLevels ? filling.height : 0)),
    lower: pool.map(() => 0),
    upper: pool.map((filling) => (filling.level < sheetsFrom ? Infinity : given[filling.level]!)),
    whole: pool.map(() => true),
    rows,
  } satisfies IntegerProgram;
  for (const { first, end, length, ends } of oracle.rests ?? []) {
    const columns = pool.flatMap(({ level }, p) => (level >= first && level < end ? [p] : []));
    const values = columns.map((p) => pool[p]!.height);
    // What the strips take beyond the rest is a length of its own.
    const beyond = program.costs.length;
    program.costs.push(1);
    program.lower.push(0);
    program.upper.push(Math.max(0, (ends.at(-1) ?? 0) - length));
    program.whole.push(false);
    program.rows.push({
      lower: -Infinity,
      upper: length,
      columns: [...columns, beyond],
      values: [...values, -1],
    });
  }
  for (let level = sheetsFrom; level < oracle.heights.length; level++) {
    const columns = pool.flatMap((filling, p) => (filling.level === level ? [p] : []));
    program.rows.push({ lower: -Infinity, upper: given[level]!, columns, values: columns.map(() => 1) });
  }
  const outcome = solver.integer(program, milliseconds);
  if (outcome.values === null) return null;
  return pool
    .map((filling, p) => ({ filling, count: Math.round(outcome.values![p]!) }))
    .filter(({ count }) => count > 0);
}
