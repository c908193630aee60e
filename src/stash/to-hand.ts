import { nearest } from "../diagnostics/index.ts";
import { stashNearName } from "../diagnostics/stash.ts";
import type { Diagnostic } from "../diagnostics/types.ts";
import { formatSize } from "../length/index.ts";
import type { Ruler } from "../length/types.ts";
import type { FixedPiece } from "../plan/index.ts";
import { fabricKey, stashName } from "../stock/index.ts";
import type { Stash } from "./types.ts";

/** Cloth to hand of one fabric of a quilt. */
export interface ClothToHand {
  fabric: string;
  pieces: FixedPiece[];
}

/**
 * What the table holds of each fabric, one entry for each size, biggest first; fabrics it has none of are left out.
 * A fabric whose name is nearly that of a cloth in the table is told of.
 */
export function clothToHand(
  stash: Stash,
  fabrics: readonly string[],
  ruler: Ruler,
): { toHand: ClothToHand[]; diagnostics: Diagnostic[] } {
  const diagnostics: Diagnostic[] = [];
  const held = stash.rows.flatMap(({ cloth }) => (cloth === null || cloth.count === 0 ? [] : [cloth]));
  const names = [...new Set(held.map(({ fabric }) => fabric))];
  const taken = new Set(fabrics.map(fabricKey));
  const toHand = fabrics.flatMap((fabric, index): ClothToHand[] => {
    // Cloth is given out once, should two fabrics have one name.
    if (fabrics.slice(0, index).some((before) => fabricKey(before) === fabricKey(fabric))) return [];
    const own = held.filter((cloth) => fabricKey(cloth.fabric) === fabricKey(fabric));
    if (own.length === 0) {
      const near = nearest(
        fabric,
        names.filter((name) => !taken.has(fabricKey(name))),
      );
      if (near !== null) diagnostics.push(stashNearName(fabric, near));
      return [];
    }
    const bySize = new Map<string, FixedPiece>();
    for (const { across, along, count } of own) {
      const name = stashName(formatSize(across, along, ruler));
      const before = bySize.get(`${across} ${along}`);
      const available = (before?.available ?? 0) + count;
      bySize.set(`${across} ${along}`, { name, across, along, available, from: "stash" });
    }
    const pieces = [...bySize.values()].sort(
      (a, b) => b.across * b.along - a.across * a.along || b.across - a.across,
    );
    return [{ fabric, pieces }];
  });
  return { toHand, diagnostics };
}
