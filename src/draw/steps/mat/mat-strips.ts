import type { StepRecord, StripSetRecord, UnitRecord } from "../../../cutlist/record/unit-record.ts";
import type { Ruler } from "../../../length/types.ts";
import type { Words } from "../../../words/index.ts";
import { spokenLength } from "../../cutting/words.ts";
import type { Corner } from "../../quilt/patches.ts";
import { type ClothLayer, type Figure, figure, movedBy, type Segment, turnedBy } from "../cloth-layer.ts";
import { boxCorners } from "../geometry.ts";
import type { PanelDraft } from "../panel.ts";
import { pressWays } from "../press-ways.ts";

type StripSet = Extract<StepRecord, { do: "strip-set" }>;

/** Segments a picture shows before the set is torn off. */
const SHOWN = 3;

const lettersOf = ({ letter, lastLetter }: StripSetRecord["strips"][number]): string =>
  [...new Set([letter, lastLetter].filter((each) => each !== null))].join("/");

/** Upper and lower seen edge of every strip in the sewn set: raw at its two edges, at the seams elsewhere. */
function bands(set: StripSetRecord, seam: number): [number, number][] {
  let raw = 0;
  return set.strips.map(({ width }, i) => {
    const from = i === 0 ? 0 : raw + seam;
    const to = i === set.strips.length - 1 ? raw + width : raw + width - seam;
    raw += width - 2 * seam;
    return [from, to];
  });
}

/** A stretch of the sewn set as it lies, from 0. */
function setStretch(set: StripSetRecord, length: number, seam: number): ClothLayer[] {
  return bands(set, seam).map(([from, to], i) => {
    const strip = set.strips[i];
    return {
      corners: boxCorners({ x: 0, y: from, right: length, bottom: to }),
      fabric: strip?.fabric ?? "",
      letter: strip === undefined ? "" : lettersOf(strip),
      role: strip?.role ?? "",
      up: strip?.up ?? null,
      side: "right" as const,
    };
  });
}

/** A segment, half round where it is turned so. */
export function segmentOf(set: StripSetRecord, turned: boolean, seam: number): ClothLayer[] {
  const layers = setStretch(set, set.segment, seam);
  if (!turned) return layers;
  return layers.map((layer) => movedBy(turnedBy(layer, 4), set.segment, set.height)).reverse();
}

/** One strip set: its strips in order, then the set sewn, pressed and cut into segments. */
export function stripSetPanels(
  step: StripSet,
  set: StripSetRecord,
  seam: number,
  ruler: Ruler,
  words: Words,
): PanelDraft[] {
  const shown = shownOf(set);
  const { strips, height } = stripsApart(set, shown.length);
  const width = spokenLength(set.segment, ruler);
  return [
    {
      says: words.drawings.steps.strips,
      lowest: Math.min(...set.strips.map((strip) => strip.width)),
      figures: [
        figure(strips, {
          torn: tornAt(shown, height),
          says: words.drawings.steps.setsOf(set.fullSets, set.lastLength > 0 ? 1 : 0),
        }),
      ],
    },
    {
      says: words.drawings.steps.setSewn,
      figures: [
        figure(setStretch(set, shown.length, seam), {
          sewn: seamsOf(set, shown, seam),
          cuts: cutsOf(set, shown),
          pressed: pressedOf(step, set, shown, seam),
          torn: tornAt(shown, set.height),
          numbers: segmentNumbers(set, shown),
          lettered: false,
          says: words.drawings.steps.segmentsFrom(set.segments, width),
        }),
      ],
    },
  ];
}

/** As much of a set as is drawn: its first segments, or the whole. */
interface ShownSet {
  segments: number;
  /** It is longer than drawn. */
  goesOn: boolean;
  length: number;
  /** Where the first segment begins: behind the straightened end. */
  start: number;
}

function shownOf({ perFullSet, fromLast, segment, straighten }: StripSetRecord): ShownSet {
  const total = Math.max(perFullSet, fromLast);
  const segments = Math.min(SHOWN, total);
  const goesOn = total > segments;
  const length = segment * segments + (goesOn ? segment * 0.45 : straighten);
  return { segments, goesOn, length, start: goesOn ? 0 : length - segment * segments };
}

/** The strips of a set, not sewn yet, a little apart. */
function stripsApart(set: StripSetRecord, length: number): { strips: ClothLayer[]; height: number } {
  const gap = Math.min(set.height * 0.05, 0.08 * Math.min(...set.strips.map(({ width }) => width)));
  let y = 0;
  const strips = set.strips.map((strip): ClothLayer => {
    const top = y;
    y += strip.width + gap;
    return {
      corners: boxCorners({ x: 0, y: top, right: length, bottom: top + strip.width }),
      fabric: strip.fabric,
      letter: lettersOf(strip),
      role: strip.role,
      up: strip.up,
      side: "right",
    };
  });
  return { strips, height: y - gap };
}

function seamsOf(set: StripSetRecord, { length }: ShownSet, seam: number): Segment[] {
  return bands(set, seam)
    .slice(1)
    .map(
      ([from]): Segment => [
        [0, from],
        [length, from],
      ],
    );
}

function cutsOf({ segment, height }: StripSetRecord, { segments, start, length }: ShownSet): Segment[] {
  return Array.from({ length: segments + (start > 0 ? 1 : 0) }, (_, i): Segment => {
    const x = start > 0 ? start + i * segment : (i + 1) * segment;
    return [
      [x, height],
      [x, 0],
    ];
  }).filter(([[x]]) => x < length - 1);
}

/** The torn end of a set that goes on. */
function tornAt({ goesOn, length }: ShownSet, height: number): Segment[] {
  const edge: Segment = [
    [length, 0],
    [length, height],
  ];
  return goesOn ? [edge] : [];
}

/** Which way each seam of a set is pressed; of very many arrows a few tell the way. */
function pressedOf(
  step: StripSet,
  set: StripSetRecord,
  { goesOn, length }: ShownSet,
  seam: number,
): { at: Corner; to: Corner }[] {
  const roles = set.strips.map(({ role }) => role);
  const pressed = pressWays(step, roles).flatMap((way, i) => {
    const at: Corner = [
      length - (goesOn ? set.segment * 0.22 : set.segment * 0.5),
      bands(set, seam)[i + 1]?.[0] ?? 0,
    ];
    return way.map((sign): { at: Corner; to: Corner } => ({ at, to: [0, sign] }));
  });
  const every = Math.ceil(pressed.length / 10);
  return pressed.filter((_, i) => i % every === 0);
}

function segmentNumbers(
  { segment, height }: StripSetRecord,
  { segments, start }: ShownSet,
): { text: string; on: Corner[] }[] {
  return Array.from({ length: segments }, (_, i) => ({
    text: String(i + 1),
    on: boxCorners({ x: start + i * segment, y: 0, right: start + (i + 1) * segment, bottom: height }),
  }));
}

/** Shapes cut from a strip with slanting cuts. */
export function shapePanels(set: StripSetRecord, words: Words): PanelDraft[] {
  const [strip] = set.strips;
  if (strip === undefined) return [];
  const [high, apart] = [strip.width, set.segment];
  // At 45 degrees a cut runs as far along the strip as it is high; at 60 a triangle's point is half its base along.
  const lean = set.cut === "diamond-45" ? high : apart / 2;
  const count = set.cut === "diamond-45" ? 3 : 5;
  const start = lean * 0.3;
  const step = set.cut === "diamond-45" ? apart : apart / 2;
  const cuts = Array.from({ length: count + 1 }, (_, i): Segment => {
    const x = start + i * step;
    const rises = set.cut === "diamond-45" || i % 2 === 0;
    const [from, to]: Segment = [
      [x, rises ? high : 0],
      [x + lean, rises ? 0 : high],
    ];
    return [from, to];
  });
  const length = start + count * step + lean + lean * 0.5;
  const layer: ClothLayer = {
    corners: boxCorners({ x: 0, y: 0, right: length, bottom: high }),
    fabric: strip.fabric,
    letter: lettersOf(strip),
    role: strip.role,
    up: strip.up,
    side: "right",
  };
  const shapes = cuts.slice(1).map(([a, b], i): Corner[] => {
    const [c, d] = cuts[i] ?? [a, b];
    const points = [c, d, b, a];
    return points.filter((p, k) => points.findIndex((q) => Math.hypot(p[0] - q[0], p[1] - q[1]) < 1) === k);
  });
  const pieces: ClothLayer[] = shapes.slice(0, 2).map((corners) => ({ ...layer, corners }));
  const figures: Figure[] = [
    figure([layer], {
      cuts,
      torn: [
        [
          [length, 0],
          [length, high],
        ],
      ],
      numbers: shapes.map((on, i) => ({ text: String(i + 1), on })),
      says: words.drawings.steps.shapesFrom(set.segments),
      lettered: false,
    }),
    figure(
      pieces.map((piece, i) => movedBy(piece, i * high * 0.15, 0)),
      { sign: "then" },
    ),
  ];
  return [{ says: words.drawings.steps.slantCuts, figures }];
}

/**
 * Which segments of a unit are turned half round: those whose parts stand the other way up in the unit.
 * @param column roles of the unit's column, from the top
 */
export function isTurned(set: StripSetRecord, column: readonly string[]): boolean {
  const own = set.strips.map(({ role }) => role);
  const same = (a: readonly string[]): boolean => a.every((role, i) => role === column[i]);
  return !same(own) && same([...own].reverse());
}

/** The strip set a segment's name speaks of: `A2` is the second segment of set A. */
export function setNamed(unit: UnitRecord, heap: number, name: string): StripSetRecord | null {
  return unit.stripSets.find((set) => set.heap === heap && set.name === name.charAt(0)) ?? null;
}
