import { expect, test } from "vitest";
import { auditPlan } from "../../src/audit/index.ts";
import type { Done, Plan } from "../../src/plan/types.ts";
import { goodPlan } from "../support/good-plan.ts";

const good = await goodPlan();

/** The good plan with something told of its work. */
function worked(done: Partial<Done>, said = [{ fabric: "Tideline", facts: ["all cut"] }]): string[] {
  const plan = JSON.parse(JSON.stringify(good)) as Plan;
  const [first] = plan.fabrics;
  const none = { cut: first!.pieces.map(() => 0), bought: [], kept: [], took: [] };
  first!.done = { ...none, ...done };
  return auditPlan(said.length === 0 ? plan : { ...plan, said });
}

const cloth = { name: "rest", across: 100, along: 100, trim: 0, from: "to-hand", strip: false } as const;

test("with nothing cut the plan stands", () => {
  expect(auditPlan(good)).toEqual([]);
  expect(worked({})).toEqual([]);
});

test.each([
  ["a piece cut that is still laid out", { cut: [1, 0, 0, 0, 0] }, "wanted"],
  ["more cut than there are", { cut: [9999, 0, 0, 0, 0] }, "lie cut"],
  ["a bag too few", { cut: [0] }, "bags are told of"],
  ["cloth put by and cut", { kept: [{ ...cloth, available: 1, used: 1, price: null }] }, "put by and cut"],
  [
    "cloth of no size",
    { kept: [{ ...cloth, across: 0, available: 1, used: 0, price: null }] },
    "are no cloth",
  ],
])("%s", (_, done, fault) => {
  expect(worked(done).join("\n")).toContain(fault);
});

test("work that nobody has told of, or of a fabric that is not here", () => {
  expect(worked({}, []).join("\n")).toContain("nobody has told of");
  expect(worked({}, [{ fabric: "Sand", facts: [] }]).join("\n")).toContain("which is not here");
});
