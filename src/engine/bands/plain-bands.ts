import type { RollAnswer, RollQuestion } from "../problem/roll-question.ts";
import type { BandGroup } from "./band-sections.ts";

export interface BandAnswer extends RollAnswer {
  /** Band groups in the plan; the rest beside group g is the sheet with index `given.length + g`. */
  groups: BandGroup[];
}

/** One way of setting the band items out in groups down the roll. */
export interface Arrangement {
  groups: BandGroup[];
  /** Copies of every kind in bands. */
  banded: number[];
  along: number;
  /** No plan with these groups is shorter. */
  least: number;
}

/** All items in strips. */
export function nothingBanded({ kinds }: RollQuestion): Arrangement {
  return { groups: [], banded: kinds.map(() => 0), along: 0, least: 0 };
}

/** A group with its items numbered among all kinds instead of among some. */
export function named(group: BandGroup, indexOf: readonly number[]): BandGroup {
  return {
    ...group,
    bands: group.bands.map((band) => ({
      ...band,
      items: band.items.map(({ kind, lie }) => ({ kind: indexOf[kind]!, lie })),
    })),
  };
}

/** Many band items: fill groups as long as the longest item, side by side and end to end, one after another. */
export function oneGroupEach({ kinds, run }: RollQuestion, bandable: readonly number[]): Arrangement {
  const left = kinds.map((kind, k) => (bandable.includes(k) ? kind.demand : 0));
  const groups: BandGroup[] = [];
  const lieOf = (k: number) => {
    const { lies } = kinds[k]!;
    return lies.reduce((a, lie, l) => (lie.width <= run && lie.height > lies[a]!.height ? l : a), 0);
  };
  while (left.some((count) => count > 0)) {
    const order = bandable
      .filter((k) => left[k]! > 0)
      .sort((p, q) => kinds[q]!.lies[lieOf(q)]!.height - kinds[p]!.lies[lieOf(p)]!.height || p - q);
    const along = kinds[order[0]!]!.lies[lieOf(order[0]!)]!.height;
    const group: BandGroup = { across: 0, along, bands: [] };
    for (const k of order) {
      const { width } = kinds[k]!.lies[lieOf(k)]!;
      while (left[k]! > 0 && group.across + width <= run) {
        const items: { kind: number; lie: number }[] = [];
        let room = along;
        // End to end, items of this width or narrower.
        for (const other of order) {
          const lie = kinds[other]!.lies[lieOf(other)]!;
          if (lie.width > width) continue;
          while (left[other]! > 0 && lie.height <= room) {
            items.push({ kind: bandable.indexOf(other), lie: lieOf(other) });
            left[other]!--;
            room -= lie.height;
          }
        }
        if (items.length === 0) break;
        group.bands.push({ width, items });
        group.across += width;
      }
    }
    groups.push(group);
  }
  const banded = kinds.map((kind, k) => (bandable.includes(k) ? kind.demand : 0));
  const along = groups.reduce((sum, group) => sum + group.along, 0);
  return { groups, banded, along, least: along };
}
