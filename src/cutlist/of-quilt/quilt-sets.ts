import type { Ticks } from "../../length/types.ts";
import { countSets } from "../../quilt/index.ts";
import type { Quarter, Recipe, SetStrip, StripSet } from "../../quilt/units/types.ts";
import type { UnitWant } from "../../quilt/work-types.ts";
import {
  type Cloths,
  type Cover,
  type CoverPiece,
  made,
  type NextMark,
  type StripBatch,
  sameness,
  sizedCover,
} from "../cover.ts";
import type { CutShape } from "../types.ts";

/**
 * Strip sets for units wanted one way; strips lie across the fabric, either side up.
 * @param index of the want, for the record
 */
export function coverSets(
  recipe: Recipe,
  want: UnitWant,
  index: number,
  cloths: Cloths,
  next: NextMark,
): Cover | null {
  const pieces: CoverPiece[] = [];
  const batches: StripBatch[] = [];
  for (const [number, set] of recipe.stripSets.entries()) {
    const turns = set.strips.map((strip) => turnKeeping(strip, want, cloths));
    if (turns.includes(undefined)) return null;
    const usable = Math.min(...set.strips.map((strip) => cloths.usable(strip.role)));
    const counted = countSets(set, want.count, usable, cloths.straightenSets);
    if (counted === null) return null;
    const strips = set.strips.map((strip, i) => {
      const made = stripsOf(set, strip, { ...counted, units: want.count }, cloths.usable(strip.role), next);
      pieces.push(...made);
      const markOf = (fullWidth: boolean): number | null =>
        made.find((piece) => piece.fullWidth === fullWidth)?.marks[0] ?? null;
      const beyond = cloths.usable(strip.role) - counted.fullLength;
      return { full: markOf(true), last: markOf(false), turn: turns[i] ?? null, beyond };
    });
    batches.push({ kind: "strips", set: number, want: index, counted, strips });
  }
  return sizedCover(pieces, batches, 0);
}

/**
 * The turn in which a strip keeps its print as wanted in every patch; null where no print has a say, undefined
 * when there is none.
 */
function turnKeeping(strip: SetStrip, want: UnitWant, cloths: Cloths): Quarter | null | undefined {
  const direction = cloths.direction(strip.role);
  if (direction === undefined) return null;
  const turns: readonly Quarter[] = cloths.axis(strip.role) === "along" ? [0, 2] : [1, 3];
  const wanted = want.prints[strip.role] ?? 0;
  return turns.find((turn) =>
    strip.lies.every((list) =>
      list.every((lie) => (lie.print + 2 * turn - wanted + 16) % sameness(direction) === 0),
    ),
  );
}

function stripsOf(
  set: StripSet,
  strip: SetStrip,
  { units, ...counted }: NonNullable<ReturnType<typeof countSets>> & { units: number },
  usable: Ticks,
  next: NextMark,
): CoverPiece[] {
  const shared = {
    role: strip.role,
    along: strip.width,
    subcut: "none" as const,
    diagonal: "any" as const,
    roundedUp: strip.roundedUp,
  };
  const all = made(strip.lies.flat(), units);
  const perUnit = set.segmentsPerUnit * units;
  const shape = (segments: number): CutShape | null =>
    set.shape === null ? null : { ...set.shape, asDrawn: segments, reversed: 0 };
  const share = (segments: number): CoverPiece["made"] =>
    all.map(({ spot, count }) => ({ spot, count: (count * segments) / Math.max(1, perUnit) }));
  const full: CoverPiece[] =
    counted.fullSets === 0
      ? []
      : [
          {
            ...shared,
            across: usable,
            fullWidth: true,
            count: counted.fullSets,
            shape: shape(counted.fullSets * counted.segmentsPerFullSet),
            made: share(counted.fullSets * counted.segmentsPerFullSet),
            set: { set: set.name, short: false },
            ...(usable > counted.fullLength ? { beyond: usable - counted.fullLength } : {}),
            marks: [next()],
          },
        ];
  const last: CoverPiece[] =
    counted.lastSegments === 0
      ? []
      : [
          {
            ...shared,
            across: counted.lastLength,
            fullWidth: false,
            count: 1,
            shape: shape(counted.lastSegments),
            made: share(counted.lastSegments),
            set: { set: set.name, short: true },
            marks: [next()],
          },
        ];
  return [...full, ...last];
}
