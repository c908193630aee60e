import * as q from "../../../length/rational.ts";
import { METHOD, UNIT, type UnitName } from "../../terms/names.ts";
import { notSquare } from "../design.ts";
import { rectangle } from "../outlines/outlines.ts";
import * as r from "../outlines/roots.ts";
import { lie, methodsOf, NOTHING_MORE, patchPiece } from "../recipe.ts";
import type { UnitDesign, UnitKind, UnitMethod } from "../types.ts";

function patches(design: UnitDesign): ReturnType<UnitKind["patches"]> {
  const outline = rectangle(q.ZERO, q.ZERO, design.across, design.along);
  return [{ role: "patch", spot: "patch", outline, shape: "patch", facing: 0 }];
}

function single(kind: UnitName): UnitMethod {
  return methodsOf(kind)(METHOD.singlePieces, (design, how) => ({
    ...NOTHING_MORE,
    unitsPerSet: 1,
    loose: true,
    pieces: [patchPiece("patch", r.whole(design.across), r.whole(design.along), how, [[lie(0, "patch", 0)]])],
    seams: [],
    steps: [],
    // Common practice: finished size and one seam on every side.
  }));
}

/** One square patch. */
export const squareUnit: UnitKind = {
  name: UNIT.square,
  alsoCalled: ["plain square"],
  reads: [],
  check: (design) => notSquare(design),
  roles: () => ["patch"],
  patches,
  methods: [single(UNIT.square)],
};

/** One rectangular patch. */
export const rectangleUnit: UnitKind = {
  name: UNIT.rectangle,
  alsoCalled: ["plain", "strip"],
  reads: [],
  check: () => null,
  roles: () => ["patch"],
  patches,
  methods: [single(UNIT.rectangle)],
};
