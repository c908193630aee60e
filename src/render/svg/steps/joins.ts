import type { HeapRecord, StepRecord, UnitRecord } from "../../../cutlist/unit-record.ts";
import type { Ruler } from "../../../length/types.ts";
import { type Corner, centreOf } from "../patches.ts";
import { spokenSize } from "../words.ts";
import { type ClothLayer, type Figure, figure, movedBy, type Segment } from "./cloth-layer.ts";
import { boundsOf, sharedEdges, withRawEdges } from "./geometry.ts";
import { middleOf } from "./mat.ts";
import { isTurned, segmentOf, setNamed } from "./mat-strips.ts";
import type { Made, Panel } from "./panel.ts";
import { pressWays } from "./press-ways.ts";
import type { UnitOutline } from "./unit-outlines.ts";
import { STEP_WORDS } from "./words.ts";

export type Join = Extract<StepRecord, { do: "join" }>;

/** A join with its number among the steps of its unit. */
export interface NumberedJoin {
  step: Join;
  number: number;
}

/** A patch in its place in the finished unit. */
export interface PlacedPatch {
  spot: string;
  role: string;
  fabric: string;
  letter: string;
  up: number | null;
  corners: Corner[];
}

/** Ticks within which an edge counts as lying on another: less than the finest ruler mark, more than rounding. */
const SLACK = 40;
/** Patches above which a picture shows the parts set apart only. */
const SIMPLE = 6;

/** What is joined of one heap: its patches, and what the joins before have made of them. */
export interface JoinWork {
  patches: Map<string, PlacedPatch>;
  /** Spots that a name stands for: a patch, a segment or what a join makes. */
  parts: Map<string, string[]>;
  seam: number;
  gap: number;
}

/** The patches of a heap where the design has them, and the segments and parts that the steps name. */
export function joinWork(
  unit: UnitRecord,
  heap: HeapRecord,
  heapIndex: number,
  outline: UnitOutline,
  seam: number,
): JoinWork {
  const corners = new Map(outline.patches.map((patch) => [patch.spot, patch.corners]));
  const patches = new Map(
    heap.patches.map(({ spot, role, fabric, up, letters, from }): [string, PlacedPatch] => [
      spot,
      {
        spot,
        role,
        fabric,
        letter: (from.length > 0 ? [...new Set(from.map(({ letter }) => letter))] : letters).join("/"),
        up,
        corners: corners.get(spot) ?? [],
      },
    ]),
  );
  const parts = new Map([...patches.keys()].map((spot) => [spot, [spot]]));
  for (const step of unit.steps) {
    if (step.do !== "join") continue;
    const segments = step.parts.filter(
      (part) => !parts.has(part) && setNamed(unit, heapIndex, part) !== null,
    );
    if (segments.length === step.parts.length) {
      const columns = columnsOf([...patches.values()]);
      for (const [i, part] of step.parts.entries())
        parts.set(part, columns[i]?.map(({ spot }) => spot) ?? []);
    }
    parts.set(
      step.makes,
      step.parts.flatMap((part) => parts.get(part) ?? []),
    );
  }
  return { patches, parts, seam, gap: 0.14 * Math.max(outline.across, outline.along) };
}

/** Patches by column, from the left; each from the top. */
export function columnsOf(patches: readonly PlacedPatch[]): PlacedPatch[][] {
  const columns: { x: number; own: PlacedPatch[] }[] = [];
  for (const patch of patches) {
    const x = boundsOf(patch.corners).x;
    const found = columns.find((column) => Math.abs(column.x - x) < SLACK);
    if (found === undefined) columns.push({ x, own: [patch] });
    else found.own.push(patch);
  }
  return columns
    .sort((a, b) => a.x - b.x)
    .map(({ own }) => own.sort((a, b) => boundsOf(a.corners).y - boundsOf(b.corners).y));
}

export function layerOf(patch: PlacedPatch, corners = patch.corners): ClothLayer {
  const { fabric, letter, role, up } = patch;
  return { corners: [...corners], fabric, letter, role, up, side: "right" };
}

/** Patches sewn together, as they show: their allowances only where they are raw still. */
export function sewnTogether(spots: readonly string[], work: JoinWork): ClothLayer[] {
  const own = spots.map((spot) => work.patches.get(spot)).filter((patch) => patch !== undefined);
  return own.map((patch) => {
    const others = own.filter((other) => other !== patch);
    const corners = withRawEdges(patch.corners, work.seam, (from, to) =>
      others.flatMap((other) => sharedEdges([from, to], other.corners, SLACK)),
    );
    return layerOf(patch, corners);
  });
}

interface Met {
  part: string;
  edges: Segment[];
}

/** Edges along which a part meets what is there. */
function meeting(part: string, others: readonly string[], work: JoinWork): Met[] {
  const outlines = (name: string) =>
    (work.parts.get(name) ?? []).map((spot) => work.patches.get(spot)?.corners ?? []);
  return others
    .map((other) => ({
      part: other,
      edges: outlines(other).flatMap((one) =>
        outlines(part).flatMap((mine) => sharedEdges(one, mine, SLACK)),
      ),
    }))
    .filter(({ edges }) => edges.length > 0);
}

const lengthOf = ([a, b]: Segment): number => Math.hypot(b[0] - a[0], b[1] - a[1]);
const total = (edges: readonly Segment[]): number => edges.reduce((sum, edge) => sum + lengthOf(edge), 0);

/** Out of what is there: square to the edges met, each by its length. Edges run clockwise round what is there. */
function outwards(edges: readonly Segment[]): Corner {
  let [x, y] = [0, 0];
  for (const [a, b] of edges) {
    x += b[1] - a[1];
    y -= b[0] - a[0];
  }
  const far = Math.hypot(x, y);
  return far < 1 ? [0, 0] : [x / far, y / far];
}

interface Opened {
  /** Shift of every part. */
  shift: Map<string, Corner>;
  /** Seams by the part that is added: on what is there, with the direction out of it. */
  seams: { part: string; onto: string; edges: Segment[]; out: Corner; number: number }[];
}

/** Sets parts apart, each from what it is sewn to. */
function setApart(added: readonly { part: string; number: number }[], base: string, work: JoinWork): Opened {
  const shift = new Map<string, Corner>([[base, [0, 0]]]);
  const seams: Opened["seams"] = [];
  for (const { part, number } of added) {
    const met = meeting(part, [...shift.keys()], work).sort((a, b) => total(b.edges) - total(a.edges));
    const [first] = met;
    const from = first === undefined ? ([0, 0] as const) : (shift.get(first.part) ?? [0, 0]);
    const out = outwards(met.flatMap(({ edges }) => edges).length === 0 ? [] : (first?.edges ?? []));
    const away = outwards(met.flatMap(({ edges }) => edges));
    const way = met.length > 1 && (away[0] !== 0 || away[1] !== 0) ? away : out;
    shift.set(part, [from[0] + way[0] * work.gap, from[1] + way[1] * work.gap]);
    for (const each of met)
      seams.push({ part, onto: each.part, edges: each.edges, out: outwards(each.edges), number });
  }
  return { shift, seams };
}

const moved = ([a, b]: Segment, [dx, dy]: Corner): Segment => [
  [a[0] + dx, a[1] + dy],
  [b[0] + dx, b[1] + dy],
];

/** Corners of the seam where it turns. */
function turns(edges: readonly Segment[]): Corner[] {
  const found: Corner[] = [];
  for (const [i, [a, b]] of edges.entries())
    for (const [c, d] of edges.slice(i + 1)) {
      const cross = (b[0] - a[0]) * (d[1] - c[1]) - (b[1] - a[1]) * (d[0] - c[0]);
      if (Math.abs(cross) < 1e-3 * lengthOf([a, b]) * lengthOf([c, d])) continue;
      for (const p of [a, b])
        for (const q of [c, d]) if (Math.hypot(p[0] - q[0], p[1] - q[1]) < SLACK) found.push(p);
    }
  return found;
}

/** One round of joins: parts added one after another to what is there. */
export interface Round {
  joins: NumberedJoin[];
  base: string;
  added: { part: string; number: number }[];
  makes: string;
}

/** Most joins told in one picture. */
const TOGETHER = 4;

/**
 * Joins gathered into pictures: as long as each adds single patches to what the one before made, they are shown
 * round it, numbered. Any other join has a picture of its own.
 */
export function roundsOf(joins: readonly NumberedJoin[], work: JoinWork): Round[] {
  const single = (name: string): boolean => (work.parts.get(name)?.length ?? 0) === 1;
  const rounds: Round[] = [];
  for (const join of joins) {
    const { step, number } = join;
    const last = rounds.at(-1);
    const rest = step.parts.filter((part) => part !== last?.makes);
    const goesOn =
      last !== undefined &&
      rest.length < step.parts.length &&
      rest.every(single) &&
      last.joins.length < TOGETHER &&
      last.added.every(({ part }) => single(part)) &&
      (last.joins[0]?.step.setIn === true) === (step.setIn === true) &&
      meeting(rest[0] ?? "", [last.base, ...last.added.map(({ part }) => part)], work).length > 0;
    if (goesOn) {
      last.joins.push(join);
      last.added.push(...rest.map((part) => ({ part, number })));
      last.makes = step.makes;
      continue;
    }
    // What has most patches stays in place, the first of equals.
    const size = (name: string): number => work.parts.get(name)?.length ?? 0;
    const hub = step.parts.reduce((best, part) => {
      const [a, b] = [reach(part, step.parts, work), reach(best, step.parts, work)];
      return a > b || (a === b && size(part) > size(best)) ? part : best;
    });
    // In a row of several each is sewn to the one before.
    const base = step.way !== "edge" && step.parts.length > 2 ? (step.parts[0] ?? hub) : hub;
    rounds.push({
      joins: [join],
      base,
      added: step.parts.filter((part) => part !== base).map((part) => ({ part, number })),
      makes: step.makes,
    });
  }
  return rounds;
}

/** How many of the other parts a part touches. */
function reach(part: string, all: readonly string[], work: JoinWork): number {
  return meeting(
    part,
    all.filter((other) => other !== part),
    work,
  ).length;
}

/** Which way every seam of a round is pressed: out of what is there, back to it, or both. */
function pressing(
  round: Round,
  opened: Opened,
  work: JoinWork,
): { at: Corner; to: Corner; onto: string; part: string }[] {
  const byNumber = new Map(round.joins.map(({ step, number }) => [number, step]));
  // One arrow tells it for all the edges along which a part is sewn on.
  const longest = opened.seams.filter(
    (seam) =>
      !opened.seams.some((other) => other.part === seam.part && total(other.edges) > total(seam.edges)),
  );
  return longest.flatMap(({ part, onto, edges, out, number }) => {
    const step = byNumber.get(number);
    const edge = [...edges].sort((a, b) => lengthOf(b) - lengthOf(a))[0];
    if (step === undefined || edge === undefined) return [];
    const at = middleOf(edge);
    const way = (sign: number) => ({ at, to: [out[0] * sign, out[1] * sign] as Corner, onto, part });
    if (step.press.to === "open") return [way(1), way(-1)];
    const named = step.pressTo?.part ?? (step.press.to === "part" ? step.press.part : null);
    if (named !== null) {
      const has = (name: string): boolean =>
        name === named ||
        (work.parts.get(name) ?? []).some((spot) => {
          const patch = work.patches.get(spot);
          return spot === named || patch?.role === named;
        });
      // A role may be on both sides: the part added is meant, unless only what is there has it.
      const single = (work.parts.get(part)?.length ?? 0) <= (work.parts.get(onto)?.length ?? 0);
      if (has(part) && has(onto)) return [way(single ? 1 : -1)];
      return [way(has(onto) ? -1 : 1)];
    }
    if (step.press.to === "outside" && step.parts.length > 2 && step.way !== "edge") {
      const ways = pressWays(step, step.parts)[step.parts.indexOf(part) - 1] ?? [1];
      return ways.map(way);
    }
    return [way(1)];
  });
}

function roundFigures(round: Round, work: JoinWork, ruler: Ruler): { figures: Figure[]; says: string } {
  const opened = setApart(round.added, round.base, work);
  const names = [round.base, ...round.added.map(({ part }) => part)];
  const at = (name: string): Corner => opened.shift.get(name) ?? [0, 0];
  const layers = names.flatMap((name) =>
    sewnTogether(work.parts.get(name) ?? [], work).map((layer) => movedBy(layer, ...at(name))),
  );
  const setIn = round.joins.some(({ step }) => step.setIn === true);
  const many = round.joins.length > 1;
  const pressed = pressing(round, opened, work);
  const count = names.flatMap((name) => work.parts.get(name) ?? []).length;
  const numbers = many
    ? round.added.flatMap(({ part, number }) => {
        const spots = work.parts.get(part) ?? [];
        const patch = work.patches.get(spots[0] ?? "");
        const [dx, dy] = at(part);
        return patch === undefined
          ? []
          : [{ text: String(number), on: patch.corners.map(([x, y]): Corner => [x + dx, y + dy]) }];
      })
    : [];
  const seams = opened.seams;
  const simple = count <= SIMPLE && !many;
  const arrowAt = ({ at: place, to, onto, part }: (typeof pressed)[number]) => {
    // Half-way across the gap, where the seam will be.
    const [a, b] = [at(onto), at(part)];
    const middle: Corner = [place[0] + (a[0] + b[0]) / 2, place[1] + (a[1] + b[1]) / 2];
    return { at: middle, to };
  };
  const size = round.joins.at(-1)?.step.size ?? null;
  const says = size === null ? "" : spokenSize(size.across, size.along, ruler);
  const apart = figure(layers, {
    sewn: seams.flatMap(({ edges, onto, part }) =>
      edges.flatMap((edge) => [moved(edge, at(onto)), moved(edge, at(part))]),
    ),
    stops: setIn
      ? seams.flatMap(({ edges, onto }) =>
          turns(edges).map(([x, y]): Corner => [x + at(onto)[0], y + at(onto)[1]]),
        )
      : [],
    pressed: simple ? [] : pressed.map(arrowAt),
    numbers,
    says: simple ? "" : says,
  });
  const together = figure(sewnTogether(work.parts.get(round.makes) ?? names, work), {
    pressed: pressed.map(({ at: place, to }) => ({ at: place, to })),
    sign: "then",
    says,
    lettered: false,
  });
  const rows = !many && round.added.length > 1;
  return {
    says: setIn
      ? STEP_WORDS.setIn
      : many
        ? STEP_WORDS.joinInOrder
        : rows
          ? STEP_WORDS.joinRows
          : STEP_WORDS.join,
    figures: simple ? [apart, together] : [apart],
  };
}

/** The pictures of all joins of one heap, in order. */
export function joinPanels(joins: readonly NumberedJoin[], work: JoinWork, ruler: Ruler): Panel[] {
  return roundsOf(joins, work).map((round) => {
    const numbers = round.joins.map(({ number }) => number);
    const [first = 0, last = 0] = [numbers[0], numbers.at(-1)];
    return {
      number: first === last ? String(first) : `${first}–${last}`,
      ...roundFigures(round, work, ruler),
    };
  });
}

/** Segments side by side, as the joins name them: the picture, and the unit they make. */
export function segmentUnit(
  unit: UnitRecord,
  heapIndex: number,
  work: JoinWork,
  step: Join,
): { made: Made; figures: Figure[] } {
  const columns = columnsOf([...work.patches.values()]);
  const own = step.parts.map((name, i) => {
    const set = setNamed(unit, heapIndex, name);
    if (set === null) throw new Error(`No strip set makes the segment ${name}`);
    const turned = isTurned(set, columns[i]?.map(({ role }) => role) ?? []);
    return { name, set, turned, layers: segmentOf(set, turned, work.seam) };
  });
  let raw = 0;
  const seams: Segment[] = [];
  const placedAt = own.map(({ set, layers }, i) => {
    const at = raw;
    raw += set.segment - 2 * work.seam;
    const from = at + (i === 0 ? 0 : work.seam);
    const to = at + set.segment - (i === own.length - 1 ? 0 : work.seam);
    if (i > 0)
      seams.push([
        [from, 0],
        [from, set.height],
      ]);
    return layers.map((layer) => ({
      ...layer,
      corners: layer.corners.map(([x, y]): Corner => [Math.min(Math.max(x + at, from), to), y]),
    }));
  });
  const gap = own[0] === undefined ? 0 : own[0].set.segment * 0.35;
  const apart = own.map(({ layers, set, turned, name }, i) => ({
    layers: layers.map((layer) => movedBy(layer, i * (set.segment + gap), 0)),
    says: turned ? `${name} ${STEP_WORDS.turned}` : name,
  }));
  const ways = pressWays(step, step.parts);
  const pressed = seams.flatMap((seam, i) =>
    (ways[i] ?? []).map((sign) => ({ at: middleOf(seam), to: [sign, 0] as Corner })),
  );
  return {
    made: { layers: placedAt.flat() },
    figures: [
      figure(
        apart.flatMap(({ layers }) => layers),
        { says: apart.map(({ says }) => says).join(" + ") },
      ),
      figure(placedAt.flat(), { sewn: seams, pressed, sign: "then", lettered: false }),
    ],
  };
}

/** The middle of a patch, for a number on it. */
export function patchMiddle(patch: PlacedPatch): Corner {
  return centreOf(patch.corners);
}
