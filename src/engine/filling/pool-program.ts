import { firstSheet, inRest } from "../oracles/oracle.ts";
import type { StripCount } from "../problem/assemble.ts";
import type { Vector } from "../problem/counts.ts";
import type { Master } from "../search/master.ts";
import type { ProgramSolver } from "../solver/types.ts";
import { addColumn, addLimit, coverProgram, stripsIn } from "./cover.ts";

/** The best whole-number use of the fillings found so far. */
export function poolProgram(master: Master, given: Vector, solve: ProgramSolver): StripCount[] | null {
  const { demand, oracle } = master;
  const { fillings } = master.pool;
  const sheetsFrom = firstSheet(oracle);
  const program = coverProgram(
    fillings.map(({ counts, level, height }) => ({
      counts,
      cost: level < oracle.stripLevels ? height : 0,
      most: level < sheetsFrom ? Infinity : given[level]!,
    })),
    demand,
  );
  if (program === null) return null;
  const among = (isOne: (level: number) => boolean) =>
    fillings.flatMap(({ level }, p) => (isOne(level) ? [p] : []));
  for (const rest of oracle.rests ?? []) {
    const columns = among((level) => inRest(level, rest));
    const heights = columns.map((p) => fillings[p]!.height);
    // What the strips take beyond the rest is a length of its own.
    const most = Math.max(0, (rest.ends.at(-1) ?? 0) - rest.length);
    const beyond = addColumn(program, 1, 0, most, false);
    addLimit(program, rest.length, [...columns, beyond], [...heights, -1]);
  }
  for (let sheet = sheetsFrom; sheet < oracle.heights.length; sheet++)
    addLimit(
      program,
      given[sheet]!,
      among((level) => level === sheet),
    );
  const { values } = solve(program);
  return values === null ? null : stripsIn(fillings, values);
}
