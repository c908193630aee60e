import type { Filling, StripOracle } from "./oracle.ts";
import type { SheetOracle } from "./oracle-sheet.ts";
import type { Kind } from "./reduce.ts";

/** One kind of sheet among the levels of a joint oracle. */
export interface SheetLevel {
  oracle: SheetOracle;
  /** Nominal length one such sheet counts for. */
  height: number;
}

/** One oracle over the strips of a roll (or none) and whole sheets, so that one search serves for both. */
export function jointOracle(
  kinds: readonly Kind[],
  strips: StripOracle | null,
  sheets: readonly SheetLevel[],
): StripOracle {
  const first = strips === null ? 0 : strips.heights.length;
  const heights = [...(strips?.heights ?? []), ...sheets.map((sheet) => sheet.height)];
  const sheetAt = (level: number): SheetLevel => sheets[level - first]!;
  return {
    kinds,
    run: strips?.run ?? 0,
    heights,
    stripLevels: first,
    sheetCells: sheets.reduce((sum, { oracle }) => sum + oracle.cells, 0),
    listedTo: strips?.listedTo ?? Infinity,
    values(prices, caps, levels) {
      const result = new Float64Array(heights.length);
      const wanted = levels ?? heights.map((_, level) => level);
      const ofStrips = wanted.filter((level) => level < first);
      if (strips !== null && ofStrips.length > 0)
        result.set(strips.values(prices, caps, levels === undefined ? undefined : ofStrips));
      for (const level of wanted)
        if (level >= first) result[level] = sheetAt(level).oracle.value(prices, caps);
      return result;
    },
    starters(caps) {
      const list: Filling[] = strips?.starters(caps) ?? [];
      for (let level = first; level < heights.length; level++)
        for (let k = 0; k < kinds.length; k++) {
          const only = new Float64Array(kinds.length);
          only[k] = 1;
          const filling = sheetAt(level).oracle.filling(level, heights[level]!, only, caps);
          if (filling.counts[k]! > 0) list.push(filling);
        }
      return list;
    },
    filling: (level, prices, caps) =>
      level < first
        ? strips!.filling(level, prices, caps)
        : sheetAt(level).oracle.filling(level, heights[level]!, prices, caps),
    fillings: (level, floors, caps, limit) =>
      level < first
        ? strips!.fillings(level, floors, caps, limit)
        : sheetAt(level).oracle.fillings(level, heights[level]!, floors, caps, limit),
    ...(strips?.stacks === undefined
      ? {}
      : {
          stacks: (level, floors, caps, limit) =>
            level < first ? strips.stacks!(level, floors, caps, limit) : null,
        }),
    tallRate: (prices) => strips?.tallRate(prices) ?? null,
  };
}
