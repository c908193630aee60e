import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { quickSolve, withoutEasing } from "../../src/choices/quick-solve.ts";
import { planSpec, USUAL_OPTIONS } from "../../src/pipeline.ts";
import type { Plan } from "../../src/plan/types.ts";
import { buyJson, planJson } from "../../src/print/json/index.ts";
import { readSpecFile } from "../../src/spec/index.ts";
import { english } from "../../src/words/index.ts";
import { crossgrainHere, emptyFolder, ROOT, SMALL } from "../cli/run.ts";
import { solveHere } from "../support/cut-list-spec.ts";
import { faults, type Node, SCHEMA_FILES, type Schema, schemaOf } from "./schemas.ts";

const files = ["cutlists", "quilts", "trials"].flatMap((folder) =>
  readdirSync(`${ROOT}/fixtures/${folder}`)
    .filter((name) => name.endsWith(".yaml"))
    .map((name) => `${folder}/${name}`),
);

/** Those that take a second or more are looked at where all are asked for, as .ci/run does. */
const SLOW = /harbour-lights|many-squares|sashed-nine|allotments|lighthouse|vintage|meadow/;
const looked = files.filter((file) => process.env.ANSWERS === "all" || !SLOW.test(file));
let planned = 0;

/** As little work as can be: what is printed has the same form however good the plan. */
const QUICK = { ...USUAL_OPTIONS, effort: 5 };
const quickly = withoutEasing(quickSolve(solveHere));

/** The plan of a fixture as a quick search makes it; null where the file has errors or cannot be cut. */
async function planOf(file: string): Promise<Plan | null> {
  const read = readSpecFile(readFileSync(`${ROOT}/fixtures/${file}`, "utf8"), file);
  if (read.value === null) return null;
  const { value, diagnostics } = await planSpec(read.value, QUICK, quickly);
  return value === null ? null : { ...value, diagnostics };
}

describe("the plan and the shopping list of every fixture are as their schemas say", () => {
  test.each(looked)("%s", async (file) => {
    const plan = await planOf(file);
    if (plan === null) return;
    planned += 1;
    const printed = JSON.parse(planJson(plan, english)) as Plan & { lengths: Record<string, string> };
    expect(faults("plan.schema.json", printed)).toEqual([]);
    expect(faults("buy.schema.json", JSON.parse(buyJson(plan, english)))).toEqual([]);
    for (const { pieces } of printed.fabrics)
      for (const { across, along } of pieces) {
        expect(printed.lengths[across]).toMatch(/\d/);
        expect(printed.lengths[along]).toMatch(/\d/);
      }
  });

  test("most of them have a plan", () => {
    expect(planned).toBeGreaterThan(0.9 * looked.length);
  });
});

describe("every other answer is as its schema says", () => {
  const quilt = `${ROOT}/fixtures/quilts/geese-and-bars.yaml`;
  const drawer = "fabric,width,length,how many,note\nNight sea,21 in,18 in,3,\n";

  test.each([
    ["buy.schema.json", ["buy", `${ROOT}/fixtures/cutlists/tide-pool.yaml`]],
    ["buy-sizes.schema.json", ["buy", quilt, "--sizes", "2x2, 40 x 50 in"]],
    ["units.schema.json", ["sizes"]],
    ["sizes.schema.json", ["sizes", "flying geese", "4 x 2"]],
    ["sizes.schema.json", ["sizes", "half-square triangle", "10", "--unit", "cm", "--seam", "6 mm"]],
    ["plan.schema.json", ["pieces", "2 1/2 x 4 1/2:24", "4 1/2:20"]],
    ["compare.schema.json", ["compare", quilt]],
    ["savings.schema.json", ["savings", quilt]],
    ["arrange.schema.json", ["arrange", quilt, "--only", "upside-down,centre"]],
    ["diagnostics.schema.json", ["check", quilt]],
    ["diagnostics.schema.json", ["check", `${ROOT}/fixtures/bad/KEY-UNKNOWN-misspelt/input.yaml`]],
    ["diagnostics.schema.json", ["buy", `${ROOT}/fixtures/bad/KEY-UNKNOWN-misspelt/input.yaml`]],
    ["diagnostics.schema.json", ["sizes", "flying gese", "4 x 2"]],
  ] as const)("%s: %j", async (schema, words) => {
    const { stdout } = await crossgrainHere([...words, "--json"], emptyFolder());
    expect(faults(schema, JSON.parse(stdout))).toEqual([]);
  });

  test("the drawer: show, add, take, suits", async () => {
    const { writeFileSync } = await import("node:fs");
    const folder = emptyFolder();
    writeFileSync(`${folder}/stash.csv`, drawer);
    writeFileSync(`${folder}/tide.yaml`, SMALL);
    expect(
      (await crossgrainHere(["plan", "tide.yaml", "--stash", "stash.csv", "--out", "made"], folder)).code,
    ).toBe(0);
    for (const words of [
      ["show"],
      ["add", "Chalk", "fat quarter"],
      ["suits", "tide.yaml"],
      ["take", "made/plan.json"],
    ]) {
      const { stdout, code } = await crossgrainHere(["stash", ...words, "--json"], folder);
      expect(code).toBe(0);
      const answer = JSON.parse(stdout) as { action: string; lengths: Record<string, string> };
      expect(answer.action).toBe(words[0]);
      expect(Object.keys(answer.lengths).length).toBeGreaterThan(0);
      expect(faults("stash.schema.json", answer)).toEqual([]);
    }
  });

  test("an answer that is not so is found out", () => {
    const answer = { format: "crossgrain diagnostics", version: 1, ticksPerMillimetre: 640, diagnostics: [] };
    expect(faults("diagnostics.schema.json", answer)).toEqual([]);
    for (const wrong of [
      { ...answer, version: 2 },
      { ...answer, more: 1 },
      { ...answer, format: "plan" },
    ])
      expect(faults("diagnostics.schema.json", wrong)).not.toEqual([]);
  });
});

/** Keys of a schema that hold ticks, and those that hold other numbers, each with the types they stand in. */
function numbersOf(schema: Schema): { ticks: Map<string, Set<string>>; others: Map<string, Set<string>> } {
  const found = { ticks: new Map<string, Set<string>>(), others: new Map<string, Set<string>>() };
  const leaves = (node: Node): Node[] => [
    node,
    ...(node.anyOf ?? []).flatMap(leaves),
    ...(node.items ? leaves(node.items) : []),
  ];
  const walk = (node: Node, owner: string): void => {
    for (const [key, inner] of Object.entries(node.properties ?? {})) {
      for (const leaf of leaves(inner)) {
        const into =
          leaf.$ref === "#/$defs/Ticks"
            ? found.ticks
            : [leaf.type].flat().includes("number")
              ? found.others
              : null;
        if (into !== null) into.set(key, (into.get(key) ?? new Set()).add(owner));
      }
    }
    for (const inner of Object.values(node.properties ?? {}))
      for (const leaf of leaves(inner)) walk(leaf, owner);
    for (const inner of node.anyOf ?? []) walk(inner, owner);
  };
  walk(schema as unknown as Node, "");
  for (const [name, node] of Object.entries(schema.$defs ?? {})) walk(node, name);
  return found;
}

describe("lengths", () => {
  test.each(SCHEMA_FILES.filter((name) => name !== "schema.json" && name !== "plan.schema.json"))(
    "%s: every length of the answer has its text",
    async (name) => {
      const { lengthKeys } = await import("../../src/print/json/length-keys.ts");
      const { ticks } = numbersOf(schemaOf(name));
      const plain = new Set([...lengthKeys].map((key) => key.split(".").at(-1)));
      expect([...ticks.keys()].filter((key) => !plain.has(key))).toEqual([]);
    },
  );

  test("no count is taken for a length", async () => {
    const { lengthKeys } = await import("../../src/print/json/length-keys.ts");
    for (const name of SCHEMA_FILES.filter((each) => each !== "schema.json" && each !== "plan.schema.json")) {
      const { others } = numbersOf(schemaOf(name));
      const taken = [...others].filter(([key]) => lengthKeys.has(key));
      // Whoever gathers lengths does not look into `blocks`, which are counted across and down, nor into `minutes`.
      const wrong = taken.flatMap(([key, owners]) => [...owners].map((owner) => `${key} of ${owner}`));
      expect(wrong.filter((each) => !/ of (InBlocks|StepMinutes)$/.test(each))).toEqual([]);
    }
  });
});

test("schemas have names of their own and nothing is said twice", () => {
  const ids = SCHEMA_FILES.map((name) => schemaOf(name).$id);
  expect(new Set(ids).size).toBe(ids.length);
  for (const id of ids) expect(id).toMatch(/^urn:crossgrain:[a-z-]+:1$/);
});
