import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { makingSteps } from "../../src/content/sewing/making.ts";
import { planQuilt, USUAL_OPTIONS } from "../../src/pipeline.ts";
import { english } from "../../src/words/index.ts";
import { solveHere } from "../support/cut-list-spec.ts";

const text = readFileSync(
  new URL("../../fixtures/trials/alike-but-for-fabric.yaml", import.meta.url),
  "utf8",
);

// derived by hand: each of eight geese takes a quarter of a 5 1/4 in square of herons, and only one quarter of each has
// its heads as the goose wants them, two ways for every square: 4 squares, 16 quarters, 8 of them used.
test("the paper of one of six pupils speaks of one kit, not of six", async () => {
  const { value } = await planQuilt(text, "quilt.yaml", { ...USUAL_OPTIONS, kits: 6, effort: 3 }, solveHere);
  if (value === null) throw new Error("no plan");
  const paper = makingSteps(value, english);
  const letter = value.fabrics[0]?.pieces[0]?.letter;
  expect(value.fabrics[0]?.name).toBe("herons");
  expect(value.fabrics[0]?.pieces[0]?.count).toBe(24);
  expect(paper).toMatch(
    new RegExp(`In the kit, count it first.*\\n[^]*\\n    \\[${letter}\\] 4 of 5 1/4 x 5 1/4 in\\n`),
  );
  expect(paper).toContain(`Over when all units are sewn: 8 quarters of ${letter} (herons).`);
});

test("a quilt planned alone has no kit", async () => {
  const { value } = await planQuilt(text, "quilt.yaml", { ...USUAL_OPTIONS, effort: 3 }, solveHere);
  expect(value === null ? "" : makingSteps(value, english)).not.toContain("In the kit");
});
