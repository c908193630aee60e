import { sum } from "../problem/counts.ts";
import type { Kind } from "../problem/reduce.ts";
import { type Listing, type Placed, type Segment, stepCounter, type ValueFloor } from "./oracle.ts";
import { type RowStates, rowStates } from "./row-states.ts";

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

/** What a row must be worth, and `beside(room)`: the most that anything can be worth in so much room of it. */
export interface RowFloor extends ValueFloor {
  beside: (room: number) => number;
}

/** What a part of a row must be worth when `room` is left beside it. */
export function floorsOfPart(floors: readonly RowFloor[], room: number): ValueFloor[] {
  return floors.map(({ prices, floor, beside }) => ({ prices, floor: floor - beside(room) }));
}

/**
 * Every row worth enough for all the floors, as the things chosen; rows with equal counts (capped at the demand)
 * once. Thing by thing the set of reachable counts grows; of states with equal counts the one with most
 * room left serves for all. Null when there are too many.
 */
export function rowsOf<T extends RowType>(
  run: number,
  listing: Listing<RowFloor>,
  types: readonly T[],
): T[][] | null {
  const { caps, floors, most } = listing;
  const states = rowStates(
    floors.map(({ prices }) => prices),
    run,
  );
  const tired = stepCounter(listing, 40);
  const mostBeside = floors.map(({ beside }) => remembered(beside, run));
  const gain = caps.map(() => 0);
  for (const [t, type] of types.entries()) {
    const held = type.counts.flatMap((count, k) => (count > 0 ? [k] : []));
    // States that come up for this type have taken as many of it as they can.
    for (let i = 0, before = states.size(); i < before; i++) {
      let state = i;
      while (states.room(state) >= type.width) {
        if (tired()) return null;
        let more = 0;
        for (const k of held) {
          const copies = Math.min(type.counts[k]!, caps[k]! - states.count(state, k));
          gain[k] = copies;
          more += copies;
        }
        const room = states.room(state) - type.width;
        // More of a kind than is wanted helps nothing.
        if (more === 0) break;
        let enough = true;
        for (let f = 0; enough && f < floors.length; f++) {
          const { prices, floor } = floors[f]!;
          let value = states.value(state, f) + mostBeside[f]!(room);
          for (const k of held) value += gain[k]! * prices[k]!;
          enough = value >= floor;
        }
        if (!enough) break;
        const next = states.grow(state, held, gain, room, t);
        if (next < 0) break;
        state = next;
      }
    }
    if (states.size() > most * 4) return null;
  }
  const ends: number[] = [];
  for (let state = 0; state < states.size(); state++)
    if (floors.every(({ floor }, f) => states.value(state, f) >= floor)) ends.push(state);
  const kept = ends.length > 3000 ? ends : undominated(states, ends, caps.length);
  return kept.length > most ? null : kept.map((state) => chosenOf(states, state, types));
}

/** Longest row for which what goes beside is remembered room by room. */
const REMEMBERED = 100_000;

/** The same function, each room asked about once. */
function remembered(beside: (room: number) => number, run: number): (room: number) => number {
  if (run > REMEMBERED) return beside;
  const known = new Float64Array(run + 1).fill(-1);
  return (room) => {
    if (known[room] === -1) known[room] = beside(room);
    return known[room]!;
  };
}

/** What was chosen, last first. */
function chosenOf<T>(states: RowStates, state: number, types: readonly T[]): T[] {
  const list: T[] = [];
  for (let at = state; states.before(at) >= 0; at = states.before(at)) list.push(types[states.type(at)]!);
  return list;
}

/** Leaves out states that another covers kind by kind. */
function undominated(states: RowStates, ends: readonly number[], kinds: number): number[] {
  const sorted = ends.slice().sort((a, b) => states.value(b, 0) - states.value(a, 0));
  const kept: number[] = [];
  const covers = (a: number, b: number): boolean => {
    for (let k = 0; k < kinds; k++) if (states.count(a, k) < states.count(b, k)) return false;
    return true;
  };
  for (const state of sorted) if (!kept.some((other) => covers(other, state))) kept.push(state);
  return kept;
}

/** Leaves out stacks that a narrower or equal one covers kind by kind. */
export function withoutDominated<T extends RowType>(types: readonly T[]): T[] {
  if (types.length > 2000) return [...types];
  const total = ({ counts }: T) => sum(counts, (count) => count);
  const sorted = types.slice().sort((a, b) => a.width - b.width || total(b) - total(a));
  const kept: T[] = [];
  for (const type of sorted)
    if (!kept.some((other) => other.counts.every((count, k) => count >= type.counts[k]!))) kept.push(type);
  return kept.reverse();
}

/** A segment is as wide as the widest item that really lies in it. */
export function narrowed(kinds: readonly Kind[], stack: readonly Placed[]): Segment {
  const width = Math.max(...stack.map((placed) => kinds[placed.kind]!.lies[placed.lie]!.width));
  return { width, stack: stack.slice() };
}
