import { listCuts } from "../../src/cutlist/list-cuts.ts";
import { runJob } from "../../src/engine/index.ts";
import { EIGHTH_INCH_RULER, INCH, YARD } from "../../src/length/index.ts";
import type { Ruler, Ticks } from "../../src/length/types.ts";
import { planCutLists } from "../../src/plan/plan-cut-lists.ts";
import type { Plan } from "../../src/plan/types.ts";
import type { CutListSpec, FabricSpec, PieceSpec } from "../../src/spec/types.ts";
import { allSaid } from "./in-words.ts";

/** A piece to cut, sizes in ticks. */
export function samplePiece(
  across: Ticks,
  along: Ticks,
  count: number,
  more: Partial<PieceSpec> = {},
): PieceSpec {
  return {
    label: "",
    across,
    along,
    fullWidth: false,
    count,
    turn: "free",
    cut: "strips",
    join: "no",
    note: "",
    at: null,
    ...more,
  };
}

/** A fabric 43 in wide with 42 in usable, sold by the eighth of a yard. */
export function sampleFabric(name: string, pieces: PieceSpec[], more: Partial<FabricSpec> = {}): FabricSpec {
  return {
    name,
    colour: "#3b6ea5",
    width: 43 * INCH,
    selvage: INCH / 2,
    print: { kind: "none", axis: "along" },
    shrinkAcross: 0,
    shrinkAlong: 0,
    straighten: INCH / 2,
    sold: { unit: "yd", step: YARD / 8, least: YARD / 8 },
    price: null,
    spare: 0,
    have: [],
    readyCut: [],
    yardage: true,
    note: "",
    pieces,
    at: null,
    ...more,
  };
}

/** Plans fabrics by way of every phase after the reading of a file. */
export async function samplePlan(
  fabrics: FabricSpec[],
  more: Partial<Omit<CutListSpec, "fabrics">> = {},
  ruler: Ruler = EIGHTH_INCH_RULER,
): Promise<Plan> {
  const spec: CutListSpec = {
    kind: "cut-list",
    name: "Sample",
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
  const listed = listCuts(spec);
  if (listed.value === null)
    throw new Error(
      allSaid(listed.diagnostics)
        .map(({ message }) => message)
        .join("\n"),
    );
  const { value, diagnostics } = await planCutLists({
    spec,
    cutLists: listed.value,
    diagnostics: listed.diagnostics,
    solve: (jobs) => Promise.all(jobs.map(runJob)),
  });
  if (value === null)
    throw new Error(
      allSaid(diagnostics)
        .map(({ message }) => message)
        .join("\n"),
    );
  return value;
}
