import type { PackingProblem, PackingResult, Section, SegmentUse } from "../types.ts";

/** What is left of a plan when the strips that hold runs of shapes are laid aside. */
export interface SetAside {
  problem: PackingProblem;
  result: PackingResult;
  /** Length of the roll that what is laid aside takes. */
  length: number;
  /** The whole plan with the rest cut as the answer says. */
  putBack(answer: PackingResult): PackingResult;
}

/**
 * Lays aside all strips that hold a run of shapes, and whatever is cut from sheets: what their work would be otherwise is
 * not known. Null when there is no run; the rest is a problem without any.
 */
export function setAsideRuns(problem: PackingProblem, result: PackingResult): SetAside | null {
  if (problem.items.every(({ nest }) => nest === undefined)) return null;
  const hasRun = ({ stack }: SegmentUse) => stack.some(({ item }) => problem.items[item]?.nest !== undefined);
  const holdsRun = (section: Section): boolean =>
    section.kind === "strips"
      ? section.column.segments.some(hasRun)
      : section.bands.some(hasRun) || section.rest.some(holdsRun);
  const held = problem.items.map(() => 0);
  const count = (section: Section, times: number): void => {
    const all = times * section.count;
    const uses = section.kind === "strips" ? section.column.segments : section.bands;
    for (const segment of uses)
      for (const { item, count: each } of segment.stack) held[item]! += each * segment.count * all;
    if (section.kind === "bands") for (const rest of section.rest) count(rest, all);
  };
  const onRoll = result.layouts.filter(({ stock }) => stock === "roll");
  const layouts = onRoll.flatMap((layout) => {
    const sections = layout.sections.filter((section) => !holdsRun(section));
    for (const section of sections) count(section, layout.count);
    return sections.length === 0 ? [] : [{ ...layout, sections }];
  });
  const aside = result.layouts.flatMap((layout) => {
    const sections = layout.stock === "roll" ? layout.sections.filter(holdsRun) : layout.sections;
    return sections.length === 0 ? [] : [{ ...layout, sections }];
  });
  const items = problem.items.map(({ nest: _, ...item }, i) => ({ ...item, demand: held[i]! }));
  const length = lengthOf(aside.filter(({ stock }) => stock === "roll"));
  const rollLength = result.rollLength - length;
  const cost = problem.roll?.costPerLength ?? 0;
  return {
    problem: { ...problem, items, sheets: [] },
    result: {
      ...result,
      status: "best-found",
      layouts,
      rollLength,
      objective: rollLength * cost,
      bound: { ...result.bound, value: 0 },
    },
    length,
    putBack(answer) {
      const objective = result.objective + (answer.rollLength - rollLength) * cost;
      return {
        ...result,
        status: objective === result.bound.value ? "proven" : "best-found",
        objective,
        rollLength: answer.rollLength + length,
        layouts: [...aside, ...answer.layouts],
        stats: answer.stats,
      };
    },
  };
}

function lengthOf(layouts: PackingResult["layouts"]): number {
  return layouts.reduce(
    (sum, layout) =>
      sum +
      layout.count *
        layout.sections.reduce(
          (all, section) =>
            all + section.count * (section.kind === "strips" ? section.column.along : section.along),
          0,
        ),
    0,
  );
}
