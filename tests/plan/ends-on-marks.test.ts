import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { planQuilt, USUAL_OPTIONS } from "../../src/pipeline.ts";
import { solveHere } from "../support/cut-list-spec.ts";

test("an end of a strip that is joined is cut on the ruler's marks, also behind a slanting cut", async () => {
  const stars = readFileSync(new URL("../../fixtures/trials/metric-stars.yaml", import.meta.url), "utf8");
  const text = stars.replace('colour: "#a8502f"', 'colour: "#a8502f", print: one-way');
  const { value } = await planQuilt(text, "stars.yaml", { ...USUAL_OPTIONS, effort: 100 }, solveHere);
  const joined = (value?.fabrics ?? []).flatMap(({ pieces }) =>
    pieces.filter(({ joined, fullWidth }) => joined !== undefined && !fullWidth),
  );
  expect(joined.length).toBeGreaterThan(0);
  // 0.5 cm are 3,200 ticks.
  expect(joined.map(({ across }) => across % 3200)).toEqual(joined.map(() => 0));
});
