import type { CuttingTable } from "../engine/types.ts";
import type { Ticks } from "../length/types.ts";
import type { Part, StepFlag } from "./types.ts";

/** What the maker's table allows. */
export interface Table {
  /** Longest cut one placing of the ruler can make. */
  rulerLength: Ticks;
  /** Fabric is folded once for cutting strips. */
  folded: boolean;
}

/** Narrower than this a part is hard to hold beside the ruler: 1 in. Common practice, no source. */
export const NARROW: Ticks = 16256;

/** The same for the engine, which counts a cut that is too long or a part that is too narrow as more work. */
export function tableOf({ rulerLength, folded }: Table): CuttingTable {
  return { across: folded ? 2 * rulerLength : rulerLength, inside: rulerLength, narrow: NARROW };
}

/**
 * Warnings for one kind of strip: a cut longer than the ruler, one that is in reach when the fabric is
 * folded once more, and parts so narrow that the hand on the ruler comes near the blade.
 */
export function flagsFor(strip: Part, width: Ticks, run: Ticks, { rulerLength, folded }: Table): StepFlag[] {
  const flags: StepFlag[] = [];
  // A lengthwise band is cut from cloth folded along the bolt, which shortens nothing that is cut here.
  const cutLength = folded && strip.role === "strip" ? Math.ceil(run / 2) : run;
  if (cutLength > rulerLength && Math.ceil(cutLength / 2) <= rulerLength) flags.push("refold");
  else if (cutLength > rulerLength) flags.push("longer-than-ruler");
  // Subcuts are as long as the strip is wide, and the fabric cannot be folded for them.
  if (width > rulerLength && !flags.includes("longer-than-ruler")) flags.push("longer-than-ruler");
  if (width < NARROW || narrowest(strip) < NARROW) flags.push("narrow-segment");
  return flags;
}

/** Least size of anything under the ruler; what falls away beside it may be as narrow as it likes. */
function narrowest(part: Part): Ticks {
  const kept = part.parts.filter((inner) => inner.cause === null);
  return Math.min(
    ...kept.map((inner) => Math.min(inner.across, inner.along, narrowest(inner))),
    Number.MAX_SAFE_INTEGER,
  );
}
