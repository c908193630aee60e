import { readFileSync } from "node:fs";
import { borderDoesNotFit } from "../../../src/diagnostics/quilts/quilt.ts";
import { planQuilt, solveHere, USUAL_OPTIONS } from "../../../src/index.ts";
import { INCH, QUARTER_CENTIMETRE_RULER } from "../../../src/length/index.ts";
import type { Plan } from "../../../src/plan/types.ts";
import { sampleFabric, samplePiece, samplePlan } from "../../support/sample-plan.ts";

/** Plans that a book is made of in these tests. Names and cloth are invented. */

const inches = (across: number, along: number, count: number, label = "") =>
  samplePiece(across * INCH, along * INCH, count, { label });

/** Plans are data that nobody writes into, so each is made once. */
const known = new Map<string, Promise<Plan>>();

function once(name: string, make: () => Promise<Plan>): Promise<Plan> {
  const plan = known.get(name) ?? make();
  known.set(name, plan);
  return plan;
}

async function planned(file: string): Promise<Plan> {
  const text = readFileSync(new URL(`../../../fixtures/${file}`, import.meta.url), "utf8");
  const { value } = await planQuilt(text, file, USUAL_OPTIONS, solveHere);
  if (value === null) throw new Error(`${file} cannot be planned`);
  return value;
}

export const quiltPlan = (): Promise<Plan> => once("quilt", () => planned("quilts/nine-stars.yaml"));
export const listPlan = (): Promise<Plan> => once("list", () => planned("cutlists/tide-pool.yaml"));

/** One piece of one fabric: the least a book can hold. */
export const smallestPlan = (): Promise<Plan> =>
  once("smallest", () =>
    samplePlan([sampleFabric("Plain", [inches(4.5, 4.5, 1)])], { name: "", keepFrom: 400 * INCH }),
  );

export const metricPlan = (): Promise<Plan> =>
  once("metric", () =>
    samplePlan([sampleFabric("Lin", [samplePiece(41600, 73600, 9)])], {}, QUARTER_CENTIMETRE_RULER),
  );

/** Text meant to break out of wherever it is put. */
export const HOSTILE = [
  "<script>window.broken = true</script>",
  "</style><script>window.broken = true</script>",
  "</title></svg>\"'><img src=x onerror='window.broken = true'>",
  '"; } @import url(http://example.com/x.css); body { display: none; } /*',
  "\\22 } \u0000 \u202e \ud800 ]]> <!-- --> $(window.broken = true) `",
  "&lt;b&gt; &#60;i&#62; %3Cscript%3E",
  "W".repeat(500),
  "שמיכת טלאים",
  "拼布被子".repeat(30),
];

/** Every name, note and label of it is hostile, and so is what planning says. */
export const hostilePlan = (): Promise<Plan> => once("hostile", planHostile);

async function planHostile(): Promise<Plan> {
  const plan = await samplePlan(
    HOSTILE.map((name) =>
      sampleFabric(name, [inches(2.5, 4.5, 12, name), inches(3.5, 3.5, 5)], {
        note: name,
        price: { hundredths: 1250, per: "yd", currency: name.slice(0, 40) },
      }),
    ),
    {
      name: HOSTILE.join(" "),
      assumptions: HOSTILE.map((fabric) => ({ fabric, of: { is: "fold" as const } })),
    },
  );
  const diagnostics = HOSTILE.map((message) => ({
    ...borderDoesNotFit({ path: "", at: null }, { why: "mitre", border: message }),
    severity: "warning" as const,
  }));
  return { ...plan, diagnostics };
}
