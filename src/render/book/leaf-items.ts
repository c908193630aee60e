import type { Block } from "./content.ts";
import { GAP, LEAF } from "./measure.ts";

/** Something to lay on a page, whole or as much as fits. */
export interface Item {
  /** Points that must be free to begin it. */
  least: number;
  /** What fits in so many points, at least its first part, and what is left of it. */
  take(free: number): { block: Block; height: number; scale: number; rest: Item | null };
}

export function single(block: Block, height: number): Item {
  return { least: height, take: () => ({ block, height, scale: 1, rest: null }) };
}

/** Share of a page that a drawing takes at most. */
const TALLEST = 0.9;

/** A drawing; set smaller, but not under `least`, where the page it begins on has less room. */
export function scaled(
  block: Block,
  size: { width: number; height: number },
  scale: number,
  least: number,
): Item {
  const full = Math.min(scale, (LEAF.height * TALLEST) / size.height);
  const small = Math.min(full, least);
  return {
    least: size.height * small,
    take(free) {
      const own = Math.min(full, Math.max(free / size.height, small));
      return { block, height: size.height * own, scale: own, rest: null };
    },
  };
}

type Build<T> = (some: T[], first: boolean) => Block;

/** Parts one under another, with a head that is said again on every page. */
export function items<T>(
  parts: readonly T[],
  heights: readonly number[],
  head: number,
  build: Build<T>,
  first = true,
): Item | null {
  if (parts.length === 0) return null;
  return {
    least: head + (heights[0] ?? 0),
    take(free) {
      let [count, used] = [1, head + (heights[0] ?? 0)];
      while (count < parts.length && used + (heights[count] ?? 0) <= free) {
        used += heights[count] ?? 0;
        count += 1;
      }
      const rest = items(parts.slice(count), heights.slice(count), head, build, false);
      return { block: build(parts.slice(0, count), first), height: used, scale: 1, rest };
    },
  };
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
  const whole = heights.reduce((total, own) => total + own, 0);
  for (let most = Math.max(whole / columns, ...heights, 0); most < whole; most += 2) {
    const found = filled(heights, columns, most + 0.01);
    if (found !== null) return found;
  }
  return whole;
}

/** Parts in columns that end alike; what does not fit goes on in columns on the next page. */
export function balanced<T>(
  parts: readonly T[],
  heights: readonly number[],
  columns: number,
  build: Build<T>,
): Item | null {
  if (parts.length === 0) return null;
  return {
    least: Math.max(...heights.slice(0, columns)),
    take(free) {
      let count = parts.length;
      let height = balancedHeight(heights, columns);
      while (count > 1 && height > free + 0.01) {
        count -= 1;
        height = balancedHeight(heights.slice(0, count), columns);
      }
      const rest = balanced(parts.slice(count), heights.slice(count), columns, build);
      return { block: build(parts.slice(0, count), true), height, scale: 1, rest };
    },
  };
}

/** Parts of one height in rows. */
export function gridItem<T>(
  parts: readonly T[],
  columns: number,
  height: number,
  build: Build<T>,
): Item | null {
  const rows = Array.from({ length: Math.ceil(parts.length / columns) }, (_, r) =>
    parts.slice(r * columns, (r + 1) * columns),
  );
  return items(
    rows,
    rows.map(() => height),
    GAP.row,
    (some, first) => build(some.flat(), first),
  );
}
