import type { Frames } from "../problem/assemble.ts";
import type { Clock } from "../problem/clock.ts";
import { sum } from "../problem/counts.ts";
import type { CuttingRules, SheetSize } from "../problem/roll-question.ts";
import { metered } from "./metered.ts";
import type { Filling, StripOracle } from "./oracle.ts";
import { type SheetOracle, sheetOracle } from "./oracle-sheet.ts";

/** One kind of sheet among the levels of a joint oracle. */
export interface SheetLevel {
  oracle: SheetOracle;
  /** Nominal length one such sheet counts for. */
  height: number;
}

/** Sheets that count for whatever length `heightOf` says, one step at least. */
export function sheetLevels<T extends SheetSize>(
  rules: CuttingRules,
  frames: Frames,
  sheets: readonly T[],
  heightOf: (sheet: T) => number,
): SheetLevel[] {
  return sheets.map((sheet, index) => ({
    oracle: sheetOracle(rules, frames, sheet, index),
    height: Math.max(1, Math.round(heightOf(sheet))),
  }));
}

/** A width whose strips are cut from so much length. */
export interface RestStrips {
  oracle: StripOracle;
  length: number;
  /** It may be made as long as one of these instead. */
  ends: readonly number[];
}

/**
 * One oracle over the strips of a roll (or none), the strips of rests beside something on it, and whole sheets, so
 * that one search serves for all. It tells the clock of its work.
 */
export function jointOracle(
  { upright: kinds }: Frames,
  clock: Clock,
  strips: StripOracle | null,
  sheets: readonly SheetLevel[],
  rests: readonly RestStrips[] = [],
): StripOracle {
  /** Where strips of one run stand among the levels. */
  const blocks: { oracle: StripOracle; first: number; end: number }[] = [];
  for (const oracle of [...(strips === null ? [] : [strips]), ...rests.map((rest) => rest.oracle)]) {
    const first = blocks.at(-1)?.end ?? 0;
    blocks.push({ oracle, first, end: first + oracle.heights.length });
  }
  const sheetsFrom = blocks.at(-1)?.end ?? 0;
  const restLevels = rests.map(({ oracle, length, ends }, r) => {
    const { first, end } = blocks[r + (strips === null ? 0 : 1)]!;
    const twin = rests.findIndex((other) => other.oracle.run === oracle.run && other.length === length);
    return { first, end, length, ends, listedTo: oracle.listedTo, twin };
  });
  const heights = [...blocks.flatMap(({ oracle }) => oracle.heights), ...sheets.map((sheet) => sheet.height)];
  const sheetAt = (level: number): SheetOracle => sheets[level - sheetsFrom]!.oracle;
  const blockOf = (level: number) => blocks.find(({ end }) => level < end)!;
  /** A filling of a block in the numbering of all levels. */
  const placed = (first: number, filling: Filling): Filling =>
    first === 0 ? filling : { ...filling, level: filling.level + first };
  const hasStacks = blocks.some(({ oracle }) => oracle.stacks !== undefined);
  const joint: StripOracle = {
    ...{ kinds, heights, run: strips?.run ?? 0, stripLevels: strips?.heights.length ?? 0 },
    ...(rests.length === 0 ? {} : { rests: restLevels }),
    sheetCells: sum(sheets, ({ oracle }) => oracle.cells),
    // A rest is no longer than what is listed for it.
    listedTo: strips?.listedTo ?? Infinity,
    values(prices, caps, levels) {
      const result = new Float64Array(heights.length);
      for (const { oracle, first, end } of blocks) {
        const inside = levels?.filter((level) => level >= first && level < end).map((level) => level - first);
        if (inside?.length !== 0) result.set(oracle.values(prices, caps, inside), first);
      }
      for (const level of levels ?? heights.keys())
        if (level >= sheetsFrom) result[level] = sheetAt(level).value(prices, caps);
      return result;
    },
    starters(caps) {
      const ofStrips = blocks.flatMap(({ oracle, first }) =>
        oracle.starters(caps).map((filling) => placed(first, filling)),
      );
      const ofSheets = sheets.flatMap((_, s) =>
        kinds.map((_, k) =>
          joint.filling(
            sheetsFrom + s,
            Float64Array.from(kinds, (_, i) => Number(i === k)),
            caps,
          ),
        ),
      );
      return [...ofStrips, ...ofSheets.filter(({ counts }) => counts.some((copies) => copies > 0))];
    },
    filling(level, prices, caps) {
      if (level >= sheetsFrom) return sheetAt(level).filling(level, heights[level]!, prices, caps);
      const { oracle, first } = blockOf(level);
      return placed(first, oracle.filling(level - first, prices, caps));
    },
    fillings(level, listing) {
      if (level >= sheetsFrom) return sheetAt(level).fillings(level, heights[level]!, listing);
      const { oracle, first } = blockOf(level);
      return oracle.fillings(level - first, listing)?.map((filling) => placed(first, filling)) ?? null;
    },
    ...(hasStacks && {
      stacks: (level, listing) => {
        if (level >= sheetsFrom) return null;
        const { oracle, first } = blockOf(level);
        return oracle.stacks!(level - first, listing);
      },
    }),
    tallRate: (prices) => strips?.tallRate(prices) ?? null,
  };
  return metered(joint, clock);
}
