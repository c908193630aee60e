import { listCuts } from "../../src/cutlist/list-cuts.ts";
import { EIGHTH_INCH_RULER, INCH } from "../../src/length/index.ts";
import type { Ruler } from "../../src/length/types.ts";
import { transposed } from "../../src/plan/lays/parts.ts";
import { planCutLists } from "../../src/plan/plan-cut-lists.ts";
import type { FabricPlan, Lay, Plan } from "../../src/plan/types.ts";
import type { CutListSpec, FabricSpec } from "../../src/spec/types.ts";
import { sampleFabric, samplePiece } from "./sample-plan.ts";
import { solveByShelves } from "./shelf-packer.ts";

export const inches = (across: number, along: number, count: number, label = "") =>
  samplePiece(across * INCH, along * INCH, count, { label });

/** A plan in which only the drawing is of interest. */
export async function samplePlan(
  fabrics: FabricSpec[],
  more: Partial<CutListSpec> = {},
  ruler: Ruler = EIGHTH_INCH_RULER,
): Promise<Plan> {
  const spec: CutListSpec = {
    kind: "cut-list",
    name: "Gallery",
    ruler,
    defaultUnit: ruler.unit,
    style: "strips-3",
    prefer: "sparing",
    rulerLength: 24 * INCH,
    folded: true,
    keepFrom: 6 * INCH,
    joinFrom: 16 * INCH,
    assumptions: [],
    ...more,
    fabrics,
  };
  const cutLists = listCuts(spec).value;
  if (cutLists === null) throw new Error("The gallery holds a cut list that is in error");
  const { value } = await planCutLists({ spec, cutLists, solve: solveByShelves });
  if (value === null) throw new Error("The gallery holds a cut list that cannot be cut");
  return value;
}

export const manyPieces = () =>
  samplePlan([
    sampleFabric("Three hundred", [
      inches(2.5, 2.5, 140, "chain squares"),
      inches(4.5, 2.5, 80, "rails"),
      inches(3.875, 3.875, 48, "half-square triangles"),
      inches(6.5, 1.5, 24, "sashes"),
      inches(8.5, 8.5, 8, "centres"),
    ]),
  ]);

function changeFabric(plan: Plan, change: (fabric: FabricPlan) => Partial<FabricPlan>): Plan {
  return { ...plan, fabrics: plan.fabrics.map((fabric) => ({ ...fabric, ...change(fabric) })) };
}

/** A bolt turned into loose pieces of cloth: two cut alike, and one cut with its strips on end. */
export function asFatQuarters(plan: Plan): Plan {
  return changeFabric(plan, ({ lays }) => {
    const lay = { ...lays[0]!, source: "fixed" as const, name: "Fat quarter" };
    const onEnd: Lay = { ...lay, across: lay.along, along: lay.across, root: transposed(lay.root) };
    return { lays: [lay, lay, onEnd, { ...lay, name: "Scrap bag, blue" }], purchase: null };
  });
}

export const named = (name: string, label: string) =>
  samplePlan([
    sampleFabric(name, [
      samplePiece(4.5 * INCH, 4.5 * INCH, 14, { label }),
      samplePiece(2.5 * INCH, 6.5 * INCH, 9, { label: `${label} ${label}` }),
      samplePiece(1.5 * INCH, 1.5 * INCH, 30, { label: label.slice(0, 12) }),
    ]),
  ]);
