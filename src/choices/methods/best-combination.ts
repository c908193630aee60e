/*
 * The best of all combinations of choices, where what a combination comes to is a sum over parts (fabrics), each of
 * which depends on some of the choices only, and finding out costs time. Best first: the combination that could be
 * best by what is known is looked into next, and the search ends when nothing left could be better.
 */

/** What is compared, the first number first: the purchase, then the time. */
export type Worth = readonly [purchase: number, minutes: number];

/** What a part comes to under the choices it depends on. */
export interface PartWorth {
  worth: Worth;
  /** No less is possible: equal to `worth` when that is proved. */
  least: Worth;
}

/** How closely a part is looked into: what is bought, or all of it. Time is known of `whole` only. */
type Depth = "purchase" | "whole";

/** One way for each choice, in their order. */
export type Combination = readonly number[];

export interface Combining {
  /** What each way of each choice comes to besides the parts: the sewing. */
  ways: readonly (readonly Worth[])[];
  /** Choices that each part depends on. */
  parts: readonly (readonly number[])[];
  /** The least a part could come to before it is looked into. */
  leastOf(part: number, combination: Combination): Worth;
  /** The least purchase a part could come to, whichever ways are chosen. */
  floorOf(part: number): number;
  /** Looks into parts of a combination, all at once; null for one that is impossible. */
  lookInto(parts: readonly number[], combination: Combination, depth: Depth): Promise<(PartWorth | null)[]>;
  /** Most parts to look into, closely or not. */
  most: number;
  told(looked: number): void;
}

export interface Best {
  /** Null when no combination was found possible. */
  combination: Combination | null;
  combinations: number;
  /** Combinations that were worked out whole. */
  tried: number;
  /** No other combination comes to a smaller purchase. */
  proven: boolean;
  /** No combination comes to less than this purchase. */
  least: number;
}

/** So many combinations are listed. More are searched by changing one choice at a time. */
const MOST_LISTED = 20_000;

/** Below zero when `a` is better. Minutes are sums of fractions: a thousandth is no difference. */
function compareWorth(a: Worth, b: Worth): number {
  if (a[0] !== b[0]) return a[0] - b[0];
  return Math.abs(a[1] - b[1]) < 0.001 ? 0 : a[1] - b[1];
}

const plus = (a: Worth, b: Worth): Worth => [a[0] + b[0], a[1] + b[1]];
const NOTHING: Worth = [0, 0];

/** What is known so far. */
interface Known {
  looked(): number;
  /** Parts of a combination that have not been looked into so closely. */
  missing(combination: Combination, depth: Depth): number[];
  look(combination: Combination, depth: Depth): Promise<void>;
  /** What it comes to; before all is known, and as `least`, the least it could. Null when it is impossible. */
  sum(combination: Combination, which: "worth" | "least"): Worth | null;
}

function knowing({ ways, parts, leastOf, lookInto }: Combining): Known {
  const found = parts.map(() => new Map<number, { part: PartWorth | null; depth: Depth }>());
  const could = parts.map(() => new Map<number, Worth>());
  let looked = 0;
  const indexOf = (part: number, combination: Combination): number =>
    (parts[part] ?? []).reduce(
      (index, choice) => index * (ways[choice]?.length ?? 1) + (combination[choice] ?? 0),
      0,
    );
  const missing = (combination: Combination, depth: Depth): number[] =>
    [...parts.keys()].filter((part) => {
      const known = found[part]?.get(indexOf(part, combination));
      return known === undefined || (known.part !== null && depth === "whole" && known.depth !== "whole");
    });
  const leastKnown = (part: number, index: number, combination: Combination): Worth => {
    const known = could[part]?.get(index) ?? leastOf(part, combination);
    could[part]?.set(index, known);
    return known;
  };
  return {
    missing,
    looked: () => looked,
    async look(combination, depth) {
      const open = missing(combination, depth);
      if (open.length === 0) return;
      looked += open.length;
      const worths = await lookInto(open, combination, depth);
      for (const [i, part] of open.entries()) {
        found[part]?.set(indexOf(part, combination), { part: worths[i] ?? null, depth });
      }
    },
    sum(combination, which) {
      let sum = combination.reduce<Worth>(
        (all, way, choice) => plus(all, ways[choice]?.[way] ?? NOTHING),
        NOTHING,
      );
      for (const part of parts.keys()) {
        const index = indexOf(part, combination);
        const known = found[part]?.get(index);
        if (known?.part === null) return null;
        if (known?.depth === "whole") sum = plus(sum, known.part[which]);
        else {
          const least = leastKnown(part, index, combination);
          sum = plus(sum, known === undefined ? least : [known.part[which][0], least[1]]);
        }
      }
      return sum;
    },
  };
}

function everyCombination(ways: Combining["ways"]): number[][] {
  return ways.reduce<number[][]>(
    (made, own) => made.flatMap((before) => own.map((_, way) => [...before, way])),
    [[]],
  );
}

/** The best found, and how low the others could come. */
interface Found {
  best: Combination | null;
  worth: Worth | null;
  tried: number;
  /** Least purchase that one of the others worked out could come to, were its cutting planned better. */
  doubt: number;
}

function take(found: Found, known: Known, combination: Combination): void {
  found.tried += 1;
  const worth = known.sum(combination, "worth");
  const least = known.sum(combination, "least");
  if (worth === null || least === null) return;
  found.doubt = Math.min(found.doubt, least[0]);
  if (found.worth !== null && compareWorth(worth, found.worth) >= 0) return;
  found.best = combination;
  found.worth = worth;
}

/**
 * Finds the combination that is worth least.
 * @param start worked out first, and kept where nothing is better
 */
export async function bestCombination(asked: Combining, start: Combination): Promise<Best> {
  const combinations = asked.ways.reduce((product, { length }) => product * length, 1);
  const known = knowing(asked);
  const found: Found = { best: null, worth: null, tried: 0, doubt: Number.POSITIVE_INFINITY };
  await known.look(start, "whole");
  take(found, known, start);
  const search = combinations > MOST_LISTED ? byChangingOne : bestFirst;
  const open = await search(asked, known, start, found);
  const purchase = found.worth?.[0] ?? Number.POSITIVE_INFINITY;
  const least = Math.min(open, found.doubt, purchase);
  return {
    combination: found.best,
    combinations,
    tried: found.tried,
    proven: found.worth !== null && least >= purchase,
    least,
  };
}

type Search = (asked: Combining, known: Known, start: Combination, found: Found) => Promise<number>;

/** All combinations, the most promising first. Gives the least purchase of those left open. */
const bestFirst: Search = async ({ ways, most, told }, known, start, found) => {
  let open: Combination[] = everyCombination(ways).filter((each) => each.some((way, i) => way !== start[i]));
  for (;;) {
    let [next, bound]: [Combination | null, Worth | null] = [null, null];
    const left: Combination[] = [];
    for (const each of open) {
      const could = known.sum(each, "least");
      if (could === null || (found.worth !== null && compareWorth(could, found.worth) >= 0)) continue;
      if (known.missing(each, "whole").length === 0) {
        take(found, known, each);
        continue;
      }
      left.push(each);
      if (bound === null || compareWorth(could, bound) < 0) [next, bound] = [each, could];
    }
    if (next === null || bound === null) return Number.POSITIVE_INFINITY;
    // What is bought is found out first: most combinations fall with that.
    const depth = known.missing(next, "purchase").length > 0 ? "purchase" : "whole";
    if (known.looked() + known.missing(next, depth).length > most) return bound[0];
    await known.look(next, depth);
    told(known.looked());
    open = left;
  }
};

/** One choice changed at a time, as long as that helps. Gives the least that any combination could come to. */
const byChangingOne: Search = async ({ ways, parts, most, told, floorOf }, known, start, found) => {
  let at = start;
  const mayLook = (next: Combination, depth: Depth) =>
    known.looked() + known.missing(next, depth).length <= most;
  for (let better = true; better; ) {
    better = false;
    for (const [choice, own] of ways.entries()) {
      for (const way of own.keys()) {
        const next = at.map((old, i) => (i === choice ? way : old));
        if (way === at[choice] || !mayLook(next, "purchase")) continue;
        await known.look(next, "purchase");
        told(known.looked());
        const could = known.sum(next, "least");
        if (could === null || (found.worth !== null && compareWorth(could, found.worth) >= 0)) continue;
        if (!mayLook(next, "whole")) continue;
        await known.look(next, "whole");
        const before = found.best;
        take(found, known, next);
        if (found.best === before) continue;
        at = next;
        better = true;
      }
    }
  }
  return [...parts.keys()].reduce((sum, part) => sum + floorOf(part), 0);
};
