import type { Counts } from "../problem/counts.ts";
import type { Kind } from "../problem/reduce.ts";

/** A lengthwise band: items one after another down the roll, all within its width. */
interface Band {
  width: number;
  items: { kind: number; lie: number }[];
}

/** Bands side by side at one place of the roll. */
export interface BandGroup {
  /** Width the bands take together. */
  across: number;
  /** Length of the longest. */
  along: number;
  bands: Band[];
}

/** How many of each band kind a state stands for, as one number and as a list. */
export interface States {
  size: number;
  countsOf(state: number): number[];
  indexOf(counts: readonly number[]): number;
}

/** Mixed-radix numbering of all counts from nothing up to the demand. */
export function statesOf(demand: Counts): States {
  return {
    size: demand.reduce((product, wanted) => product * (wanted + 1), 1),
    countsOf(state) {
      const counts: number[] = [];
      for (const wanted of demand) {
        counts.push(state % (wanted + 1));
        state = Math.floor(state / (wanted + 1));
      }
      return counts;
    },
    indexOf(counts) {
      let index = 0;
      for (let k = demand.length - 1; k >= 0; k--) index = index * (demand[k]! + 1) + counts[k]!;
      return index;
    },
  };
}

/**
 * For every state, the band groups that hold exactly it and that no other group of that state beats both
 * ways. A band is as wide as its widest item; narrower ones are trimmed.
 */
export function bandGroups(kinds: readonly Kind[], states: States, width: number): BandGroup[][] {
  const single: Band[][] = Array.from({ length: states.size }, () => []);
  const widths = [...new Set(kinds.flatMap((kind) => kind.lies.map((lie) => lie.width)))];
  for (const bandWidth of widths.filter((w) => w <= width)) {
    // The shortest lie that suits the band, kind by kind: any state is then one row of items.
    const lies = kinds.map((kind) => {
      const fit = kind.lies.flatMap((lie, l) => (lie.width <= bandWidth ? [l] : []));
      return fit.length === 0
        ? -1
        : fit.reduce((a, b) => (kind.lies[b]!.height < kind.lies[a]!.height ? b : a));
    });
    for (let state = 1; state < states.size; state++) {
      const counts = states.countsOf(state);
      if (counts.some((count, k) => count > 0 && lies[k]! < 0)) continue;
      // A band as wide as nothing in it is a narrower band too.
      if (!counts.some((count, k) => count > 0 && kinds[k]!.lies[lies[k]!]!.width === bandWidth)) continue;
      const items = counts.flatMap((count, kind) =>
        Array.from({ length: count }, () => ({ kind, lie: lies[kind]! })),
      );
      single[state]!.push({ width: bandWidth, items });
    }
  }
  const lengthOf = (band: Band) =>
    band.items.reduce((sum, { kind, lie }) => sum + kinds[kind]!.lies[lie]!.height, 0);
  const groups: BandGroup[][] = [[{ across: 0, along: 0, bands: [] }]];
  for (let state = 1; state < states.size; state++) {
    const list: BandGroup[] = [];
    for (const part of partsWithFirst(states, state))
      for (const band of single[part]!)
        for (const rest of groups[state - part]!) {
          const across = band.width + rest.across;
          if (across > width) continue;
          keepBest(list, {
            across,
            along: Math.max(lengthOf(band), rest.along),
            bands: [band, ...rest.bands],
          });
        }
    groups.push(list);
  }
  return groups;
}

/** Parts of a state that hold at least one of its first kind, so that no split is met twice. */
export function partsWithFirst(states: States, state: number): number[] {
  const counts = states.countsOf(state);
  const first = counts.findIndex((count) => count > 0);
  const parts: number[] = [];
  const chosen = counts.map(() => 0);
  const visit = (k: number): void => {
    if (k === counts.length) {
      parts.push(states.indexOf(chosen));
      return;
    }
    for (let count = counts[k]!; count >= (k === first ? 1 : 0); count--) {
      chosen[k] = count;
      visit(k + 1);
    }
    chosen[k] = 0;
  };
  visit(0);
  return parts;
}

function keepBest(list: BandGroup[], group: BandGroup): void {
  if (list.some((other) => other.across <= group.across && other.along <= group.along)) return;
  for (let i = list.length - 1; i >= 0; i--)
    if (group.across <= list[i]!.across && group.along <= list[i]!.along) list.splice(i, 1);
  list.push(group);
}
