import {
  type planSpec,
  planWith,
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
  const sources = { stash, fatQuarters: false };
  const made = await planWith(spec, USUAL_OPTIONS, sources, withoutEasing(quickSolve(solve)));
  if (made.value === null) return null;
  const { plan } = made.value;
  const used = plan.fabrics.flatMap(({ name, stock = [] }) =>
    stock
      .filter((kind) => kind.from === "stash" && kind.used > 0)
      .map(({ across, along, used: count }) => ({ fabric: name, across, along, count })),
  );
  return { amounts: amountsOf(plan), used };
}
