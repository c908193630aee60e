import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { bestCombination, type Combining, type Worth } from "../../src/choices/methods/best-combination.ts";
import { compareFigures, compareMethods } from "../../src/choices/methods/compare-methods.ts";
import type { Comparison } from "../../src/choices/methods/comparison.ts";
import { handworkOf } from "../../src/choices/methods/handwork.ts";
import { makingFigures } from "../../src/choices/methods/making-figures.ts";
import { withMethods } from "../../src/choices/methods/with-methods.ts";
import { comparisonTable } from "../../src/content/choosing/compare.ts";
import { listQuiltCuts } from "../../src/cutlist/index.ts";
import { comparisonScene } from "../../src/draw/quilt/draw-comparison.ts";
import { planQuilt, planSpec } from "../../src/pipeline.ts";
import { findUnitKind, layOutQuilt } from "../../src/quilt/index.ts";
import { plainDesign } from "../../src/quilt/units/design.ts";
import { type QuiltSpec, readSpecFile, type StepMinutes, USUAL_MINUTES } from "../../src/spec/index.ts";
import { english } from "../../src/words/index.ts";
import { faultsOf } from "../support/sound-scene.ts";
import { LEFT_OUT } from "../support/sweep.ts";
import { OPTIONS, quiltOf, SAMPLER, solve, textOf } from "./quilts.ts";

const IN = 16256;
/** Then the purchase alone decides, and no time is searched for. */
const NO_TIME: StepMinutes = { strip: 0, subcut: 0, mark: 0, seam: 0, metre: 0, press: 0, trim: 0 };

const known = new Map<string, Promise<Comparison>>();

/** Compared once, however many tests look at it. */
function compared(text: string, minutes = USUAL_MINUTES): Promise<Comparison> {
  const key = JSON.stringify([text, minutes]);
  const found = known.get(key) ?? compareOnce(quiltOf(text), minutes);
  known.set(key, found);
  return found;
}

async function compareOnce(spec: QuiltSpec, minutes: StepMinutes): Promise<Comparison> {
  const { value } = await compareMethods(spec, OPTIONS, minutes, solve);
  if (value === null) throw new Error("nothing compared");
  return value;
}

async function plannedAlone(
  spec: QuiltSpec,
  methods: Readonly<Record<string, string>>,
  minutes: StepMinutes,
) {
  const asked = withMethods(spec, methods);
  const { value: plan } = await planSpec(asked, OPTIONS, solve);
  const laid = layOutQuilt(asked).value;
  const listed = laid === null ? null : listQuiltCuts(asked, laid.work).value;
  if (plan === null || listed === null) throw new Error("not planned");
  return makingFigures(plan, listed.made, minutes);
}

const GEESE = textOf("geese-and-bars");
const QUILTS: [name: string, text: string, minutes: StepMinutes][] = [
  ["a nine-patch quilt", textOf("sashed-nine-patches"), USUAL_MINUTES],
  ["a flying-geese quilt", GEESE, USUAL_MINUTES],
  ["a sampler of eight units", SAMPLER, NO_TIME],
];

describe.each(QUILTS)("%s compared", (_, text, minutes) => {
  test.skipIf(LEFT_OUT)(
    "each row is what planning that choice alone gives, and the best is as good as any",
    async () => {
      const spec = quiltOf(text);
      const comparison = await compared(text, minutes);
      expect(comparison.rows.length).toBeGreaterThan(1);
      for (const { unit, method, figures } of comparison.rows) {
        if (figures === null) continue;
        expect(await plannedAlone(spec, { [unit]: method }, minutes)).toEqual(figures);
        expect(compareFigures(comparison.best.figures, figures)).toBeLessThanOrEqual(0);
      }
      expect(await plannedAlone(spec, comparison.best.methods, minutes)).toEqual(comparison.best.figures);
      expect(comparison.best.proven).toBe(true);
      // Plain data, and it can be drawn and told.
      expect(JSON.parse(JSON.stringify(comparison))).toEqual(comparison);
      expect(faultsOf(comparisonScene(comparison, true, english))).toEqual([]);
      expect(comparisonTable(comparison, spec.ruler, english)).toContain("Proved: none of the");
    },
    60_000,
  );
});

test.skipIf(LEFT_OUT)(
  "the sampler has every kind of unit that can be made in several ways, in its own ways",
  async () => {
    // A set for one unit would take more cloth for its squared end than single pieces do.
    const { units, rows } = await compared(`${SAMPLER}\nstraighten-sets: 0\n`, NO_TIME);
    expect(units.map(({ unit, count, filed }) => [unit, count, filed])).toEqual([
      ["half-square triangle", 8, ["two at a time"]],
      ["quarter-square triangle", 1, ["two at a time"]],
      // Four at a time would leave gulls that fly the wrong way, so they are not made so.
      ["flying geese", 4, ["stitch-and-flip"]],
      ["square-in-a-square", 1, ["corner triangles"]],
      ["snowball", 1, ["stitch-and-flip"]],
      ["four-patch", 4, ["strip sets"]],
      ["nine-patch", 2, ["strip sets"]],
      // One rail unit is turned: its gulls are cut singly, those of the other in a strip.
      ["rails", 2, ["strip sets", "single pieces"]],
    ]);
    const row = (unit: string, method: string) =>
      rows.find((each) => each.unit === unit && each.method === method);
    expect(row("rails", "strip sets")).toMatchObject({
      figures: null,
      why: { because: "print", fault: { facts: { fabrics: ["gulls"] } } },
    });
    expect(row("flying geese", "four at a time")?.figures?.direction).toBe("spares");
    expect(row("flying geese", "stitch-and-flip")).toMatchObject({
      filed: true,
      figures: { direction: "kept" },
    });
  },
  60_000,
);

/** Two kinds of unit that share one fabric. */
const PAIR = `name: Pair
fabrics: [{ name: a }, { name: b }, { name: c }]
blocks:
  H: { size: 8, grid: [h h, h h], cells: { h: { half-square triangle: [a, b] } } }
  N: { size: 8, grid: [n n, n n], cells: { n: { four-patch: [b, c] } } }
setting: { rows: [H N H N H, N H N H N] }
`;

test("the best is the best of all combinations planned one by one", async () => {
  const spec = quiltOf(PAIR);
  const { rows, best } = await compared(PAIR);
  const of = (unit: string) =>
    rows.flatMap((row) => (row.unit === unit && row.figures !== null ? [row.method] : []));
  const all = of("half-square triangle").flatMap((h) =>
    of("four-patch").map((n) => ({ "half-square triangle": h, "four-patch": n })),
  );
  expect(best.combinations).toBe(all.length);
  const figures = [];
  for (const methods of all) figures.push(await plannedAlone(spec, methods, USUAL_MINUTES));
  const [least] = figures.sort(compareFigures);
  expect(best.figures).toEqual(least);
  expect(best.proven).toBe(true);
  expect(best.least).toBe(least?.bought);
}, 60_000);

test("a choice is the same as the maker's own word in the file", async () => {
  const { rows } = await compared(GEESE);
  const written = GEESE.replace("stitch-and-flip", "four at a time");
  expect(written).not.toBe(GEESE);
  const { value } = await planQuilt(written, "quilt.yaml", OPTIONS, solve);
  const row = rows.find(({ method }) => method === "four at a time");
  expect(row?.figures?.fabrics.map(({ buy }) => buy)).toEqual(
    value?.fabrics.map((one) => one.purchase?.text),
  );
}, 60_000);

test("strip sets: far fewer seams than single pieces, the same squares", async () => {
  const { rows } = await compared(textOf("sashed-nine-patches"));
  const of = (wanted: string) => rows.find(({ method }) => method === wanted)?.figures;
  // derived geometry: 80 nine-patches have 80 x 8 = 640 seams sewn one by one.
  expect(of("single pieces")?.seams).toBe(640);
  // From strips: 80 x 2 joins of segments, and two seams in each set. A set of 42 in gives 42 / 2 1/2 = 16 segments of
  // 2 1/2 in: 160 of one kind need 10 sets, 80 of the other 5. Every segment is a cut, and every set is straightened.
  expect(of("strip sets")?.seams).toBe(160 + 2 * 15);
  const cutting = (of("strip sets")?.subcuts ?? 0) - (80 * 3 + 15);
  // The nine-patches' squares are 720 of the pieces cut singly.
  expect((of("single pieces")?.subcuts ?? 0) - cutting).toBeGreaterThanOrEqual(
    720 - of("single pieces")!.strips,
  );
}, 60_000);

test("a cut list has nothing to compare", async () => {
  const cutList = readSpecFile("fabrics: [{ name: a, pieces: ['4 x 4 in, 2'] }]", "a.yaml").value!;
  const { diagnostics } = await compareMethods(cutList, OPTIONS, USUAL_MINUTES, solve);
  expect(diagnostics.map(({ code }) => code)).toEqual(["NOTHING-TO-COMPARE"]);
});

test("minutes of the file are those of the estimate; a yard is 0.9144 m", () => {
  const spec = quiltOf(`${PAIR}minutes: { seam: 0.5, yard: 0.9144 }\n`);
  expect(spec.minutes).toEqual({ ...USUAL_MINUTES, seam: 0.5, metre: 1 });
});

describe("what hands do for one set of units", () => {
  const quarter = { n: 4064n, d: 1n };
  const size = (inches: number) => ({ n: BigInt(inches * IN), d: 1n });
  const hand = (kind: string, method: string, across = 6, along = 6) => {
    const unit = findUnitKind(kind);
    const made = unit?.methods.find(({ name }) => name === method);
    const how = { seam: quarter, mark: 2032, rounding: "exact", oversize: size(0) } as const;
    const answer = made?.recipe(plainDesign(size(across), size(along)), how);
    if (answer === undefined || !answer.ok) throw new Error(`${kind}, ${method}`);
    const { marks, shaping, apart, seams, presses, biasEdges } = handworkOf(answer.recipe);
    return [marks, shaping, apart, seams, presses, biasEdges];
  };

  test.each([
    // Derived geometry: lines drawn, cuts to shape, cuts after sewing, seams, presses, bias edges handled.
    ["half-square triangle", "two at a time", [1, 0, 1, 2, 2, 0]],
    ["half-square triangle", "four at a time", [0, 0, 2, 4, 4, 16]],
    ["half-square triangle", "eight at a time", [2, 0, 4, 4, 8, 0]],
    // Two squares cut once: four triangles with one long side each.
    ["half-square triangle", "single triangles", [0, 2, 0, 2, 2, 4]],
    ["half-square triangle", "templates", [2, 2, 0, 1, 1, 2]],
    // Two squares cut twice: eight triangles with two short sides each.
    ["quarter-square triangle", "single triangles", [0, 4, 0, 6, 6, 16]],
    ["square in a square", "stitch-and-flip", [4, 0, 4, 4, 4, 0]],
    ["nine-patch", "single pieces", [0, 0, 0, 8, 8, 0]],
  ])("%s, %s", (kind, method, expected) => {
    expect(hand(kind, method)).toEqual(expected);
  });

  test.each([
    // One cut between the two seams of the large square, then one in each half.
    ["four at a time", [4, 0, 3, 6, 6, 0]],
    ["stitch-and-flip", [2, 0, 2, 2, 2, 0]],
    // One square cut twice and four cut once: 8 + 4 x 2 edges, 2 + 4 cuts.
    ["single triangles", [0, 6, 0, 8, 8, 16]],
  ])("flying geese, %s", (method, expected) => {
    expect(hand("flying geese", method, 6, 3)).toEqual(expected);
  });
});

describe("the best of all combinations", () => {
  /** Choices with two to four ways each, parts that depend on some of them, and what each part comes to. */
  const puzzles = fc.record({
    ways: fc.array(fc.array(fc.nat(9), { minLength: 2, maxLength: 4 }), { minLength: 1, maxLength: 4 }),
    masks: fc.array(fc.nat(15), { minLength: 1, maxLength: 4 }),
    seed: fc.nat(),
    most: fc.nat(40),
  });

  test("is that of trying all of them; cut short, the bound is still one", async () => {
    await fc.assert(
      fc.asyncProperty(puzzles, async ({ ways, masks, seed, most }) => {
        const sizes = ways.map(({ length }) => length);
        const parts = masks.map((mask) => [...sizes.keys()].filter((i) => (mask >> i) % 2 === 1));
        const random = (part: number, combination: readonly number[], salt: number) => {
          const key = (parts[part] ?? []).reduce(
            (sum, choice) => sum * 5 + (combination[choice] ?? 0),
            part + salt,
          );
          return (((key + seed) * 2654435761) % 2 ** 32) % 50;
        };
        const worthOf = (part: number, c: readonly number[]): Worth => [
          10 + random(part, c, 7),
          random(part, c, 99),
        ];
        const asked: Combining = {
          ways: ways.map((own) => own.map((minutes): Worth => [0, minutes])),
          parts,
          leastOf: (part, c) => [Math.floor(worthOf(part, c)[0] / 2), 0],
          floorOf: () => 0,
          lookInto: async (open, c) =>
            open.map((part) => ({ worth: worthOf(part, c), least: worthOf(part, c) })),
          most,
          told: () => {},
        };
        const all = sizes.reduce<number[][]>(
          (made, size) =>
            made.flatMap((before) => Array.from({ length: size }, (_, way) => [...before, way])),
          [[]],
        );
        const total = (c: readonly number[]): Worth => {
          const minutes = c.reduce((sum, way, i) => sum + (ways[i]?.[way] ?? 0), 0);
          const own = [...parts.keys()].map((part) => worthOf(part, c));
          return [own.reduce((sum, [p]) => sum + p, 0), own.reduce((sum, [, m]) => sum + m, minutes)];
        };
        const [least] = all.map(total).sort((a, b) => a[0] - b[0] || a[1] - b[1]);
        const found = await bestCombination(
          asked,
          sizes.map(() => 0),
        );
        const got = total(found.combination ?? []);
        expect(found.combinations).toBe(all.length);
        expect(found.least).toBeLessThanOrEqual(least?.[0] ?? 0);
        if (found.proven) expect(got[0]).toBe(least?.[0]);
        const whole = await bestCombination(
          { ...asked, most: 10_000 },
          sizes.map(() => 0),
        );
        expect([whole.proven, total(whole.combination ?? [])]).toEqual([true, least]);
      }),
      { numRuns: 60 },
    );
  });

  test("too many to list: one changed at a time, and no more is claimed than is known", async () => {
    const ways = Array.from({ length: 10 }, () => [0, 1, 2, 3].map((minutes): Worth => [0, minutes]));
    const parts = ways.map((_, i) => [i, (i + 1) % 10]);
    const cost = (part: number, c: readonly number[]) =>
      parts[part]!.reduce((sum, choice) => sum + Math.abs((c[choice] ?? 0) - 2), 0);
    const asked: Combining = {
      ways,
      parts,
      leastOf: (part, c) => [Math.max(0, cost(part, c) - 1), 0],
      floorOf: () => 0,
      lookInto: async (open, c) =>
        open.map((part) => ({ worth: [cost(part, c), 0] as Worth, least: [cost(part, c), 0] as Worth })),
      most: 10_000,
      told: () => {},
    };
    const found = await bestCombination(
      asked,
      ways.map(() => 0),
    );
    expect(found.combination).toEqual(ways.map(() => 2));
    expect(found).toMatchObject({ combinations: 4 ** 10, proven: true, least: 0 });
    const short = await bestCombination(
      { ...asked, most: 12 },
      ways.map(() => 0),
    );
    expect(short.proven).toBe(false);
    expect(short.least).toBe(0);
  });
});
