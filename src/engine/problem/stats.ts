import type { SearchStats } from "../types.ts";

/** What a search tells of itself before it has done anything. */
export function freshStats(): SearchStats {
  return { columns: 0, nodes: 0, lpSolves: 0, mipSolves: 0, milliseconds: 0, cutShort: null };
}
