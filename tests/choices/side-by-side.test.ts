import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { arrangeBlocks } from "../../src/choices/arrange-blocks.ts";
import { compareFigures, compareMethods } from "../../src/choices/compare-methods.ts";
import type { Comparison } from "../../src/choices/comparison.ts";
import { inBlocks } from "../../src/choices/fit-size.ts";
import { makingFigures } from "../../src/choices/making-figures.ts";
import { readSizes } from "../../src/choices/read-sizes.ts";
import { severalSizes } from "../../src/choices/several-sizes.ts";
import { withMethods } from "../../src/choices/with-methods.ts";
import { solveHere } from "../../src/index.ts";
import { planQuilt, planSpec, USUAL_OPTIONS } from "../../src/pipeline.ts";
import { layOutQuilt } from "../../src/quilt/index.ts";
import { drawArrangements } from "../../src/render/svg/draw-arrangements.ts";
import { comparisonTable } from "../../src/render/text/compare.ts";
import { type QuiltSpec, readSpecFile, USUAL_MINUTES } from "../../src/spec/index.ts";

function textOf(name: string): string {
  return readFileSync(new URL(`../../fixtures/quilts/${name}.yaml`, import.meta.url), "utf8");
}

function quiltOf(text: string): QuiltSpec {
  const { value, diagnostics } = readSpecFile(text, "quilt.yaml");
  if (value === null || value.kind !== "quilt") throw new Error(JSON.stringify(diagnostics));
  return value;
}

const OPTIONS = { ...USUAL_OPTIONS, effort: 1000 };

async function compared(spec: QuiltSpec): Promise<Comparison> {
  const { value } = await compareMethods(spec, OPTIONS, USUAL_MINUTES, solveHere);
  if (value === null) throw new Error("nothing compared");
  return value;
}

describe.each(["sashed-nine-patches", "geese-and-bars", "stars-and-geese-sashes"])("%s compared", (name) => {
  test("each row is what planning that choice alone gives, and the best is as good as any", async () => {
    const spec = quiltOf(textOf(name));
    const comparison = await compared(spec);
    expect(comparison.rows.length).toBeGreaterThan(1);
    for (const { unit, method, figures } of comparison.rows) {
      if (figures === null) continue;
      const asked = withMethods(spec, { [unit]: method });
      const { value: plan } = await planSpec(asked, OPTIONS, solveHere);
      const laid = layOutQuilt(asked).value;
      if (plan === null || laid === null) throw new Error("not planned");
      expect(makingFigures(plan, laid.work, USUAL_MINUTES)).toEqual(figures);
      expect(compareFigures(comparison.best.figures, figures)).toBeLessThanOrEqual(0);
    }
    expect(comparison.best.proven).toBe(true);
    const asked = withMethods(spec, comparison.best.methods);
    const { value: plan } = await planSpec(asked, OPTIONS, solveHere);
    expect(plan?.fabrics.map(({ purchase }) => purchase?.text)).toEqual(
      comparison.best.figures.fabrics.map(({ buy }) => buy),
    );
    expect(comparisonTable(comparison, spec.ruler)).toContain(spec.name);
  }, 120_000);
});

test("a choice is the same as the maker's own word in the file", async () => {
  const text = textOf("geese-and-bars");
  const { rows } = await compared(quiltOf(text));
  const written = text.replace("stitch-and-flip", "four at a time");
  expect(written).not.toBe(text);
  const { value } = await planQuilt(written, "quilt.yaml", OPTIONS, solveHere);
  const row = rows.find(({ method }) => method === "four at a time");
  expect(row?.figures?.fabrics.map(({ buy }) => buy)).toEqual(
    value?.fabrics.map((one) => one.purchase?.text),
  );
}, 60_000);

test("strip sets: far fewer seams than single pieces, the same squares", async () => {
  // derived geometry: 80 nine-patches have 80 x 8 = 640 seams sewn one by one; from strips 80 x 2 joins of segments
  // and two seams in each strip set.
  const { rows } = await compared(quiltOf(textOf("sashed-nine-patches")));
  const seams = Object.fromEntries(rows.map(({ method, figures }) => [method, figures?.seams]));
  expect(seams["single pieces"]).toBe(640);
  expect(seams["strip sets"]).toBeGreaterThan(160);
  expect(seams["strip sets"]).toBeLessThan(250);
}, 60_000);

test("a cut list has nothing to compare or turn", async () => {
  const cutList = readSpecFile("fabrics: [{ name: a, pieces: ['4 x 4 in, 2'] }]", "a.yaml").value!;
  const compare = await compareMethods(cutList, OPTIONS, USUAL_MINUTES, solveHere);
  expect(compare.diagnostics.map(({ code }) => code)).toEqual(["NOTHING-TO-COMPARE"]);
  const turn = await arrangeBlocks(cutList, 1, OPTIONS, solveHere);
  expect(turn.diagnostics.map(({ code }) => code)).toEqual(["NOTHING-TO-TURN"]);
});

/** A block of two bars, the print of one with an up that stays upright in the quilt. */
const BARS = `name: Bars
fabrics:
  - { name: boats, print: one-way }
  - { name: plain }
blocks:
  bars:
    size: 4
    grid: |
      a b
    cells:
      a: { rectangle: boats }
      b: { rectangle: plain }
setting:
  rows: bars
  fill: 4 x 4
`;

describe("blocks turned", () => {
  test("a print with an up is cut the other way where its block is turned", async () => {
    const { value } = await arrangeBlocks(quiltOf(BARS), 3, OPTIONS, solveHere);
    if (value === null) throw new Error("not arranged");
    const sizes = Object.fromEntries(
      value.arrangements.map(({ name, planned }) => [
        name,
        planned?.fabrics.find(({ fabric }) => fabric === "boats")?.pieces.length,
      ]),
    );
    // One size when all lie one way, two when quarter-turns are mixed; the print reads one way throughout.
    expect(sizes).toMatchObject({
      "all upright": 1,
      "all turned right": 1,
      "about the centre": 2,
      "left and right by turns": 1,
    });
    expect(value.alike).toBe(false);
    const counts = value.arrangements.map(({ planned }) =>
      planned?.fabrics.map(({ pieces }) => pieces.reduce((sum, { count }) => sum + count, 0)),
    );
    expect(counts).toEqual(value.arrangements.map(() => [16, 16]));
  }, 60_000);

  test("chance is the same for the same seed", async () => {
    const turns = async (seed: number) => {
      const { value } = await arrangeBlocks(quiltOf(BARS), seed, OPTIONS, solveHere);
      return value?.arrangements.at(-1)?.planned?.top.blocks.map(({ turn }) => turn);
    };
    expect(await turns(5)).toEqual(await turns(5));
    expect(await turns(5)).not.toEqual(await turns(6));
  }, 60_000);

  test("the picture has a top for each", async () => {
    const spec = quiltOf(BARS);
    const { value } = await arrangeBlocks(spec, 1, OPTIONS, solveHere);
    const pictures = (value?.arrangements ?? []).flatMap(({ name, planned }) =>
      planned === null ? [] : [{ name, said: "", top: planned.top }],
    );
    const svg = drawArrangements("Bars", pictures, spec.fabrics);
    expect(svg.match(/id="arrange-top-\d+"/g)).toHaveLength(9);
    expect(svg).toContain("about the centre");
  }, 60_000);
});

describe("several sizes", () => {
  test("each is what planning that size alone gives", async () => {
    const spec = quiltOf(textOf("nine-stars"));
    const sizes = readSizes("2x2, 3x3,5×6", spec.ruler).value ?? [];
    expect(sizes).toHaveLength(3);
    const { value } = await severalSizes(spec, sizes, OPTIONS, solveHere);
    expect(value?.sizes.map(({ finished }) => finished)).toEqual([
      "22 in square",
      "30 in square",
      "46 x 54 in",
    ]);
    for (const size of value?.sizes ?? []) {
      const { value: plan } = await planSpec(inBlocks(spec, size.blocks), OPTIONS, solveHere);
      expect(size.fabrics.map(({ buy }) => buy)).toEqual(plan?.fabrics.map(({ purchase }) => purchase?.text));
    }
  }, 60_000);

  test("a size that is none is told", () => {
    expect(
      readSizes("2y,0x3,70x2", quiltOf(textOf("nine-stars")).ruler).diagnostics.map(({ code }) => code),
    ).toEqual(Array.from({ length: 3 }, () => "QUILT-SIZE-UNREADABLE"));
  });
});
