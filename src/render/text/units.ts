import type {
  BatchRecord,
  HeapRecord,
  LaidRecord,
  PatchRecord,
  StepRecord,
  StripSetRecord,
  UnitRecord,
} from "../../cutlist/unit-record.ts";
import { formatCut, formatCutSize, formatLength } from "../../length/index.ts";
import type { Plan } from "../../plan/types.ts";
import type { Corner, Eighth } from "../../quilt/units/types.ts";
import { aboutLength, aboutSize } from "./lengths.ts";
import { indented } from "./making-lines.ts";
import { unitWords } from "./unit-words.ts";

/** What is told of a unit is read off its record; nothing here works out how it is made. */

interface Telling {
  unit: UnitRecord;
  plan: Plan;
  seam: string;
  size(size: { across: number; along: number }): string;
  twoWay(fabric: string): boolean;
}

function telling(unit: UnitRecord, plan: Plan): Telling {
  const kinds = new Map(plan.fabrics.map(({ name, print }) => [name, print.kind]));
  return {
    unit,
    plan,
    seam: formatLength(plan.making?.seam ?? 0, plan.ruler),
    size: ({ across, along }) => aboutSize(across, along, plan),
    twoWay: (fabric) => kinds.get(fabric) === "two-way",
  };
}

const headsOf = (up: Eighth | null, fabric: string, { twoWay }: Telling): string =>
  up === null ? "" : unitWords.heads(up, twoWay(fabric));

const bagOf = ({ letter, fabric }: LaidRecord): string => unitWords.bag(letter, fabric);

/** Pieces of a set gathered by bag. */
function taken(batch: BatchRecord): { count: number; bag: string }[] {
  const counts = new Map<string, number>();
  for (const laid of batch.laid) counts.set(bagOf(laid), (counts.get(bagOf(laid)) ?? 0) + 1);
  return [...counts].map(([bag, count]) => ({ bag, count }));
}

/** Towards what a seam is pressed. */
function pressLine(step: StepRecord): string[] {
  if (!("press" in step)) return [];
  if (step.pressTo !== null) {
    const { part, fabric } = step.pressTo;
    return [unitWords.press.to(fabric === "" || fabric === part ? part : fabric)];
  }
  return step.press.to === "part" ? [] : [unitWords.press[step.press.to]];
}

const at = (batch: BatchRecord, piece: number, list = 0): LaidRecord | undefined =>
  batch.laid.find((laid) => laid.piece === piece && laid.list === list);

/** Where the four small squares lie on the large one, in the order of the recipe's lists. */
const SMALL_CORNERS: readonly Corner[] = ["bottom-right", "top-right", "top-left", "bottom-left"];

function pairLines(step: Extract<StepRecord, { do: "pair" }>, batch: BatchRecord, tell: Telling): string[] {
  const [under, over] = [at(batch, step.under), at(batch, step.over)];
  if (under === undefined || over === undefined) return [];
  const lay = unitWords.lay(
    bagOf(over),
    bagOf(under),
    headsOf(under.up, under.fabric, tell),
    headsOf(over.faceDown, over.fabric, tell),
  );
  switch (step.lines) {
    case "one":
      return [lay, unitWords.drawLine(bagOf(over), step.line), unitWords.sewBoth(tell.seam)];
    case "both":
      return [lay, unitWords.drawBoth(bagOf(over)), unitWords.sewBothDiagonals(tell.seam)];
    case "edges":
      return [lay, unitWords.sewEdges(tell.seam), unitWords.biasEdges];
  }
}

function smallLines(
  step: Extract<StepRecord, { do: "small-on-large" }>,
  batch: BatchRecord,
  tell: Telling,
): string[] {
  const [large, small] = [at(batch, step.large), at(batch, step.small)];
  if (large === undefined || small === undefined) return [];
  const lists = step.round === 1 ? [2, 0] : [1, 3];
  const corners = lists.flatMap((list) => {
    const laid = at(batch, step.small, list);
    const corner = SMALL_CORNERS[list];
    if (laid === undefined || corner === undefined || laid.faceDown === null) return [];
    return [{ corner, heads: headsOf(laid.faceDown, laid.fabric, tell) }];
  });
  const heads = corners.length === 0 ? [] : [unitWords.smallHeads(corners)];
  if (step.round === 2) return [unitWords.secondSmall(bagOf(small), tell.seam), ...heads];
  return [
    unitWords.ruleSmall(bagOf(small)),
    unitWords.firstSmall(bagOf(small), bagOf(large), headsOf(large.up, large.fabric, tell), tell.seam),
    ...heads,
  ];
}

function flipLines(step: Extract<StepRecord, { do: "flip" }>, batch: BatchRecord, tell: Telling): string[] {
  const base = at(batch, step.base);
  if (base === undefined) return [];
  const corners = step.squares.flatMap(({ piece, corner }) => {
    const laid = at(batch, piece);
    if (laid === undefined) return [];
    const rising = corner === "top-left" || corner === "bottom-right";
    const heads = headsOf(laid.faceDown, laid.fabric, tell);
    return [unitWords.flip(bagOf(laid), corner, rising ? "rising" : "falling", heads, tell.seam)];
  });
  return [unitWords.flipBase(bagOf(base), headsOf(base.up, base.fabric, tell)), ...corners];
}

function stripSetLines(set: StripSetRecord, tell: Telling): string[] {
  const { ruler } = tell.plan;
  const strips = set.strips.map(({ letter, lastLetter, fabric, up }) => {
    const letters = [...new Set([letter, lastLetter].filter((each) => each !== null))].join("/");
    const heads = headsOf(up, fabric, tell);
    return `${unitWords.bag(letters, fabric)}${heads === "" ? "" : `, ${heads}`}`;
  });
  const short = set.lastLength > 0 ? 1 : 0;
  return [
    unitWords.stripSet(set.name, strips),
    unitWords.setCount(
      set.fullSets,
      formatLength(set.fullLength, ruler),
      short,
      short === 0 ? "" : formatCut(set.lastLength, ruler),
      aboutLength(set.height, tell.plan),
    ),
    unitWords.segments(
      set.segments,
      formatCut(set.segment, ruler),
      set.perFullSet,
      set.fromLast,
      set.fullSets,
      set.name,
      set.segmentsPerUnit,
    ),
  ];
}

/** Which diagonal makes these two halves. */
function lineOf(parts: ReadonlySet<string>): "rising" | "falling" | null {
  if (parts.has("top-left") || parts.has("bottom-right")) return "rising";
  return parts.has("top-right") || parts.has("bottom-left") ? "falling" : null;
}

/** The bags that are cut into halves and quarters before they are sewn. */
function triangleLines(tell: Telling): string[] {
  const bags = new Map<
    string,
    { fabric: string; parts: Set<string>; directed: boolean; kind: "half" | "quarter" }
  >();
  for (const { patches } of tell.unit.heaps) {
    for (const { fabric, from, up } of patches) {
      for (const { letter, part } of from) {
        if (part === "whole" || part === "template") continue;
        const kind = part.includes("-") ? "half" : "quarter";
        const bag = bags.get(letter) ?? { fabric, parts: new Set<string>(), directed: up !== null, kind };
        bag.parts.add(part);
        bags.set(letter, bag);
      }
    }
  }
  return [...bags].map(([letter, { fabric, parts, directed, kind }]) => {
    const bag = unitWords.bag(letter, fabric);
    if (kind === "quarter") return unitWords.quarter(bag);
    const print = tell.plan.fabrics.find(({ name }) => name === fabric)?.print;
    const cut = tell.plan.fabrics.flatMap(({ pieces }) => pieces).find((piece) => piece.letter === letter);
    const slants = directed || cut?.across !== cut?.along;
    const heads = directed ? unitWords.heads(print?.axis === "across" ? 2 : 0, tell.twoWay(fabric)) : "";
    return unitWords.halve(
      bag,
      slants
        ? cut?.diagonal === "falling"
          ? "falling"
          : cut?.diagonal === "rising"
            ? "rising"
            : lineOf(parts)
        : null,
      heads,
    );
  });
}

/** A patch by the bag it comes out of: `A (hens)`, with the half and how its print lies where that matters. */
function patchTold(patch: PatchRecord, tell: Telling): string {
  const { from, letters, fabric, up } = patch;
  const heads = headsOf(up, fabric, tell);
  if (from.length === 0) return unitWords.bag(letters.join("/"), fabric);
  const many = from.length > 1;
  const told = from.map(({ letter, part, count }) => ({
    letter,
    part: up === null ? "" : unitWords.part(part),
    heads: "",
    count,
    all: !many,
  }));
  const body = unitWords.from(told);
  return `${body} (${fabric}${heads === "" ? "" : `, ${heads} in the unit`})`;
}

function joinLines(
  step: Extract<StepRecord, { do: "join" }>,
  heap: HeapRecord | undefined,
  tell: Telling,
): string[] {
  const patches = new Map((heap?.patches ?? []).map((patch) => [patch.spot, patch]));
  const parts = step.parts.map((part) => {
    const patch = patches.get(part);
    return patch === undefined ? part : unitWords.spot(part, patchTold(patch, tell));
  });
  const size = step.size === null ? [] : [unitWords.measures(tell.size(step.size))];
  const corners = (step.corners ?? []).map(({ x, y }) => ({
    across: aboutLength(x, tell.plan),
    down: aboutLength(y, tell.plan),
  }));
  return [unitWords.join(parts, step.way, step.makes, step.setIn === true, corners), ...size];
}

function trimLine(step: Extract<StepRecord, { do: "trim" }>, tell: Telling): string {
  const { across, along } = step.to ?? tell.unit.raw;
  return unitWords.trim[step.by](formatCutSize(across, along, tell.plan.ruler), tell.seam);
}

function stepLines(step: StepRecord, batch: BatchRecord | null, heap: number, tell: Telling): string[] {
  const own = tell.unit.stripSets.filter((set) => set.heap === heap);
  switch (step.do) {
    case "pair":
      return batch === null ? [] : [...pairLines(step, batch, tell), ...pressLine(step)];
    case "cross-pair":
      return [unitWords.crossPair(tell.seam), ...pressLine(step)];
    case "small-on-large":
      return batch === null ? [] : [...smallLines(step, batch, tell), ...pressLine(step)];
    case "flip":
      return batch === null ? [] : flipLines(step, batch, tell);
    case "strip-set": {
      const name = "ABCDEFGH".charAt(step.set);
      const set = own.find((each) => each.name === name);
      return set === undefined ? [] : [...stripSetLines(set, tell), ...pressLine(step)];
    }
    case "cut-shapes": {
      const set = own[step.set];
      const strip = set?.strips[0];
      if (set === undefined || strip === undefined) return [];
      const letters = [...new Set([strip.letter, strip.lastLetter].filter((each) => each !== null))].join(
        "/",
      );
      const bag = unitWords.bag(letters, strip.fabric);
      return [
        set.cut === "diamond-45"
          ? unitWords.diamonds(bag, set.segments, formatCut(strip.width, tell.plan.ruler))
          : unitWords.triangles60(bag, set.segments),
        ...(step.wide === true ? [unitWords.wideShapes] : []),
      ];
    }
    case "join":
      return [...joinLines(step, tell.unit.heaps[heap], tell), ...pressLine(step)];
    case "cut-triangles":
      return triangleLines(tell);
    case "trim":
      return [trimLine(step, tell)];
  }
}

/** How a heap of finished units is told from the others: by how its print lies. */
export function heapTold(heap: HeapRecord, unit: UnitRecord, plan: Plan): string {
  const tell = telling(unit, plan);
  const prints = Object.entries(heap.prints).map(([role, up]) => ({ fabric: unit.fabrics[role] ?? "", up }));
  const fabrics = new Set(prints.map(({ fabric }) => fabric));
  const [first] = prints;
  if (first === undefined) return "";
  const alike = fabrics.size === 1 && prints.every(({ up }) => up === first.up);
  if (alike && first.up % 2 === 0) {
    const turn = ((((8 - first.up) % 8) / 2) % 4) as 0 | 1 | 2 | 3;
    return unitWords.heapSays(unit.kind, turn, first.fabric, tell.twoWay(first.fabric));
  }
  return unitWords.heapPrints(
    prints.map(({ fabric, up }) => ({ fabric, heads: unitWords.heads(up, tell.twoWay(fabric)) })),
  );
}

/** The steps that are the same for all batches and heaps are told once; those that differ, for each. */
function bodyOf(tell: Telling): string[] {
  const { unit } = tell;
  const laidLines = (batch: BatchRecord | null, heap: number): string[] =>
    unit.steps.flatMap((step) => stepLines(step, batch, heap, tell));
  if (unit.batches.length > 0) {
    return unit.batches.flatMap((batch) => [
      ...(unit.batches.length > 1 ? [unitWords.batch(batch.sets)] : []),
      unitWords.take(taken(batch), unit.unitsPerSet === 1 ? "unit" : "set"),
      ...laidLines(batch, 0),
    ]);
  }
  if (unit.heaps.length === 1) return laidLines(null, 0);
  // What is done to all heaps alike stands first; what differs by how the print lies is told heap by heap.
  const lines = unit.heaps.map((_, heap) => unit.steps.map((step) => stepLines(step, null, heap, tell)));
  const [first = []] = lines;
  return unit.steps.flatMap((_, i) => {
    const own = lines.map((each) => (each[i] ?? []).join("\n"));
    if (own.every((each) => each === own[0])) return first[i] ?? [];
    return unit.heaps.flatMap(({ name, count }, heap) => [
      `${name} (${count}):`,
      ...indented(lines[heap]?.[i] ?? []),
    ]);
  });
}

/** One kind of unit: what it is, the bags it takes, its steps, its heaps. Empty for a single patch. */
export function unitRecordLines(unit: UnitRecord, plan: Plan): string[] {
  if (unit.steps.length === 0) return [];
  const tell = telling(unit, plan);
  const untrimmed = unit.steps.every((step) => step.do !== "trim");
  const heaps = unit.heaps.map((heap) => unitWords.heap(heap.name, heap.count, heapTold(heap, unit, plan)));
  return [
    `[ ] ${unitWords.title(unit.name, unit.text, unit.method, unit.units)}`,
    ...indented(
      indented([
        unitWords.sets(unit.sets, unit.unitsPerSet, unit.spare),
        ...bodyOf(tell),
        ...(untrimmed ? [unitWords.measuresUnit(tell.size(unit.raw))] : []),
        ...(unit.heaps.length > 1 ? [unitWords.sort(heaps)] : []),
      ]),
    ),
  ];
}
