import { type Clock, share } from "../problem/clock.ts";
import { sum } from "../problem/counts.ts";
import type { Kind } from "../problem/reduce.ts";
import { areaBound, canHold, type RollQuestion } from "../problem/roll-question.ts";
import { solveRoll } from "../search/roll.ts";
import { bandBounds } from "./band-bounds.ts";
import { type BandGroup, bandGroups, partsWithFirst, statesOf } from "./band-sections.ts";
import { type Arrangement, type BandAnswer, named, nothingBanded, oneGroupEach } from "./plain-bands.ts";
import { lengthOn, restEnds } from "./rests.ts";

/** Arrangements worth a look, the most promising first. */
interface ArrangementList {
  list: Arrangement[];
  /** Every arrangement that could lead to a shorter plan is in the list, or was dropped from it. */
  complete: boolean;
  /** No plan with a dropped arrangement is shorter than this. */
  dropped: number;
}

/** Beyond so many ways of choosing items for bands only some arrangements are tried. */
const MOST_STATES = 400;
const MOST_ARRANGEMENTS = 20_000;
/** Arrangements tried before the whole list is made, when there are too many to list. */
const FIRST_TRIES = 12;
const MOST_VISITS = 200_000;
/** Before there is a plan, how far a plan may reach beyond the bands, in widths of the roll. */
const ROOM_BEYOND = 4;

/**
 * The least length when some items may or must be cut lengthwise. Every arrangement of the band items is
 * bounded by its own length and the area of the rest; arrangements are then taken in order of that bound,
 * and for each the strips are planned with the width beside the bands as sheets already on the table.
 *
 *     +-------+----------------+
 *     | band  |  rest: strips  |   one group, as long as its longest band
 *     |       |                |
 *     +-------+----------------+
 *     |  full-width strips     |
 */
export function solveBands(question: RollQuestion): BandAnswer {
  const { kinds, run, clock } = question;
  const bandable = kinds.flatMap((kind, k) => (kind.place === "strips" ? [] : [k]));
  const area = areaBound(question);
  let best = null as BandAnswer | null;
  let length = Infinity;
  let lower = Infinity;
  /** Arrangements that lead to no shorter plan than there is. */
  const closed = new Set<string>();
  /** Arrangements tried for too short a time to say. */
  const open = new Set<string>();
  const attempt = (arrangement: Arrangement, within: Clock = clock): void => {
    const caps = [question.ceiling, Number.isFinite(length) ? length - 1 : null].filter((c) => c !== null);
    const ceiling = caps.length === 0 ? null : Math.min(...caps);
    // With stacks there is no end to how long a rest may be made before there is a plan.
    const whole = ceiling !== null || question.style === "strips-2";
    const cap = whole ? (ceiling ?? Infinity) : arrangement.along + ROOM_BEYOND * run;
    const beside = restEnds(question, cap);
    const rests = arrangement.groups.map((group) => beside(run - group.across, group.along));
    const answer = solveRoll({
      ...{ ...question, clock: within, rests, enough: null },
      kinds: kinds.map((kind, k) => ({ ...kind, demand: kind.demand - arrangement.banded[k]! })),
      ceiling: ceiling === null ? null : ceiling - arrangement.along,
    });
    const proved = whole && rests.every((rest) => rest.whole);
    const least = proved ? arrangement.along + answer.lower : area;
    lower = Math.min(lower, least);
    const total = arrangement.along + answer.length;
    if (total < length) {
      length = total;
      const groups = arrangement.groups.map((group, g) => {
        const along = Math.max(group.along, lengthOn(answer.strips, question.given.length + g));
        return { ...named(group, bandable), along };
      });
      best = { ...answer, length: total, groups };
    }
    const key = keyOf(arrangement);
    if (least >= length) closed.add(key);
    else open.add(key);
  };
  // Two plain arrangements first: their length keeps the list of the others short.
  attempt(oneGroupEach(question, bandable));
  if (kinds.every((kind) => mayStay(question, kind))) attempt(nothingBanded(question));
  let found = arrangements({ ...question, clock: share(clock, 0.2, Infinity) }, bandable, length);
  if (!found.complete || found.dropped < length) {
    // Too many: a shorter plan first, so that fewer of them can matter.
    const until = share(clock, 0.3, Infinity);
    for (const arrangement of found.list.slice(0, FIRST_TRIES))
      if (arrangement.least < length && !until.expired()) attempt(arrangement, share(until, 0.2, Infinity));
    found = arrangements({ ...question, clock: share(clock, 0.5, Infinity) }, bandable, length);
  }
  // What was left open above is in the list, and is taken up once more after the others.
  lower = Infinity;
  const { list, complete, dropped } = found;
  const [again, fresh] = [
    list.filter((one) => open.has(keyOf(one))),
    list.filter((one) => !open.has(keyOf(one))),
  ];
  for (const arrangement of [...fresh, ...again]) {
    if (closed.has(keyOf(arrangement))) continue;
    const enough = question.enough !== null && length <= question.enough;
    if (arrangement.least >= length || enough || clock.expired()) lower = Math.min(lower, arrangement.least);
    else attempt(arrangement);
  }
  lower = Math.min(lower, dropped);
  if (!complete) lower = Math.min(lower, area);
  if (best === null) {
    // Without a plan it is known at most that there is none up to the ceiling.
    const proved = question.ceiling === null ? 0 : Math.min(lower, question.ceiling + 1);
    return { strips: [], length: Infinity, lower: proved, boundKind: "area", groups: [] };
  }
  return { ...best, lower: Math.min(lower, length), boundKind: complete ? "exhausted" : "area" };
}

/** Not all of the kind need lie in bands: it may lie in strips, or a sheet on the table can hold one. */
function mayStay({ given }: RollQuestion, kind: Kind): boolean {
  return kind.place !== "bands" || kind.demand === 0 || given.some(({ sheet }) => canHold(sheet, kind));
}

/** Groups of one size leave the same rests, whatever bands are in them. */
function keyOf({ groups, banded }: Pick<Arrangement, "groups" | "banded">): string {
  const sizes = groups.map((group) => `${group.across}x${group.along}`).sort();
  return `${sizes.join()}:${banded.join()}`;
}

/** Every arrangement that may lead to a plan shorter than `limit`, or the most promising of them. */
function arrangements(question: RollQuestion, bandable: readonly number[], limit: number): ArrangementList {
  const { kinds, run, clock } = question;
  const demand = bandable.map((k) => kinds[k]!.demand);
  const states = statesOf(demand);
  if (states.size > MOST_STATES) return { list: [], complete: false, dropped: Infinity };
  const bandKinds = bandable.map((k) => kinds[k]!);
  const groups = bandGroups(bandKinds, states, run);
  const area = areaBound(question);
  let complete = true;
  const beside = restEnds(question, limit);
  const bound = bandBounds(question, limit);
  const promising = mostPromising();
  const seen = new Set<string>();
  const chosen: BandGroup[] = [];
  let visits = 0;
  let timeUp = false;
  const record = (counts: readonly number[]): void => {
    const banded = kinds.map(() => 0);
    bandable.forEach((k, b) => {
      banded[k] = demand[b]! - counts[b]!;
    });
    if (kinds.some((kind, k) => banded[k] !== kind.demand && !mayStay(question, kind))) return;
    const groups = chosen.slice();
    const key = keyOf({ groups, banded });
    if (seen.has(key)) return;
    seen.add(key);
    const along = sum(groups, (group) => group.along);
    const rests = groups.map((group) => beside(run - group.across, group.along));
    complete &&= rests.every(({ whole }) => whole);
    const least = Math.max(area, bound(rests, banded, along));
    // What can be no shorter than the plan there is need not be looked at.
    if (least < limit) promising.add({ groups, banded, along, least });
  };
  /** Groups that hold the same first kind come in one order only: `last` is the one before. */
  const visit = (
    state: number,
    skipped: readonly number[],
    along: number,
    last: { first: number; part: number; index: number } | null,
  ): void => {
    if (along >= limit) return;
    visits++;
    timeUp ||= (visits & 255) === 0 && clock.expired();
    if (timeUp || visits > MOST_VISITS) {
      complete = false;
      return;
    }
    if (state === 0) {
      record(skipped);
      return;
    }
    const counts = states.countsOf(state);
    const first = counts.findIndex((count) => count > 0);
    for (const part of partsWithFirst(states, state)) {
      if (last?.first === first && part > last.part) continue;
      for (const [index, group] of groups[part]!.entries()) {
        if (last?.first === first && part === last.part && index < last.index) continue;
        chosen.push(group);
        visit(state - part, skipped, along + group.along, { first, part, index });
        chosen.pop();
      }
    }
    // Or the rest of the first kind stays in strips or on sheets.
    if (mayStay(question, kinds[bandable[first]!]!)) {
      const left = counts.slice();
      left[first] = 0;
      const more = skipped.slice();
      more[first] = counts[first]!;
      visit(states.indexOf(left), more, along, null);
    }
  };
  visit(
    states.size - 1,
    demand.map(() => 0),
    0,
    null,
  );
  return { ...promising.kept(), complete };
}

/** Keeps the arrangements that may be shortest; `dropped` is what all others come to at least. */
function mostPromising() {
  let list: Arrangement[] = [];
  let dropped = Infinity;
  const sort = () =>
    list.sort((p, q) => p.least - q.least || p.along - q.along || p.groups.length - q.groups.length);
  return {
    add(arrangement: Arrangement): void {
      if (arrangement.least < dropped) list.push(arrangement);
      if (list.length < 2 * MOST_ARRANGEMENTS) return;
      sort();
      dropped = list[MOST_ARRANGEMENTS]!.least;
      list = list.slice(0, MOST_ARRANGEMENTS);
    },
    kept: (): Pick<ArrangementList, "list" | "dropped"> => ({ list: sort(), dropped }),
  };
}
