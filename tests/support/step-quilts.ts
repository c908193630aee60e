import type { CutList } from "../../src/cutlist/types.ts";
import type { StepFabric } from "../../src/draw/steps/step-fabric.ts";
import { unitOutlines } from "../../src/draw/steps/unit-outlines.ts";
import type { StepsOf } from "../../src/draw/steps/unit-panels.ts";
import { UNIT_KINDS } from "../../src/quilt/units/registry.ts";
import { type Made, make } from "../making/fixture.ts";

/** Sizes at which a kind comes out on the marks of a ruler, and what some kinds need besides. */
const SHAPES: Readonly<Record<string, { size: string; more?: string }>> = {
  rectangle: { size: "6 x 3" },
  "flying geese": { size: "6 x 3" },
  "half-rectangle triangle": { size: "3 x 6" },
  "sixty-degree triangles": { size: "12 x 3" },
  snowball: { size: "6", more: ", corner: 1 1/2" },
  "drawn patches": {
    size: "6",
    more: ", patches: [{ part: sail, corners: [[0, 0], [6, 0], [0, 6]] }, { part: sea, corners: [[6, 0], [6, 6], [2, 6], [2, 4]] }, { part: boat, corners: [[2, 4], [2, 6], [0, 6]] }]",
  },
  "log cabin": { size: "6", more: ", count: 2" },
  "courthouse steps": { size: "6", more: ", count: 2" },
};

/** Parts of every kind, as a file names them. */
const PARTS: Readonly<Record<string, readonly string[]>> = {
  "drawn patches": ["sail", "sea", "boat"],
  rails: ["rail 1", "rail 2", "rail 3"],
  "sixty-degree triangles": ["up", "down"],
  "half-square triangle": ["upper", "lower"],
  "half-rectangle triangle": ["upper", "lower"],
  "quarter-square triangle": ["ends", "sides"],
  "four-triangle square": ["top", "right", "bottom", "left"],
  "three-patch square": ["half", "top", "left"],
  "flying geese": ["goose", "sky"],
  snowball: ["ball", "corners"],
  "square-in-a-square": ["centre", "corners"],
  "four-patch": ["first", "second"],
  "nine-patch": ["corners", "sides", "centre"],
  "log cabin": ["centre", "light", "dark"],
  "courthouse steps": ["centre", "ends", "sides"],
  "eight-pointed star": ["first", "second", "corners", "sides"],
};

/** Every kind of unit with every way of making it. */
export const STEP_WAYS = UNIT_KINDS.flatMap((kind) =>
  kind.methods.map((method) => [kind.name, method.name] as const),
);

/** A quilt of one kind of unit, each of its parts from a cloth of its own, placed in all its turns. */
export function quiltOfUnit(kind: string, method: string, print: string): Made {
  const { size, more = "" } = SHAPES[kind] ?? { size: "6" };
  const parts = PARTS[kind] ?? [kind];
  const cloths = parts.map((_, i) => `{ name: cloth ${i + 1}, print: ${i === 1 ? "none" : print} }`);
  const given =
    parts.length === 1 ? "cloth 1" : `{ ${parts.map((part, i) => `${part}: cloth ${i + 1}`).join(", ")} }`;
  return make(`fabrics: [${cloths.join(", ")}]
blocks: { b: { size: ${size}, cell: { ${kind}: ${given}, method: ${method}${more} } } }
setting:
  rows: ${size.includes("x") ? "b bv" : "b b> bv b<"}
`);
}

export function stepFabrics(lists: readonly CutList[]): StepFabric[] {
  return lists.map(({ fabric: { name, colour, print }, pieces }) => ({ name, colour, print, pieces }));
}

export function stepsOf(made: Made): StepsOf {
  return {
    seam: made.making.seam,
    fabrics: stepFabrics(made.cutLists),
    ruler: made.spec.ruler,
    outlines: unitOutlines(made.top, made.making),
  };
}
