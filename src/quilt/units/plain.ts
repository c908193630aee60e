import * as q from "../../length/rational.ts";
import { notSquare } from "./design.ts";
import { rectangle } from "./outlines.ts";
import { lie, methodsOf, NOTHING_MORE, patchPiece } from "./recipe.ts";
import * as r from "./roots.ts";
import type { UnitDesign, UnitKind, UnitMethod } from "./types.ts";

function patches(design: UnitDesign): ReturnType<UnitKind["patches"]> {
  const outline = rectangle(q.ZERO, q.ZERO, design.across, design.along);
  return [{ role: "patch", spot: "patch", outline, shape: "patch", facing: 0 }];
}

function single(kind: string): UnitMethod {
  return methodsOf(kind)("single pieces", "cut to finished size and two seams", (design, how) => ({
    ...NOTHING_MORE,
    unitsPerSet: 1,
    loose: true,
    pieces: [patchPiece("patch", r.whole(design.across), r.whole(design.along), how, [[lie(0, "patch", 0)]])],
    seams: [],
    steps: [],
    sources: ["common practice: finished size and one seam on every side"],
  }));
}

/** One square patch. */
export const squareUnit: UnitKind = {
  name: "square",
  alsoCalled: ["plain square"],
  reads: [],
  check: (design) => notSquare(design, "A square", "Use `rectangle`, or make both sides alike."),
  roles: () => ["patch"],
  patches,
  methods: [single("square")],
};

/** One rectangular patch. */
export const rectangleUnit: UnitKind = {
  name: "rectangle",
  alsoCalled: ["plain", "strip"],
  reads: [],
  check: () => null,
  roles: () => ["patch"],
  patches,
  methods: [single("rectangle")],
};
