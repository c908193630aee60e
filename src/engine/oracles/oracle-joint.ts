import type { Kind } from "../problem/reduce.ts";
import type { Filling, RestLevels, StripOracle } from "./oracle.ts";
import type { SheetOracle } from "./oracle-sheet.ts";

/** One kind of sheet among the levels of a joint oracle. */
export interface SheetLevel {
  oracle: SheetOracle;
  /** Nominal length one such sheet counts for. */
  height: number;
}

/** A width whose strips are cut from so much length. */
export interface RestStrips {
  oracle: StripOracle;
  length: number;
  /** It may be made as long as one of these instead. */
  ends: readonly number[];
}

/** Where strips of one run stand among the levels. */
interface Block {
  oracle: StripOracle;
  first: number;
  end: number;
}

function levelsOf(blocks: readonly Block[], rests: readonly RestStrips[]): RestLevels[] {
  return blocks.map(({ oracle, first, end }, r): RestLevels => {
    const { length, ends } = rests[r]!;
    const twin = rests.findIndex((other) => other.oracle.run === oracle.run && other.length === length);
    return { first, end, length, ends, listedTo: oracle.listedTo, twin };
  });
}

/**
 * One oracle over the strips of a roll (or none), the strips of rests beside something on it, and whole sheets, so
 * that one search serves for all.
 */
export function jointOracle(
  kinds: readonly Kind[],
  strips: StripOracle | null,
  sheets: readonly SheetLevel[],
  rests: readonly RestStrips[] = [],
): StripOracle {
  const blocks: Block[] = [];
  let first = 0;
  for (const oracle of [strips, ...rests.map((rest) => rest.oracle)]) {
    const end = first + (oracle?.heights.length ?? 0);
    if (oracle !== null) blocks.push({ oracle, first, end });
    first = end;
  }
  const restLevels = levelsOf(strips === null ? blocks : blocks.slice(1), rests);
  const heights = [...blocks.flatMap(({ oracle }) => oracle.heights), ...sheets.map((sheet) => sheet.height)];
  const sheetAt = (level: number): SheetLevel => sheets[level - first]!;
  const blockOf = (level: number): Block => blocks.find(({ end }) => level < end)!;
  /** Fillings of a block in the numbering of all levels. */
  const placed = (block: Block, filling: Filling): Filling =>
    block.first === 0 ? filling : { ...filling, level: filling.level + block.first };
  return {
    kinds,
    run: strips?.run ?? 0,
    heights,
    stripLevels: strips?.heights.length ?? 0,
    ...(rests.length === 0 ? {} : { rests: restLevels }),
    sheetCells: sheets.reduce((sum, { oracle }) => sum + oracle.cells, 0),
    // A rest is no longer than what is listed for it.
    listedTo: strips?.listedTo ?? Infinity,
    values(prices, caps, levels) {
      const result = new Float64Array(heights.length);
      for (const { oracle, first: from, end } of blocks) {
        const inside = levels?.filter((level) => level >= from && level < end).map((level) => level - from);
        if (inside === undefined) result.set(oracle.values(prices, caps), from);
        else if (inside.length > 0) result.set(oracle.values(prices, caps, inside), from);
      }
      for (const level of levels ?? heights.keys())
        if (level >= first) result[level] = sheetAt(level).oracle.value(prices, caps);
      return result;
    },
    starters(caps) {
      const list: Filling[] = blocks.flatMap((block) =>
        block.oracle.starters(caps).map((filling) => placed(block, filling)),
      );
      for (let level = first; level < heights.length; level++)
        for (let k = 0; k < kinds.length; k++) {
          const only = new Float64Array(kinds.length);
          only[k] = 1;
          const filling = sheetAt(level).oracle.filling(level, heights[level]!, only, caps);
          if (filling.counts[k]! > 0) list.push(filling);
        }
      return list;
    },
    filling(level, prices, caps) {
      if (level >= first) return sheetAt(level).oracle.filling(level, heights[level]!, prices, caps);
      const block = blockOf(level);
      return placed(block, block.oracle.filling(level - block.first, prices, caps));
    },
    fillings(level, floors, caps, limit) {
      if (level >= first) return sheetAt(level).oracle.fillings(level, heights[level]!, floors, caps, limit);
      const block = blockOf(level);
      const found = block.oracle.fillings(level - block.first, floors, caps, limit);
      return found?.map((filling) => placed(block, filling)) ?? null;
    },
    ...(blocks.every(({ oracle }) => oracle.stacks === undefined)
      ? {}
      : {
          stacks: (level, floors, caps, limit) => {
            if (level >= first) return null;
            const block = blockOf(level);
            return block.oracle.stacks!(level - block.first, floors, caps, limit);
          },
        }),
    tallRate: (prices) => strips?.tallRate(prices) ?? null,
  };
}
