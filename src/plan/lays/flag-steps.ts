import type { CuttingTable, StackLimit } from "../../engine/types.ts";
import type { Ticks } from "../../length/types.ts";
import type { Part, StepFlag } from "../types.ts";

/** What the maker's table allows. */
export interface Table {
  /** Longest cut one placing of the ruler can make. */
  rulerLength: Ticks;
  /** Fabric is folded once for cutting strips. */
  folded: boolean;
}

/** Narrower than this a part is hard to hold beside the ruler: 1 in. Common practice, no source. */
const NARROW: Ticks = 16256;

/** The same for the engine, which counts a cut that is too long or a part that is too narrow as more work. */
export function tableOf({ rulerLength, folded }: Table): CuttingTable {
  return { across: folded ? 2 * rulerLength : rulerLength, inside: rulerLength, narrow: NARROW };
}

/**
 * How high a strip, and how wide a segment of it, may be that is cut once more along: it lies open on the mat, and one
 * placing of the ruler must reach across it and along it.
 */
export function stackLimit({ rulerLength, matLength = rulerLength }: Stacking): StackLimit {
  const reach = Math.min(rulerLength, matLength);
  return { height: reach, width: reach };
}

/** What decides how far strips may be cut into stacks. */
type Stacking = Pick<Table, "rulerLength"> & { matLength?: Ticks };

/**
 * Warnings for one kind of strip: the cut that takes it off, folded or not, is longer than the ruler, or in reach when
 * the fabric is folded once more; a cut inside it, unfolded, is; its width is more than the ruler measures; parts are
 * so narrow that the hand on the ruler comes near the blade.
 */
export function flagsFor(strip: Part, width: Ticks, run: Ticks, { rulerLength, folded }: Table): StepFlag[] {
  const flags: StepFlag[] = [];
  // A lengthwise band is cut from cloth folded along the bolt, which shortens nothing that is cut here.
  const cutLength = folded && strip.role === "strip" ? Math.ceil(run / 2) : run;
  if (cutLength > rulerLength && Math.ceil(cutLength / 2) <= rulerLength) flags.push("refold");
  else if (cutLength > rulerLength) flags.push("longer-than-ruler");
  if (longestInside(strip) > rulerLength) flags.push("long-subcut");
  if (width > rulerLength) flags.push("wide-strip");
  if (width < NARROW || narrowest(strip) < NARROW) flags.push("narrow-segment");
  return flags;
}

/** The longest cut between the parts of a part: as long as the part is in the direction of the knife. */
function longestInside(part: Part): Ticks {
  const inner = Math.max(0, ...part.parts.map(longestInside));
  return part.cut === null || part.parts.length < 2 ? inner : Math.max(inner, part[part.cut]);
}

/** Least size of anything under the ruler; what falls away beside it may be as narrow as it likes. */
function narrowest(part: Part): Ticks {
  const kept = part.parts.filter((inner) => inner.cause === null);
  return Math.min(
    ...kept.map((inner) => Math.min(inner.across, inner.along, narrowest(inner))),
    Number.MAX_SAFE_INTEGER,
  );
}
