import { type Choice, fewestDenied, type Wish } from "./frustration.ts";
import { type Juncture, layerCounter } from "./junctures.ts";
import type { Seam } from "./seams.ts";
import type { Bulk, BulkPoint } from "./types.ts";

/** A layer more than wanted outweighs any number of layers within what is wanted. */
const OVER = 10_000;
/** More than anything else can weigh. */
const NEVER = 2 ** 50;
/** Branches of the search for the least bulk. */
const MOST_BRANCHES = 20_000;

/** Which groups of seams can be turned round together without a change to what nests. */
function groupsOf(things: number, wishes: readonly Wish[]): number[] {
  const group = Array.from({ length: things }, (_, i) => i);
  const rootOf = (i: number): number => {
    let root = i;
    while (group[root] !== root) root = group[root] ?? root;
    for (let at = i; group[at] !== root; ) [group[at], at] = [root, group[at] ?? root];
    return root;
  };
  for (const { a, b } of wishes) group[rootOf(a)] = rootOf(b);
  return group.map((_, i) => rootOf(i));
}

/**
 * Among pressings that nest as `choice` does, the one with the least bulk: fewest layers above `limit`, then fewest
 * layers in all. What nests depends only on how the seams of one connected group lie to one another, so each group
 * may be turned round as a whole; and a place knows at most two groups, so that its layers are a cost of pairs.
 */
export function leastBulk(
  junctures: readonly Juncture[],
  choice: Choice,
  numberOf: (seam: Seam) => number,
  wishes: readonly Wish[],
  limit: number,
): { choice: Choice; proven: boolean } {
  const group = groupsOf(choice.chosen.length, wishes);
  const of = (seam: Seam): number => group[numberOf(seam)] ?? 0;
  const layers = layerCounter();
  const anchor = choice.chosen.length;
  const costs: Wish[] = [];
  // Twice every cost, so that halves are whole; and where nothing is gained, nothing is turned.
  for (const thing of new Set(group)) costs.push({ a: thing, b: anchor, same: true, weight: 1 });
  // What was pressed before, as thing 0, stays as it is.
  costs.push({ a: group[0] ?? 0, b: anchor, same: true, weight: NEVER });
  const scale = 2 * (choice.chosen.length + 1);
  let whole = choice.denied === 0;
  for (const juncture of junctures) {
    const seams = [juncture.last, juncture.before, juncture.after].filter((seam) => seam !== null);
    const groups = [...new Set(seams.map(of))];
    const [p, q] = groups;
    if (p === undefined || groups.length > 2) {
      whole = false;
      continue;
    }
    const cost = (flipP: boolean, flipQ: boolean): number => {
      const flipped = (seam: Seam): boolean => (of(seam) === p ? flipP : flipQ);
      const reads = (seam: Seam): boolean =>
        ((choice.chosen[numberOf(seam)] === 1) !== seam.flip) !== flipped(seam);
      const count = layers(juncture, reads);
      return count + OVER * Math.max(0, count - limit);
    };
    const [none, one] = [cost(false, false), cost(true, false)];
    if (q === undefined) {
      pushLinear(costs, p, anchor, (one - none) * scale);
      continue;
    }
    const [other, both] = [cost(false, true), cost(true, true)];
    const apart = (one + other - none - both) / 2;
    pushLinear(costs, p, anchor, (one - none - apart) * scale);
    pushLinear(costs, q, anchor, (other - none - apart) * scale);
    if (apart !== 0) costs.push({ a: p, b: q, same: apart > 0, weight: Math.abs(apart) * scale });
  }
  const turned = fewestDenied(anchor + 1, costs, MOST_BRANCHES);
  const flips = (i: number): boolean => turned.chosen[group[i] ?? i] !== turned.chosen[anchor];
  const chosen = choice.chosen.map((value, i): 0 | 1 => ((value === 1) !== flips(i) ? 1 : 0));
  return { choice: { ...choice, chosen }, proven: turned.proven && whole };
}

/** A cost of turning a group round: it wants to stay as it is, or not to. */
function pushLinear(costs: Wish[], thing: number, anchor: number, cost: number): void {
  if (cost !== 0) costs.push({ a: thing, b: anchor, same: cost > 0, weight: Math.abs(cost) });
}

/** Layers everywhere, and where there are more than wanted. */
export function bulkOf(
  junctures: readonly Juncture[],
  reads: (seam: Seam) => boolean,
  limit: number,
  proven: boolean,
  place: (x: number, y: number) => { x: number; y: number },
): Bulk {
  const layers = layerCounter();
  const counts = junctures.map((juncture) => layers(juncture, reads));
  const most = Math.max(1, ...counts);
  const over = junctures.flatMap((juncture, i): BulkPoint[] => {
    const count = counts[i] ?? 0;
    if (count <= limit) return [];
    return [{ ...place(juncture.x, juncture.y), layers: count, opened: layers(juncture, reads, true) }];
  });
  return {
    limit,
    most,
    places: counts.length,
    atMost: counts.filter((count) => count === most).length,
    over,
    overCount: over.length,
    proven,
  };
}
