import type { FabricPlan, Plan } from "../plan/types.ts";

/**
 * A gridded foundation is cut on its printed lines only: every piece of it comes to whole squares, there is one for
 * everything that is made on it, and no knife cut lies between two lines. Nothing is checked of a plan without one.
 */
export function checkFoundation(plan: Plan): string[] {
  const foundation = plan.making?.foundation ?? null;
  const fabric = plan.fabrics.find(({ name }) => name === foundation?.fabric);
  if (foundation === null || foundation === undefined || fabric === undefined) return [];
  const { grid, parts, allowance } = foundation;
  const faults: string[] = [];
  const say = (fault: string) => faults.push(`${fabric.name}: ${fault}`);
  const times = plan.kits ?? 1;
  const wanted = new Map<string, number>();
  for (const { letter, cut, finished, count } of parts) {
    if (![cut.across, cut.down].every(Number.isInteger)) say(`${letter} is not cut in whole squares`);
    if (cut.across < finished.across + 2 * allowance || cut.down < finished.down + 2 * allowance)
      say(`the foundation of ${letter} is smaller than what is made on it`);
    const key = sizeKey(cut.across * grid, cut.down * grid);
    wanted.set(key, (wanted.get(key) ?? 0) + count * times);
  }
  for (const [key, count] of wanted) {
    const listed = fabric.pieces
      .filter(({ across, along }) => sizeKey(across, along) === key)
      .reduce((sum, piece) => sum + piece.count, 0);
    if (listed < count) say(`${listed} pieces of ${key} are listed, but ${count} parts are made on such`);
  }
  // Other things cut from the same cloth may lie anywhere.
  const own = fabric.pieces.every(({ across, along }) => wanted.has(sizeKey(across, along)));
  if (own) faults.push(...offLines(fabric, grid));
  return faults;
}

function sizeKey(across: number, along: number): string {
  return `${Math.min(across, along)} x ${Math.max(across, along)}`;
}

/** Cuts of the bolt that lie between two printed lines. */
function offLines({ name, cuts, lays }: FabricPlan, grid: number): string[] {
  const off = cuts.filter(({ lay, direction, x1, y1 }) => {
    if (lays[lay]?.source !== "bolt") return false;
    return (direction === "across" ? y1 : x1) % grid !== 0;
  });
  return off.length === 0 ? [] : [`${name}: ${off.length} cuts lie between the printed lines`];
}
