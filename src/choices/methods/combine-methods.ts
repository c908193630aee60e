import { areaOfShape, listQuiltCuts } from "../../cutlist/index.ts";
import type { CutList, CutPiece } from "../../cutlist/types.ts";
import type { Ticks } from "../../length/types.ts";
import type { FabricPlan } from "../../plan/types.ts";
import type { QuiltWork } from "../../quilt/index.ts";
import type { FabricSpec, QuiltSpec, StepMinutes } from "../../spec/index.ts";
import { purchaseFor, usableWidth } from "../../stock/index.ts";
import { bestCombination, type Combination, type PartWorth, type Worth } from "./best-combination.ts";
import type { BestCombination, MethodRow, UnitChoice } from "./comparison.ts";
import { addSewing, cuttingOf, sewingOf, timeOf } from "./making-figures.ts";
import type { Made, WaysOfMaking } from "./ways-of-making.ts";
import type { Methods } from "./with-methods.ts";

/** Most plans of one fabric made for combinations, besides those of the rows. */
const MOST_PLANS = 200;

/** What the combinations are made of. */
export interface Rows {
  spec: QuiltSpec;
  units: readonly UnitChoice[];
  minutes: StepMinutes;
  filed: Made;
  tried: readonly { row: MethodRow; made: Made | null }[];
  ways: WaysOfMaking;
}

/** One way of making the units of a kind: `method` is null for the several ways of the file together. */
interface Way {
  method: string | null;
  made: Made;
}

interface Choice {
  unit: string;
  ways: Way[];
  /** The way of the file. */
  filed: number;
}

function choicesOf({ units, filed, tried }: Rows): Choice[] {
  return units.map(({ unit, filed: used }) => {
    const ways = tried.flatMap(({ row, made }): Way[] =>
      row.unit === unit && made !== null ? [{ method: row.method, made }] : [],
    );
    const alone = used.length === 1 && ways.some(({ method }) => method === used[0]);
    return alone
      ? { unit, ways, filed: ways.findIndex(({ method }) => method === used[0]) }
      : { unit, ways: [{ method: null, made: filed }, ...ways], filed: 0 };
  });
}

const isOf = (unit: string) => (demand: QuiltWork["units"][number]) => demand.recipes[0]?.kind === unit;

/** The same quilt with the units of each kind as that way has them. */
function workOf({ filed }: Rows, choices: readonly Choice[], combination: Combination): QuiltWork {
  const done = new Set<string>();
  const units = filed.work.units.flatMap((demand) => {
    const kind = demand.recipes[0]?.kind ?? "";
    const choice = choices.findIndex(({ unit }) => unit === kind);
    if (choice < 0) return [demand];
    if (done.has(kind)) return [];
    done.add(kind);
    const way = choices[choice]?.ways[combination[choice] ?? 0];
    return way?.made.work.units.filter(isOf(kind)) ?? [];
  });
  return { ...filed.work, units };
}

/** Minutes of the sewing of one kind made one way. */
function sewingMinutes({ minutes }: Rows, unit: string, { made }: Way): number {
  const sewn = made.madeBy.filter(({ recipe }) => recipe.kind === unit).map(sewingOf);
  return timeOf({ ...addSewing(sewn), strips: 0 }, minutes);
}

interface ClothOf {
  /** Square ticks in pieces. */
  area: number;
  count: number;
  /** Longest side that can be the height of a strip. */
  tallest: Ticks;
}

const NO_CLOTH: ClothOf = { area: 0, count: 0, tallest: 0 };
const NO_PART: Part = { name: "", fabric: null, base: NO_CLOTH, choices: [], tallest: 0, fixed: false };

/**
 * Halves and quarters that one kind of unit leaves over may serve another, so that the squares of two kinds together
 * are fewer than of each: only what is used of them counts towards a least.
 */
function leastOfPiece(piece: CutPiece): {
  area: number;
  count: number;
} {
  const { across, along, count, subcut, corners = 0 } = piece;
  const each = across * along;
  // Among more of their like, pieces of a template may stand closer than their rectangles.
  if (subcut === "template") return { area: areaOfShape(piece) * count, count };
  if (subcut === "none") return { area: each * count, count };
  const area = Math.max(0, each * count - corners);
  // Not rounded: parts of squares of several kinds add up to whole ones.
  return { area, count: area / each };
}

function clothOf(list: CutList | undefined): ClothOf {
  return (list?.pieces ?? []).reduce(
    (sum, piece) => ({
      area: sum.area + leastOfPiece(piece).area,
      count: sum.count + leastOfPiece(piece).count,
      tallest: Math.max(sum.tallest, piece.along, piece.turnable ? piece.across : 0),
    }),
    NO_CLOTH,
  );
}

/**
 * The least time the cutting of a fabric can take. Every cut makes one part more, so there are at least as many cuts as
 * pieces but one; and no strip is taller than the tallest piece.
 */
function leastCutting(used: Ticks, count: number, tallest: Ticks, { strip, subcut }: StepMinutes): number {
  if (strip < subcut || tallest === 0) return Math.max(0, count - 1) * Math.min(strip, subcut);
  const strips = Math.ceil(used / tallest);
  return Math.max(0, count - 1) * subcut + strips * (strip - subcut);
}

/** A part of the sum: one fabric, and the kinds of unit whose ways it depends on. */
interface Part {
  name: string;
  /** Null where its cloth is not bought off a bolt alone, so that areas say nothing of the purchase. */
  fabric: FabricSpec | null;
  /** Its cloth as the file has the units. */
  base: ClothOf;
  choices: number[];
  /** The tallest piece that any way cuts of it. */
  tallest: Ticks;
  /** Cloth is to hand, or ready cut in the shop. */
  fixed: boolean;
}

const listOf = (lists: readonly CutList[], name: string): CutList | undefined =>
  lists.find(({ fabric }) => fabric.name === name);

function partsOf({ filed }: Rows, choices: readonly Choice[]): Part[] {
  const everyMade = [filed, ...choices.flatMap(({ ways: own }) => own.map(({ made }) => made))];
  return filed.fabrics.map((planned): Part => {
    const { name } = planned;
    const fixed = hasFixedCloth(planned);
    const list = listOf(filed.lists, name);
    const own = [...choices.keys()].filter((i) =>
      filed.work.units
        .filter(isOf(choices[i]?.unit ?? ""))
        .some(({ fabrics }) => Object.values(fabrics).includes(name)),
    );
    const tallest = Math.max(...everyMade.map(({ lists }) => clothOf(listOf(lists, name)).tallest));
    const fabric = list === undefined || fixed ? null : list.fabric;
    return { name, fabric, base: clothOf(list), choices: own, tallest, fixed };
  });
}

/** What a purchase is worth: money where the file has prices, else area. */
const worthIn =
  ({ filed }: Rows) =>
  (fabric: FabricSpec, used: number): number => {
    const { length, cost } = purchaseFor(fabric, used);
    return filed.figures.cost !== null ? (cost ?? 0) : fabric.width * length;
  };

/** Cloth of a part that a way takes beyond the file's: areas and counts of kinds of unit add up. */
function moreOf({ name, base }: Part, way: Way | undefined): Pick<ClothOf, "area" | "count"> {
  const cloth = way === undefined ? NO_CLOTH : clothOf(listOf(way.made.lists, name));
  return { area: cloth.area - base.area, count: cloth.count - base.count };
}

/** The least a fabric can come to with a combination: area over width, and one cut for every piece. */
function leastOfPart(part: Part, rows: Rows, choices: readonly Choice[], combination: Combination): Worth {
  const { fabric, base, choices: own, tallest } = part;
  if (fabric === null) return [0, 0];
  let { area, count } = base;
  for (const choice of own) {
    const more = moreOf(part, choices[choice]?.ways[combination[choice] ?? 0]);
    area += more.area;
    count += more.count;
  }
  const used = Math.ceil(area / usableWidth(fabric));
  return [worthIn(rows)(fabric, used), leastCutting(used, count, tallest, rows.minutes)];
}

/** The least a fabric can come to with any combination: the smallest way of every kind of unit. */
function floorOfPart(part: Part, rows: Rows, choices: readonly Choice[]): number {
  const { fabric, base, choices: own } = part;
  if (fabric === null) return 0;
  const area = own.reduce((sum, choice) => {
    const each = (choices[choice]?.ways ?? []).map((way) => moreOf(part, way).area);
    return sum + Math.min(...each);
  }, base.area);
  return worthIn(rows)(fabric, Math.ceil(area / usableWidth(fabric)));
}

/** What a planned fabric comes to, and the least that is proved of it. */
function partWorth(plan: FabricPlan, fabric: FabricSpec, fixed: boolean, rows: Rows): PartWorth {
  const { strips, subcuts } = cuttingOf(plan);
  const time = timeOf({ ...addSewing([]), strips, subcuts }, rows.minutes);
  const length = plan.purchase?.length ?? 0;
  const priced = rows.filed.figures.cost !== null;
  const bought = priced ? (plan.purchase?.cost ?? 0) : plan.width * length;
  const least = plan.bound.purchaseProven
    ? bought
    : Math.min(bought, worthIn(rows)(fabric, plan.bound.least));
  return { worth: [bought, time], least: [fixed ? 0 : least, time] };
}

/** Plans the fabrics of some parts with a combination, wholly or for the purchase only; null for what cannot be cut. */
async function lookInto(
  open: readonly (Part | undefined)[],
  rows: Rows,
  choices: readonly Choice[],
  combination: Combination,
  depth: "whole" | "purchase",
): Promise<(PartWorth | null)[]> {
  const { value } = listQuiltCuts(rows.spec, workOf(rows, choices, combination));
  if (value === null) return open.map(() => null);
  const lists = open.map((part) => listOf(value.cutLists, part?.name ?? ""));
  const plan = depth === "whole" ? rows.ways.planFabrics : rows.ways.buyFabrics;
  const { fabrics } = await plan(lists.filter((list) => list !== undefined));
  if (fabrics === null) return open.map(() => null);
  return lists.map((list, i): PartWorth | null => {
    const own = fabrics.find(({ name }) => name === list?.fabric.name);
    if (list === undefined || own === undefined) return null;
    return partWorth(own, list.fabric, open[i]?.fixed === true, rows);
  });
}

/** The best of all combinations of the methods, by what is bought and then by time. */
export async function combineMethods(
  rows: Rows,
  told: (looked: number, most: number) => void,
): Promise<BestCombination> {
  const { ways } = rows;
  const choices = choicesOf(rows);
  const parts = partsOf(rows, choices);
  const partOf = (index: number): Part => parts[index] ?? NO_PART;
  const found = await bestCombination(
    {
      ways: choices.map(({ unit, ways: own }) =>
        own.map((way): Worth => [0, sewingMinutes(rows, unit, way)]),
      ),
      parts: parts.map((part) => part.choices),
      most: MOST_PLANS,
      leastOf: (part, combination) => leastOfPart(partOf(part), rows, choices, combination),
      floorOf: (part) => floorOfPart(partOf(part), rows, choices),
      lookInto: (open, combination, depth) => lookInto(open.map(partOf), rows, choices, combination, depth),
      told: (looked) => told(Math.min(looked, MOST_PLANS), MOST_PLANS),
    },
    choices.map(({ filed: own }) => own),
  );
  const taken = found.combination ?? [];
  const chosen: Methods = Object.fromEntries(
    choices.flatMap(({ unit, ways: own, filed: filedWay }, i) => {
      const way = taken[i] ?? filedWay;
      const method = own[way]?.method ?? null;
      return method === null || way === filedWay ? [] : [[unit, method]];
    }),
  );
  const again = await ways(chosen);
  const { combinations, tried, proven, least } = found;
  if (again.made === null) throw new Error(`the best combination cannot be made: ${again.why.because}`);
  return { methods: chosen, figures: again.made.figures, combinations, tried, proven, least };
}

/** Cloth to hand, or ready cut in the shop: then the length off the bolt says less. */
function hasFixedCloth({ lays, purchase }: FabricPlan): boolean {
  return purchase === null || lays.some(({ source }) => source === "fixed");
}
