import { countKinds, type Filling, type Segment, type StripOracle } from "../oracles/oracle.ts";
import type { Counts } from "../problem/counts.ts";
import type { Kind } from "../problem/reduce.ts";

/** A kind as it lies in a strip of some height. */
interface Choice {
  kind: number;
  lie: number;
  width: number;
  height: number;
}

/**
 * Strips a cutter would think of: each size alone, and what remains of its strips or of its last strip filled
 * with one or two other sizes, those of the strip's own width first.
 */
export function plainColumns(kinds: readonly Kind[], run: number, demand: Counts): Filling[] {
  const choices = kinds.flatMap(({ lies }, kind): Choice[] =>
    demand[kind]! > 0 ? lies.map((lie, l) => ({ kind, lie: l, width: lie.width, height: lie.height })) : [],
  );
  const fitting = choices.filter(({ width }) => width <= run);
  const found: Filling[] = [];
  for (const main of fitting) {
    const most = Math.min(Math.floor(run / main.width), demand[main.kind]!);
    const last = demand[main.kind]! % Math.floor(run / main.width);
    const alone = [...new Set([most, last])].filter((copies) => copies > 0);
    for (const copies of alone) found.push(fill(kinds, [{ choice: main, copies }]));
    const others = fitting.filter(({ kind, height }) => kind !== main.kind && height <= main.height);
    for (const copies of new Set([most, last, most - 1, most - 2, most >> 1])) {
      if (copies < 0) continue;
      for (const other of others) {
        const room = run - copies * main.width;
        const beside = Math.min(Math.floor(room / other.width), demand[other.kind]!);
        if (beside === 0) continue;
        const parts = [
          { choice: main, copies },
          { choice: other, copies: beside },
        ];
        if (copies > 0) found.push(fill(kinds, parts));
        const third = bestThird(others, other, room - beside * other.width);
        if (third !== null && copies > 0) {
          const still = Math.floor((room - beside * other.width) / third.width);
          found.push(
            fill(kinds, [...parts, { choice: third, copies: Math.min(still, demand[third.kind]!) }]),
          );
        }
      }
      // The size alone, in the widths of higher strips that may be cut anyway.
      for (const higher of fitting)
        if (copies === most && higher.height > main.height)
          found.push({ ...fill(kinds, [{ choice: main, copies }]), height: higher.height });
    }
  }
  return found;
}

function bestThird(others: readonly Choice[], second: Choice, room: number): Choice | null {
  let best: Choice | null = null;
  for (const choice of others) {
    if (choice.kind === second.kind || choice.width > room) continue;
    if (best === null || choice.height > best.height) best = choice;
  }
  return best;
}

function fill(kinds: readonly Kind[], parts: readonly { choice: Choice; copies: number }[]): Filling {
  const segments = parts.flatMap(({ choice: { kind, lie, width }, copies }) =>
    Array.from({ length: copies }, (): Segment => ({ width, stack: [{ kind, lie }] })),
  );
  const height = Math.max(...parts.map(({ choice }) => choice.height));
  return { level: -1, height, counts: countKinds(segments, kinds.length), segments };
}

/**
 * Fullest strips of two or three sizes only, by area, and of what the whole strips of each size leave over.
 */
export function fewKindColumns(oracle: StripOracle, demand: Counts, most: number): Filling[] {
  const { kinds, run } = oracle;
  const area = kinds.map(({ lies }) => lies[0]!.width * lies[0]!.height);
  const left = kinds.map(({ lies }, k) => demand[k]! % Math.max(1, Math.floor(run / lies[0]!.width)));
  const found: Filling[] = [];
  const ask = (among: readonly number[], caps: Counts): void => {
    const prices = new Float64Array(kinds.length);
    for (const k of among) prices[k] = area[k]!;
    const heights = new Set(among.flatMap((k) => kinds[k]!.lies.map(({ height }) => height)));
    for (const height of heights) {
      const level = oracle.heights.indexOf(height);
      if (level < 0 || found.length >= most) continue;
      const filling = oracle.filling(level, prices, caps);
      if (filling.segments.length > 0) found.push(filling);
    }
  };
  const all = kinds.flatMap((_, k) => (demand[k]! > 0 ? [k] : []));
  ask(all, left);
  ask(all, demand);
  for (const a of all) for (const b of all) if (a < b) ask([a, b], demand);
  for (const a of all) for (const b of all) if (a < b) ask([a, b], left);
  for (let i = 0; i + 2 < all.length; i++) ask(all.slice(i, i + 3), demand);
  return found;
}
