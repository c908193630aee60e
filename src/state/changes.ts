import { nth } from "../length/nth.ts";
import type { Ticks } from "../length/types.ts";
import type { FabricPlan } from "../plan/types.ts";
import { clothName } from "../stock/index.ts";
import type { Served } from "./still-wanted.ts";
import type { Taken, Work } from "./take-stock.ts";

/** So many of a bag. */
interface OfBag {
  letter: string;
  count: number;
}

/** What one entry of the work changed in the plan of a fabric. */
export interface Change {
  fabric: string;
  /** What lies in the bags now, by bag. */
  cut: OfBag[];
  /** What was lost and is cut again. */
  lost: OfBag[];
  /** Cut pieces that serve for another bag. */
  served: Served[];
  /** Strips that nothing was said of, and what they were taken as. */
  taken: Taken[];
  /** Usable width as measured, and as it was planned with; null where it is as planned. */
  width: { now: Ticks; planned: Ticks } | null;
  /** Usable width as measured where the rest is cut narrower, as wide as the strips that lie cut; null elsewhere. */
  wider: { measured: Ticks; kept: Ticks } | null;
  /** Letters that are new in this fabric, and those that nothing is called any more. */
  letters: { more: string[]; gone: string[] };
  /** How many pieces are still to cut. */
  still: number;
  /** To be bought more than was; null when nothing is. */
  more: string | null;
}

/** What is bought by a plan, as the shop says it: `3/8 yd`, `2 fat quarters`. */
export function amountsOf({ purchase, stock = [] }: FabricPlan): string[] {
  const ready = stock.filter(({ from, used }) => from === "shop" && used > 0);
  return [
    ...(purchase === null ? [] : [purchase.text]),
    ...ready.map(({ name, used }) => {
      const called = clothName(name);
      return `${used} ${used === 1 ? called : called.replace(/\b(quarter|eighth|square|strip|piece)\b/, "$1s")}`;
    }),
  ];
}

/** What became of a fabric. */
export function changeOf(
  before: FabricPlan,
  after: FabricPlan,
  work: Work,
  served: readonly Served[],
): Change {
  const cut = after.done?.cut ?? [];
  const more = amountsOf(after);
  return {
    fabric: after.name,
    cut: after.pieces.flatMap(({ letter }, i) => ((cut[i] ?? 0) > 0 ? [{ letter, count: nth(cut, i) }] : [])),
    lost: before.pieces.flatMap(({ letter }, i) => {
      const count = work.lost[i] ?? 0;
      return count > 0 ? [{ letter, count }] : [];
    }),
    served: [...served],
    taken: work.taken,
    width: work.width === before.usable ? null : { now: work.width, planned: before.usable },
    wider: work.wider === null ? null : { measured: work.wider, kept: work.width },
    letters: { more: notIn(after, before), gone: notIn(before, after) },
    still: after.pieces.reduce((sum, { count }, i) => sum + Math.max(0, count - (cut[i] ?? 0)), 0),
    more: more.length === 0 ? null : more.join(", "),
  };
}

function notIn({ pieces }: FabricPlan, other: FabricPlan): string[] {
  const known = new Set(other.pieces.map(({ letter }) => letter));
  return pieces.flatMap(({ letter }) => (known.has(letter) ? [] : [letter]));
}
