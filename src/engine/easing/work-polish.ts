import type { Filling, Segment } from "../oracles/oracle.ts";
import type { StripCount } from "../problem/assemble.ts";
import type { Kind } from "../problem/reduce.ts";
import { stripOf, untrimmed } from "./work-columns.ts";
import { textOf } from "./work-program.ts";

/** Sees to it that every plan tried is judged and that the trying ends. */
export interface Judge {
  /** Negative when the first is the better plan. */
  compare(a: readonly StripCount[], b: readonly StripCount[]): number;
  /** False once enough plans have been tried. */
  goOn(): boolean;
}

/**
 * Betters a plan by small changes, first found first kept, until none helps: a strip's pieces spread over the
 * ends of others, one segment moved into another strip's end, two segments exchanged.
 */
export function polish(
  kinds: readonly Kind[],
  run: number,
  start: readonly StripCount[],
  judge: Judge,
): StripCount[] {
  let best = gather(start);
  for (;;) {
    const better = firstBetter(kinds, run, best, judge);
    if (better === null) return best;
    best = better;
  }
}

function firstBetter(
  kinds: readonly Kind[],
  run: number,
  strips: readonly StripCount[],
  judge: Judge,
): StripCount[] | null {
  for (const change of changes(kinds, run, strips)) {
    if (!judge.goOn()) return null;
    const candidate = gather(change);
    if (judge.compare(candidate, strips) < 0) return candidate;
  }
  return null;
}

function* changes(
  kinds: readonly Kind[],
  run: number,
  strips: readonly StripCount[],
): Generator<StripCount[]> {
  for (const [at, { filling, count }] of strips.entries()) {
    const plain = untrimmed(kinds, run, filling);
    if (textOf(plain) !== textOf(filling)) yield replaced(strips, [[at, filling, count]], [plain, count]);
  }
  const emptiest = [...strips.keys()].sort((a, b) => usedIn(strips[a]!.filling) - usedIn(strips[b]!.filling));
  for (const at of emptiest) {
    const spread = spreadOut(kinds, run, strips, at);
    if (spread !== null) yield spread;
  }
  for (const from of emptiest)
    for (const to of strips.keys()) {
      if (from === to) continue;
      yield* moves(kinds, run, strips, from, to);
    }
}

/** One segment of a strip moved into another's end; or exchanged for a smaller one of the other. */
function* moves(
  kinds: readonly Kind[],
  run: number,
  strips: readonly StripCount[],
  from: number,
  to: number,
): Generator<StripCount[]> {
  const giver = strips[from]!.filling;
  const taker = strips[to]!.filling;
  const end = run - usedIn(taker);
  const both = Math.min(strips[from]!.count, strips[to]!.count);
  for (const i of distinct(giver)) {
    const given = giver.segments[i]!;
    const back = [-1, ...distinct(taker)];
    for (const j of back) {
      const returned = j < 0 ? null : taker.segments[j]!;
      const grows = given.width - (returned?.width ?? 0);
      if (grows <= 0 || grows > end) continue;
      const first = stripOf(kinds, [...without(giver, i), ...(returned === null ? [] : [returned])], 0);
      const second = stripOf(kinds, [...(j < 0 ? taker.segments : without(taker, j)), given], 0);
      if (second.height > taker.height || first.height > giver.height) continue;
      for (const times of new Set([both, 1]))
        yield replaced(
          strips,
          [
            [from, giver, times],
            [to, taker, times],
          ],
          [first, times],
          [second, times],
        );
    }
  }
}

/** One strip taken apart and its segments put into the ends of others; null when they do not all fit. */
function spreadOut(
  kinds: readonly Kind[],
  run: number,
  strips: readonly StripCount[],
  at: number,
): StripCount[] | null {
  const hosts = strips.map(({ count }, i) => (i === at ? count - 1 : count));
  const filled: Filling[] = [];
  const rest = strips[at]!.filling.segments.slice().sort((a, b) => b.width - a.width);
  const free = strips.reduce((sum, { filling }, i) => sum + hosts[i]! * (run - usedIn(filling)), 0);
  if (usedIn(strips[at]!.filling) > free) return null;
  for (const segment of rest) {
    const height = stripOf(kinds, [segment], 0).height;
    const room = (filling: Filling): number =>
      filling.height >= height ? run - usedIn(filling) - segment.width : -1;
    const open = filled.findIndex((filling) => room(filling) >= 0);
    if (open >= 0) {
      filled[open] = stripOf(kinds, [...filled[open]!.segments, segment], filled[open]!.height);
      continue;
    }
    let best = -1;
    strips.forEach(({ filling }, i) => {
      if (hosts[i]! === 0 || room(filling) < 0) return;
      if (best < 0 || filling.height < strips[best]!.filling.height) best = i;
    });
    if (best < 0) return null;
    hosts[best]!--;
    filled.push(stripOf(kinds, [...strips[best]!.filling.segments, segment], strips[best]!.filling.height));
  }
  return [
    ...strips.map(({ filling }, i) => ({ filling, count: hosts[i]! })),
    ...filled.map((filling) => ({ filling, count: 1 })),
  ];
}

function replaced(
  strips: readonly StripCount[],
  out: readonly (readonly [number, Filling, number])[],
  ...put: readonly (readonly [Filling, number])[]
): StripCount[] {
  const kept = strips.map(({ filling, count }, i) => ({
    filling,
    count: count - out.reduce((sum, [at, , times]) => (at === i ? sum + times : sum), 0),
  }));
  return [...kept, ...put.map(([filling, count]) => ({ filling, count }))];
}

/** Equal fillings counted together, empty ones left out. */
export function gather(strips: readonly StripCount[]): StripCount[] {
  const byText = new Map<string, StripCount>();
  for (const { filling, count } of strips) {
    if (count === 0 || filling.segments.length === 0) continue;
    const text = textOf(filling);
    const known = byText.get(text);
    byText.set(text, { filling: known?.filling ?? filling, count: (known?.count ?? 0) + count });
  }
  return [...byText.values()];
}

/** Width the segments of a strip take. */
export function usedIn(filling: Filling): number {
  return filling.segments.reduce((sum, { width }) => sum + width, 0);
}

function distinct(filling: Filling): number[] {
  const seen = new Set<string>();
  return [...filling.segments.keys()].filter((i) => {
    const text = filling.segments[i]!.stack.map(({ kind, lie }) => `${kind}.${lie}`).join("+");
    if (seen.has(text)) return false;
    seen.add(text);
    return true;
  });
}

function without(filling: Filling, at: number): Segment[] {
  return filling.segments.filter((_, i) => i !== at);
}
