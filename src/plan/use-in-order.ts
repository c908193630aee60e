import { atMost, hasPlan } from "../engine/index.ts";
import type { PackingProblem, PackingResult, SearchLimits } from "../engine/types.ts";
import { nth } from "../length/nth.ts";
import { purchaseFor, usableWidth } from "../stock/index.ts";
import { usedOf } from "./cheapest-mix.ts";
import type { Chosen } from "./choose-cut-lists.ts";
import type { Solve } from "./request.ts";
import { CLASSES, classOf, onlyUsed, stockAims } from "./stock-aims.ts";

/** Most work for one question, which a plan in hand has all but answered. */
const EFFORT = 120;

interface State {
  chosen: Chosen;
  /** Cloth that is less precious than what is cut into lies beside it. */
  open: boolean;
  several: boolean;
}

/** Most work for choosing the cloth of one fabric. */
const CHOOSING = 400;

/**
 * Leaves precious cloth whole where what is less precious will do, for the same purchase: of own lengths as little as
 * can be is cut into, then of quarters, of scraps, of what is cut already.
 */
export async function useInOrder(
  chosen: readonly Chosen[],
  limits: SearchLimits,
  solve: Solve,
): Promise<Chosen[]> {
  const states = chosen.map(begin);
  const asked = states.filter(({ open }) => open);
  const results = await solve(
    asked.map(({ chosen: { problem, fixedStock }, chosen: one }) => {
      const choice = stockAims(one, fixedStock);
      return { kind: "choose", problem, choice, limits: atMost(limits, CHOOSING) };
    }),
  );
  asked.forEach((state, i) => {
    spare(state, nth(results, i));
  });
  for (const state of states) await fillFirst(state, limits, solve);
  return states.map((state) => state.chosen);
}

function begin(chosen: Chosen): State {
  const { fixedStock, problem, result, cutList } = chosen;
  const usable = usableWidth(cutList.fabric);
  const classes = fixedStock.map((piece) => classOf(piece, usable));
  const bought = fixedStock.some(({ from }) => from === "shop");
  const several = new Set(classes).size > 1;
  if (!hasPlan(result) || !several || (bought && problem.roll === null))
    return { chosen, open: false, several: false };
  const used = usedOf({ result, fixedStock });
  const precious = used.some(
    ({ piece, count }, i) => count > 0 && nth(classes, i) > CLASSES.cut && piece.from !== "shop",
  );
  return { chosen, open: precious && chosen.ordered !== true, several };
}

/** Takes the cloth chosen, as long as no more is bought. */
function spare(state: State, found: PackingResult): void {
  const { chosen } = state;
  const { result, cutList, fixedStock } = chosen;
  if (!hasPlan(found)) return;
  const length = (used: number) => (used === 0 ? 0 : purchaseFor(cutList.fabric, used).length);
  if (length(found.rollLength) > length(result.rollLength)) return;
  // What is spared stays whole: easing the work takes no more of it either.
  const usable = usableWidth(cutList.fabric);
  const isCut = (sheet: number) => classOf(nth(fixedStock, sheet), usable) === CLASSES.cut;
  const problem = onlyUsed(chosen.problem, usedOf({ result: found, fixedStock }), isCut);
  state.chosen = { ...chosen, problem, result: asProved(found, result) };
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
    state.several && isFirst.includes(true) && isFirst.some((first, i) => !first && nth(used, i).count > 0);
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
  const rest = { ...problem, items: problem.items.map((item, i) => ({ ...item, demand: nth(missing, i) })) };
  const found = await within(only(false, rest), result.rollLength, limits, solve);
  if (found === null) return;
  const layouts = [...found.layouts, ...first.layouts];
  const both: PackingResult = { ...found, layouts, objective: found.objective + first.objective };
  const now = usedOf({ result: both, fixedStock });
  if (now.some(({ count }, i) => !isFirst[i] && count > nth(used, i).count)) return;
  state.chosen = { ...state.chosen, result: asProved(both, result) };
}

/** What was proved of the purchase with all the cloth on the table holds with less of it. */
function asProved(found: PackingResult, before: PackingResult): PackingResult {
  const bound = { ...before.bound, value: Math.min(before.bound.value, found.objective) };
  return { ...found, bound, status: found.objective === bound.value ? "proven" : "best-found" };
}
