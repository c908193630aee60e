import type { Ruler } from "../../length/types.ts";
import type { Words } from "../../words/index.ts";
import { spokenSize } from "../cutting/words.ts";
import type { Corner } from "../quilt/patches.ts";
import { type Figure, figure, movedBy } from "./cloth-layer.ts";
import { boundsOf } from "./geometry.ts";
import { type Round, roundsOf } from "./join-rounds.ts";
import { type JoinWork, type NumberedJoin, sewnTogether } from "./join-work.ts";
import { middleOf } from "./mat/mat.ts";
import type { Panel, PanelDraft } from "./panel.ts";
import { pressWays } from "./press-ways.ts";
import { lengthOf, moved, type Opened, setApart, total, turns } from "./set-apart.ts";

/** Parts in a row above which they are shown as a pile of strips. */
const PILE = 8;
/** Patches above which a picture shows the parts set apart only. */
const SIMPLE = 6;

interface PressedSeam {
  at: Corner;
  to: Corner;
  onto: string;
  part: string;
}

/** Which way every seam of a round is pressed: out of what is there, back to it, or both. */
function pressing(round: Round, opened: Opened, work: JoinWork): PressedSeam[] {
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
    const way = (sign: number) => {
      const to: Corner = [out[0] * sign, out[1] * sign];
      return { at, to, onto, part };
    };
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

/** How far parts are set apart: their allowances clear of each other, and a gap that grows with what is joined. */
function gapOf(spots: readonly string[], parts: number, work: JoinWork): number {
  const box = boundsOf(spots.flatMap((spot) => work.patches.get(spot)?.corners ?? []));
  const extent = Math.max(box.right - box.x, box.bottom - box.y);
  return 2 * work.seam + (0.1 * extent * 3) / Math.max(3, parts);
}

/** A pile of many strips: each lettered, close together, and the seams and their pressing beside it. */
function pileFigures(round: Round, names: readonly string[], work: JoinWork): Omit<PanelDraft, "says"> {
  const heights = names.map((name) => {
    const box = boundsOf(
      (work.parts.get(name) ?? []).flatMap((spot) => work.patches.get(spot)?.corners ?? []),
    );
    return box.bottom - box.y + 2 * work.seam;
  });
  const least = Math.min(...heights);
  const opened = setApart(round.added, round.base, 2 * work.seam + 0.08 * least, work);
  const layers = names.flatMap((name) =>
    sewnTogether(work.parts.get(name) ?? [], work).map((layer) =>
      movedBy(layer, ...(opened.shift.get(name) ?? ([0, 0] as const))),
    ),
  );
  const pressed = pressing(round, opened, work);
  const every = Math.ceil(pressed.length / 8);
  const sewn = figure(sewnTogether(work.parts.get(round.makes) ?? [], work), {
    pressed: pressed.filter((_, i) => i % every === 0).map(({ at, to }) => ({ at, to })),
    sign: "then",
    lettered: false,
  });
  return { figures: [figure(layers), sewn], lowest: least };
}

function sayingOf(round: Round, words: Words): string {
  if (round.joins.some(({ step }) => step.setIn === true)) return words.drawings.steps.setIn;
  if (round.joins.length > 1) return words.drawings.steps.joinInOrder;
  return round.added.length > 1 ? words.drawings.steps.joinRows : words.drawings.steps.join;
}

function roundFigures(round: Round, work: JoinWork, ruler: Ruler, words: Words): PanelDraft {
  const names = [round.base, ...round.added.map(({ part }) => part)];
  const spots = names.flatMap((name) => work.parts.get(name) ?? []);
  const said = sayingOf(round, words);
  if (names.length > PILE) return { says: said, ...pileFigures(round, names, work) };
  const row = round.joins.length === 1 && round.joins[0]?.step.way !== "edge";
  const opened = setApart(round.added, round.base, gapOf(spots, row ? names.length : 1, work), work);
  const at = (name: string): Corner => opened.shift.get(name) ?? [0, 0];
  const layers = names.flatMap((name) =>
    sewnTogether(work.parts.get(name) ?? [], work).map((layer) => movedBy(layer, ...at(name))),
  );
  const setIn = said === words.drawings.steps.setIn;
  const many = round.joins.length > 1;
  const simple = spots.length <= SIMPLE && !many;
  const pressed = pressing(round, opened, work);
  const size = round.joins.at(-1)?.step.size ?? null;
  const says = size === null ? "" : spokenSize(size.across, size.along, ruler);
  const apart = figure(layers, {
    // Among many patches the seam is shown on one side of the gap, so that letters keep their room.
    sewn: opened.seams.flatMap(({ edges, onto, part }) =>
      edges.flatMap((edge) => [moved(edge, at(onto)), ...(many ? [] : [moved(edge, at(part))])]),
    ),
    stops: setIn
      ? opened.seams.flatMap(({ edges, onto }) =>
          turns(edges).map(([x, y]): Corner => [x + at(onto)[0], y + at(onto)[1]]),
        )
      : [],
    pressed: simple ? [] : pressed.map((each) => halfWay(each, at)),
    numbers: many ? round.added.flatMap(({ part, number }) => numberOn(part, number, at(part), work)) : [],
    says: simple ? "" : says,
  });
  const together = figure(sewnTogether(spots, work), {
    pressed: pressed.map(({ at: place, to }) => ({ at: place, to })),
    sign: "then",
    says,
    lettered: false,
  });
  return { says: said, figures: simple ? [apart, together] : [apart] };
}

/** The arrow of a seam that is still open stands half-way across the gap. */
function halfWay(
  { at: place, to, onto, part }: PressedSeam,
  at: (name: string) => Corner,
): { at: Corner; to: Corner } {
  const [a, b] = [at(onto), at(part)];
  return { at: [place[0] + (a[0] + b[0]) / 2, place[1] + (a[1] + b[1]) / 2], to };
}

function numberOn(part: string, number: number, [dx, dy]: Corner, work: JoinWork): Figure["numbers"] {
  const patch = work.patches.get(work.parts.get(part)?.[0] ?? "");
  if (patch === undefined) return [];
  return [{ text: String(number), on: patch.corners.map(([x, y]): Corner => [x + dx, y + dy]) }];
}

/** The pictures of all joins of one heap, in order. */
export function joinPanels(
  joins: readonly NumberedJoin[],
  work: JoinWork,
  ruler: Ruler,
  words: Words,
): Panel[] {
  return roundsOf(joins, work).map((round) => {
    const numbers = round.joins.map(({ number }) => number);
    const [first = 0, last = 0] = [numbers[0], numbers.at(-1)];
    return {
      number: first === last ? String(first) : `${first}–${last}`,
      ...roundFigures(round, work, ruler, words),
    };
  });
}
