import type { Clock } from "./clock.ts";
import type { StripOracle } from "./oracle.ts";

/** Milliseconds a cell of the oracle's tables takes, about. */
const CELL = 1e-6;

/** Reading a filling off takes as long as so many strip heights. */
const FILLING = 12;

/** The oracle, telling the clock of the work it does: cells of its tables, counted by their size. */
export function metered(oracle: StripOracle, clock: Clock): StripOracle {
  if (!clock.counted) return oracle;
  const kinds = oracle.kinds.reduce((sum, kind) => sum + kind.lies.length, 0);
  const sheets = oracle.heights.length - oracle.stripLevels;
  const level = (Math.min(oracle.run, 4000) + 50) * kinds * CELL;
  /** A sheet is a row of strips: a whole table of levels for one. */
  const cost = (strips: number) => 0.01 + level * (strips + sheets * 30);
  return {
    ...oracle,
    values(prices, caps, levels) {
      clock.charge(cost(levels?.length ?? oracle.stripLevels));
      return oracle.values(prices, caps, levels);
    },
    filling(at, prices, caps) {
      clock.charge(cost(FILLING));
      return oracle.filling(at, prices, caps);
    },
  };
}
