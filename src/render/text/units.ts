import type {
  BatchRecord,
  HeapRecord,
  LaidRecord,
  StepRecord,
  UnitRecord,
} from "../../cutlist/unit-record.ts";
import { formatCut, formatCutSize } from "../../length/index.ts";
import type { Plan } from "../../plan/types.ts";
import type { Corner, Eighth } from "../../quilt/units/types.ts";
import type { Words } from "../../words/index.ts";
import { indented } from "./making-lines.ts";
import { CELL } from "./table-lines.ts";
import { heapCalled, type UnitGroup, type UnitTable } from "./unit-groups.ts";
import { joinLines } from "./unit-joins.ts";
import { stripSetLines } from "./unit-strip-sets.ts";
import { bagOf, bagTold, headsOf, pressLine, type Telling, telling } from "./unit-telling.ts";

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
function sortLines(tell: Telling, words: Words): string[] {
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

/** The steps that are the same for all batches and heaps are told once; those that differ, for each. */
function bodyOf(tell: Telling, words: Words): string[] {
  const { unit } = tell;
  if (unit.batches.length > 0) {
    return unit.batches.flatMap((batch) => [
      ...(unit.batches.length > 1 ? [words.units.batch(batch.sets)] : []),
      words.units.take(taken(batch, tell, words), unit.unitsPerSet === 1 ? "unit" : "set"),
      ...toldInOrder(batch, 0, tell, words).flat(),
    ]);
  }
  if (unit.heaps.length === 1) return toldInOrder(null, 0, tell, words).flat();
  // What is done to all heaps alike stands first; what differs by how the print lies is told heap by heap.
  const lines = unit.heaps.map((_, heap) => toldInOrder(null, heap, tell, words));
  const [first = []] = lines;
  return first.flatMap((told, i) => {
    const own = lines.map((each) => (each[i] ?? []).join("\n"));
    if (own.every((each) => each === own[0])) return told;
    return unit.heaps.flatMap(({ name, count }, heap) => [
      words.units.heap(name, count),
      ...indented(lines[heap]?.[i] ?? []),
    ]);
  });
}

/** How the seams inside are pressed so that they nest: told in place of the recipe's own pressing. */
function insideLines(unit: UnitRecord, plan: Plan, words: Words): string[] {
  const { making } = plan;
  const own = making?.unitPressing.find((each) => making.units[each.unit] === unit);
  if (making === undefined || own === undefined) return [];
  const counted = own.ways.some(({ places }) => places.some(({ which }) => which !== null));
  const told = own.ways.map(({ places, count, lines, inner, between }) => {
    const names = places.flatMap(({ kind, which }) => {
      const name = making.kinds[kind]?.name;
      if (name === undefined) return [];
      return [which === null ? name : words.units.placesIn(name, which)];
    });
    const whose = own.ways.length === 1 ? "" : words.units.forKinds(count, names);
    return words.units.insidePressed(whose, lines, inner, between);
  });
  return counted ? [...told, words.units.countedSo] : told;
}

/** Lines of several units one beside another: what is the same is told once, what differs for each by name. */
function together(names: readonly string[], lines: readonly (readonly string[])[], words: Words): string[] {
  const most = Math.max(...lines.map((own) => own.length));
  return Array.from({ length: most }, (_, i) => lines.map((own) => own[i] ?? "")).flatMap((told) => {
    const ways = [...new Set(told)].filter((line) => line !== "");
    if (ways.length === 1 && told.every((line) => line !== "")) return ways;
    return ways.map((way) => {
      const whose = names.filter((_, unit) => told[unit] === way);
      // What is set in stays so.
      return way.replace(/^ */, (margin) => `${margin}${words.units.group.own(whose, "")}`);
    });
  });
}

/** What each unit of a group takes, and how many are made. */
function groupTable({ units, columns }: UnitGroup, words: Words): UnitTable {
  const group = words.units.group;
  const [first] = units;
  const heaps = (first?.heaps.length ?? 1) > 1 ? (first?.heaps ?? []) : [];
  const sets = first !== undefined && !first.loose && first.unitsPerSet > 1;
  const over = units.some(({ spare }) => spare > 0);
  return {
    headings: [
      group.unit,
      ...columns.map(({ name }) => name),
      ...(sets ? [group.sets] : []),
      group.make,
      ...heaps.map((_, i) => group.heap(heapCalled(i))),
      ...(over ? [group.over] : []),
    ],
    rows: units.map((unit, u) => [
      unit.name,
      ...columns.map(({ bags }) => words.units.bag(bags[u]?.letters.join("/") ?? "", bags[u]?.fabric ?? "")),
      ...(sets ? [String(unit.sets)] : []),
      String(unit.units),
      ...heaps.map((_, i) => group.heapOf(unit.heaps[i]?.name ?? "", unit.heaps[i]?.count ?? 0)),
      ...(over ? [String(unit.spare)] : []),
    ]),
  };
}

function titleOf({ units }: UnitGroup, words: Words): string {
  const [first] = units;
  if (first === undefined) return "";
  if (units.length === 1) return words.units.title(first.name, first.text, first.method, first.units);
  const all = units.reduce((sum, unit) => sum + unit.units, 0);
  return words.units.groupTitle(
    units.map(({ name }) => name),
    first.text,
    first.method,
    all,
  );
}

/**
 * Units that are sewn alike: what they are, the bags each takes, the steps, the heaps. A table stands as lines whose
 * cells are parted by tabs.
 */
export function unitGroupLines(group: UnitGroup, plan: Plan, words: Words): string[] {
  const { units } = group;
  const [first] = units;
  if (first === undefined) return [];
  const names = units.map(({ name }) => name);
  const tells = units.map((_, i) => telling(group, i, plan, words));
  const [tell] = tells;
  if (tell === undefined) return [];
  const untrimmed = first.steps.every((step) => step.do !== "trim");
  const sets = first.loose ? "" : words.units.sets(first.sets, first.unitsPerSet, first.spare);
  const alone = units.length === 1;
  const perSet = first.loose || first.unitsPerSet === 1 ? [] : [words.units.group.perSet(first.unitsPerSet)];
  const table = groupTable(group, words);
  const head = alone
    ? [sets].filter((line) => line !== "")
    : [...[table.headings, ...table.rows].map((row) => row.join(CELL)), ...perSet];
  return [
    `[ ] ${titleOf(group, words)}`,
    ...indented(
      indented([
        ...head,
        ...together(
          names,
          tells.map((each) => bodyOf(each, words)),
          words,
        ),
        ...together(
          names,
          units.map((unit) => insideLines(unit, plan, words)),
          words,
        ),
        ...(untrimmed ? [words.units.measuresUnit(tell.size(first.raw))] : []),
        // Units that are sewn heap by heap are apart already.
        ...(first.batches.length > 0 ? sortLines(tell, words) : []),
      ]),
    ),
  ];
}
