import { type Choice, choicesIn } from "../oracles/knapsack.ts";
import { countKinds, type Filling, type Segment, type StripOracle } from "../oracles/oracle.ts";
import type { Counts } from "../problem/counts.ts";
import type { Kind } from "../problem/reduce.ts";

type Part = readonly [choice: Choice, copies: number];

/**
 * Strips a cutter would think of: each size alone, and what remains of its strips or of its last strip filled
 * with one or two other sizes, those of the strip's own width first.
 */
export function plainColumns(kinds: readonly Kind[], run: number, demand: Counts): Filling[] {
  const fitting = choicesIn(kinds, run, "width").filter(({ kind }) => demand[kind]! > 0);
  const found: Filling[] = [];
  const add = (...parts: Part[]) => found.push(fill(kinds, parts));
  for (const main of fitting) {
    const most = Math.min(Math.floor(run / main.width), demand[main.kind]!);
    const last = demand[main.kind]! % Math.floor(run / main.width);
    for (const copies of new Set([most, last])) if (copies > 0) add([main, copies]);
    const others = fitting.filter(({ kind, height }) => kind !== main.kind && height <= main.height);
    for (const copies of new Set([most, last, most - 1, most - 2, most >> 1])) {
      if (copies <= 0) continue;
      for (const other of others) {
        const room = run - copies * main.width;
        const beside = Math.min(Math.floor(room / other.width), demand[other.kind]!);
        if (beside === 0) continue;
        add([main, copies], [other, beside]);
        const left = room - beside * other.width;
        const third = bestThird(others, other, left);
        if (third === null) continue;
        const still = Math.min(Math.floor(left / third.width), demand[third.kind]!);
        add([main, copies], [other, beside], [third, still]);
      }
      // The size alone, in the widths of higher strips that may be cut anyway.
      for (const { height } of fitting)
        if (copies === most && height > main.height) found.push({ ...fill(kinds, [[main, copies]]), height });
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

function fill(kinds: readonly Kind[], parts: readonly Part[]): Filling {
  const segments = parts.flatMap(([{ kind, lie, width }, copies]) =>
    Array.from({ length: copies }, (): Segment => ({ width, stack: [{ kind, lie }] })),
  );
  const height = Math.max(...parts.map(([choice]) => choice.height));
  return { level: -1, height, counts: countKinds(segments, kinds.length), segments };
}

/** Fullest strips of two or three sizes only, by area, and of what the whole strips of each size leave over. */
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
  const pairs = all.flatMap((a, i) => all.slice(i + 1).map((b) => [a, b]));
  ask(all, left);
  ask(all, demand);
  for (const pair of pairs) ask(pair, demand);
  for (const pair of pairs) ask(pair, left);
  for (let i = 0; i + 2 < all.length; i++) ask(all.slice(i, i + 3), demand);
  return found;
}
