import { ceilMulDiv } from "./prices.ts";

/** Stock to choose from: the length of roll bought, in portions, and so many of every sheet. */
export interface StockChoice {
  portion: number;
  counts: readonly number[];
}

/** What whatever is chosen must satisfy: its sheets and its roll together are worth enough. */
export interface StockCut {
  /** What a sheet of every group can hold. */
  sheets: readonly number[];
  /** What every portion of the roll can hold; never falls. */
  portions: readonly number[];
  total: number;
}

/** What to look for. */
export interface ChoiceQuestion {
  /** Most there is of every group. */
  available: readonly number[];
  /** Aims in order: what a sheet of every group counts in each. */
  aims: readonly (readonly number[])[];
  /** Price of every portion, ascending; it counts in the first aim alone. */
  prices: readonly number[];
  /** The aim that is looked at, and what those before it may come to. */
  aim: number;
  within: readonly number[];
  cuts: readonly StockCut[];
  /** No plan has these, nor less of everything. */
  failed: readonly StockChoice[];
  /** The aim must come to less. */
  below: number;
  mostNodes: number;
}

/** What a choice comes to in one aim. */
export function aimOf(
  { aims, prices }: Pick<ChoiceQuestion, "aims" | "prices">,
  aim: number,
  { portion, counts }: StockChoice,
): number {
  return counts.reduce((sum, n, g) => sum + n * aims[aim]![g]!, aim === 0 ? prices[portion]! : 0);
}

/**
 * The choice that comes to least in the aim looked at, among those that satisfy every cut, have failed in nothing known
 * and keep within the aims before it. Of sheets that count in none of these aims all there are are taken. Depth first
 * over the others, best value for its cost first; a branch ends where some cut cannot be met, or only at too much even
 * if sheets could be had in fractions. Null when there is none, which is proved where `complete`.
 */
export function leastChoice(question: ChoiceQuestion): {
  choice: StockChoice | null;
  complete: boolean;
  nodes: number;
} {
  const { available, aims, aim } = question;
  const matters = (g: number) => aims.some((costs, a) => a <= aim && costs[g]! > 0);
  const open = available.flatMap((count, g) => (count > 0 && matters(g) ? [g] : []));
  const [cut] = question.cuts;
  const rate = (g: number) => (cut?.sheets[g] ?? 0) / Math.max(1, aims[aim]![g]!);
  open.sort((g, h) => rate(h) - rate(g) || g - h);
  const look: Look = {
    ...{ question, open, best: null, below: question.below, nodes: 0 },
    counts: available.slice(),
    cheapest: question.cuts.map(({ sheets }) => cheapestFirst(open, sheets, aims[aim]!)),
  };
  const wanted = question.cuts.map(({ sheets, portions, total }) =>
    available.reduce(
      (left, n, g) => (open.includes(g) ? left : left - n * sheets[g]!),
      total - (portions.at(-1) ?? 0),
    ),
  );
  visit(look, 0, wanted);
  return { choice: look.best, complete: look.nodes <= question.mostNodes, nodes: look.nodes };
}

interface Look {
  question: ChoiceQuestion;
  /** Sheets to decide on, in order. */
  open: readonly number[];
  /** For every cut, the depths of the sheets worth anything to it, cheapest for their worth first. */
  cheapest: readonly (readonly number[])[];
  /** What is not decided yet stands at all there is. */
  counts: number[];
  best: StockChoice | null;
  below: number;
  nodes: number;
}

function cheapestFirst(
  open: readonly number[],
  worth: readonly number[],
  costs: readonly number[],
): number[] {
  const price = (depth: number) => costs[open[depth]!]! / worth[open[depth]!]!;
  const depths = open.flatMap((g, depth) => (worth[g]! > 0 ? [depth] : []));
  return depths.sort((d, e) => price(d) - price(e) || d - e);
}

/** Least portion with which nothing known speaks against the counts; null when there is none. */
function leastPortion({ question, counts }: Look): number | null {
  const { cuts, prices, failed } = question;
  let portion = 0;
  for (const { sheets, portions, total } of cuts) {
    const wanted = counts.reduce((left, n, g) => left - n * sheets[g]!, total);
    while (portion < prices.length && portions[portion]! < wanted) portion++;
  }
  for (const one of failed)
    if (one.portion >= portion && isWithin(counts, one.counts)) portion = one.portion + 1;
  return portion < prices.length ? portion : null;
}

function isWithin(counts: readonly number[], others: readonly number[]): boolean {
  return counts.every((n, g) => n <= others[g]!);
}

/**
 * What the cut still wants of sheets not decided yet, whatever portion goes with it, is not to be had, or makes the
 * choice come to `below` or more. Costs are whole, and so are the sums: only the last step is a fraction, and is rounded
 * up exactly.
 */
function costsTooMuch(look: Look, c: number, wanted: number, depth: number, cost: number): boolean {
  const { question, open, cheapest, counts, below } = look;
  const costs = question.aims[question.aim]!;
  const { sheets } = question.cuts[c]!;
  let left = wanted;
  let spent = cost;
  for (const d of cheapest[c]!) {
    if (left <= 0) break;
    if (d < depth) continue;
    const g = open[d]!;
    const all = sheets[g]! * counts[g]!;
    if (all >= left) {
      // The float only says whether it is worth working out exactly.
      const about = spent + (costs[g]! * left) / sheets[g]!;
      return about > below - 2 && spent + ceilMulDiv(costs[g]!, left, sheets[g]!) >= below;
    }
    left -= all;
    spent += costs[g]! * counts[g]!;
  }
  return left > 0 || spent >= below;
}

/** `wanted[c]` is what cut c wants of the sheets from `depth` on. */
function visit(look: Look, depth: number, wanted: readonly number[]): void {
  const { question, open, counts } = look;
  const { available, aims, aim, within, mostNodes, cuts, failed, prices } = question;
  if (++look.nodes > mostNodes) return;
  if (depth === open.length) {
    settle(look);
    return;
  }
  if (failed.some((one) => one.portion + 1 >= prices.length && isWithin(counts, one.counts))) return;
  const g = open[depth]!;
  const decided = (a: number) => {
    let sum = 0;
    for (let d = 0; d <= depth; d++) sum += counts[open[d]!]! * aims[a]![open[d]!]!;
    return sum;
  };
  for (let n = available[g]!; n >= 0; n--) {
    counts[g] = n;
    const cost = decided(aim);
    if (cost >= look.below) continue;
    const left = wanted.map((value, c) => value - n * cuts[c]!.sheets[g]!);
    if (left.some((value, c) => costsTooMuch(look, c, value, depth + 1, cost))) continue;
    if (within.some((most, a) => a < aim && decided(a) > most)) continue;
    visit(look, depth + 1, left);
  }
  counts[g] = available[g]!;
}

/** All counts are decided: with the portion that belongs to them the choice is the best so far, or it is none. */
function settle(look: Look): void {
  const { question, counts } = look;
  const { aims, aim, prices, within } = question;
  const least = leastPortion(look);
  if (least === null) return;
  const spent = (a: number) => counts.reduce((sum, n, g) => sum + n * aims[a]![g]!, 0);
  // The first aim pays for the portion; after it the largest that is within the price.
  let portion = aim === 0 ? least : prices.length - 1;
  while (aim > 0 && portion >= least && spent(0) + prices[portion]! > within[0]!) portion--;
  const total = spent(aim) + (aim === 0 ? prices[portion]! : 0);
  if (portion < least || total >= look.below) return;
  look.below = total;
  look.best = { portion, counts: counts.slice() };
}
