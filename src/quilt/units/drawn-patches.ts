import * as q from "../../length/rational.ts";
import { at } from "./outlines.ts";
import { templatesMethod } from "./templates.ts";
import { isSimple, type PlanePoint, signedArea, tilingFault } from "./tiling.ts";
import type { UnitDesign, UnitKind, UnitPatch, UnitProblem } from "./types.ts";

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
  for (const [index, patch] of design.patches.entries()) {
    const fault = patchFault(patch, w, h);
    if (fault !== null) return { ...fault, patch: index };
  }
  const frame = [
    { x: q.ZERO, y: q.ZERO },
    { x: w, y: q.ZERO },
    { x: w, y: h },
    { x: q.ZERO, y: h },
  ];
  const fault = tilingFault(
    frame,
    design.patches.map((patch) => clockwise(patch.corners)),
  );
  if (fault === null) return null;
  const [first, second] = fault.covering.map((index) => design.patches[index]?.spot ?? "");
  if (first === undefined || second === undefined)
    return {
      reason: "The patches do not fill the unit: there is a gap.",
      hint: "Neighbouring patches share their corners; together they cover the whole unit.",
      place: fault.place,
    };
  return {
    reason: `The patches ${first} and ${second} overlap.`,
    hint: "Neighbouring patches share their corners, and no patch lies on another.",
    place: fault.place,
    patch: fault.covering[1] ?? 0,
  };
}

function patchFault(patch: UnitDesign["patches"][number], w: q.Rational, h: q.Rational): UnitProblem | null {
  const named = `The patch for ${patch.role} (${patch.spot})`;
  if (patch.corners.length < 3 || patch.corners.length > MOST_CORNERS)
    return {
      reason: `${named} needs from 3 to ${MOST_CORNERS} corners.`,
      hint: "List the corners in order round the patch.",
    };
  const outside = patch.corners.find(
    (p) => q.sign(p.x) < 0 || q.sign(p.y) < 0 || q.compare(p.x, w) > 0 || q.compare(p.y, h) > 0,
  );
  if (outside !== undefined)
    return {
      reason: `${named} reaches outside the unit.`,
      hint: "Corners are measured from the unit's top left corner, finished.",
      place: outside,
    };
  if (q.sign(signedArea(patch.corners)) === 0 || !isSimple(patch.corners))
    return {
      reason: `${named} crosses itself or has no area.`,
      hint: "List the corners in order round the patch.",
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
