import { countKinds, type Filling, type ListingLimit, type Segment } from "../oracles/oracle.ts";
import { narrowed, type StackType } from "../oracles/stack-rows.ts";
import type { StripCount } from "../problem/assemble.ts";
import { levelsUsed, type Master } from "../search/master.ts";
import type { IntegerProgram, ProgramSolver } from "../solver/types.ts";
import { coverRows, meetsDemand } from "./cover.ts";
import { type FillOutcome, floorsAt, type TightCut } from "./vector-fill.ts";

interface StackColumn {
  level: number;
  type: StackType;
}

/**
 * The whole-number question over stacks instead of whole fillings, for strips that can be filled in too many
 * ways to list: how many of each stack, so that the stacks of each height together are no wider than its
 * strips together. A no is a no, since every real filling passes; a yes must still be dealt out to strips.
 */
export function fillByStacks(
  master: Master,
  vector: readonly number[],
  tight: readonly TightCut[],
  limit: ListingLimit,
  solve: ProgramSolver,
): FillOutcome {
  const { oracle, demand } = master;
  if (oracle.stacks === undefined || tight.length === 0) return { answer: "unknown" };
  const columns: StackColumn[] = [];
  const levels = levelsUsed(vector);
  for (const level of levels) {
    if (level >= oracle.stripLevels) return { answer: "unknown" };
    const types = oracle.stacks(level, floorsAt(level, tight), demand, limit);
    if (types === null || columns.length + types.length > limit.most) return { answer: "unknown" };
    for (const type of types) columns.push({ level, type });
  }
  const program = stackProgram(columns, levels, vector, demand, oracle.run);
  if (program === null) return { answer: "impossible" };
  const outcome = solve(program);
  if (outcome.status === "infeasible") return { answer: "impossible" };
  if (outcome.values === null) return { answer: "unknown" };
  const strips = levels.map((level) => {
    const stacks = columns.flatMap((column, c) =>
      column.level === level
        ? Array.from({ length: Math.round(outcome.values![c]!) }, () => column.type)
        : [],
    );
    return dealOut(master, stacks, level, vector[level]!);
  });
  if (strips.some((list) => list === null)) return { answer: "unknown" };
  const dealt = strips.flatMap((list) => list!);
  return meetsDemand(dealt, demand) ? { answer: "filled", strips: dealt } : { answer: "unknown" };
}

function stackProgram(
  columns: readonly StackColumn[],
  levels: readonly number[],
  vector: readonly number[],
  demand: readonly number[],
  run: number,
): IntegerProgram | null {
  const rows = coverRows(
    columns.map(({ type }) => type.counts),
    demand,
  );
  if (rows === null) return null;
  for (const level of levels) {
    const mine = columns.flatMap((column, c) => (column.level === level ? [c] : []));
    rows.push({
      lower: -Infinity,
      upper: run * vector[level]!,
      columns: mine,
      values: mine.map((c) => columns[c]!.type.width),
    });
  }
  return {
    costs: columns.map(() => 0),
    lower: columns.map(() => 0),
    upper: columns.map(({ level, type }) => Math.floor(run / type.width) * vector[level]!),
    whole: columns.map(() => true),
    rows,
  };
}

/** First fit, widest first. Null when the stacks do not go into the strips this way. */
function dealOut(
  { oracle }: Master,
  stacks: readonly StackType[],
  level: number,
  count: number,
): StripCount[] | null {
  const rows: { room: number; segments: Segment[] }[] = [];
  for (const { width, stack } of stacks.slice().sort((p, q) => q.width - p.width)) {
    let row = rows.find(({ room }) => room >= width);
    if (row === undefined) {
      if (rows.length === count) return null;
      row = { room: oracle.run, segments: [] };
      rows.push(row);
    }
    row.room -= width;
    row.segments.push(narrowed(oracle.kinds, stack));
  }
  return rows.map(({ segments }) => {
    const counts = countKinds(segments, oracle.kinds.length);
    const filling: Filling = { level, height: oracle.heights[level]!, counts, segments };
    return { filling, count: 1 };
  });
}
