import type { PackingResult, SearchLimits } from "../../engine/types.ts";
import { nth } from "../../length/nth.ts";
import type { FabricSpec } from "../../spec/types.ts";
import { lengthLimit } from "../../stock/index.ts";
import type { Chosen } from "../choose-cut-lists.ts";
import { tableOf } from "../lays/flag-steps.ts";
import type { LengthInHand } from "../length-in-hand.ts";
import type { PlanSettings, Solve } from "../request.ts";
import { lengthsOf, ontoBolts, purchaseOf, tooLongForBolt } from "./onto-bolts.ts";
import { lessToBuy } from "./within-bolts.ts";

/**
 * The same purchase with less work, which may use all that the shop's rounding, or the length in hand, gives: what is
 * left uncut of the last step is worth nothing beside a ruler set once less. A sparing maker keeps the least length.
 */
export function easeWork(
  chosen: readonly Chosen[],
  lengths: readonly (LengthInHand | null)[],
  settings: PlanSettings,
  limits: SearchLimits,
  solve: Solve,
): Promise<PackingResult[]> {
  const table = tableOf(settings);
  return solve(
    chosen.map((one, i) => {
      const { problem, result } = one;
      const lengthLimit = roomOf(one, lengths[i] ?? null, settings);
      return { kind: "lessen-work", table, problem, result, lengthLimit, limits };
    }),
  );
}

/** The same purchase with runs joined from fewer strips, while it is still open which strips and ends make them. */
export async function easeJoins(
  chosen: readonly Chosen[],
  lengths: readonly (LengthInHand | null)[],
  settings: PlanSettings,
  limits: SearchLimits,
  solve: Solve,
): Promise<Chosen[]> {
  const joins = chosen.flatMap(({ problem }, i) =>
    problem.items.some(({ run }) => run !== undefined) ? [i] : [],
  );
  const eased = await solve(
    joins.map((i) => {
      const { problem, result } = nth(chosen, i);
      const lengthLimit = roomOf(nth(chosen, i), lengths[i] ?? null, settings);
      return { kind: "lessen-joins", problem, result, lengthLimit, limits };
    }),
  );
  return chosen.map((one, i) => {
    const found = eased[joins.indexOf(i)];
    return found === undefined ? one : { ...one, result: lessToBuy(one, found, one.result) };
  });
}

/** How much of the roll may be used for the same purchase. */
function roomOf(
  { cutList: { fabric }, result }: Chosen,
  there: LengthInHand | null,
  { prefer }: PlanSettings,
): number {
  if (prefer === "sparing" || result.rollLength === 0) return result.rollLength;
  const given = there === null ? limitOnBolts(fabric, result) : there.length - there.straighten;
  return Math.max(given, result.rollLength);
}

/** Most that can be cut from what is bought: of every bolt, less the straightened ends and the spare. */
export function limitOnBolts(fabric: FabricSpec, result: PackingResult): number {
  if (tooLongForBolt(fabric, result)) return result.rollLength;
  const bolts = ontoBolts(fabric, result);
  const purchase = purchaseOf(fabric, bolts);
  if (purchase === null) return 0;
  const each = lengthsOf(purchase).map(({ length }) => lengthLimit({ ...fabric, spare: 0 }, length));
  return each.reduce((sum, length) => sum + length, -fabric.spare);
}
