import { atMost, hasPlan } from "../engine/index.ts";
import type { PackingProblem, PackingResult, SearchLimits } from "../engine/types.ts";
import { INCH } from "../length/measures.ts";
import type { Ticks } from "../length/types.ts";
import { TRADE_SIZES, usableWidth } from "../stock/index.ts";
import { usedOf } from "./cheapest-mix.ts";
import type { Chosen } from "./choose-cut-lists.ts";
import type { FixedPiece } from "./pose-problem.ts";
import type { Solve } from "./request.ts";

/**
 * Cloth to hand in the order a maker uses it up: what is cut already, scraps, what is sold as a quarter, lengths of the
 * bolt. Common practice, no source.
 */
const CLASSES = { cut: 0, scrap: 1, quarter: 2, length: 3 } as const;

/** A piece with a side so long is a length rather than a scrap: 1 yd. Common practice, no source. */
const LENGTH_FROM = 36 * INCH;

/** Most work for one question, which a plan in hand has all but answered. */
const EFFORT = 120;

/** How precious a piece is; what is cut already is used up first. */
export function classOf(
  { name, across, along, strip = false, begun = false }: FixedPiece,
  usable: Ticks,
): number {
  if (strip || begun || / square$/.test(name)) return CLASSES.cut;
  if (TRADE_SIZES.some((size) => name === size.name || name.endsWith(` ${size.name}`)))
    return CLASSES.quarter;
  return across >= usable || Math.max(across, along) >= LENGTH_FROM ? CLASSES.length : CLASSES.scrap;
}

interface State {
  chosen: Chosen;
  /** Kinds of cloth that might be left whole, most precious and largest first. */
  open: number[];
  several: boolean;
}

/**
 * Leaves precious cloth whole where what is less precious will do, for the same purchase: lengths first, then quarters,
 * then scraps, the largest of a class before the others. Each kind is cut into as little as it is found possible.
 */
export async function useInOrder(
  chosen: readonly Chosen[],
  limits: SearchLimits,
  solve: Solve,
): Promise<Chosen[]> {
  const states = chosen.map(begin);
  for (const state of states) {
    for (let sheet = state.open.shift(); sheet !== undefined; sheet = state.open.shift())
      await spare(state, sheet, limits, solve);
    await fillFirst(state, limits, solve);
  }
  return states.map((state) => state.chosen);
}

function begin(chosen: Chosen): State {
  const { fixedStock, problem, result, cutList } = chosen;
  const usable = usableWidth(cutList.fabric);
  const classes = fixedStock.map((piece) => classOf(piece, usable));
  const bought = fixedStock.some(({ from }) => from === "shop");
  const several = new Set(classes).size > 1;
  if (!hasPlan(result) || !several || (bought && problem.roll === null))
    return { chosen, open: [], several: false };
  const used = usedOf({ result, fixedStock });
  const area = (index: number) => fixedStock[index]!.across * fixedStock[index]!.along;
  const open = fixedStock
    .map((_, index) => index)
    .filter(
      (index) =>
        used[index]!.count > 0 && classes[index]! > CLASSES.cut && fixedStock[index]!.from !== "shop",
    )
    .sort((a, b) => classes[b]! - classes[a]! || area(b) - area(a) || a - b);
  return { chosen, open, several };
}

/** Cuts into as few of one kind as is found possible for the same purchase. */
async function spare(state: State, sheet: number, limits: SearchLimits, solve: Solve): Promise<void> {
  const { fixedStock, result } = state.chosen;
  const most = usedOf({ result, fixedStock })[sheet]!.count;
  for (let count = 0; count < most; count++) {
    const problem = withAvailable(state.chosen.problem, sheet, count);
    const found = await within(problem, result.rollLength, limits, solve);
    if (found === null) continue;
    state.chosen = { ...state.chosen, problem, result: asProved(found, result) };
    break;
  }
  // What is spared so far stays whole: easing the work takes no more of it either.
  const now = usedOf({ result: state.chosen.result, fixedStock })[sheet]!.count;
  state.chosen = { ...state.chosen, problem: withAvailable(state.chosen.problem, sheet, now) };
  const still = usedOf({ result: state.chosen.result, fixedStock });
  state.open = state.open.filter((index) => still[index]!.count > 0);
}

/** A plan that takes no more of the bolt; null when none is found. */
async function within(
  problem: PackingProblem,
  length: number,
  limits: SearchLimits,
  solve: Solve,
): Promise<PackingResult | null> {
  const { roll } = problem;
  const asked: PackingProblem =
    roll === null || length > 0
      ? { ...problem, roll: roll && { ...roll, available: length } }
      : { ...problem, roll: null, sheets: problem.sheets.map((one) => ({ ...one, cost: 1 })) };
  const [found] = await solve([{ kind: "pack", problem: asked, limits: atMost(limits, EFFORT) }]);
  if (found === undefined || !hasPlan(found) || found.rollLength > length) return null;
  return asked.roll === roll || length > 0 ? found : { ...found, objective: 0 };
}

/** Cuts as much as there is room for from what is cut already, and only the rest from other cloth. */
async function fillFirst(state: State, limits: SearchLimits, solve: Solve): Promise<void> {
  const { fixedStock, problem, result, cutList } = state.chosen;
  const usable = usableWidth(cutList.fabric);
  const isFirst = fixedStock.map((piece) => classOf(piece, usable) === CLASSES.cut && piece.from !== "shop");
  const used = usedOf({ result, fixedStock });
  const matters =
    state.several && isFirst.includes(true) && isFirst.some((first, i) => !first && used[i]!.count > 0);
  if (!matters || problem.items.some(({ run }) => run !== undefined)) return;
  const only = (which: boolean, wanted: PackingProblem) => ({
    ...wanted,
    sheets: wanted.sheets.map((sheet, i) => (isFirst[i] === which ? sheet : { ...sheet, available: 0 })),
  });
  const small = atMost(limits, EFFORT);
  const [first] = await solve([
    { kind: "pack", problem: { ...only(true, problem), roll: null }, limits: small },
  ]);
  if (first === undefined || hasPlan(first)) return;
  const missing = problem.items.map((_, i) => first.missing.find(({ item }) => item === i)?.count ?? 0);
  const rest = { ...problem, items: problem.items.map((item, i) => ({ ...item, demand: missing[i]! })) };
  const found = await within(only(false, rest), result.rollLength, limits, solve);
  if (found === null) return;
  const layouts = [...found.layouts, ...first.layouts];
  const both: PackingResult = { ...found, layouts, objective: found.objective + first.objective };
  const now = usedOf({ result: both, fixedStock });
  if (now.some(({ count }, i) => !isFirst[i] && count > used[i]!.count)) return;
  state.chosen = { ...state.chosen, result: asProved(both, result) };
}

function withAvailable(problem: PackingProblem, sheet: number, available: number): PackingProblem {
  return { ...problem, sheets: problem.sheets.map((one, i) => (i === sheet ? { ...one, available } : one)) };
}

/** What was proved of the purchase with all the cloth on the table holds with less of it. */
function asProved(found: PackingResult, before: PackingResult): PackingResult {
  const bound = { ...before.bound, value: Math.min(before.bound.value, found.objective) };
  return { ...found, bound, status: found.objective === bound.value ? "proven" : "best-found" };
}
