import * as q from "../../length/rational.ts";
import { at } from "./outlines.ts";
import { templatesMethod } from "./templates.ts";
import { isSimple, type PlanePoint, signedArea, tiles } from "./tiling.ts";
import type { UnitDesign, UnitKind, UnitPatch } from "./types.ts";

const NAME = "drawn patches";
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
      reason: `A drawn unit has from 1 to ${MOST_PATCHES} patches.`,
      hint: "List each patch by its corners.",
    };
  for (const patch of design.patches) {
    const named = `The patch for ${patch.role} (${patch.spot})`;
    if (patch.corners.length < 3 || patch.corners.length > MOST_CORNERS)
      return {
        reason: `${named} needs from 3 to ${MOST_CORNERS} corners.`,
        hint: "List the corners in order round the patch.",
      };
    const outside = patch.corners.some(
      (p) => q.sign(p.x) < 0 || q.sign(p.y) < 0 || q.compare(p.x, w) > 0 || q.compare(p.y, h) > 0,
    );
    if (outside)
      return {
        reason: `${named} reaches outside the unit.`,
        hint: "Corners are measured from the unit's top left corner, finished.",
      };
    if (q.sign(signedArea(patch.corners)) === 0 || !isSimple(patch.corners))
      return {
        reason: `${named} crosses itself or has no area.`,
        hint: "List the corners in order round the patch.",
      };
  }
  const frame = [
    { x: q.ZERO, y: q.ZERO },
    { x: w, y: q.ZERO },
    { x: w, y: h },
    { x: q.ZERO, y: h },
  ];
  return tiles(
    frame,
    design.patches.map((patch) => clockwise(patch.corners)),
  )
    ? null
    : {
        reason: "The patches do not fill the unit exactly: there is a gap or an overlap.",
        hint: "Neighbouring patches share their corners; together they cover the whole unit.",
      };
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
