import { nth } from "../../length/nth.ts";
/*
 * Where pages end, chosen for the whole book at once: fewest pages first, then none that is half empty, then pages
 * alike. The way is that of breaking a paragraph into lines (dynamic programming over the places where a page may end).
 */

/** Whether a page ends after a part of the book, and how good a place that is. */
export interface Cut {
  may: boolean;
  must: boolean;
  cost: number;
  /** The part has a page of its own, whatever its height. */
  alone: boolean;
}

/** Points that a page takes, with its drawings as small as can be read, as usual, and as large as looks well. */
export interface PageHeights {
  room: number;
  least: number;
  usual: number;
  most: number;
}

/** What a page costs beside all that makes one better than another. */
export const PAGE = 1e6;
/** Less of a page than this is no page. */
const HALF_EMPTY = 0.55;
const EMPTY = 1e4;
/** What a page costs that overflows because one part alone is higher than the paper. */
const OVER = 1e7;

/** What a page costs, last of all that is read or not. */
function costOf({ room, least, usual, most }: PageHeights, last: boolean): number {
  if (least > room + 0.01) return OVER;
  const tight = usual > room ? (usual - room) / Math.max(1, usual - least) : 0;
  const fill = Math.min(room, Math.max(usual, Math.min(most, room))) / room;
  const empty = last ? 0 : fill < HALF_EMPTY ? EMPTY * (1 + HALF_EMPTY - fill) : 0;
  return tight * 30 + empty + (last ? 0 : 100 * (1 - Math.min(1, usual / room)) ** 2);
}

/**
 * The ends of the pages, each the place after its last part, and what they cost together.
 * @param heights of a page that holds the parts from one on to the one before another
 */
export function bestBreaks(
  cuts: readonly Cut[],
  heights: (from: number, to: number) => PageHeights,
): { ends: number[]; cost: number } {
  const count = cuts.length;
  const lastRead = cuts.findLastIndex(({ alone }) => !alone);
  const best: { cost: number; end: number }[] = Array.from({ length: count + 1 }, () => ({
    cost: Number.POSITIVE_INFINITY,
    end: count,
  }));
  best[count] = { cost: 0, end: count };
  for (let from = count - 1; from >= 0; from -= 1) {
    for (let to = from + 1; to <= count; to += 1) {
      const cut = nth(cuts, to - 1);
      const rest = best[to]?.cost ?? Number.POSITIVE_INFINITY;
      if (cuts[from]?.alone === true) {
        best[from] = { cost: rest + PAGE, end: to };
        break;
      }
      const page = heights(from, to);
      const over = page.least > page.room + 0.01;
      if ((cut.may || cut.must) && (!over || best[from]?.cost === Number.POSITIVE_INFINITY)) {
        const cost = PAGE + costOf(page, to > lastRead) + cut.cost + rest;
        if (cost < (best[from]?.cost ?? 0)) best[from] = { cost, end: to };
      }
      // What is higher than the paper only grows; a part that alone is higher has been taken.
      if (cut.must || (over && best[from]?.cost !== Number.POSITIVE_INFINITY)) break;
    }
  }
  const ends: number[] = [];
  for (let at = 0; at < count; ) {
    at = best[at]?.end ?? count;
    ends.push(at);
  }
  return { ends, cost: best[0]?.cost ?? 0 };
}
