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
 * over the others; null when there is none, which is proved where `complete`.
 */
export function leastChoice(question: ChoiceQuestion): {
  choice: StockChoice | null;
  complete: boolean;
  nodes: number;
} {
  const { available, aims, prices, aim, within, cuts, failed, mostNodes } = question;
  const counts = available.slice();
  const matters = (g: number) => aims.some((costs, a) => a <= aim && costs[g]! > 0);
  const open = available.flatMap((count, g) => (count > 0 && matters(g) ? [g] : []));
  let best: StockChoice | null = null;
  let below = question.below;
  let nodes = 0;
  const held = (cut: StockCut) => counts.reduce((sum, n, g) => sum + n * cut.sheets[g]!, 0);
  const spent = (a: number) => counts.reduce((sum, n, g) => sum + n * aims[a]![g]!, 0);
  /** Least portion with which nothing known speaks against the counts; null when there is none. */
  const leastPortion = (): number | null => {
    let portion = 0;
    for (const cut of cuts) {
      const wanted = cut.total - held(cut);
      while (portion < prices.length && cut.portions[portion]! < wanted) portion++;
    }
    for (const one of failed)
      if (one.portion >= portion && counts.every((n, g) => n <= one.counts[g]!)) portion = one.portion + 1;
    return portion < prices.length ? portion : null;
  };
  const settle = () => {
    const portion = leastPortion();
    if (portion === null) return;
    // The first aim pays for the portion; after it the largest that is within the price.
    const paid = spent(0);
    if (aim === 0) {
      if (paid + prices[portion]! >= below) return;
      below = paid + prices[portion]!;
      best = { portion, counts: counts.slice() };
      return;
    }
    let largest = prices.length - 1;
    while (largest >= portion && paid + prices[largest]! > within[0]!) largest--;
    const total = spent(aim);
    if (largest < portion || total >= below) return;
    below = total;
    best = { portion: largest, counts: counts.slice() };
  };
  const visit = (depth: number): void => {
    if (++nodes > mostNodes) return;
    // What is not decided yet stands at all there is, for the cuts, and at nothing, for the aims.
    if (leastPortion() === null) return;
    if (depth === open.length) {
      settle();
      return;
    }
    const g = open[depth]!;
    for (let n = available[g]!; n >= 0; n--) {
      counts[g] = n;
      const decided = (a: number) =>
        open.slice(0, depth + 1).reduce((sum, h) => sum + counts[h]! * aims[a]![h]!, 0);
      if (decided(aim) >= below) continue;
      if (within.some((most, a) => a < aim && decided(a) > most)) continue;
      visit(depth + 1);
    }
    counts[g] = available[g]!;
  };
  visit(0);
  return { choice: best, complete: nodes <= mostNodes, nodes };
}
