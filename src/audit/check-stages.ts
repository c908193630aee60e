import type { FabricPlan, Lay, Part, Plan } from "../plan/types.ts";
import { at, walk } from "./walk.ts";

/**
 * Stages of cutting, counted: strips are cut off the fabric, segments off a strip, rows off a segment. A row may only be
 * parted into pieces that are equal, one for each of equal segments cut side by side in one block: anything else is a
 * fourth stage. What is cut a third time lies open on the mat, and one placing of the ruler reaches across it and along it.
 */
export function checkStages({ root, name, source }: Lay, { stock = [] }: FabricPlan, plan: Plan): string[] {
  const faults: string[] = [];
  // A strip in hand is cut along its length as it lies; the steps say how what is longer than the ruler is cut.
  const inHand = source === "fixed" && stock.some((kind) => kind.name === name && kind.strip);
  const reach = inHand
    ? Number.POSITIVE_INFINITY
    : Math.min(plan.rulerLength, plan.matLength ?? plan.rulerLength);
  for (const { part: strip } of walk(root)) {
    if (strip.role !== "strip") continue;
    const lying = strip.cut === "along";
    const height = lying ? strip.along : strip.across;
    for (const segment of strip.parts) {
      const rows = segment.parts.filter(({ cause }) => cause === null);
      if (rows.length < 2) continue;
      const width = lying ? segment.across : segment.along;
      if (height > reach)
        faults.push(
          `${at(segment)} is cut once more in a strip of ${height}, the mat and ruler reach ${reach}`,
        );
      if (width > reach) faults.push(`${at(segment)} is cut ${width} along, the ruler reaches ${reach}`);
      faults.push(...checkRows(segment, rows, lying, width));
    }
  }
  return faults;
}

/** Whether rows are those of equal segments side by side: as many pieces in each, and room for the widest of them. */
function checkRows(segment: Part, rows: readonly Part[], lying: boolean, width: number): string[] {
  const sizes = rows.map((row) => {
    const pieces = row.parts.length === 0 ? [row] : row.parts.filter(({ cause }) => cause === null);
    const widths = pieces.map(({ across, along }) => (lying ? across : along));
    return { count: pieces.length, widest: Math.max(...widths), least: Math.min(...widths) };
  });
  const count = sizes[0]?.count ?? 0;
  const widest = Math.max(...sizes.map((row) => row.widest));
  const equal = sizes.every((row) => row.count === count && row.widest === row.least);
  return equal && count * widest <= width ? [] : [`${at(segment)} is cut in a fourth stage`];
}
