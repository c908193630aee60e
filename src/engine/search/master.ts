import { restHolds } from "../bands/rests.ts";
import { type Filling, inRest, type RestLevels, type StripOracle } from "../oracles/oracle.ts";
import type { Counts, Vector } from "../problem/counts.ts";
import type { LinearOutcome, Solver } from "../solver/types.ts";
import { addToPool, emptyPool, type Pool, usesIn } from "./pool.ts";
import { ceilMulDiv, pricesByArea, type WholePrices, wholePrices } from "./prices.ts";

/**
 * A valid inequality on how many strips of each height a plan has: whatever the plan, the strips together
 * must be able to hold everything wanted at these prices.
 *
 *     sum over strips of values[height]  >=  total
 */
export interface HeightCut {
  prices: Float64Array;
  values: Float64Array;
  total: number;
  /** For strips higher than every level: value per step of height, as a fraction; null when there are none. */
  tall: { numerator: number; denominator: number } | null;
}

/** A row of the linear program, and the column that lends to it at no cost. */
interface Lent {
  row: number;
  credit: number;
}

/** The linear master program over fillings found so far, grown by pricing. */
export interface Master {
  readonly oracle: StripOracle;
  readonly demand: Counts;
  readonly pool: Pool;
  /** For each height in use, what lends strips of it:  sum of fillings - credit >= 0,  credit <= count. */
  readonly lines: Map<number, Lent>;
  /** What lends the length of every rest:  sum of strip heights - credit >= 0,  credit <= length. */
  readonly rests: readonly (RestLevels & Lent)[];
  /** About what a plan will take. */
  length: number;
}

export interface RootOutcome {
  /** True lower bound on the length. */
  bound: number;
  cut: HeightCut;
  /** Use of every pool filling in the last linear solution. */
  values: Float64Array;
}

/** A full cut from prices: the value of every height is worked out exactly. */
export function heightCut(oracle: StripOracle, demand: Counts, { prices, total }: WholePrices): HeightCut {
  return { prices, values: oracle.values(prices, demand), total, tall: oracle.tallRate(prices) };
}

/** What the cut asks of strips, once `given` sheets have held what they can. */
export function wantedBesideSheets(cut: HeightCut, given: Vector): number {
  return given.reduce((left, count, level) => left - count * cut.values[level]!, cut.total);
}

/**
 * Least length that satisfies the cut when strips could be had in fractions: total over the best value per
 * step of height (the Farley-style dual bound of column generation, in whole numbers throughout).
 */
function fractionalBound(oracle: StripOracle, cut: HeightCut, given: Vector): number {
  let bestHeight = 1;
  let bestValue = 0;
  for (let level = 0; level < oracle.stripLevels; level++) {
    const height = oracle.heights[level]!;
    const value = cut.values[level]!;
    if (value * bestHeight > bestValue * height) {
      bestHeight = height;
      bestValue = value;
    }
  }
  // So much length is worth no less than this to strips of the roll.
  const rate = (length: number) =>
    bestValue === 0 || length === 0 ? 0 : ceilMulDiv(length, bestValue, bestHeight) - 1;
  const wanted = (oracle.rests ?? []).reduce(
    (left, rest) => left - restHolds(oracle, rest, cut, rate),
    wantedBesideSheets(cut, given),
  );
  if (bestValue === 0 || wanted <= 0) return 0;
  const bound = ceilMulDiv(wanted, bestHeight, bestValue);
  if (cut.tall === null || cut.tall.numerator === 0) return bound;
  // A plan with a strip too high to be listed is longer than that strip.
  const tall = ceilMulDiv(wanted, cut.tall.denominator, cut.tall.numerator);
  return Math.min(bound, Math.max(tall, oracle.listedTo + 1));
}

/** The levels that a vector of strips has any of. A loop, since vectors are long, nearly empty and very many. */
export function levelsUsed(vector: Vector): number[] {
  const levels: number[] = [];
  for (let level = 0; level < vector.length; level++) if (vector[level]! > 0) levels.push(level);
  return levels;
}

/** Builds the master over an oracle with one simple filling per kind and lie to start from. */
export function createMaster(oracle: StripOracle, demand: Counts, solver: Solver): Master {
  const model = solver.linearModel();
  const pool = emptyPool(model, demand);
  const rests = (oracle.rests ?? []).map((rest) => {
    const row = model.addRow(0, Infinity);
    return { ...rest, row, credit: model.addColumn(-1, 0, 0, [[row, -1]]) };
  });
  const master: Master = { oracle, demand, pool, lines: new Map(), rests, length: 1 };
  for (const filling of oracle.starters(demand)) addFilling(master, filling);
  return master;
}

/** Adds a filling unless the pool has one with the same height and counts. */
export function addFilling({ pool, lines, rests }: Master, filling: Filling): void {
  const { level, height } = filling;
  const line = lines.get(level);
  const rest = rests.find((one) => inRest(level, one));
  addToPool(pool, filling, height, [
    ...(line === undefined ? [] : ([[line.row, 1]] as const)),
    ...(rest === undefined ? [] : ([[rest.row, height]] as const)),
  ]);
}

/** What lends strips of one height, made when first asked for. */
function lineFor({ pool, lines, oracle }: Master, level: number): Lent {
  const known = lines.get(level);
  if (known !== undefined) return known;
  const columns = pool.columns.filter((_, p) => pool.fillings[p]!.level === level);
  const row = pool.model.addRow(
    0,
    Infinity,
    columns.map((column) => [column, 1]),
  );
  const line = { row, credit: pool.model.addColumn(-oracle.heights[level]!, 0, 0, [[row, -1]]) };
  lines.set(level, line);
  return line;
}

/** Puts strips and sheets on the table at no cost; the function returned takes them off again. */
function lend(master: Master, vector: Vector): () => void {
  const levels = levelsUsed(vector);
  const set = (most: (level: number) => number) => {
    for (const level of levels)
      master.pool.model.setColumnBounds(lineFor(master, level).credit, 0, most(level));
  };
  set((level) => vector[level]!);
  return () => set(() => 0);
}

function run({ pool }: Master): LinearOutcome {
  return pool.model.solve(20_000);
}

/**
 * Solves the linear relaxation of the whole problem, with `given[level]` sheets already on the table.
 * Returns the best length bound met on the way, its cut, and the last linear solution.
 */
export function solveRoot(master: Master, upper: number, given: Vector, stop: () => boolean): RootOutcome {
  const { oracle, demand, pool, rests } = master;
  master.length = upper;
  const restore = lend(master, given);
  for (const { credit, length } of rests) pool.model.setColumnBounds(credit, 0, length);
  let best: { bound: number; cut: HeightCut } | null = null;
  const bounded = (whole: WholePrices) => {
    const cut = heightCut(oracle, demand, whole);
    return { bound: fractionalBound(oracle, cut, given), cut };
  };
  let outcome = run(master);
  for (let round = 0; round < 2000 && outcome.status === "optimal"; round++) {
    const { prices } = outcome;
    const whole = wholePrices(prices, demand, upper);
    const now = bounded(whole);
    if (best === null || now.bound > best.bound || (now.bound === best.bound && round > 0)) best = now;
    const priceOf = (level: number) => {
      const rest = rests.find((one) => inRest(level, one));
      return oracle.heights[level]! * (rest === undefined ? 1 : 1 - Math.max(0, prices[rest.row] ?? 0));
    };
    const gains = improving(oracle, now.cut.values, whole.scale, priceOf);
    if (gains.length === 0 || stop() || !grow(master, spread(gains, 8), whole)) break;
    outcome = run(master);
  }
  best ??= bounded(pricesByArea(oracle.kinds, oracle.run, demand, upper));
  restore();
  for (const { credit } of rests) pool.model.setColumnBounds(credit, 0, 0);
  return { ...best, values: usesIn(pool, outcome) };
}

/**
 * Asks whether `vector[level]` strips of each height can hold the demand when strips may be cut in
 * fractions: a cut that proves they cannot; null when they can, or when no proof was found.
 */
export function refute(master: Master, vector: Vector, stop: () => boolean): HeightCut | null {
  const { oracle, demand } = master;
  const given = levelsUsed(vector);
  const restore = lend(master, vector);
  try {
    for (let round = 0; round < 500; round++) {
      const { status, objective, prices } = run(master);
      if (status !== "optimal" || objective < 1e-7) return null;
      const whole = wholePrices(prices, demand, master.length);
      const values = oracle.values(whole.prices, demand, given);
      const held = given.reduce((sum, level) => sum + vector[level]! * values[level]!, 0);
      if (held < whole.total) return heightCut(oracle, demand, whole);
      const priceOf = (level: number) =>
        oracle.heights[level]! - Math.max(0, prices[lineFor(master, level).row] ?? 0);
      const gains = improving(oracle, values, whole.scale, priceOf, given);
      if (!grow(master, gains.slice(0, 6), whole) || stop()) return null;
    }
    return null;
  } finally {
    restore();
  }
}

/** Takes up the best fillings of some levels; false when all are known already. */
function grow(master: Master, levels: readonly number[], { prices }: WholePrices): boolean {
  const { oracle, demand, pool } = master;
  const before = pool.fillings.length;
  for (const level of levels) addFilling(master, oracle.filling(level, prices, demand));
  return pool.fillings.length > before;
}

/** Levels whose best filling is worth more than its price, best ratio first. */
function improving(
  oracle: StripOracle,
  values: Float64Array,
  scale: number,
  price: (level: number) => number,
  among: readonly number[] = [...oracle.heights.keys()],
): number[] {
  return among
    .filter((level) => values[level]! > price(level) * scale * (1 + 1e-7) + oracle.kinds.length)
    .map((level) => ({ level, ratio: values[level]! / Math.max(1e-9, price(level) * scale) }))
    .sort((a, b) => b.ratio - a.ratio || a.level - b.level)
    .map(({ level }) => level);
}

/** At most `most` levels, but not all next to each other: near heights have near-equal fillings. */
function spread(levels: readonly number[], most: number): number[] {
  if (levels.length <= most) return [...levels];
  const chosen = levels.slice(0, most >> 1);
  const rest = levels.slice(most >> 1);
  const step = rest.length / (most - chosen.length);
  for (let i = 0; i < most - chosen.length; i++) chosen.push(rest[Math.floor(i * step)]!);
  return chosen;
}
