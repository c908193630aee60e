import type { Filling, Placed, Segment } from "./oracle.ts";
import type { Kind } from "./reduce.ts";

/** A stack that can take nothing more, and the width of segment it needs. */
export interface StackType {
  width: number;
  stack: Placed[];
  /** Copies of every kind in it. */
  counts: number[];
}

export interface RowQuestion {
  kinds: readonly Kind[];
  run: number;
  level: number;
  height: number;
  caps: readonly number[];
  prices: Float64Array;
  floor: number;
  most: number;
}

interface RowState {
  room: number;
  value: number;
  counts: number[];
  /** The stacks chosen, last first. */
  chain: { type: StackType; before: RowState["chain"] } | null;
}

/**
 * Every row of stacks worth at least `floor`, rows with equal counts (capped at the demand) once. Stack by
 * stack the set of reachable counts grows; of states with equal counts the one with most room left serves
 * for all. `beside(room)` is the most that any stacks can be worth in that room.
 */
export function rowsOf(
  question: RowQuestion,
  types: readonly StackType[],
  beside: (room: number) => number,
): Filling[] | null {
  const { kinds, run, caps, prices, floor, most } = question;
  const key = keyMaker(caps);
  const start: RowState = { room: run, value: 0, counts: kinds.map(() => 0), chain: null };
  const states = new Map<number | string, RowState>([[key(start.counts), start]]);
  let steps = 0;
  for (const type of types) {
    for (const from of [...states.values()]) {
      let state = from;
      while (state.room >= type.width) {
        if (++steps > most * 40) return null;
        const counts = state.counts.map((count, k) => Math.min(caps[k]!, count + type.counts[k]!));
        const value = counts.reduce((sum, count, k) => sum + count * prices[k]!, 0);
        const room = state.room - type.width;
        // More of a kind than is wanted helps nothing.
        if (counts.every((count, k) => count === state.counts[k]) || value + beside(room) < floor) break;
        const next: RowState = { room, value, counts, chain: { type, before: state.chain } };
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
  return kept.length > most ? null : kept.map((state) => toFilling(question, state));
}

function toFilling({ kinds, level, height }: RowQuestion, state: RowState): Filling {
  const segments: Segment[] = [];
  for (let link = state.chain; link !== null; link = link.before)
    segments.push(narrowed(kinds, link.type.stack));
  const counts = kinds.map(() => 0);
  for (const segment of segments) for (const { kind } of segment.stack) counts[kind]!++;
  return { level, height, counts, segments };
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
function undominated(states: readonly RowState[]): RowState[] {
  const sorted = states.slice().sort((a, b) => b.value - a.value);
  const kept: RowState[] = [];
  for (const state of sorted)
    if (!kept.some((other) => other.counts.every((count, k) => count >= state.counts[k]!))) kept.push(state);
  return kept;
}

/** Leaves out stacks that a narrower or equal one covers kind by kind. */
export function withoutDominated(types: readonly StackType[]): StackType[] {
  if (types.length > 2000) return [...types];
  const sorted = types.slice().sort((a, b) => a.width - b.width || total(b.counts) - total(a.counts));
  const kept: StackType[] = [];
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
