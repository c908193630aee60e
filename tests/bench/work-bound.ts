import { WORK_WEIGHTS } from "../../src/engine/easing/work-measure.ts";
import type { WorkQuestion } from "../../src/engine/easing/work-program.ts";
import type { IntegerProgram, Solver } from "../../src/engine/solver/types.ts";

/** Most a program may have of columns to be asked. */
const MOST_COLUMNS = 900;

/**
 * Least work as a whole-number program that forgets only one thing: pieces in the strips of one height need no more
 * than their widths together, as if they could be cut through at the end of a strip. For plain strips (strips-2), where
 * every plan is one of its answers. A yardstick from a float solver, no proof of anything told to a maker. Null where
 * there is too much to ask.
 *
 *     strips  24 n(h)    settings  24 for every height and size in use    kinds, turns  once for every height
 *     subcuts  2 for every piece, less one for a strip used to its end    trims  width trimmed over the run
 */
export function leastWork(question: WorkQuestion, solver: Solver, milliseconds: number): number | null {
  const { kinds, run, demand, limit, paid } = question;
  const weights = WORK_WEIGHTS;
  const wanted = kinds.flatMap((kind, k) => (demand[k]! > 0 ? [{ kind, k }] : []));
  const lieHeights = wanted.flatMap(({ kind }) => kind.lies.map(({ height }) => height));
  const heights = [...new Set([...lieHeights, ...paid.widths])]
    .filter((h) => h <= limit)
    .sort((a, b) => a - b);
  const sizes = [
    ...new Set(wanted.flatMap(({ kind }) => kind.lies.flatMap(({ width, height }) => [width, height]))),
  ];
  const program: IntegerProgram = { costs: [], lower: [], upper: [], whole: [], rows: [] };
  const column = (cost: number, upper: number, whole: boolean): number => {
    program.lower.push(0);
    program.upper.push(upper);
    program.whole.push(whole);
    return program.costs.push(cost) - 1;
  };
  const row = (lower: number, upper: number, entries: readonly (readonly [number, number])[]): void => {
    program.rows.push({
      lower,
      upper,
      columns: entries.map(([at]) => at),
      values: entries.map(([, value]) => value),
    });
  };
  const strips = heights.map((h) => column(weights.strips - weights.subcuts, Math.floor(limit / h), true));
  const used = heights.map((h) => column(paid.widths.has(h) ? 0 : weights.settings + weights.kinds, 1, true));
  const turned = heights.map((h) => column(paid.widths.has(h) ? 0 : weights.turns, 1, true));
  const set = sizes.map((size) => column(paid.sizes.has(size) ? 0 : weights.settings, 1, true));
  const held: [number, number][][] = heights.map(() => []);
  for (const { kind, k } of wanted) {
    const all: [number, number][] = [];
    for (const { width, height } of kind.lies)
      heights.forEach((h, i) => {
        if (h < height || width > run) return;
        const cost =
          (width < run ? weights.subcuts : 0) +
          (height < h ? ((weights.trims + weights.subcuts) * width) / run : 0);
        const x = column(cost, demand[k]!, false);
        all.push([x, 1]);
        held[i]!.push([x, width]);
        const needs = [used[i]!];
        if (width < run) needs.push(turned[i]!, set[sizes.indexOf(width)]!);
        if (height < h) needs.push(set[sizes.indexOf(height)]!);
        for (const need of needs)
          row(0, Infinity, [
            [need, demand[k]!],
            [x, -1],
          ]);
      });
    row(demand[k]!, Infinity, all);
  }
  if (program.costs.length > MOST_COLUMNS) return null;
  heights.forEach((h, i) => {
    row(0, Infinity, [[strips[i]!, run], ...held[i]!.map(([x, width]): [number, number] => [x, -width])]);
    row(0, Infinity, [
      [used[i]!, Math.floor(limit / h)],
      [strips[i]!, -1],
    ]);
  });
  row(
    0,
    limit,
    heights.map((h, i) => [strips[i]!, h]),
  );
  const { status, bound } = solver.integer(program, milliseconds);
  return status === "failed" || status === "infeasible" ? null : bound - 1e-6;
}
