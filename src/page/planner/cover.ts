import {
  clothToHand,
  planSpec,
  quickSolve,
  readSpecFile,
  readStash,
  USUAL_OPTIONS,
  withoutEasing,
} from "../../planning.ts";
import { amountsOf } from "./amounts.ts";
import { completed } from "./complete.ts";
import type { Covered } from "./messages.ts";

/**
 * A quilt planned with the fabric of a drawer used before any is bought.
 * @param drawer the table as its file has it
 * @returns null where the quilt or the table cannot be read, or nothing can be planned
 */
export async function covered(
  text: string,
  drawer: string,
  solve: Parameters<typeof planSpec>[2],
): Promise<Covered | null> {
  const spec = readSpecFile(completed(text).text, "").value;
  if (spec === null) return null;
  const stash = readStash(drawer, "", spec.ruler.unit).value;
  if (stash === null) return null;
  const names = spec.fabrics.map(({ name }) => name);
  const { toHand } = clothToHand(stash, names, spec.ruler);
  const options = { ...USUAL_OPTIONS, toHand };
  const plan = (await planSpec(spec, options, withoutEasing(quickSolve(solve)))).value;
  if (plan === null) return null;
  const used = plan.fabrics.flatMap(({ name, stock = [] }) =>
    stock
      .filter((kind) => kind.from === "stash" && kind.used > 0)
      .map(({ across, along, used: count }) => ({ fabric: name, across, along, count })),
  );
  return { amounts: amountsOf(plan), used };
}
