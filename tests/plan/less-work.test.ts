import { expect, test } from "vitest";
import { planQuilt, solveHere, USUAL_OPTIONS } from "../../src/index.ts";
import type { FabricPlan } from "../../src/plan/types.ts";

const PREFERRED = ["sparing", "simple"] as const;

async function planned(prefer: (typeof PREFERRED)[number], print: string, pieces: readonly string[]) {
  const fabric = `  - name: gulls\n    width: 43 in\n    selvage: 1/2 in\n    print: ${print}\n    pieces:\n`;
  const text = `name: Gulls\nunits: in\nfabrics:\n${fabric}${pieces.map((one) => `      - ${one}\n`).join("")}`;
  const { value } = await planQuilt(text, "gulls.yaml", { ...USUAL_OPTIONS, prefer }, solveHere);
  return value!.fabrics[0]!;
}

const stripSteps = ({ steps }: FabricPlan) => steps.filter(({ kind }) => kind === "strips");
/** How many strips of each width, in inches. */
function inInches(plan: FabricPlan): [number, number][] {
  const counts = new Map<number, number>();
  for (const { width, count } of stripSteps(plan))
    counts.set(width / 16256, (counts.get(width / 16256) ?? 0) + count);
  return [...counts];
}
const trims = (plan: FabricPlan) =>
  stripSteps(plan).flatMap(({ subcuts }) => subcuts.filter(({ how }) => how === "trimmed"));

test("for the same purchase one who wants it simple cuts each size from its own width, without a trim", async () => {
  const pieces = ["body 6 1/2 x 8 1/2, 12", "wing 3 1/2 x 5, 18", "tail 4 1/2 x 2 1/2, 24"];
  const sparing = await planned("sparing", "one-way", pieces);
  const simple = await planned("simple", "one-way", pieces);
  expect(simple.purchase?.text).toBe("1 yd");
  expect(sparing.purchase?.text).toBe("1 yd");
  expect(simple.bound.purchaseProven).toBe(true);
  expect(sparing.bound.lengthProven).toBe(true);
  expect(simple.bound.used).toBeGreaterThanOrEqual(sparing.bound.used);
  expect(trims(simple)).toEqual([]);
  expect(inInches(simple)).toEqual([
    [8.5, 2],
    [5, 2],
    [2.5, 3],
  ]);
});

test("six logs of one width come from one strip of it", async () => {
  const logs = ["2 1/4 square", "2 1/4 x 4", "2 1/4 x 5 3/4", "2 1/4 x 7 1/2", "2 1/4 x 9 1/4", "2 1/4 x 11"];
  const all = [...logs, "4 1/2 square", "3 7/8 square"].map(
    (size, i) => `${size}, ${[1, 10, 12][Math.max(0, i - 5)]}`,
  );
  for (const prefer of PREFERRED) {
    const plan = await planned(prefer, "none", [...all, "binding 2 1/2 x WOF, 4"]);
    const isLog = ({ across, along }: { across: number; along: number }) =>
      Math.min(across, along) === 2.25 * 16256;
    const from = stripSteps(plan).filter(({ subcuts }) => subcuts.some(isLog));
    expect(from.map(({ width, count }) => [width / 16256, count])).toEqual([[2.25, 1]]);
    expect(from[0]!.subcuts).toHaveLength(6);
  }
});
