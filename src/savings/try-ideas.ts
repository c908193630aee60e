import { quickSolve, withoutEasing } from "../choices/quick-solve.ts";
import type { Outcome } from "../diagnostics/index.ts";
import { type PlanOptions, planSpec } from "../pipeline.ts";
import type { Plan } from "../plan/types.ts";
import { readSpecFile } from "../spec/index.ts";
import { bySaving, difference, saves } from "./difference.ts";
import { ideasFor } from "./ideas.ts";
import type { Bought, Difference, Family, Idea } from "./types.ts";

type Solve = Parameters<typeof planSpec>[2];

/** An idea that was planned and buys less. */
export interface Saving<B extends Bought> {
  idea: Idea;
  /** What is bought with it. */
  bought: readonly B[];
  difference: Difference;
}

/**
 * Plans idea after idea and keeps what buys less than `now`; of a family only the first that does.
 * @param tryOne what a text buys; null where it cannot be planned, "stop" to end the whole search
 * @returns the savings, the greatest first
 */
export async function tryIdeas<B extends Bought>(
  now: readonly B[],
  families: readonly Family[],
  tryOne: (idea: Idea) => Promise<readonly B[] | null | "stop">,
): Promise<Saving<B>[]> {
  const found: Saving<B>[] = [];
  for (const family of families) {
    for (const idea of family) {
      const bought = await tryOne(idea);
      if (bought === "stop") return inOrder(found);
      if (bought === null) continue;
      const change = difference(now, bought);
      if (!saves(change)) continue;
      found.push({ idea, bought, difference: change });
      break;
    }
  }
  return inOrder(found);
}

/** The greatest saving first; sorting is stable, so that ideas decide between equals. */
function inOrder<B extends Bought>(found: readonly Saving<B>[]): Saving<B>[] {
  return [...found].sort((a, b) => bySaving(a.difference, b.difference));
}

/** What is bought of each fabric of a plan. */
function boughtOf(plan: Plan): Bought[] {
  return plan.fabrics.map(({ name, purchase, mix }) => ({
    fabric: name,
    length: purchase?.length ?? null,
    cost: mix?.cost ?? purchase?.cost ?? null,
  }));
}

/** One fabric as it is bought in a plan, for printing. */
export interface BoughtIn extends Bought {
  plan: Plan;
}

/** What would save on a file, with the plan as it stands. */
export interface Savings {
  plan: Plan;
  savings: Saving<BoughtIn>[];
  /** Ideas that were planned. */
  tried: number;
}

/**
 * Plans a file and every idea that might save on it: the purchase of each is the one its own plan would have, since
 * only the easing of the work and narrower widths, which change no purchase, are left out.
 * @param told how many of at most how many ideas are planned
 */
export async function findSavings(
  text: string,
  name: string,
  options: PlanOptions,
  solve: Solve,
  told: (done: number, of: number) => void,
): Promise<Outcome<Savings>> {
  const quick = withoutEasing(quickSolve(solve));
  const planned = async (of: string): Promise<Outcome<Plan>> => {
    const read = readSpecFile(of, name, null, options.language);
    if (read.value === null) return { value: null, diagnostics: read.diagnostics };
    return planSpec(read.value, options, quick);
  };
  const now = await planned(text);
  if (now.value === null) return { value: null, diagnostics: now.diagnostics };
  const families = ideasFor(text);
  const most = families.reduce((sum, family) => sum + family.length, 0);
  let tried = 0;
  const within = (plan: Plan): BoughtIn[] => boughtOf(plan).map((one) => ({ ...one, plan }));
  const savings = await tryIdeas(within(now.value), families, async (idea) => {
    told(tried, most);
    tried += 1;
    const { value } = await planned(idea.text);
    return value === null ? null : within(value);
  });
  return { value: { plan: now.value, savings, tried }, diagnostics: now.diagnostics };
}
