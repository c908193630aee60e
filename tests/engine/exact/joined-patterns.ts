import type { PackingItem, PackingProblem } from "../../../src/engine/types.ts";
import { WholeNumberProgram } from "./whole-number-program.ts";

interface Pattern {
  height: number;
  /** Copies of each item; of a run, what its source gives beyond the join. */
  counts: number[];
}

/**
 * Least length of a roll for pieces in strips-2 and runs joined from strips and their ends, as one flat whole-number
 * program over every way of filling a strip, ready-cut strips (sheets that are one strip) included at no cost.
 */
export async function leastWithRuns({ items, roll, sheets }: PackingProblem): Promise<number> {
  const program = new WholeNumberProgram();
  const columns: { variable: number; counts: number[] }[] = [];
  const heights = new Set(items.flatMap((item) => waysOf(item).map(({ height }) => height)));
  for (const height of heights)
    for (const { counts } of patterns(items, height, roll!.width))
      columns.push({ variable: program.variable(height, 1000), counts });
  for (const { across, along, available } of sheets) {
    const own: number[] = [];
    for (const height of heights) {
      if (height > along) continue;
      for (const { counts } of patterns(items, height, across)) {
        const variable = program.variable(0, available!);
        own.push(variable);
        columns.push({ variable, counts });
      }
    }
    program.row(
      own.map((variable) => [1, variable]),
      "<=",
      available!,
    );
  }
  items.forEach((item, i) => {
    const wanted = item.run === undefined ? item.demand : item.run.length - item.run.loss;
    const terms = columns.flatMap(({ variable, counts }) =>
      counts[i]! > 0 ? [[counts[i]!, variable] as const] : [],
    );
    program.row(terms, ">=", wanted);
  });
  return program.least(20);
}

function waysOf({ across, along, turnable, run }: PackingItem): { width: number; height: number }[] {
  if (run !== undefined) return [{ width: 0, height: along }];
  const ways = [{ width: across, height: along }];
  if (turnable) ways.push({ width: along, height: across });
  return ways;
}

/** Every multiset of pieces side by side, with what is left joined to each run in turn, or to none. */
function patterns(items: readonly PackingItem[], height: number, width: number): Pattern[] {
  const found: Pattern[] = [];
  const counts = items.map(() => 0);
  const visit = (i: number, room: number): void => {
    const item = items[i];
    if (item === undefined) {
      found.push({ height, counts: counts.slice() });
      items.forEach(({ run, along }, r) => {
        if (run === undefined || along !== height || room < run.leastEnd || room <= run.loss) return;
        found.push({ height, counts: counts.map((count, k) => (k === r ? room - run.loss : count)) });
      });
      return;
    }
    const fitting = waysOf(item).filter((way) => way.height <= height && item.run === undefined);
    const narrowest = Math.min(Infinity, ...fitting.map((way) => way.width));
    const most = Math.min(item.demand, Math.floor(room / narrowest));
    for (let count = 0; count <= most; count++) {
      counts[i] = count;
      visit(i + 1, count === 0 ? room : room - count * narrowest);
    }
    counts[i] = 0;
  };
  visit(0, width);
  return found;
}
