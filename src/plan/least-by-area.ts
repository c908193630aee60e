import { areaOfShape } from "../cutlist/index.ts";
import type { Chosen } from "./choose-cut-lists.ts";

/** Length of bolt that the area alone takes, whatever the style, beside all the cloth in fixed sizes. */
export function leastByArea({ cutList, problem: { items, roll, sheets } }: Chosen): number {
  if (roll === null) return 0;
  const wanted = items.reduce((sum, { across, along, demand, run }, i) => {
    const piece = cutList.pieces[i];
    if (piece?.nest !== undefined) return sum + areaOfShape(piece) * demand;
    return sum + (run === undefined ? across * demand : run.length) * along;
  }, 0);
  const there = sheets.reduce(
    (sum, { across, along, available }) => sum + across * along * (available ?? 0),
    0,
  );
  return Math.max(0, Math.ceil((wanted - there) / roll.width));
}
