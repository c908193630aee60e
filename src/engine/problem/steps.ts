import { nestDivided, nestSizes } from "../nested/nest.ts";
import type { PackingItem, PackingProblem } from "../types.ts";
import { gcd } from "./reduce.ts";

/** What all sizes are whole multiples of; where ends of strips are joined, the stock's widths as well. */
export function stepOf({ items, roll, sheets }: PackingProblem): number {
  const sizes = items.flatMap(({ across, along, run, nest }) => {
    if (nest !== undefined) return nestSizes(nest);
    return run === undefined ? [across, along] : [along, run.length, run.loss, run.leastEnd];
  });
  const joins = items.some(({ run }) => run !== undefined);
  const widths = joins ? [...(roll === null ? [] : [roll.width]), ...sheets.map(({ across }) => across)] : [];
  return [...sizes, ...widths].reduce(gcd, 0) || 1;
}

/** Items with every length divided by the step. */
export function divided(items: readonly PackingItem[], step: number): PackingItem[] {
  return items.map(({ run, nest, ...item }) => ({
    ...item,
    across: item.across / step,
    along: item.along / step,
    ...(nest === undefined ? {} : { nest: nestDivided(nest, step) }),
    ...(run === undefined
      ? {}
      : { run: { length: run.length / step, loss: run.loss / step, leastEnd: run.leastEnd / step } }),
  }));
}
