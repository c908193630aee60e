import type {
  BatchRecord,
  HeapRecord,
  LaidRecord,
  StepRecord,
  UnitRecord,
} from "../../cutlist/record/unit-record.ts";
import { formatCut, formatCutSize } from "../../length/index.ts";
import type { Corner, Eighth } from "../../quilt/units/types.ts";
import type { Words } from "../../words/index.ts";
import { indented } from "./making-lines.ts";
import { joinLines } from "./unit-joins.ts";
import { stripSetLines } from "./unit-strip-sets.ts";
import { bagOf, bagTold, headsOf, pressLine, type Telling } from "./unit-telling.ts";

/** What is told of a unit is read off its record; nothing here works out how it is made. */

/** Pieces of a set gathered by bag. */
function taken(batch: BatchRecord, tell: Telling, words: Words): { count: number; bag: string }[] {
  const counts = new Map<string, number>();
  for (const laid of batch.laid)
    counts.set(bagOf(laid, tell, words), (counts.get(bagOf(laid, tell, words)) ?? 0) + 1);
  return [...counts].map(([bag, count]) => ({ bag, count }));
}

const at = (batch: BatchRecord, piece: number, list = 0): LaidRecord | undefined =>
  batch.laid.find((laid) => laid.piece === piece && laid.list === list);

/** Where the four small squares lie on the large one, in the order of the recipe's lists. */
const SMALL_CORNERS: readonly Corner[] = ["bottom-right", "top-right", "top-left", "bottom-left"];

function pairLines(
  step: Extract<StepRecord, { do: "pair" }>,
  batch: BatchRecord,
  tell: Telling,
  words: Words,
): string[] {
  const [under, over] = [at(batch, step.under), at(batch, step.over)];
  if (under === undefined || over === undefined) return [];
  const lay = words.units.lay(
    bagOf(over, tell, words),
    bagOf(under, tell, words),
    headsOf(under.up, under.fabric, tell, words),
    headsOf(over.faceDown, over.fabric, tell, words),
  );
  switch (step.lines) {
    case "one":
      return [lay, words.units.drawLine(bagOf(over, tell, words), step.line), words.units.sewBoth(tell.seam)];
    case "both":
      return [lay, words.units.drawBoth(bagOf(over, tell, words)), words.units.sewBothDiagonals(tell.seam)];
    case "edges":
      return [lay, words.units.sewEdges(tell.seam), words.units.biasEdges];
  }
}

function smallLines(
  step: Extract<StepRecord, { do: "small-on-large" }>,
  batch: BatchRecord,
  tell: Telling,
  words: Words,
): string[] {
  const [large, small] = [at(batch, step.large), at(batch, step.small)];
  if (large === undefined || small === undefined) return [];
  const lists = step.round === 1 ? [2, 0] : [1, 3];
  const corners = lists.flatMap((list) => {
    const laid = at(batch, step.small, list);
    const corner = SMALL_CORNERS[list];
    if (laid === undefined || corner === undefined || laid.faceDown === null) return [];
    return [{ corner, heads: headsOf(laid.faceDown, laid.fabric, tell, words) }];
  });
  const heads = corners.length === 0 ? [] : [words.units.smallHeads(corners)];
  if (step.round === 2) return [words.units.secondSmall(bagOf(small, tell, words), tell.seam), ...heads];
  return [
    words.units.ruleSmall(bagOf(small, tell, words)),
    words.units.firstSmall(
      bagOf(small, tell, words),
      bagOf(large, tell, words),
      headsOf(large.up, large.fabric, tell, words),
      tell.seam,
    ),
    ...heads,
  ];
}

function flipLines(
  step: Extract<StepRecord, { do: "flip" }>,
  batch: BatchRecord,
  tell: Telling,
  words: Words,
): string[] {
  const base = at(batch, step.base);
  if (base === undefined) return [];
  const laid = step.squares.flatMap(({ piece, corner }) => {
    const own = at(batch, piece);
    return own === undefined ? [] : [{ own, corner }];
  });
  const bags = new Set(laid.map(({ own }) => bagOf(own, tell, words)));
  const [only = ""] = bags;
  const corners = laid.map(({ own, corner }) => {
    const rising = corner === "top-left" || corner === "bottom-right";
    const heads = headsOf(own.faceDown, own.fabric, tell, words);
    return words.units.flipCorner(
      corner,
      bags.size > 1 ? bagOf(own, tell, words) : "",
      rising ? "rising" : "falling",
      heads,
    );
  });
  return [
    words.units.flipBase(bagOf(base, tell, words), headsOf(base.up, base.fabric, tell, words)),
    words.units.flipEach(bags.size > 1 ? words.units.itsSquare : only, tell.seam),
    ...indented(corners),
  ];
}

function trimLine(step: Extract<StepRecord, { do: "trim" }>, tell: Telling, words: Words): string {
  const { across, along } = step.to ?? tell.unit.raw;
  return words.units.trim[step.by](formatCutSize(across, along, tell.plan.ruler), tell.seam);
}

function stepLines(
  step: StepRecord,
  batch: BatchRecord | null,
  heap: number,
  tell: Telling,
  words: Words,
): string[] {
  const own = tell.unit.stripSets.filter((set) => set.heap === heap);
  switch (step.do) {
    case "pair":
      return batch === null ? [] : [...pairLines(step, batch, tell, words), ...pressLine(step, tell, words)];
    case "cross-pair":
      return [words.units.crossPair(tell.seam), ...pressLine(step, tell, words)];
    case "small-on-large":
      return batch === null ? [] : [...smallLines(step, batch, tell, words), ...pressLine(step, tell, words)];
    case "flip":
      return batch === null ? [] : flipLines(step, batch, tell, words);
    case "strip-set": {
      const name = "ABCDEFGH".charAt(step.set);
      const set = own.find((each) => each.name === name);
      return set === undefined ? [] : [...stripSetLines(set, tell, words), ...pressLine(step, tell, words)];
    }
    case "cut-shapes": {
      const set = own[step.set];
      const strip = set?.strips[0];
      if (set === undefined || strip === undefined) return [];
      const letters = [...new Set([strip.letter, strip.lastLetter].filter((each) => each !== null))].join(
        "/",
      );
      const bag = bagTold(letters, strip.fabric, tell, words);
      return [
        set.cut === "diamond-45"
          ? words.units.diamonds(bag, set.segments, formatCut(strip.width, tell.plan.ruler))
          : words.units.triangles60(bag, set.segments),
        ...(step.wide === true ? [words.units.wideShapes] : []),
      ];
    }
    case "join":
      return joinLines([step], null, tell.unit.heaps[heap], tell, words);
    case "cut-triangles":
      // The cutting steps halve and quarter squares.
      return [];
    case "trim":
      return [trimLine(step, tell, words)];
  }
}

/** How the prints of every heap lie. */
function heapPrints(heap: HeapRecord, unit: UnitRecord): { fabric: string; up: Eighth }[] {
  return Object.entries(heap.prints).map(([role, up]) => ({ fabric: unit.fabrics[role] ?? "", up }));
}

/** Quarter-turns clockwise that make all prints of a heap stand upright; null where none does. */
function uprightTurn(heap: HeapRecord, unit: UnitRecord): 0 | 1 | 2 | 3 | null {
  const prints = heapPrints(heap, unit);
  const [first] = prints;
  if (first === undefined || first.up % 2 !== 0 || prints.some(({ up }) => up !== first.up)) return null;
  return ((((8 - first.up) % 8) / 2) % 4) as 0 | 1 | 2 | 3;
}

/** How finished units are told apart and put into heaps. */
export function sortLines(tell: Telling, words: Words): string[] {
  const { unit } = tell;
  const { heaps } = unit;
  if (heaps.length < 2) return [];
  const fabrics = [...new Set(heaps.flatMap((heap) => heapPrints(heap, unit).map(({ fabric }) => fabric)))];
  const turns = heaps.map((heap) => uprightTurn(heap, unit));
  if (turns.every((turn) => turn !== null) && new Set(turns).size === turns.length) {
    const told = heaps.map((heap, i) =>
      words.units.heapUpright(heap.name, heap.count, unit.kind, turns[i] ?? 0),
    );
    return [
      words.units.sortUpright(
        fabrics,
        fabrics.every((fabric) => tell.twoWay(fabric)),
        told,
      ),
    ];
  }
  const told = heaps.map((heap) => {
    const prints = heapPrints(heap, unit).map(({ fabric, up }) => ({
      fabric,
      heads: headsOf(up, fabric, tell, words),
    }));
    return words.units.heapPrints(heap.name, heap.count, prints);
  });
  return [words.units.sort(told)];
}

/** Steps of one heap or batch in order; joinings that follow one another are told together. */
function toldInOrder(batch: BatchRecord | null, heap: number, tell: Telling, words: Words): string[][] {
  const runs: StepRecord[][] = [];
  for (const step of tell.unit.steps) {
    const run = runs.at(-1);
    if (step.do === "join" && run?.[0]?.do === "join") run.push(step);
    else runs.push([step]);
  }
  let last: string | null = null;
  return runs.map((run) => {
    const joins = run.filter((step) => step.do === "join");
    if (joins.length < run.length) return run.flatMap((step) => stepLines(step, batch, heap, tell, words));
    const lines = joinLines(joins, last, tell.unit.heaps[heap], tell, words);
    last = joins.at(-1)?.makes ?? null;
    return lines;
  });
}

/** What is told of one step, or of joinings that follow one another: which steps of the unit, from 1; 0 before the first. */
export interface ToldRun {
  from: number;
  to: number;
  lines: string[];
}

/** First and last step of every run that is told together, in the order of `toldInOrder`. */
function runsOf({ steps }: UnitRecord): { from: number; to: number }[] {
  const runs: { from: number; to: number; join: boolean }[] = [];
  for (const [i, step] of steps.entries()) {
    const run = runs.at(-1);
    const join = step.do === "join";
    if (join && run?.join === true) run.to = i + 1;
    else runs.push({ from: i + 1, to: i + 1, join });
  }
  return runs;
}

/** The steps that are the same for all batches and heaps are told once; those that differ, for each. */
export function bodyOf(tell: Telling, words: Words): ToldRun[] {
  const { unit } = tell;
  const runs = runsOf(unit);
  const numbered = (told: readonly string[][]): ToldRun[] =>
    told.map((lines, i) => ({ from: runs[i]?.from ?? 0, to: runs[i]?.to ?? 0, lines }));
  if (unit.batches.length > 0) {
    return unit.batches.flatMap((batch) => [
      {
        from: 0,
        to: 0,
        lines: [
          ...(unit.batches.length > 1 ? [words.units.batch(batch.sets)] : []),
          words.units.take(taken(batch, tell, words), unit.unitsPerSet === 1 ? "unit" : "set"),
        ],
      },
      ...numbered(toldInOrder(batch, 0, tell, words)),
    ]);
  }
  if (unit.heaps.length === 1) return numbered(toldInOrder(null, 0, tell, words));
  // What is done to all heaps alike stands first; what differs by how the print lies is told heap by heap.
  const lines = unit.heaps.map((_, heap) => toldInOrder(null, heap, tell, words));
  const [first = []] = lines;
  return numbered(
    first.map((told, i) => {
      const own = lines.map((each) => (each[i] ?? []).join("\n"));
      if (own.every((each) => each === own[0])) return told;
      return unit.heaps.flatMap(({ name, count }, heap) => [
        words.units.heap(name, count),
        ...indented(lines[heap]?.[i] ?? []),
      ]);
    }),
  );
}
