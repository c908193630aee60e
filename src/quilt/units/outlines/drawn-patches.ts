import * as q from "../../../length/rational.ts";
import { UNIT } from "../../terms/names.ts";
import { templatesMethod } from "../templates.ts";
import type { UnitDesign, UnitKind, UnitPatch, UnitProblem } from "../types.ts";
import { at } from "./outlines.ts";
import { isSimple, type PlanePoint, signedArea, tilingFault } from "./tiling.ts";

const NAME = UNIT.drawnPatches;
const MOST_PATCHES = 60;
const MOST_CORNERS = 40;

/** Corners clockwise, whichever way they were written. */
function clockwise(corners: readonly PlanePoint[]): readonly PlanePoint[] {
  return q.sign(signedArea(corners)) < 0 ? [...corners].reverse() : corners;
}

function patches(design: UnitDesign): readonly UnitPatch[] {
  return design.patches.map((patch) => ({
    role: patch.role,
    spot: patch.spot,
    outline: clockwise(patch.corners).map((point) => at(point.x, point.y)),
    shape: patch.spot,
    facing: 0,
  }));
}

function check(design: UnitDesign): ReturnType<UnitKind["check"]> {
  const { across: w, along: h } = design;
  if (design.patches.length === 0 || design.patches.length > MOST_PATCHES)
    return {
      fault: { why: "patches-count", most: MOST_PATCHES },
    };
  for (const [index, patch] of design.patches.entries()) {
    const problem = patchFault(patch, w, h);
    if (problem !== null) return { ...problem, patch: index };
  }
  const frame = [
    { x: q.ZERO, y: q.ZERO },
    { x: w, y: q.ZERO },
    { x: w, y: h },
    { x: q.ZERO, y: h },
  ];
  const tiling = tilingFault(
    frame,
    design.patches.map((patch) => clockwise(patch.corners)),
  );
  if (tiling === null) return null;
  const [first, second] = tiling.covering.map((index) => design.patches[index]?.spot ?? "");
  if (first === undefined || second === undefined)
    return {
      fault: { why: "patches-gap" },
      place: tiling.place,
    };
  return {
    fault: { why: "patches-overlap", first, second },
    place: tiling.place,
    patch: tiling.covering[1] ?? 0,
  };
}

function patchFault(patch: UnitDesign["patches"][number], w: q.Rational, h: q.Rational): UnitProblem | null {
  const { role, spot } = patch;
  if (patch.corners.length < 3 || patch.corners.length > MOST_CORNERS)
    return {
      fault: { why: "patch-corners", role, spot, most: MOST_CORNERS },
    };
  const outside = patch.corners.find(
    (p) => q.sign(p.x) < 0 || q.sign(p.y) < 0 || q.compare(p.x, w) > 0 || q.compare(p.y, h) > 0,
  );
  if (outside !== undefined)
    return {
      fault: { why: "patch-outside", role, spot },
      place: outside,
    };
  if (q.sign(signedArea(patch.corners)) === 0 || !isSimple(patch.corners))
    return {
      fault: { why: "patch-crossed", role, spot },
    };
  return null;
}

/** Patches of any straight-edged shape, as the designer drew them. */
export const drawnPatches: UnitKind = {
  name: NAME,
  alsoCalled: ["polygon", "polygons", "templates"],
  reads: ["patches"],
  check,
  roles: (design) => [...new Set(design.patches.map((patch) => patch.role))],
  patches,
  methods: [templatesMethod(NAME, patches)],
};
