import type { PrintsFollow, QuiltSpec } from "../../spec/quilt-types.ts";
import type { Eighth } from "../units/types.ts";
import { asEighth } from "./whole-turns.ts";

/** How a unit lies in the quilt: every turn on the way, in degrees clockwise. */
export interface Turns {
  unit: number;
  block: number;
  /** The whole centre, and the place in a border. */
  placement: number;
  /** An eighth-turn of an on-point setting. */
  tilted: boolean;
}

function eighth(degrees: number): Eighth {
  return asEighth(degrees / 45);
}

/**
 * Where a directional print must point in the unit's own frame, so that it comes out as the file wants it.
 *
 *     in the quilt = in the unit + unit turn + block turn + placement (+ an eighth on point)
 *
 * On point an upright print would need bias cuts; it then stands upright in the block's own row instead,
 * leaning an eighth-turn in the quilt.
 */
export function wantedInUnit(follow: PrintsFollow, turns: Turns): Eighth {
  switch (follow) {
    case "quilt":
      return eighth(-(turns.unit + turns.block + turns.placement));
    case "block":
      return eighth(-turns.unit);
    case "unit":
      return 0;
  }
}

/** The same direction as seen in the quilt, in degrees clockwise from its top. */
export function seenInQuilt(inUnit: Eighth, turns: Turns): number {
  return (inUnit * 45 + turns.unit + turns.block + turns.placement + (turns.tilted ? 45 : 0)) % 360;
}

/** Fabrics with a direction, and whether they read the same upside down. */
export function directionsOf(spec: QuiltSpec): Map<string, "one-way" | "two-way"> {
  const found = new Map<string, "one-way" | "two-way">();
  for (const { name, print } of spec.fabrics) if (print.kind !== "none") found.set(name, print.kind);
  return found;
}
