import type { PackingResult, SearchLimits } from "../../engine/types.ts";
import type { FabricSpec } from "../../spec/types.ts";
import { lengthLimit } from "../../stock/index.ts";
import type { Chosen } from "../choose-cut-lists.ts";
import { tableOf } from "../flag-steps.ts";
import type { LengthInHand } from "../length-in-hand.ts";
import type { PlanSettings, Solve } from "../request.ts";
import { lengthsOf, ontoBolts, purchaseOf, tooLongForBolt } from "./onto-bolts.ts";

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
  const { prefer } = settings;
  const table = tableOf(settings);
  return solve(
    chosen.map(({ cutList: { fabric }, problem, result }, i) => {
      const there = lengths[i] ?? null;
      const given = there === null ? limitOnBolts(fabric, result) : there.length - there.straighten;
      const all = result.rollLength === 0 ? 0 : given;
      return {
        kind: "lessen-work",
        table,
        problem,
        result,
        lengthLimit: prefer === "sparing" ? result.rollLength : Math.max(all, result.rollLength),
        limits,
      };
    }),
  );
}

/** Most that can be cut from what is bought: of every bolt, less the straightened ends and the spare. */
function limitOnBolts(fabric: FabricSpec, result: PackingResult): number {
  if (tooLongForBolt(fabric, result)) return result.rollLength;
  const bolts = ontoBolts(fabric, result);
  const purchase = purchaseOf(fabric, bolts);
  if (purchase === null) return 0;
  const each = lengthsOf(purchase).map(({ length }) => lengthLimit({ ...fabric, spare: 0 }, length));
  return each.reduce((sum, length) => sum + length, -fabric.spare);
}
