import { pack } from "../pack.ts";
import { atMost } from "../problem/clock.ts";
import type { PackingItem, PackingProblem, PackingResult, SearchLimits } from "../types.ts";
import { hasPlan } from "../types.ts";

/** Most work for one question, which the plan in hand has all but answered. */
const EFFORT = 200;

/** What strips and ends must be at least, as parts of a whole strip: the longer they are, the fewer. */
const PARTS = [1, 3 / 4, 1 / 2];

/**
 * Looks for a plan that takes no more than `lengthLimit` of the roll and joins runs from fewer strips and ends: nobody
 * sews a border together from ends where whole strips cost nothing. The search is asked the same with longer least ends, up
 * to whole strips only, which makes the fewest joins there are. The bound stays as it was proved, and no more of any
 * sheet is cut into. Returns `result` where nothing better is found; `stats.milliseconds` tells of this search alone.
 */
export async function lessenJoins(
  problem: PackingProblem,
  result: PackingResult,
  lengthLimit: number,
  limits: SearchLimits = {},
): Promise<PackingResult> {
  const { roll } = problem;
  let best = result;
  let milliseconds = 0;
  const told = () => ({ ...best, stats: { ...result.stats, milliseconds } });
  if (roll === null || !hasPlan(result) || lengthLimit < result.rollLength) return told();
  const available = Math.min(lengthLimit, roll.available ?? lengthLimit);
  const fewest = fewestSources(problem, roll.width);
  const asked = new Set<string>();
  for (const part of PARTS) {
    const left = (limits.effort ?? Infinity) - milliseconds;
    if (sourcesOf(best) <= fewest || left <= 0) break;
    const stricter = withLeastEnds(problem, Math.floor(roll.width * part));
    if (asked.has(JSON.stringify(stricter.items))) continue;
    asked.add(JSON.stringify(stricter.items));
    const found = await pack(
      { ...stricter, roll: { ...roll, available } },
      { ...atMost(limits, Math.min(EFFORT, left)), target: available * roll.costPerLength },
    );
    milliseconds += found.stats.milliseconds;
    if (!hasPlan(found) || found.rollLength > available || sourcesOf(found) >= sourcesOf(best)) continue;
    if (!spares(problem, found, result)) continue;
    const { bound } = result;
    best = { ...found, bound, status: found.objective === bound.value ? "proven" : "best-found" };
  }
  return told();
}

/** The same with no strip or end so short in any run. */
function withLeastEnds(problem: PackingProblem, least: number): PackingProblem {
  const items = problem.items.map(
    (item): PackingItem =>
      item.run === undefined
        ? item
        : { ...item, run: { ...item.run, leastEnd: Math.max(item.run.leastEnd, least) } },
  );
  return { ...problem, items };
}

/** Strips and ends that all runs together need at least: as many as of whole strips. */
function fewestSources({ items }: PackingProblem, width: number): number {
  return items.reduce((sum, { run }) => {
    if (run === undefined) return sum;
    return sum + Math.max(1, Math.ceil((run.length - run.loss) / Math.max(1, width - run.loss)));
  }, 0);
}

/** Strips and ends that all runs together are joined from. */
function sourcesOf({ layouts }: PackingResult): number {
  let sources = 0;
  const visit = (sections: PackingResult["layouts"][number]["sections"], times: number): void => {
    for (const section of sections) {
      if (section.kind === "bands") visit(section.rest, times * section.count);
      else if (section.column.end !== undefined) sources += times * section.count;
    }
  };
  for (const { sections, count } of layouts) visit(sections, count);
  return sources;
}

/** Of no sheet is more cut into. */
function spares({ sheets }: PackingProblem, found: PackingResult, before: PackingResult): boolean {
  const used = ({ layouts }: PackingResult, sheet: number): number =>
    layouts.reduce(
      (sum, layout) => sum + (layout.stock === "sheet" && layout.sheet === sheet ? layout.count : 0),
      0,
    );
  return sheets.every((_, sheet) => used(found, sheet) <= used(before, sheet));
}
