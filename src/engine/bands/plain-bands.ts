import { share } from "../problem/clock.ts";
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

/** A group with its items numbered among all kinds instead of among the band kinds. */
export function named(group: BandGroup, bandable: readonly number[]): BandGroup {
  return renumbered(group, (kind) => bandable[kind]!);
}

function renumbered(group: BandGroup, numberOf: (kind: number) => number): BandGroup {
  return {
    ...group,
    bands: group.bands.map((band) => ({
      ...band,
      items: band.items.map(({ kind, lie }) => ({ kind: numberOf(kind), lie })),
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

/**
 * The groups of a plan for half the items, twice, and groups for what is then left over: of many items there are too
 * many arrangements to look at, of half as many perhaps not. Null when there is no half, or no plan of it.
 */
export function groupsTwice(
  question: RollQuestion,
  bandable: readonly number[],
  solve: (half: RollQuestion) => BandAnswer,
): Arrangement | null {
  const { kinds, clock } = question;
  if (bandable.every((k) => kinds[k]!.demand < 4)) return null;
  const half = kinds.map((kind, k) => {
    const demand = bandable.includes(k) ? Math.floor(kind.demand / 2) : Math.ceil(kind.demand / 2);
    return { ...kind, demand };
  });
  const limits = { clock: share(clock, 0.4, Infinity), enough: null, ceiling: null };
  const { groups, length } = solve({ ...question, ...limits, kinds: half, given: [], report: () => {} });
  if (!Number.isFinite(length)) return null;
  const once = groups.map((group) => renumbered(group, (kind) => bandable.indexOf(kind)));
  const held = kinds.map(() => 0);
  for (const { bands } of groups)
    for (const { items } of bands) for (const { kind } of items) held[kind]! += 2;
  // What the half leaves in strips stays there; an odd one goes into a band.
  const odd = kinds.map((kind, k) => ({ ...kind, demand: held[k]! > 0 ? kind.demand - held[k]! : 0 }));
  const rest = oneGroupEach({ ...question, kinds: odd }, bandable);
  const all = [...once, ...once, ...rest.groups];
  const banded = held.map((count, k) => count + rest.banded[k]!);
  const along = all.reduce((sum, group) => sum + group.along, 0);
  const whole = kinds.every(({ place, demand }, k) => place !== "bands" || banded[k] === demand);
  return whole ? { groups: all, banded, along, least: along } : null;
}
