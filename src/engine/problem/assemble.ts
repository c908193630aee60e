import { nestLength } from "../nested/nest.ts";
import type { Filling, Placed, Segment } from "../oracles/oracle.ts";
import type { SegmentUse, StackUse, StripColumn, StripSection } from "../types.ts";
import { addCounts, type Counts } from "./counts.ts";
import { type Kind, type Lie, transposeKinds } from "./reduce.ts";

/** A filling and how many strips are cut so. */
export interface StripCount {
  filling: Filling;
  count: number;
}

/** The kinds as they lie on stock whose strips run across it, and on sheets whose strips run along. */
export interface Frames {
  upright: readonly Kind[];
  transposed: readonly Kind[];
}

export function framesOf(kinds: readonly Kind[]): Frames {
  return { upright: kinds, transposed: transposeKinds(kinds) };
}

/**
 * A filling of some of the kinds in the numbering of all `kinds` of them: kind k is `indexOf[k]`, and what was lie l of it
 * is `lieOf(k, l)`. Heights are `step` times as large; those of sheets stay.
 */
export function renumbered(
  filling: Filling,
  indexOf: readonly number[],
  kinds: number,
  { step = 1, lieOf = (_: number, lie: number) => lie } = {},
): Filling {
  const counts = new Array<number>(kinds).fill(0);
  filling.counts.forEach((copies, k) => {
    counts[indexOf[k]!] = copies;
  });
  const { sheet, end, height } = filling;
  return {
    ...{ ...filling, counts, height: sheet === undefined ? height * step : height },
    segments: filling.segments.map(({ width, stack }) => ({
      width,
      stack: stack.map(({ kind, lie }) => ({ kind: indexOf[kind]!, lie: lieOf(kind, lie) })),
    })),
    ...(end === undefined ? {} : { end: { ...end, kind: indexOf[end.kind]! } }),
    ...(sheet === undefined
      ? {}
      : { sheet: { ...sheet, strips: sheet.strips.map((strip) => renumbered(strip, indexOf, kinds)) } }),
  };
}

/**
 * Takes out what was cut beyond the demand, so that every count is met exactly. Strips left empty are
 * dropped and strips left lower than they were are cut lower.
 */
export function dropSurplus(frames: Frames, demand: Counts, strips: readonly StripCount[]): StripCount[] {
  const surplus = demand.map((wanted) => -wanted);
  for (const { filling, count } of strips) addCounts(surplus, filling.counts, count);
  const queue = strips.filter((strip) => strip.count > 0);
  const kept: StripCount[] = [];
  while (queue.length > 0) {
    const strip = queue.pop()!;
    // Of a run only a whole source can be left out: it may turn out longer than it need be.
    const isRun = (k: number) => frames.upright[k]!.run !== undefined;
    const kind = strip.filling.counts.findIndex(
      (copies, k) => copies > 0 && (isRun(k) ? surplus[k]! >= copies : surplus[k]! > 0),
    );
    if (kind < 0) {
      if (strip.filling.counts.some((copies) => copies > 0)) kept.push(strip);
      continue;
    }
    const copies = strip.filling.counts[kind]!;
    const whole = Math.min(strip.count, Math.floor(surplus[kind]! / copies));
    if (whole > 0) {
      surplus[kind]! -= whole * copies;
      queue.push({ filling: without(frames, strip.filling, kind, copies), count: whole });
      if (strip.count > whole) queue.push({ filling: strip.filling, count: strip.count - whole });
    } else {
      const some = surplus[kind]!;
      surplus[kind] = 0;
      queue.push({ filling: without(frames, strip.filling, kind, some), count: 1 });
      if (strip.count > 1) queue.push({ filling: strip.filling, count: strip.count - 1 });
    }
  }
  return kept.reverse();
}

/** A filling with some copies of a kind taken out, closed up to the height it then needs. */
function without(frames: Frames, filling: Filling, kind: number, copies: number): Filling {
  if (filling.sheet !== undefined) return withoutOnSheet(frames, filling, kind, copies);
  return withoutInStrip(frames.upright, filling, kind, copies);
}

function withoutOnSheet(frames: Frames, filling: Filling, kind: number, copies: number): Filling {
  const { index, transposed, strips } = filling.sheet!;
  let left = copies;
  const kept: Filling[] = [];
  for (const strip of strips) {
    const out = Math.min(left, strip.counts[kind]!);
    left -= out;
    const rest =
      out > 0 ? withoutInStrip(transposed ? frames.transposed : frames.upright, strip, kind, out) : strip;
    if (rest.segments.length > 0 || rest.end !== undefined) kept.push(rest);
  }
  const counts = filling.counts.slice();
  counts[kind]! -= copies;
  return { ...filling, counts, sheet: { index, transposed, strips: kept } };
}

function withoutInStrip(kinds: readonly Kind[], filling: Filling, kind: number, copies: number): Filling {
  let left = copies;
  const segments: Segment[] = [];
  for (const segment of filling.segments) {
    const stack: Placed[] = [];
    for (const placed of segment.stack) {
      if (placed.kind === kind && left > 0) left--;
      else stack.push(placed);
    }
    if (stack.length > 0) segments.push({ width: widthOf(kinds, stack), stack });
  }
  const counts = filling.counts.slice();
  counts[kind]! -= copies;
  const height = Math.max(0, ...segments.map((segment) => heightOf(kinds, segment.stack)));
  const { level, end } = filling;
  if (end !== undefined && end.kind !== kind) return { level, height: filling.height, counts, segments, end };
  return { level, height: Math.min(filling.height, height), counts, segments };
}

/** The lie that all of a segment lie in when they are a run of shapes; null when they are rectangles. */
function nestOf(kinds: readonly Kind[], stack: readonly Placed[]): Lie | null {
  const [first] = stack;
  if (first === undefined || kinds[first.kind]!.nested === undefined) return null;
  return kinds[first.kind]!.lies[first.lie]!;
}

export function widthOf(kinds: readonly Kind[], stack: readonly Placed[]): number {
  const nest = nestOf(kinds, stack);
  if (nest !== null) return nestLength(nest.width, nest.advances!, stack.length);
  return Math.max(...stack.map(({ kind, lie }) => kinds[kind]!.lies[lie]!.width));
}

function heightOf(kinds: readonly Kind[], stack: readonly Placed[]): number {
  const nest = nestOf(kinds, stack);
  if (nest !== null) return nest.height;
  return stack.reduce((sum, { kind, lie }) => sum + kinds[kind]!.lies[lie]!.height, 0);
}

/** Hands out the copies of a kind to the items it stands for, in the items' order. */
export interface ItemDealer {
  next(kind: number): { item: number; swapped: boolean };
}

export function dealer(kinds: readonly Kind[]): ItemDealer {
  const at = kinds.map(() => ({ source: 0, used: 0 }));
  return {
    next(kind) {
      const state = at[kind]!;
      const { sources } = kinds[kind]!;
      while (state.used >= sources[state.source]!.demand && state.source < sources.length - 1) {
        state.source++;
        state.used = 0;
      }
      state.used++;
      return { item: sources[state.source]!.item, swapped: sources[state.source]!.swapped };
    },
  };
}

/**
 * Turns fillings into the sections of a result: widest strips first, equal strips gathered, in a strip the
 * widest segments first. `transposed` says that strips run along the sheet.
 */
export function toSections(
  kinds: readonly Kind[],
  strips: readonly StripCount[],
  deal: ItemDealer,
): StripSection[] {
  const sorted = strips
    .map((strip) => ({ ...strip, filling: tidy(kinds, strip.filling) }))
    .sort(
      (p, q) =>
        q.filling.height - p.filling.height || compareText(signature(p.filling), signature(q.filling)),
    );
  const single = kinds.every((kind) => kind.sources.length === 1);
  const sections = new Map<string, StripSection>();
  for (const { filling, count } of sorted) {
    // Where a kind stands for several items, strips that look alike may yield different ones.
    for (let n = 0; n < (single ? 1 : count); n++) {
      const { end } = filling;
      const column: StripColumn = {
        along: filling.height,
        segments: gatherSegments(kinds, filling, deal),
        ...(end === undefined
          ? {}
          : { end: { item: kinds[end.kind]!.sources[0]!.item, across: end.length } }),
      };
      const key = JSON.stringify(column);
      const known = sections.get(key);
      const times = single ? count : 1;
      if (known === undefined) sections.set(key, { kind: "strips", column, count: times });
      else known.count += times;
    }
  }
  return [...sections.values()];
}

export function gatherSegments(kinds: readonly Kind[], filling: Filling, deal: ItemDealer): SegmentUse[] {
  const uses: SegmentUse[] = [];
  for (const segment of filling.segments) {
    const stack: StackUse[] = [];
    for (const placed of segment.stack) {
      const { item, swapped } = deal.next(placed.kind);
      const turned = kinds[placed.kind]!.lies[placed.lie]!.turned !== swapped;
      const last = stack.at(-1);
      if (last !== undefined && last.item === item && last.turned === turned) last.count++;
      else stack.push({ item, turned, count: 1 });
    }
    const last = uses.at(-1);
    if (
      last !== undefined &&
      last.across === segment.width &&
      JSON.stringify(last.stack) === JSON.stringify(stack)
    )
      last.count++;
    else uses.push({ across: segment.width, count: 1, stack });
  }
  return uses;
}

/** Stacks and segments in a fixed order, so that equal fillings are equal to the letter. */
function tidy(kinds: readonly Kind[], filling: Filling): Filling {
  const lieOf = (placed: Placed) => kinds[placed.kind]!.lies[placed.lie]!;
  const segments = filling.segments.map((segment) => ({
    width: segment.width,
    stack: segment.stack
      .slice()
      .sort(
        (p, q) =>
          lieOf(q).width - lieOf(p).width ||
          lieOf(q).height - lieOf(p).height ||
          p.kind - q.kind ||
          p.lie - q.lie,
      ),
  }));
  segments.sort(
    (p, q) =>
      q.width - p.width ||
      heightOf(kinds, q.stack) - heightOf(kinds, p.stack) ||
      compareText(stackText(p.stack), stackText(q.stack)),
  );
  return { ...filling, segments };
}

function stackText(stack: readonly Placed[]): string {
  return stack.map(({ kind, lie }) => `${kind}.${lie}`).join("+");
}

function signature(filling: Filling): string {
  const { segments, end } = filling;
  const last = end === undefined ? "" : `|${end.kind}:${end.length}`;
  return segments.map((segment) => `${segment.width}:${stackText(segment.stack)}`).join("|") + last;
}

function compareText(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
