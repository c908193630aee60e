import { listCuts } from "../../src/cutlist/list-cuts.ts";
import { planCutLists } from "../../src/plan/plan-cut-lists.ts";
import type { Plan } from "../../src/plan/types.ts";
import { cutListSpec, fabric, fullWidth, IN, piece, solveHere } from "./cut-list-spec.ts";

/**
 * A sound plan with everything an audit looks at: washing, selvages, a straightened end, prices, several
 * kinds of strips, whole, trimmed and turned pieces, full-width strips, offcuts to keep.
 */
export async function goodPlan(): Promise<Plan> {
  const spec = cutListSpec(
    [
      fabric(
        "Tideline",
        [
          piece("sky", 4.5, 4.5, 26),
          piece("chain", 2.5, 2.5, 9, { turn: "fixed" }),
          piece("rail", 8.5, 2.5, 12),
          piece("sash", 3.5, 12.5, 3, { turn: "fixed" }),
          fullWidth("binding", 2.25, 3),
        ],
        {
          shrinkAlong: 30,
          shrinkAcross: 20,
          straighten: IN / 2,
          price: { hundredths: 1150, per: "yd", currency: "$" },
        },
      ),
      fabric("Lamp", [piece("window", 3, 3, 70), piece("frame", 1.5, 6.5, 31)]),
    ],
    { style: "strips-2", keepFrom: 2 * IN },
  );
  const listed = listCuts(spec);
  const { value } = await planCutLists({ spec, cutLists: listed.value ?? [], solve: solveHere });
  if (value === null) throw new Error("the sample cut list has no plan");
  return value;
}
