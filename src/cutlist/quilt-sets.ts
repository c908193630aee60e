import type { Ticks } from "../length/types.ts";
import { countSets } from "../quilt/index.ts";
import type { Recipe, SetStrip, StripSet } from "../quilt/units/types.ts";
import type { UnitWant } from "../quilt/work-types.ts";
import { type Cloths, type Cover, type CoverPiece, made, sameness, sizedCover } from "./cover.ts";
import type { CutShape } from "./types.ts";

/** Strip sets for units wanted one way; strips lie across the fabric, either side up. */
export function coverSets(recipe: Recipe, want: UnitWant, cloths: Cloths): Cover | null {
  const pieces: CoverPiece[] = [];
  for (const set of recipe.stripSets) {
    if (!set.strips.every((strip) => keepsDirection(strip, want, cloths))) return null;
    const usable = Math.min(...set.strips.map((strip) => cloths.usable(strip.role)));
    const counted = countSets(set, want.count, usable);
    if (counted === null) return null;
    for (const strip of set.strips)
      pieces.push(...stripsOf(set, strip, counted, want.count, cloths.usable(strip.role)));
  }
  return sizedCover(pieces, 0);
}

function keepsDirection(strip: SetStrip, want: UnitWant, cloths: Cloths): boolean {
  const direction = cloths.direction(strip.role);
  if (direction === undefined) return true;
  const turns = cloths.axis(strip.role) === "along" ? [0, 2] : [1, 3];
  const wanted = want.prints[strip.role] ?? 0;
  return turns.some((turn) =>
    strip.lies.every((list) =>
      list.every((lie) => (lie.print + 2 * turn - wanted + 16) % sameness(direction) === 0),
    ),
  );
}

function stripsOf(
  set: StripSet,
  strip: SetStrip,
  counted: NonNullable<ReturnType<typeof countSets>>,
  units: number,
  usable: Ticks,
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
            note: `strip set ${set.name}`,
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
            note: `strip set ${set.name}, the short one`,
          },
        ];
  return [...full, ...last];
}
