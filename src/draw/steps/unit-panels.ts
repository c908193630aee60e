import type { BatchRecord, UnitRecord } from "../../cutlist/record/unit-record.ts";
import type { Ruler } from "../../length/types.ts";
import type { Words } from "../../words/index.ts";
import { spokenSize } from "../cutting/words.ts";
import type { Corner } from "../quilt/patches.ts";
import { type ClothLayer, type Figure, figure, movedBy } from "./cloth-layer.ts";
import { boxCorners } from "./geometry.ts";
import { joinMap } from "./join-map.ts";
import { joinPanels } from "./join-pictures.ts";
import { roundsOf } from "./join-rounds.ts";
import { type JoinWork, joinWork, layerOf, type NumberedJoin, sewnTogether } from "./join-work.ts";
import { trimmedTo } from "./mat/mat.ts";
import { sewFlips } from "./mat/mat-flip.ts";
import { type Hearts, sewGeese, sewHearts } from "./mat/mat-large.ts";
import { sewCrossPair, sewPair } from "./mat/mat-pair.ts";
import { segmentUnit } from "./mat/mat-segments.ts";
import { segmentOf, setNamed, shapePanels, stripSetPanels } from "./mat/mat-strips.ts";
import type { Made, Panel, PanelDraft, PanelGroup } from "./panel.ts";
import type { StepFabric } from "./step-fabric.ts";
import { trianglePanels } from "./triangles.ts";
import { type UnitOutline, wholeTriangles } from "./unit-outlines.ts";

/** What the pictures of units are drawn from, besides their records. */
export interface StepsOf {
  seam: number;
  fabrics: readonly StepFabric[];
  ruler: Ruler;
  outlines: ReadonlyMap<number, UnitOutline>;
}

/** How one kind of unit is sewn, in pictures, and what comes off by heap, trimmed to its raw size. */
export interface UnitPictures {
  groups: PanelGroup[];
  finished: { heap: number | null; layers: ClothLayer[] }[];
}

/** Pictures of joins above which a map stands for those in the middle. */
const MOST_ROUNDS = 9;
const BEFORE_MAP = 3;
/** Joins so few are drawn again for every heap. */
const FEW_ROUNDS = 2;

/** `1` for one picture of a step, `1a`, `1b` ... for several. */
function numbered(number: number, drafts: readonly PanelDraft[]): Panel[] {
  return drafts.map((draft, i) => ({
    ...draft,
    number: drafts.length === 1 ? String(number) : `${number}${"abcdefghijklmnop".charAt(i)}`,
  }));
}

/** What is cut off all round, and the units it leaves. */
function trimPanel(
  layers: readonly ClothLayer[],
  { raw }: UnitRecord,
  now: readonly Figure[],
  says: string,
): PanelDraft {
  const box = boxCorners({ x: 0, y: 0, right: raw.across, bottom: raw.along });
  return {
    says,
    figures: [
      figure([...layers], { trim: box, lettered: false }),
      ...now.map((each, i): Figure => ({ ...each, sign: i === 0 ? "then" : "and" })),
    ],
  };
}

/** What it is now: one unit of each heap. */
function nowPanel(figures: Figure[], unit: UnitRecord, ruler: Ruler, words: Words): Panel {
  return {
    number: "",
    says: `${words.drawings.steps.now} ${spokenSize(unit.raw.across, unit.raw.along, ruler)}`,
    figures: figures.map((each, i) => ({ ...each, sign: i === 0 ? "" : "and" })),
  };
}

/** The trim with what it leaves, or what there is now where nothing is trimmed. */
function lastPanels(
  layers: readonly ClothLayer[],
  now: Figure[],
  unit: UnitRecord,
  ruler: Ruler,
  words: Words,
): Panel[] {
  const index = unit.steps.findIndex((step) => step.do === "trim");
  const step = unit.steps[index];
  if (step?.do !== "trim") return [nowPanel(now, unit, ruler, words)];
  const size = spokenSize(unit.raw.across, unit.raw.along, ruler);
  const says = step.by === "ends" ? words.drawings.steps.ends(size) : words.drawings.steps.trim(size);
  return numbered(index + 1, [trimPanel(layers, unit, now, says)]);
}

/** Units sewn before they are cut, of one batch. */
function batchPictures(
  batch: BatchRecord,
  unit: UnitRecord,
  of: StepsOf,
  words: Words,
): { panels: Panel[]; finished: UnitPictures["finished"] } {
  const panels: Panel[] = [];
  let made: Made[] = [];
  let loose: ClothLayer[][] = [];
  let hearts: Hearts = [[], []];
  for (const [i, step] of unit.steps.entries()) {
    const add = (drafts: readonly PanelDraft[]): void => {
      panels.push(...numbered(i + 1, drafts));
    };
    if (step.do === "pair") {
      const sewn = sewPair(step, batch, unit, of.seam, words);
      ({ made, loose } = sewn);
      add(sewn.panels);
    } else if (step.do === "cross-pair") {
      const sewn = sewCrossPair(step, loose, unit, of.seam, words);
      made = sewn.made;
      add(sewn.panels);
    } else if (step.do === "small-on-large" && step.round === 1) {
      const sewn = sewHearts(step, batch, of.seam, words);
      hearts = sewn.hearts;
      add(sewn.panels);
    } else if (step.do === "small-on-large") {
      const sewn = sewGeese(step, batch, hearts, { unit, seam: of.seam }, words);
      made = sewn.made;
      add(sewn.panels);
    } else if (step.do === "flip") {
      const sewn = sewFlips(step, batch, of.seam, words);
      made = sewn.made;
      add(sewn.panels);
    }
  }
  const finished = made.map(({ layers }, i) => ({
    heap: batch.gives[i] ?? null,
    layers: trimmedTo(layers, unit.raw),
  }));
  const seen = new Set<number | null>();
  const shown = finished.flatMap(({ heap, layers }): Figure[] => {
    if (seen.has(heap)) return [];
    seen.add(heap);
    const own = heap === null ? null : unit.heaps[heap];
    const says = own == null ? words.drawings.steps.spare : words.drawings.steps.heap(own.name, own.count);
    return [figure(layers, { says, lettered: false })];
  });
  panels.push(...lastPanels(made[0]?.layers ?? [], shown, unit, of.ruler, words));
  return { panels, finished };
}

/** Joins of one heap: each in a picture, or the first, a map and the last where they are too many. */
function joinedPanels(joins: readonly NumberedJoin[], work: JoinWork, ruler: Ruler, words: Words): Panel[] {
  const rounds = roundsOf(joins, work);
  if (rounds.length <= MOST_ROUNDS) return joinPanels(joins, work, ruler, words);
  const all = joinPanels(joins, work, ruler, words);
  return [...all.slice(0, BEFORE_MAP), joinMap(joins, work, words), ...all.slice(-1)];
}

/** The patches of a unit set apart from its middle, lettered, their prints as they lie. */
function sameAgain(
  joins: readonly NumberedJoin[],
  work: JoinWork,
  outline: UnitOutline,
  words: Words,
): Panel {
  const middle: Corner = [outline.across / 2, outline.along / 2];
  const layers = [...work.patches.values()].map((patch) => {
    const xs = patch.corners.map(([x]) => x);
    const ys = patch.corners.map(([, y]) => y);
    const at: Corner = [(Math.min(...xs) + Math.max(...xs)) / 2, (Math.min(...ys) + Math.max(...ys)) / 2];
    return movedBy(layerOf(patch), (at[0] - middle[0]) * 0.3, (at[1] - middle[1]) * 0.3);
  });
  const [first, last] = [joins[0]?.number, joins.at(-1)?.number];
  return { number: `${first}–${last}`, says: words.drawings.steps.alike, figures: [figure(layers)] };
}

function shifted(layers: readonly ClothLayer[], by: number): ClothLayer[] {
  return layers.map((layer) => movedBy(layer, by, by));
}

/** Units whose patches, segments or strips are joined, of one heap. */
function heapPictures(
  unit: UnitRecord,
  index: number,
  heapIndex: number,
  of: StepsOf,
  words: Words,
): { panels: Panel[]; finished: UnitPictures["finished"] } {
  const heap = unit.heaps[heapIndex];
  const finishedOutline = of.outlines.get(index);
  if (heap === undefined || finishedOutline === undefined) return { panels: [], finished: [] };
  const slanting = unit.stripSets.some(({ cut }) => cut === "triangle-60");
  const outline = slanting ? wholeTriangles(finishedOutline) : finishedOutline;
  const work = joinWork(unit, heap, heapIndex, outline, of.seam);
  const panels: Panel[] = [];
  const joins: NumberedJoin[] = [];
  const first = heapIndex === 0;
  let layers: ClothLayer[] = [];
  const own = unit.stripSets.filter((set) => set.heap === heapIndex);
  for (const [i, step] of unit.steps.entries()) {
    const add = (drafts: readonly PanelDraft[]): void => {
      panels.push(...numbered(i + 1, drafts));
    };
    if (step.do === "cut-triangles" && unit.heaps.length === 1) add(trianglePanels(unit, of.fabrics, words));
    else if (step.do === "strip-set" || step.do === "cut-shapes") {
      const set = own.find(({ name }) => name === "ABCDEFGH".charAt(step.set));
      if (set === undefined) continue;
      if (step.do === "cut-shapes") add(shapePanels(set, words));
      else {
        add(stripSetPanels(step, set, of.seam, of.ruler, words));
        layers = segmentOf(set, false, of.seam);
      }
    } else if (step.do === "join") {
      if (step.parts.every((part) => setNamed(unit, heapIndex, part) !== null && !work.patches.has(part))) {
        const { made, figures } = segmentUnit(unit, heapIndex, work, step, words);
        layers = made.layers;
        add([{ says: words.drawings.steps.join, figures }]);
      } else joins.push({ step, number: i + 1 });
    }
  }
  if (joins.length > 0) {
    layers = shifted(sewnTogether([...work.patches.keys()], work), of.seam);
    const few = roundsOf(joins, work).length <= FEW_ROUNDS;
    panels.push(
      ...(first || few
        ? joinedPanels(joins, work, of.ruler, words)
        : [sameAgain(joins, work, outline, words)]),
    );
  }
  const finished = trimmedTo(layers, unit.raw);
  const now = figure(finished, { says: words.drawings.steps.heap(heap.name, heap.count), lettered: false });
  panels.push(
    ...(first ? lastPanels(layers, [now], unit, of.ruler, words) : [nowPanel([now], unit, of.ruler, words)]),
  );
  return { panels, finished: [{ heap: heapIndex, layers: finished }] };
}

/** Every step of one kind of unit in pictures; null for a patch that needs none. */
export function unitPictures(
  unit: UnitRecord,
  index: number,
  of: StepsOf,
  words: Words,
): UnitPictures | null {
  if (unit.steps.length === 0) return null;
  if (unit.batches.length > 0) {
    const all = unit.batches.map((batch) => ({ batch, ...batchPictures(batch, unit, of, words) }));
    return {
      groups: all.map(({ batch, panels }) => ({
        heading: unit.batches.length === 1 ? "" : words.drawings.steps.batch(batch.sets),
        panels,
      })),
      finished: all.flatMap(({ finished }) => finished),
    };
  }
  const all = unit.heaps.map((heap, i) => ({ heap, ...heapPictures(unit, index, i, of, words) }));
  // Of several heaps the triangles are cut together, before any is sewn.
  const cutFirst = unit.heaps.length === 1 ? -1 : unit.steps.findIndex((step) => step.do === "cut-triangles");
  const cut = cutFirst < 0 ? [] : numbered(cutFirst + 1, trianglePanels(unit, of.fabrics, words));
  const groups = all.flatMap(({ heap, panels }): PanelGroup[] =>
    panels.length === 0
      ? []
      : [
          {
            heading: unit.heaps.length === 1 ? "" : words.drawings.steps.heapOf(heap.name, heap.count),
            panels,
          },
        ],
  );
  if (cut.length > 0 && groups.length > 0) groups.unshift({ heading: "", panels: cut });
  return groups.length === 0 ? null : { groups, finished: all.flatMap(({ finished }) => finished) };
}
