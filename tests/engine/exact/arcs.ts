import type { PackingProblem } from "../../../src/engine/types.ts";
import { narrowest } from "./levels.ts";
import { liesOf } from "./strip-subsets.ts";
import { type Term, WholeNumberProgram } from "./whole-number-program.ts";

/**
 * Least cost in strips-2 from a roll as flows along the width, one flow for each height a strip can have
 * (the arc-flow model of J. M. Valerio de Carvalho, Annals of Operations Research 86 (1999), with one
 * graph a height). The size does not depend on the counts, so this checks problems with many copies.
 */
export async function leastCostByArcs(problem: PackingProblem, seconds = 20): Promise<number> {
  const { roll, items } = problem;
  if (roll === null || problem.style !== "strips-2") throw new Error("arcs: a roll cut in strips-2 only");
  const program = new WholeNumberProgram();
  const pieces = items.reduce((sum, item) => sum + item.demand, 0);
  const heights = [...new Set(items.flatMap((item) => liesOf(item).map((lie) => lie.along)))];
  const made: Term[][] = items.map(() => []);
  const length: Term[] = [];
  for (const height of heights.sort((a, b) => a - b)) {
    const strips = program.variable(height * roll.costPerLength, pieces);
    length.push([height, strips]);
    const balance: Term[][] = Array.from({ length: roll.width + 1 }, () => []);
    balance[0]!.push([-1, strips]);
    balance[roll.width]!.push([1, strips]);
    items.forEach((item, number) => {
      const across = narrowest(item, height);
      if (across === null) return;
      for (let from = 0; from + across <= roll.width; from++) {
        const arc = program.variable(0, item.demand);
        balance[from]!.push([1, arc]);
        balance[from + across]!.push([-1, arc]);
        made[number]!.push([1, arc]);
      }
    });
    for (let from = 0; from < roll.width; from++) {
      const waste = program.variable(0, pieces);
      balance[from]!.push([1, waste]);
      balance[from + 1]!.push([-1, waste]);
    }
    for (const terms of balance) program.row(terms, "=", 0);
  }
  items.forEach((item, number) => {
    program.row(made[number]!, ">=", item.demand);
  });
  if (roll.available !== null) program.row(length, "<=", roll.available);
  return program.least(seconds);
}
