import type { CutPiece } from "../../cutlist/types.ts";
import type { Ticks } from "../../length/types.ts";
import type { Lay, Leftover, LeftoverCause, Part, WasteCause, WasteSummary } from "../types.ts";
import { WASTE_CAUSES } from "../waste-causes.ts";
import { everyPart, like } from "./parts.ts";
import { restsOfSewing } from "./sewn-rests.ts";

/** What of the bolt never reaches the mat: its size as bought, and the washed size of its selvages. */
export interface Bought {
  /** Selvage to selvage, before washing. */
  width: Ticks;
  /** As bought, before washing: of each bolt. */
  lengths: readonly Ticks[];
  selvage: Ticks;
}

/**
 * Waste by cause, in square ticks. The sums are whole numbers and come out exactly: what is bought is in a
 * piece or under one cause. Shrinkage is what the bolt loses before it is cut, so it is had by difference.
 *
 * What lies between shapes and beside them is trimmed off; half a square tick of a shape is counted with it.
 *
 * @param bought null when no bolt is cut.
 */
export function sumWaste(
  lays: readonly Lay[],
  list: readonly CutPiece[],
  bought: Bought | null,
): WasteSummary {
  const areas = new Map<WasteCause, number>(WASTE_CAUSES.map((cause) => [cause, 0]));
  let pieces = 0;
  let total = 0;
  const ofBolts = bought?.lengths.values();
  for (const lay of lays) {
    for (const part of everyPart(lay.root)) {
      if (part.parts.length > 0) continue;
      const area = part.across * part.along;
      if (part.shapes !== undefined) {
        const inShapes = Math.ceil((part.shapes.length * twiceArea(list[part.piece ?? -1])) / 2);
        pieces += inShapes;
        areas.set("trimming", (areas.get("trimming") ?? 0) + area - inShapes);
      } else if (part.cause === null) pieces += area;
      else areas.set(part.cause, (areas.get(part.cause) ?? 0) + area);
    }
    if (lay.source === "fixed" || bought === null) {
      total += lay.across * lay.along;
      continue;
    }
    const selvages = 2 * bought.selvage * lay.along;
    const whole = bought.width * (ofBolts?.next().value ?? 0);
    total += whole;
    areas.set("selvage", (areas.get("selvage") ?? 0) + selvages);
    areas.set("shrinkage", (areas.get("shrinkage") ?? 0) + whole - selvages - lay.across * lay.along);
  }
  return {
    bought: total,
    pieces,
    lines: WASTE_CAUSES.map((cause) => ({ cause, area: areas.get(cause) ?? 0 })),
  };
}

/** Twice the area within a piece's outline: a whole number of square ticks. */
function twiceArea(piece: CutPiece | undefined): number {
  const line = piece?.shape?.cut ?? [];
  const sum = line.reduce((total, a, i) => {
    const b = line[(i + 1) % line.length] ?? a;
    return total + a.x * b.y - b.x * a.y;
  }, 0);
  return Math.abs(sum);
}

/** Marks the offcuts that are at least `keepFrom` both ways. Straightening scraps are never kept. */
export function markKept(part: Part, keepFrom: Ticks): Part {
  const keep =
    part.cause !== null && part.cause !== "straightening" && Math.min(part.across, part.along) >= keepFrom;
  if (part.parts.length === 0) return keep === part.keep ? part : { ...part, keep };
  const parts = part.parts.map((inner) => markKept(inner, keepFrom));
  const same = parts.every((inner, i) => inner === part.parts[i]);
  return same ? part : like(part, { ...part, parts });
}

/** In the order told where sizes are equal. */
const TOLD: readonly LeftoverCause[] = [...WASTE_CAUSES, "run-end", "panel-side", "set-end"];

/** Offcuts worth keeping, biggest first, equal ones of one lay counted together; what sewing leaves with them. */
export function listLeftovers(
  lays: readonly Lay[],
  pieces: readonly CutPiece[],
  keepFrom: Ticks,
  kits: number,
): Leftover[] {
  const found = new Map<string, Leftover>();
  lays.forEach(({ root }, lay) => {
    for (const { keep, cause, across, along } of everyPart(root)) {
      if (!keep || cause === null) continue;
      const key = `${lay} ${across} ${along} ${cause}`;
      const count = (found.get(key)?.count ?? 0) + 1;
      found.set(key, { lay, across, along, count, cause });
    }
  });
  const rests = restsOfSewing(pieces, kits).filter(
    ({ across, along }) => Math.min(across, along) >= keepFrom,
  );
  return [...found.values(), ...rests].sort(
    (a, b) =>
      b.across * b.along - a.across * a.along ||
      a.lay - b.lay ||
      b.across - a.across ||
      TOLD.indexOf(a.cause) - TOLD.indexOf(b.cause),
  );
}
