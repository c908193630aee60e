import type { SheetStock } from "../types.ts";
import { sum } from "./counts.ts";
import type { Kind } from "./reduce.ts";

/** Sheets that are alike in every respect, gathered from the problem's list. */
export interface SheetGroup {
  across: number;
  along: number;
  cost: number;
  firstCut: SheetStock["firstCut"];
  /** Null when there is no limit. */
  available: number | null;
  /** The problem's sheets it stands for, in order. */
  members: { sheet: number; available: number | null }[];
}

/** Gathers equal sheets; sizes are divided by `step` and rounded down, which loses no cut. */
export function groupSheets(sheets: readonly SheetStock[], step: number): SheetGroup[] {
  const groups = new Map<string, SheetGroup>();
  sheets.forEach((sheet, index) => {
    const across = Math.floor(sheet.across / step);
    const along = Math.floor(sheet.along / step);
    if (across === 0 || along === 0 || sheet.available === 0) return;
    const key = `${across}x${along}/${sheet.cost}/${sheet.firstCut}`;
    const group = groups.get(key);
    const member = { sheet: index, available: sheet.available };
    const { cost, firstCut, available } = sheet;
    if (group === undefined) groups.set(key, { across, along, cost, firstCut, available, members: [member] });
    else {
      group.members.push(member);
      group.available =
        group.available === null || sheet.available === null ? null : group.available + sheet.available;
    }
  });
  return [...groups.values()].sort(
    (p, q) => q.across * q.along - p.across * p.along || q.across - p.across || p.cost - q.cost,
  );
}

/** How many of each group can be of use: no more than there are, and no more than pieces. */
export function availableOf(groups: readonly SheetGroup[], kinds: readonly Kind[]): number[] {
  const pieces = sum(kinds, ({ demand }) => demand);
  return groups.map(({ available }) => Math.min(available ?? pieces, pieces));
}
