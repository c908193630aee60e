import { addSize, spread } from "../oracles/knapsack.ts";
import { metered } from "../oracles/metered.ts";
import { sheetOracle } from "../oracles/oracle-sheet.ts";
import { framesOf } from "../problem/assemble.ts";
import type { Clock } from "../problem/clock.ts";
import type { Counts } from "../problem/counts.ts";
import { fitsRun, type Kind } from "../problem/reduce.ts";
import { asOnRoll, canHold, makeOracle, type Rest, type RollQuestion } from "../problem/roll-question.ts";
import { createMaster, solveRoot } from "../search/master.ts";
import { pricesByArea } from "../search/prices.ts";

/** Most table cells for all widths together. */
const MOST_CELLS = 30_000_000;

/** Beyond this length nothing is tabled. */
const LONGEST = 2_000_000;

/** No plan with these band groups, and so many of every kind in bands, is shorter. */
export type BandBound = (rests: readonly Rest[], banded: Counts, along: number) => number;

/**
 * A bound for arrangements of bands. At whole-number prices, what is wanted of the strips must be held by the rests
 * beside the groups, by the sheets given and by strips of the whole width. What strips of one width can hold in a
 * length at most is a knapsack over their heights, worked out exactly; so the bound is one in whole numbers.
 *
 *     wanted  <=  given  +  sum of most(rest width, group length)  +  most(whole width, the length that is left)
 *
 * Lengths from `limit` on are told as `limit`. Prices are taken from the area of the pieces and from the linear
 * program of the strips alone.
 */
export function bandBounds(question: RollQuestion, limit: number): BandBound {
  const { kinds, run, given, clock } = question;
  /** What lies in no band may lie in strips, or only on the sheets given. */
  const inBands = (kind: Kind) => kind.place === "bands" && !given.some(({ sheet }) => canHold(sheet, kind));
  const demand = kinds.map((kind) => (inBands(kind) ? 0 : kind.demand));
  const inStrips = kinds.map((kind, k): Kind => ({ ...kind, demand: demand[k]! }));
  const wanted = inStrips.filter((kind) => kind.demand > 0);
  if (wanted.length === 0 || limit > LONGEST) return (_groups, _banded, along) => along;
  const indexOf = wanted.map((kind) => inStrips.indexOf(kind));
  const caps = wanted.map((kind) => kind.demand);
  const oracles = new Map<number, ReturnType<typeof makeOracle> | null>();
  const oracleAt = (width: number) => {
    const known = oracles.get(width);
    if (known !== undefined) return known;
    const onRoll = wanted.map(asOnRoll);
    const fits = onRoll.some((kind) => fitsRun(kind, width));
    const made = fits ? metered(makeOracle(question, onRoll, width, limit), clock) : null;
    oracles.set(width, made);
    return made;
  };
  const frames = framesOf(wanted);
  let cells = 0;

  const pricing = (prices: Float64Array) => {
    const tables = new Map<number, Float64Array | null>();
    /** most[length]: what strips of this width hold at most in so much length; null when not worked out. */
    const tableAt = (width: number): Float64Array | null => {
      const known = tables.get(width);
      if (known !== undefined) return known;
      const oracle = oracleAt(width);
      let table: Float64Array | null = new Float64Array(limit + 1);
      if (oracle !== null) {
        cells += oracle.heights.length * limit;
        clock.charge(oracle.heights.length * limit * 2e-6);
        if (oracle.listedTo < limit || cells > MOST_CELLS) table = null;
        else {
          const values = oracle.values(prices, caps);
          oracle.heights.forEach((height, level) => {
            if (values[level]! > 0) addSize(table!, height, values[level]!);
          });
          spread(table);
        }
      }
      tables.set(width, table);
      return table;
    };
    const lent = given.reduce(
      (sum, { sheet, count }, i) => sum + count * sheetOracle(question, frames, sheet, i).value(prices, caps),
      0,
    );
    return { prices, tableAt, lent };
  };

  const priced = [pricing(pricesByArea(wanted, run, caps, limit).prices)];
  const ofStrips = pricesOfStrips(question, wanted, limit);
  if (ofStrips !== null) priced.push(pricing(ofStrips));
  return (rests, banded, along) => {
    let least = along;
    const left = limit - along;
    if (left < 0) return limit;
    for (const { prices, tableAt, lent } of priced) {
      const full = tableAt(run);
      if (full === null) continue;
      let missing = -lent;
      indexOf.forEach((k, w) => {
        missing += prices[w]! * (kinds[k]!.demand - banded[k]!);
      });
      const held = heldByRests(rests, tableAt, left, clock);
      if (held === null || missing <= 0) continue;
      let shortest = Infinity;
      held.forEach((value, more) => {
        if (value > -Infinity) shortest = Math.min(shortest, more + firstHolding(full, missing - value));
      });
      least = Math.max(least, along + shortest);
    }
    return Math.min(least, limit);
  };
}

/** Prices from the linear program of what may lie in strips; null where there is none, or some fit no strip. */
function pricesOfStrips(question: RollQuestion, wanted: readonly Kind[], limit: number): Float64Array | null {
  const { run, clock, solver } = question;
  const strips = wanted.filter((kind) => kind.place !== "bands");
  if (strips.length === 0 || !strips.every((kind) => fitsRun(kind, run))) return null;
  const whole = metered(makeOracle(question, strips, run, limit), clock);
  const demand = strips.map((kind) => kind.demand);
  const master = createMaster(whole, demand, solver);
  try {
    const root = solveRoot(master, limit, new Array(whole.heights.length).fill(0), () => clock.expired());
    const at = new Map(strips.map((kind, s) => [kind, root.cut.prices[s]!]));
    return Float64Array.from(wanted, (kind) => at.get(kind) ?? 0);
  } finally {
    master.pool.model.dispose();
  }
}

/** Milliseconds that one entry of a map takes, about. */
const ENTRY = 1e-4;

/**
 * The most that the rests can hold together when so much length is added to them, for every such length; null when
 * that is not known of all.
 */
function heldByRests(
  rests: readonly Rest[],
  tableAt: (width: number) => Float64Array | null,
  left: number,
  clock: Clock,
): Map<number, number> | null {
  let held = new Map([[0, 0]]);
  for (const { across, along, ends } of rests) {
    const table = tableAt(across);
    if (table === null) return null;
    // Out of time nothing is known of the rests: the bound is the bands' own length, which always holds.
    if (clock.expired()) return null;
    clock.charge(held.size * (ends.length + 1) * ENTRY);
    const grown = new Map<number, number>();
    for (const [more, value] of held)
      for (const end of [along, ...ends]) {
        const total = more + end - along;
        if (total > left || end >= table.length) break;
        grown.set(total, Math.max(grown.get(total) ?? -Infinity, value + table[end]!));
      }
    held = undominated(grown);
  }
  return held;
}

/** What no smaller addition holds as well: of two lengths the longer is only of use when it holds more. */
function undominated(held: ReadonlyMap<number, number>): Map<number, number> {
  const kept = new Map<number, number>();
  let most = -Infinity;
  for (const [more, value] of [...held].sort(([a], [b]) => a - b)) {
    if (value <= most) continue;
    most = value;
    kept.set(more, value);
  }
  return kept;
}

/** First length whose table entry reaches `wanted`; the table's length when none does. Entries never fall. */
function firstHolding(table: Float64Array, wanted: number): number {
  if (wanted <= 0) return 0;
  let low = 0;
  let high = table.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (table[middle]! >= wanted) high = middle;
    else low = middle + 1;
  }
  return low;
}
