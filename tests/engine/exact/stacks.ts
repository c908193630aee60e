import type { PackingProblem } from "../../../src/engine/types.ts";
import { type Extent, liesOf } from "./strip-subsets.ts";
import { type Term, WholeNumberProgram } from "./whole-number-program.ts";

/**
 * Least cost in strips-3 from a roll as one plain whole-number program: segments are opened by their
 * widest piece, pieces join segments that are at least as wide, segments go into strips, and a strip is
 * as high as its highest segment. A weak program, so for a handful of pieces only; it owes nothing to
 * columns or to dynamic programming.
 */
export async function leastCostByStacks(problem: PackingProblem, seconds = 20): Promise<number> {
  const { roll, items } = problem;
  if (roll === null || problem.style !== "strips-3") throw new Error("stacks: a roll cut in strips-3 only");
  const program = new WholeNumberProgram();
  const pieces = items.flatMap((item, number) =>
    Array.from({ length: item.demand }, () => ({ number, lies: liesOf(item) })),
  );
  const tallest = Math.max(...pieces.flatMap((piece) => piece.lies.map((lie) => lie.along)));
  const limit = pieces.reduce((sum, piece) => sum + Math.max(...piece.lies.map((lie) => lie.along)), 0);
  const strips = pieces.map(() => program.variable(roll.costPerLength, limit));
  const filled: Term[][] = strips.map(() => []);
  const placed: Term[][] = pieces.map(() => []);
  pieces.forEach((piece, opener) => {
    for (const lie of piece.lies) {
      if (lie.across > roll.width) continue;
      addSegment(opener, lie);
    }
  });
  placed.forEach((terms) => {
    program.row(terms, "=", 1);
  });
  filled.forEach((terms) => {
    program.row(terms, "<=", roll.width);
  });
  // Strips are interchangeable: highest first.
  strips.slice(1).forEach((strip, index) => {
    program.row(
      [
        [1, strips[index]!],
        [-1, strip],
      ],
      ">=",
      0,
    );
  });
  if (roll.available !== null) {
    program.row(
      strips.map((strip): Term => [1, strip]),
      "<=",
      roll.available,
    );
  }
  return program.least(seconds);

  function addSegment(opener: number, lie: Extent): void {
    const inStrip = strips.map(() => program.variable(0, 1));
    const opened = inStrip.map((variable): Term => [1, variable]);
    const height: Term[] = opened.map(([, variable]) => [lie.along, variable]);
    placed[opener]!.push(...opened);
    pieces.forEach((other, number) => {
      if (number === opener) return;
      for (const way of other.lies) {
        if (way.across > lie.across) continue;
        const joins = program.variable(0, 1);
        placed[number]!.push([1, joins]);
        height.push([way.along, joins]);
        program.row([[1, joins], ...opened.map(([, v]): Term => [-1, v])], "<=", 0);
      }
    });
    inStrip.forEach((variable, strip) => {
      filled[strip]!.push([lie.across, variable]);
      // height of the segment <= height of the strip, unless it lies in another one
      const bound = Math.max(limit, tallest);
      const terms: Term[] = height.map(([factor, v]) => [v === variable ? factor + bound : factor, v]);
      program.row([...terms, [-1, strips[strip]!]], "<=", bound);
    });
  }
}
