import { hasPlan } from "../../engine/index.ts";
import type { PackingProblem, PackingResult, SearchLimits, Section, SegmentUse } from "../../engine/types.ts";
import { nth } from "../../length/nth.ts";
import { mostOfBolt } from "../../stock/index.ts";
import type { Chosen } from "../choose-cut-lists.ts";
import type { Solve } from "../request.ts";
import { ontoBolts, purchaseOf, tooLongForBolt } from "./onto-bolts.ts";

/** Most shares that the pieces of a fabric are dealt into to come within a bolt. */
const MOST_SHARES = 64;

/**
 * The same packings with no part longer than a bolt. Where one is, as with pieces cut lengthwise one after another, the
 * pieces are dealt into shares alike that each fit a bolt; the bound stays. Null where a piece alone is longer.
 */
export async function withinBolts(
  settled: readonly Chosen[],
  limits: SearchLimits,
  solve: Solve,
): Promise<(Chosen | null)[]> {
  const found: (Chosen | null)[] = [...settled];
  for (const [i, one] of settled.entries()) {
    if (!tooLongForBolt(one.cutList.fabric, one.result)) continue;
    found[i] = await inShares(one, limits, solve);
  }
  return found;
}

/** Of two packings the one to buy less for; of equal ones the first. */
export function lessToBuy(
  { cutList: { fabric } }: Chosen,
  a: PackingResult,
  b: PackingResult,
): PackingResult {
  if (tooLongForBolt(fabric, a)) return b;
  const bought = (result: PackingResult) => purchaseOf(fabric, ontoBolts(fabric, result))?.length ?? 0;
  return bought(b) < bought(a) ? b : a;
}

async function inShares(one: Chosen, limits: SearchLimits, solve: Solve): Promise<Chosen | null> {
  const { fabric } = one.cutList;
  const { problem, result } = one;
  const most = (mostOfBolt(fabric) ?? 0) - fabric.spare;
  const demands = heldOnRoll(one);
  for (let shares = Math.max(2, Math.ceil(result.rollLength / most)); shares <= MOST_SHARES; shares *= 2) {
    const parts = Array.from({ length: shares }, (_, share): PackingProblem => {
      const of = (demand: number) =>
        Math.floor((demand * (share + 1)) / shares) - Math.floor((demand * share) / shares);
      const items = problem.items.map((item, i) => ({ ...item, demand: of(nth(demands, i)) }));
      return { ...problem, items, sheets: [], roll: { ...problem.roll!, available: most } };
    });
    const packed = await solve(parts.map((part) => ({ kind: "pack", problem: part, limits })));
    if (!packed.every(hasPlan)) continue;
    return { ...one, result: together(one, packed) };
  }
  return null;
}

/** The shares one after another in place of what the roll held. */
function together({ problem, result }: Chosen, packed: readonly PackingResult[]): PackingResult {
  const sections = packed.flatMap(({ layouts }) => layouts.flatMap((layout) => layout.sections));
  const rollLength = packed.reduce((sum, part) => sum + part.rollLength, 0);
  const objective = result.objective + (rollLength - result.rollLength) * problem.roll!.costPerLength;
  const sheets = result.layouts.filter(({ stock }) => stock === "sheet");
  const status = objective === result.bound.value ? "proven" : "best-found";
  return {
    ...result,
    ...{ status, objective, rollLength },
    layouts: [...sheets, { stock: "roll", sheet: -1, count: 1, firstCut: "across", sections }],
  };
}

/** By item how many the roll gives. */
function heldOnRoll({ problem, result }: Chosen): number[] {
  const held = problem.items.map(() => 0);
  const take = (segments: readonly SegmentUse[], times: number): void => {
    for (const { stack, count } of segments)
      for (const use of stack) held[use.item]! += use.count * count * times;
  };
  const visit = (sections: readonly Section[], times: number): void => {
    for (const section of sections) {
      const all = times * section.count;
      if (section.kind === "strips") take(section.column.segments, all);
      else {
        take(section.bands, all);
        visit(section.rest, all);
      }
    }
  };
  for (const { stock, sections, count } of result.layouts) if (stock === "roll") visit(sections, count);
  return held;
}
