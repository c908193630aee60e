import { type ListingLimit, type Placed, type Segment, stepCounter } from "./oracle.ts";
import type { Kind } from "./reduce.ts";

/** Something that takes up room in a row: a stack in a strip, or a strip on a sheet. */
export interface RowType {
  /** Room it takes. */
  width: number;
  /** Copies of every kind in it. */
  counts: number[];
}

/** A stack that can take nothing more, and the width of segment it needs. */
export interface StackType extends RowType {
  stack: Placed[];
}

export interface RowQuestion {
  /** Room in the row. */
  run: number;
  caps: readonly number[];
  prices: Float64Array;
  floor: number;
  limit: ListingLimit;
}

interface RowState<T> {
  room: number;
  value: number;
  counts: number[];
  /** What was chosen, last first. */
  chain: Link<T> | null;
}

interface Link<T> {
  type: T;
  before: Link<T> | null;
}

/**
 * Every row worth at least `floor`, as the things chosen; rows with equal counts (capped at the demand)
 * once. Thing by thing the set of reachable counts grows; of states with equal counts the one with most
 * room left serves for all. `beside(room)` is the most that anything can be worth in that room. Null when
 * there are too many.
 */
export function rowsOf<T extends RowType>(
  question: RowQuestion,
  types: readonly T[],
  beside: (room: number) => number,
): T[][] | null {
  const { run, caps, prices, floor, limit } = question;
  const { most } = limit;
  const key = keyMaker(caps);
  const start: RowState<T> = { room: run, value: 0, counts: caps.map(() => 0), chain: null };
  const states = new Map<number | string, RowState<T>>([[key(start.counts), start]]);
  const tired = stepCounter(limit, 40);
  for (const type of types) {
    for (const from of [...states.values()]) {
      let state = from;
      while (state.room >= type.width) {
        if (tired()) return null;
        const counts = state.counts.map((count, k) => Math.min(caps[k]!, count + type.counts[k]!));
        const value = counts.reduce((sum, count, k) => sum + count * prices[k]!, 0);
        const room = state.room - type.width;
        // More of a kind than is wanted helps nothing.
        if (counts.every((count, k) => count === state.counts[k]) || value + beside(room) < floor) break;
        const next: RowState<T> = { room, value, counts, chain: { type, before: state.chain } };
        const at = key(counts);
        const known = states.get(at);
        if (known !== undefined && known.room >= room) break;
        states.set(at, next);
        state = next;
      }
    }
    if (states.size > most * 4) return null;
  }
  const ends = [...states.values()].filter((state) => state.value >= floor);
  const kept = ends.length > 3000 ? ends : undominated(ends);
  return kept.length > most ? null : kept.map((state) => unlink(state.chain));
}

function unlink<T>(chain: Link<T> | null): T[] {
  const list: T[] = [];
  for (let link = chain; link !== null; link = link.before) list.push(link.type);
  return list;
}

/** Counts as one number where that is safe, else as text. */
function keyMaker(caps: readonly number[]): (counts: readonly number[]) => number | string {
  const size = caps.reduce((product, cap) => product * (cap + 1), 1);
  if (size >= Number.MAX_SAFE_INTEGER) return (counts) => counts.join(",");
  return (counts) => {
    let key = 0;
    for (let k = 0; k < counts.length; k++) key = key * (caps[k]! + 1) + counts[k]!;
    return key;
  };
}

/** Leaves out states that another covers kind by kind. */
function undominated<T>(states: readonly RowState<T>[]): RowState<T>[] {
  const sorted = states.slice().sort((a, b) => b.value - a.value);
  const kept: RowState<T>[] = [];
  for (const state of sorted)
    if (!kept.some((other) => other.counts.every((count, k) => count >= state.counts[k]!))) kept.push(state);
  return kept;
}

/** Leaves out stacks that a narrower or equal one covers kind by kind. */
export function withoutDominated<T extends RowType>(types: readonly T[]): T[] {
  if (types.length > 2000) return [...types];
  const sorted = types.slice().sort((a, b) => a.width - b.width || total(b.counts) - total(a.counts));
  const kept: T[] = [];
  for (const type of sorted)
    if (!kept.some((other) => other.counts.every((count, k) => count >= type.counts[k]!))) kept.push(type);
  return kept.reverse();
}

function total(counts: readonly number[]): number {
  return counts.reduce((sum, count) => sum + count, 0);
}

export function countStack(stack: readonly Placed[], kinds: number): number[] {
  const counts = new Array<number>(kinds).fill(0);
  for (const { kind } of stack) counts[kind]!++;
  return counts;
}

/** A segment is as wide as the widest item that really lies in it. */
export function narrowed(kinds: readonly Kind[], stack: readonly Placed[]): Segment {
  const width = Math.max(...stack.map((placed) => kinds[placed.kind]!.lies[placed.lie]!.width));
  return { width, stack: stack.slice() };
}
