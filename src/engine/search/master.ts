import { restHolds } from "../bands/rest-holds.ts";
import type { Filling, StripOracle } from "../oracles/oracle.ts";
import { areaOfOne } from "../problem/reduce.ts";
import type { LinearModel, Solver } from "../solver/types.ts";
import { ceilMulDiv, type WholePrices, wholePrices } from "./prices.ts";

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

/** The linear master program over fillings found so far, grown by pricing. */
export interface Master {
  readonly oracle: StripOracle;
  readonly demand: readonly number[];
  readonly pool: readonly Filling[];
  /** Adds a filling unless the pool has one with the same height and counts. */
  add(filling: Filling): void;
  /**
   * Solves the linear relaxation of the whole problem, with `given[level]` sheets already on the table.
   * Returns the best length bound met on the way, its cut, and the last linear solution.
   */
  solveRoot(upper: number, given: readonly number[], stop: () => boolean): RootOutcome;
  /**
   * Asks whether `vector[level]` strips of each height can hold the demand when strips may be cut in
   * fractions. `cut` is a proof that they cannot; null when they can, or when no proof was found.
   */
  testVector(vector: readonly number[], stop: () => boolean): { cut: HeightCut | null; values: Float64Array };
  dispose(): void;
}

export interface RootOutcome {
  /** True lower bound on the length. */
  bound: number;
  cut: HeightCut;
  /** Use of every pool filling in the last linear solution. */
  values: Float64Array;
}

/** A full cut from prices: the value of every height is worked out exactly. */
export function heightCut(oracle: StripOracle, demand: readonly number[], whole: WholePrices): HeightCut {
  return {
    prices: whole.prices,
    values: oracle.values(whole.prices, demand),
    total: whole.total,
    tall: oracle.tallRate(whole.prices),
  };
}

/** What the cut asks of strips, once `given` sheets have held what they can. */
export function wantedBesideSheets(cut: HeightCut, given: readonly number[]): number {
  return given.reduce((left, count, level) => left - count * cut.values[level]!, cut.total);
}

/**
 * Least length that satisfies the cut when strips could be had in fractions: total over the best value per
 * step of height (the Farley-style dual bound of column generation, in whole numbers throughout).
 */
function fractionalBound(oracle: StripOracle, cut: HeightCut, given: readonly number[]): number {
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
export function levelsUsed(vector: readonly number[]): number[] {
  const levels: number[] = [];
  for (let level = 0; level < vector.length; level++) if (vector[level]! > 0) levels.push(level);
  return levels;
}

/** Builds the master over an oracle with one simple filling per kind and lie to start from. */
export function createMaster(oracle: StripOracle, demand: readonly number[], solver: Solver): Master {
  const pool: Filling[] = [];
  const known = new Set<string>();
  const model: LinearModel = solver.linearModel();
  const itemRows = demand.map((wanted) => model.addRow(wanted, Infinity, [], []));
  /** Model column of every pool filling; model row and credit column of every height in use. */
  const columnOf: number[] = [];
  const heightRow = new Map<number, { row: number; credit: number }>();
  let lengthGuess = 1;
  /** Row and credit that lend the length of every rest: sum of strip heights - credit >= 0, credit <= length. */
  const lentRests = (oracle.rests ?? []).map((rest) => {
    const row = model.addRow(0, Infinity, [], []);
    return { ...rest, row, credit: model.addColumn(-1, 0, 0, [row], [-1]) };
  });
  const restOf = (level: number) => lentRests.find(({ first, end }) => level >= first && level < end);

  const add = (filling: Filling): void => {
    // Counts beyond the demand stay as they are: the oracle prices them so, and only then does pricing end.
    const key = `${filling.level}:${filling.counts.join(",")}`;
    if (known.has(key)) return;
    known.add(key);
    pool.push(filling);
    const rows: number[] = [];
    const values: number[] = [];
    filling.counts.forEach((count, k) => {
      if (count > 0) {
        rows.push(itemRows[k]!);
        values.push(count);
      }
    });
    const line = heightRow.get(filling.level);
    if (line !== undefined) {
      rows.push(line.row);
      values.push(1);
    }
    const rest = restOf(filling.level);
    if (rest !== undefined) {
      rows.push(rest.row);
      values.push(filling.height);
    }
    columnOf.push(model.addColumn(filling.height, 0, Infinity, rows, values));
  };

  for (const filling of oracle.starters(demand)) add(filling);

  const run = () => model.solve(20_000);
  const poolValues = (values: Float64Array): Float64Array =>
    Float64Array.from(columnOf, (column) => Math.max(0, values[column] ?? 0));

  const solveRoot = (upper: number, given: readonly number[], stop: () => boolean): RootOutcome => {
    lengthGuess = upper;
    const restore = lend(given);
    for (const { credit, length } of lentRests) model.setColumnBounds(credit, 0, length);
    let best: { bound: number; cut: HeightCut } | null = null;
    let outcome = run();
    for (let round = 0; round < 2000; round++) {
      if (outcome.status !== "optimal") break;
      const whole = wholePrices(outcome.prices, demand, lengthGuess);
      const cut = heightCut(oracle, demand, whole);
      const bound = fractionalBound(oracle, cut, given);
      if (best === null || bound > best.bound || (bound === best.bound && round > 0)) best = { bound, cut };
      const prices = outcome.prices;
      const priceOf = (level: number) => {
        const rest = restOf(level);
        return oracle.heights[level]! * (rest === undefined ? 1 : 1 - Math.max(0, prices[rest.row] ?? 0));
      };
      const gains = improving(oracle, cut.values, whole.scale, priceOf);
      if (gains.length === 0 || stop()) break;
      const before = pool.length;
      for (const level of spread(gains, 8)) add(oracle.filling(level, whole.prices, demand));
      if (pool.length === before) break;
      outcome = run();
    }
    if (best === null) {
      const whole = wholePrices(areaPrices(oracle), demand, lengthGuess);
      const cut = heightCut(oracle, demand, whole);
      best = { bound: fractionalBound(oracle, cut, given), cut };
    }
    restore();
    for (const { credit } of lentRests) model.setColumnBounds(credit, 0, 0);
    return { ...best, values: poolValues(outcome.values) };
  };

  /** Row that lends the strips of one height at no cost: sum of fillings - credit >= 0, credit <= count. */
  const lineFor = (level: number) => {
    let line = heightRow.get(level);
    if (line === undefined) {
      const columns: number[] = [];
      pool.forEach((filling, p) => {
        if (filling.level === level) columns.push(columnOf[p]!);
      });
      const row = model.addRow(
        0,
        Infinity,
        columns,
        columns.map(() => 1),
      );
      const credit = model.addColumn(-oracle.heights[level]!, 0, 0, [row], [-1]);
      line = { row, credit };
      heightRow.set(level, line);
    }
    return line;
  };

  /** Puts strips and sheets on the table at no cost; the function returned takes them off again. */
  const lend = (vector: readonly number[]) => {
    const levels = levelsUsed(vector);
    for (const level of levels) model.setColumnBounds(lineFor(level).credit, 0, vector[level]!);
    return () => {
      for (const level of levels) model.setColumnBounds(lineFor(level).credit, 0, 0);
    };
  };

  const testVector = (vector: readonly number[], stop: () => boolean) => {
    const given = levelsUsed(vector);
    const restore = lend(vector);
    try {
      for (let round = 0; round < 500; round++) {
        const outcome = run();
        if (outcome.status !== "optimal") return { cut: null, values: new Float64Array(pool.length) };
        if (outcome.objective < 1e-7) return { cut: null, values: poolValues(outcome.values) };
        const whole = wholePrices(outcome.prices, demand, lengthGuess);
        const values = oracle.values(whole.prices, demand, given);
        const held = given.reduce((sum, level) => sum + vector[level]! * values[level]!, 0);
        if (held < whole.total) return { cut: heightCut(oracle, demand, whole), values: new Float64Array(0) };
        const price = (level: number) => {
          const height = oracle.heights[level]!;
          return height - Math.max(0, outcome.prices[lineFor(level).row] ?? 0);
        };
        const gains = improving(oracle, values, whole.scale, price, given);
        const before = pool.length;
        for (const level of gains.slice(0, 6)) add(oracle.filling(level, whole.prices, demand));
        if (pool.length === before || stop()) return { cut: null, values: poolValues(outcome.values) };
      }
      return { cut: null, values: new Float64Array(pool.length) };
    } finally {
      restore();
    }
  };

  return { oracle, demand, pool, add, solveRoot, testVector, dispose: () => model.dispose() };
}

/** Levels whose best filling is worth more than its price, best ratio first. */
function improving(
  oracle: StripOracle,
  values: Float64Array,
  scale: number,
  price: (level: number) => number,
  among?: readonly number[],
): number[] {
  const levels = among ?? oracle.heights.map((_, level) => level);
  return levels
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

/** Prices by area, when the linear program gives none. */
function areaPrices(oracle: StripOracle): number[] {
  return oracle.kinds.map((kind) => areaOfOne(kind) / oracle.run);
}
