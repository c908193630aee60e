import { expect, test } from "vitest";
import { drawFabric } from "../../src/draw/index.ts";
import { planQuilt, USUAL_OPTIONS } from "../../src/pipeline.ts";
import { english } from "../../src/words/index.ts";
import { solveHere } from "../support/cut-list-spec.ts";

test("a narrow lengthwise strip has its number, also one of two figures", async () => {
  const text = `name: Ferry flags
units: cm
fabrics:
  - name: Gulls
    width: 137 cm
    selvage: 1.5 cm
    print: one-way along
    pieces:
      - flag 7.5 x 12.5, 180
      - corner 6.5 square, 96
      - band 4 x WOF, 5, join straight
      - post 5.5 x 61, 4, cut lengthwise
`;
  const { value: plan } = await planQuilt(text, "flags.yaml", USUAL_OPTIONS, solveHere);
  if (plan === null) throw new Error("no plan");
  const numbers = (plan.fabrics[0]?.lays ?? []).flatMap(({ root }) => {
    const bands = (part: typeof root): number[] => [
      ...(part.role === "band" ? [part.number] : []),
      ...part.parts.flatMap(bands),
    ];
    return bands(root);
  });
  expect(Math.max(...numbers)).toBeGreaterThan(9);
  const svg = drawFabric(plan, 0, english);
  expect(numbers.filter((number) => !svg.includes(`>${number}<`))).toEqual([]);
});
