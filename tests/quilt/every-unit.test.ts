import { describe, expect, test } from "vitest";
import { areaOfShape } from "../../src/cutlist/index.ts";
import { rational } from "../../src/length/rational.ts";
import {
  addSurd,
  mulSurd,
  type Surd,
  scaleSurd,
  subSurd,
  surd,
  surdToNumber,
} from "../../src/length/surd.ts";
import { surdOfExact } from "../../src/quilt/exact.ts";
import type { Patch } from "../../src/quilt/types.ts";
import { UNIT_KINDS } from "../../src/quilt/units/registry.ts";
import { oneIn } from "../support/sweep.ts";
import { type WorkedOut, workOut } from "./reading.ts";

/** Sizes at which a kind comes out, and what some kinds need besides. */
const SHAPES: Readonly<Record<string, { size: string; more?: string }>> = {
  rectangle: { size: "6 x 3" },
  "flying geese": { size: "6 x 3" },
  "half-rectangle triangle": { size: "3 x 6" },
  "sixty-degree triangles": { size: "12 x 3" },
  "drawn patches": {
    size: "6",
    more: ", patches: [{ part: sail, corners: [[0, 0], [6, 0], [0, 6]] }, { part: sea, corners: [[6, 0], [6, 6], [2, 6], [2, 4]] }, { part: boat, corners: [[2, 4], [2, 6], [0, 6]] }]",
  },
  "log cabin": { size: "6", more: ", count: 2" },
  "courthouse steps": { size: "6", more: ", count: 2" },
};

const FABRICS = "fabrics: [{ name: cloth, print: PRINT }, { name: border }]";

function quilt(kind: string, method: string, print: string, layout: "straight" | "on point"): WorkedOut {
  const { size, more = "" } = SHAPES[kind] ?? { size: "6" };
  const rows =
    layout === "straight"
      ? "rows: b b> bv b<"
      : "layout: on point\n  rows: |\n    b b>\n    bv\n    b< b\n  triangles: border";
  return workOut(`${FABRICS.replace("PRINT", print)}
blocks: { b: { size: ${size}, cell: { ${kind}: cloth, method: ${method}${more} } } }
setting:
  ${layout === "straight" && size.includes("x") ? "rows: b bv" : rows}
`);
}

function areaOf(patch: Patch): Surd {
  let twice = surd(rational(0n));
  patch.outline.forEach((a, i) => {
    const b = patch.outline[(i + 1) % patch.outline.length] ?? a;
    twice = addSurd(
      twice,
      subSurd(mulSurd(surdOfExact(a.x), surdOfExact(b.y)), mulSurd(surdOfExact(b.x), surdOfExact(a.y))),
    );
  });
  return scaleSurd(twice, rational(1n, 2n));
}

const WAYS = UNIT_KINDS.flatMap((kind) => kind.methods.map((method) => [kind.name, method.name] as const));

describe.each(oneIn(2, WAYS))("%s, %s", (kind, method) => {
  const layouts = (SHAPES[kind]?.size ?? "6").includes("x")
    ? (["straight"] as const)
    : (["straight", "on point"] as const);

  test.each(layouts)("fills its block exactly, %s", (layout) => {
    const { top } = quilt(kind, method, "none", layout);
    const sum = top.patches.map(areaOf).reduce(addSurd);
    const whole = mulSurd(surdOfExact(top.across), surdOfExact(top.down));
    expect(Math.abs(surdToNumber(subSurd(sum, whole)))).toBe(0);
  });

  test.each(["none", "one-way across"])("cloth is accounted for, print %s", (print) => {
    const { top, cutLists } = quilt(kind, method, print, "straight");
    const finished = top.patches.reduce((sum, patch) => sum + surdToNumber(areaOf(patch)), 0);
    const told = cutLists
      .flatMap(({ pieces }) => pieces)
      .reduce(
        (sum, piece) =>
          sum +
          // Shapes that stand in strips are counted as such, not with the corners of their rectangles.
          (piece.nest === undefined ? piece.across * piece.along : areaOfShape(piece)) * piece.count -
          (piece.seams ?? 0) -
          (piece.corners ?? 0),
        0,
      );
    expect(Math.abs(told - finished)).toBeLessThan(top.patches.length * 2);
  });
});
