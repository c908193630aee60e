import type { Clock } from "../problem/clock.ts";
import { firstSheet, type StripOracle } from "./oracle.ts";

/** Milliseconds a cell of the oracle's tables takes, about. */
const CELL = 1e-6;

/** Reading a filling off takes as long as so many strip heights, or as asking so many sheets. */
const FILLING = { strips: 12, sheets: 2 } as const;

/** The oracle, telling the clock of the work it does: cells of its tables, counted by their size. */
export function metered(oracle: StripOracle, clock: Clock): StripOracle {
  if (!clock.counted) return oracle;
  const kinds = oracle.kinds.reduce((sum, kind) => sum + kind.lies.length, 0);
  const { heights, sheetCells = 0 } = oracle;
  const stripLevels = firstSheet(oracle);
  const strip = (Math.min(oracle.run, 4000) + 50) * kinds * CELL;
  const sheet = (sheetCells * CELL) / Math.max(1, heights.length - stripLevels);
  const charge = (strips: number, sheets: number) => clock.charge(0.01 + strip * strips + sheet * sheets);
  return {
    ...oracle,
    values(prices, caps, levels) {
      const strips = levels?.filter((level) => level < stripLevels).length ?? stripLevels;
      charge(strips, (levels?.length ?? heights.length) - strips);
      return oracle.values(prices, caps, levels);
    },
    filling(at, prices, caps) {
      charge(at < stripLevels ? FILLING.strips : 0, at < stripLevels ? 0 : FILLING.sheets);
      return oracle.filling(at, prices, caps);
    },
  };
}
