import { mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { expect, test } from "vitest";
import { planQuilt, USUAL_OPTIONS } from "../src/pipeline.ts";
import { planJson } from "../src/print/json/index.ts";
import { english } from "../src/words/index.ts";
import { solveHere } from "./support/cut-list-spec.ts";

const FOLDERS = new URL("../fixtures/plans/", import.meta.url);
const OUT = new URL("../out/plans/", import.meta.url);

/**
 * Every folder of fixtures/plans: the plan made from its input is the plan expected, to the byte. When a
 * change is meant, look at what lies in out/plans and promote it with `node bin/promote.mjs NAME`.
 */
test.each(readdirSync(FOLDERS))("%s", async (name) => {
  const input = readFileSync(new URL(`${name}/input.yaml`, FOLDERS), "utf8");
  const { value, diagnostics } = await planQuilt(input, "input.yaml", USUAL_OPTIONS, solveHere);
  expect(diagnostics.filter(({ severity }) => severity === "error")).toEqual([]);
  if (value === null) throw new Error("no plan");
  const actual = planJson(value, english);
  mkdirSync(new URL(`${name}/`, OUT), { recursive: true });
  writeFileSync(new URL(`${name}/plan.json`, OUT), actual);
  const expected = readFileSync(new URL(`${name}/expected/plan.json`, FOLDERS), "utf8");
  expect(actual).toBe(expected.replaceAll("\r\n", "\n"));
});

test("the same input gives the same bytes", async () => {
  const input = readFileSync(new URL("picnic-flags/input.yaml", FOLDERS), "utf8");
  const plans = [];
  for (let run = 0; run < 2; run++) {
    const { value } = await planQuilt(input, "input.yaml", USUAL_OPTIONS, solveHere);
    plans.push(JSON.stringify(value));
  }
  expect(plans[0]).toBe(plans[1]);
});
