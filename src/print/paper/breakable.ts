import type { Block } from "../../content/book/content.ts";
import { GAP, LEAF } from "./measure.ts";

/** A block, or as much of it as is on one page, as it stands there. */
export interface Standing {
  block: Block;
  /** Points it is high as it is usually set. */
  height: number;
  /** Of a drawing: points to its own unit. */
  scale: number;
  /** Of a drawing that may be set smaller or larger: its height in its own units, and how far. */
  stretch?: { high: number; least: number; most: number };
}

/** A block that may be broken between its parts. */
export interface Breakable {
  parts: number;
  /** Parts from the first on to the one before the last named, as they stand together on a page. */
  stand(from: number, to: number): Standing[];
}

/** A block that is never broken. */
export function whole(block: Block, height: number): Breakable {
  return { parts: 1, stand: () => [{ block, height, scale: 1 }] };
}

/** Share of a page that a drawing takes at most. */
const TALLEST = 0.9;

/** A drawing between its smallest and its largest scale. */
export function stretched(
  block: Block,
  size: { height: number },
  scales: { least: number; usual: number; most: number },
): Breakable {
  const top = (LEAF.height * TALLEST) / size.height;
  const usual = Math.min(scales.usual, top);
  const [least, most] = [Math.min(usual, scales.least), Math.max(usual, Math.min(scales.most, top))];
  const height = size.height * usual;
  return {
    parts: 1,
    stand: () => [{ block, height, scale: usual, stretch: { high: size.height, least, most } }],
  };
}

/** The same for every page that asks again. */
function remembered(parts: number, stand: Breakable["stand"]): Breakable {
  const known = new Map<number, Standing[]>();
  return {
    parts,
    stand(from, to) {
      const key = from * (parts + 1) + to;
      const found = known.get(key) ?? stand(from, to);
      known.set(key, found);
      return found;
    },
  };
}

/** One or more blocks that are worked out for the parts that are together. */
export function worked(parts: number, stand: Breakable["stand"]): Breakable | null {
  return parts === 0 ? null : remembered(parts, stand);
}

const sum = (values: readonly number[]): number => values.reduce((total, each) => total + each, 0);

type Build<T> = (some: T[], from: number) => Block;

/** Parts one under another, with a head that is said again on every page. */
function stacked<T>(
  all: readonly T[],
  heights: readonly number[],
  head: number,
  build: Build<T>,
): Breakable | null {
  return worked(all.length, (from, to) => [
    { block: build(all.slice(from, to), from), height: head + sum(heights.slice(from, to)), scale: 1 },
  ]);
}

/** Columns that parts fill one after another when none is higher than `most`; null when there are not enough. */
function filled(heights: readonly number[], columns: number, most: number): number | null {
  let [column, used, highest] = [1, 0, 0];
  for (const own of heights) {
    if (used > 0 && used + own > most) {
      column += 1;
      used = 0;
    }
    used += own;
    highest = Math.max(highest, used);
  }
  return column <= columns ? highest : null;
}

/** The least height at which parts fit in so many columns, one column after another. */
export function balancedHeight(heights: readonly number[], columns: number): number {
  const all = sum(heights);
  for (let most = Math.max(all / columns, ...heights, 0); most < all; most += 2) {
    const found = filled(heights, columns, most + 0.01);
    if (found !== null) return found;
  }
  return all;
}

/** Parts in columns that end alike; what does not fit goes on in columns on the next page. */
export function balanced<T>(
  all: readonly T[],
  heights: readonly number[],
  columns: number,
  build: Build<T>,
): Breakable | null {
  return worked(all.length, (from, to) => [
    {
      block: build(all.slice(from, to), from),
      height: balancedHeight(heights.slice(from, to), columns),
      scale: 1,
    },
  ]);
}

/** Parts of one height in rows, one part for each row. */
export function inRows<T>(
  all: readonly T[],
  columns: number,
  height: number,
  build: (some: T[]) => Block,
): Breakable | null {
  const rows = Array.from({ length: Math.ceil(all.length / columns) }, (_, r) =>
    all.slice(r * columns, (r + 1) * columns),
  );
  return stacked(
    rows,
    rows.map(() => height),
    GAP.row,
    (some) => build(some.flat()),
  );
}
