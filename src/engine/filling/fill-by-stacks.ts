import { countKinds, type ListingLimit, type Segment } from "../oracles/oracle.ts";
import { narrowed, type StackType } from "../oracles/stack-rows.ts";
import type { StripCount } from "../problem/assemble.ts";
import type { Vector } from "../problem/counts.ts";
import { levelsUsed, type Master } from "../search/master.ts";
import type { ProgramSolver } from "../solver/types.ts";
import { addLimit, coverProgram, meetsDemand } from "./cover.ts";
import { type FillOutcome, floorsAt, type TightCut } from "./vector-fill.ts";

/**
 * The whole-number question over stacks instead of whole fillings, for strips that can be filled in too many
 * ways to list: how many of each stack, so that the stacks of each height together are no wider than its
 * strips together. A no is a no, since every real filling passes; a yes must still be dealt out to strips.
 */
export function fillByStacks(
  { oracle, demand }: Master,
  vector: Vector,
  tight: readonly TightCut[],
  limit: ListingLimit,
  solve: ProgramSolver,
): FillOutcome {
  if (oracle.stacks === undefined || tight.length === 0) return { answer: "unknown" };
  const stacks: (StackType & { level: number; most: number })[] = [];
  const levels = levelsUsed(vector);
  for (const level of levels) {
    if (level >= oracle.stripLevels) return { answer: "unknown" };
    const types = oracle.stacks(level, { ...limit, floors: floorsAt(level, tight), caps: demand });
    if (types === null || stacks.length + types.length > limit.most) return { answer: "unknown" };
    for (const type of types)
      stacks.push({ ...type, level, most: Math.floor(oracle.run / type.width) * vector[level]! });
  }
  const program = coverProgram(stacks, demand);
  if (program === null) return { answer: "impossible" };
  for (const level of levels) {
    const columns = stacks.flatMap((stack, c) => (stack.level === level ? [c] : []));
    const widths = columns.map((c) => stacks[c]!.width);
    addLimit(program, oracle.run * vector[level]!, columns, widths);
  }
  const { status, values } = solve(program);
  if (status === "infeasible") return { answer: "impossible" };
  if (values === null) return { answer: "unknown" };
  const used = stacks.flatMap((stack, c) => Array.from({ length: Math.round(values[c]!) }, () => stack));
  const strips: StripCount[] = [];
  for (const level of levels) {
    const dealt = dealOut(
      oracle.run,
      used.filter((stack) => stack.level === level),
    );
    if (dealt.length > vector[level]!) return { answer: "unknown" };
    for (const stacked of dealt) {
      const segments = stacked.map(({ stack }): Segment => narrowed(oracle.kinds, stack));
      const counts = countKinds(segments, oracle.kinds.length);
      strips.push({ filling: { level, height: oracle.heights[level]!, counts, segments }, count: 1 });
    }
  }
  return meetsDemand(strips, demand) ? { answer: "filled", strips } : { answer: "unknown" };
}

/** Stacks into strips, first fit, widest first. */
function dealOut(run: number, stacks: readonly StackType[]): StackType[][] {
  const rows: { room: number; stacks: StackType[] }[] = [];
  for (const stack of stacks.slice().sort((p, q) => q.width - p.width)) {
    let row = rows.find(({ room }) => room >= stack.width);
    if (row === undefined) {
      row = { room: run, stacks: [] };
      rows.push(row);
    }
    row.room -= stack.width;
    row.stacks.push(stack);
  }
  return rows.map((row) => row.stacks);
}
