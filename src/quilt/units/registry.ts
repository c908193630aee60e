import { eightPointedStar } from "./kinds/eight-pointed-star.ts";
import { flyingGeese } from "./kinds/flying-geese.ts";
import { fourPatch } from "./kinds/four-patch.ts";
import { fourTriangleSquare } from "./kinds/four-triangle-square.ts";
import { halfRectangleTriangle } from "./kinds/half-rectangle-triangle.ts";
import { halfSquareTriangle } from "./kinds/half-square-triangle.ts";
import { courthouseSteps, logCabin } from "./kinds/log-cabin.ts";
import { ninePatch } from "./kinds/nine-patch.ts";
import { rectangleUnit, squareUnit } from "./kinds/plain.ts";
import { quarterSquareTriangle } from "./kinds/quarter-square-triangle.ts";
import { rails } from "./kinds/rails.ts";
import { sixtyDegreeTriangles } from "./kinds/sixty-degree-triangles.ts";
import { snowball } from "./kinds/snowball.ts";
import { squareInASquare } from "./kinds/square-in-a-square.ts";
import { threePatchSquare } from "./kinds/three-patch-square.ts";
import { drawnPatches } from "./outlines/drawn-patches.ts";
import type { UnitKind } from "./types.ts";

/** Every unit kind, in the order lists show them. A new kind is one file and one line here. */
export const UNIT_KINDS: readonly UnitKind[] = [
  squareUnit,
  rectangleUnit,
  halfSquareTriangle,
  quarterSquareTriangle,
  threePatchSquare,
  fourTriangleSquare,
  flyingGeese,
  squareInASquare,
  snowball,
  halfRectangleTriangle,
  fourPatch,
  ninePatch,
  rails,
  logCabin,
  courthouseSteps,
  eightPointedStar,
  sixtyDegreeTriangles,
  drawnPatches,
];

/** A name as it is compared: lower case, hyphens and spaces alike. */
function plainName(name: string): string {
  return name
    .trim()
    .toLowerCase()
    .replaceAll(/[\s_-]+/g, " ");
}

/** The kind of that name or trade name, hyphens and capitals aside; null when there is none. */
export function findUnitKind(name: string): UnitKind | null {
  const wanted = plainName(name);
  return (
    UNIT_KINDS.find((kind) => [kind.name, ...kind.alsoCalled].some((each) => plainName(each) === wanted)) ??
    null
  );
}
