import { readFileSync } from "node:fs";
import { beforeAll, describe, expect, test } from "vitest";
import { auditPlan } from "../../src/audit/index.ts";
import { cuttingSteps } from "../../src/content/index.ts";
import { drawFabric } from "../../src/draw/index.ts";
import { planQuilt, USUAL_OPTIONS } from "../../src/pipeline.ts";
import { everyPart } from "../../src/plan/lays/parts.ts";
import type { FabricPlan, Part, Plan } from "../../src/plan/types.ts";
import { cutsCsv } from "../../src/print/csv/index.ts";
import { english } from "../../src/words/index.ts";
import { IN, solveHere } from "../support/cut-list-spec.ts";

const FILE = new URL("../../fixtures/trials/shapes-in-strips.yaml", import.meta.url);

async function planOf(text: string): Promise<Plan> {
  const { value, diagnostics } = await planQuilt(text, "trial.yaml", USUAL_OPTIONS, solveHere);
  if (value === null) throw new Error(`no plan: ${JSON.stringify(diagnostics)}`);
  return value;
}

function runsIn({ lays }: FabricPlan): Part[] {
  return lays.flatMap(({ root }) => [...everyPart(root)]).filter(({ shapes }) => shapes !== undefined);
}

const up = (size: number): number => Math.ceil(size * 8 - 1e-9) / 8;

/** A file of one fabric, 42 in usable. */
const cloth = (pieces: readonly string[], more = ""): string =>
  `name: Trial\nunits: in\nfabrics:\n  - name: Cloth\n    width: 43 in\n    selvage: 1/2 in\n${more}    pieces:\n${pieces
    .map((piece) => `      - ${piece}\n`)
    .join("")}`;

let plan: Plan;
beforeAll(async () => {
  plan = await planOf(readFileSync(FILE, "utf8"));
});

/*
 * Derived geometry, with a quarter-inch seam s, 42 in usable and a ruler marked in eighths. A run of k takes
 * first + (k - 1) x advance; a strip is as high as its shape, rounded up to the marks.
 *
 *     60-degree triangle, side 4   height 4 sin 60 + 3 s = 4.214, so 4 1/4; first 4 1/4 x 2 / tan 60 = 4.907; advance half of it
 *     45-degree diamond, side 3    height 3 sin 45 + 2 s = 2.621, so 2 5/8; advance 2 5/8 / sin 45 = 3.712; first + 2 5/8
 *     60-degree diamond, side 3    height 3 sin 60 + 2 s = 3.098, so 3 1/8; advance 3 1/8 / sin 60 = 3.608; first + 3 1/8 / tan 60
 *     half hexagon, side 3         height as before; long side 6 + 4 s / tan 30 x 1/2 = 6.866, so 6 7/8; advance the mean of
 *                                  the long side and 6 7/8 - 2 x 3 1/8 / tan 60
 */
const SIN60 = Math.sqrt(3) / 2;
const TAN60 = Math.sqrt(3);
const CASES = [
  { fabric: "Sails", height: up(4 * SIN60 + 0.75), count: 60, inStrip: 16, strips: 4, rectangles: 34 },
  {
    fabric: "Stars",
    height: up(3 * Math.SQRT1_2 + 0.5),
    count: 128,
    inStrip: 10,
    strips: 13,
    rectangles: 51,
  },
  { fabric: "Blocks", height: up(3 * SIN60 + 0.5), count: 150, inStrip: 11, strips: 14, rectangles: 66 },
  { fabric: "Flowers", height: up(3 * SIN60 + 0.5), count: 100, inStrip: 7, strips: 15, rectangles: 53 },
];

describe("equal shapes stand alternately", () => {
  test.each(CASES)(
    "$fabric: $strips strips, proved least",
    ({ fabric, height, count, inStrip, strips, rectangles }) => {
      const cut = plan.fabrics.find(({ name }) => name === fabric)!;
      expect(Math.ceil(count / inStrip)).toBe(strips);
      expect(cut.bound).toMatchObject({ used: strips * height * IN, lengthProven: true });
      // Cut from rectangles of their own, as a maker would without the run.
      expect(Math.round(cut.bound.ruleOfThumb / IN)).toBe(rectangles);
      const runs = runsIn(cut);
      expect(Math.max(...runs.map(({ shapes }) => shapes!.length))).toBe(inStrip);
      expect(runs.reduce((sum, { shapes }) => sum + shapes!.length, 0)).toBe(count);
    },
  );

  test("as many as a strip holds: one more would be too long", () => {
    const first = (4.25 * 2) / TAN60;
    expect(first + 15 * (first / 2)).toBeLessThanOrEqual(42);
    expect(first + 16 * (first / 2)).toBeGreaterThan(42);
    const diamond = 2.625 * Math.SQRT2;
    expect(2.625 + 10 * diamond).toBeLessThanOrEqual(42);
    expect(2.625 + 11 * diamond).toBeGreaterThan(42);
    const mean = (6.875 + 6.875 - (2 * 3.125) / TAN60) / 2;
    expect(6.875 + 6 * mean).toBeLessThanOrEqual(42);
    expect(6.875 + 7 * mean).toBeGreaterThan(42);
  });

  test("the audit agrees, and the steps tell strip, angle and advance", () => {
    expect(auditPlan(plan)).toEqual([]);
    const steps = cuttingSteps(plan, true, english).replace(/\s+/g, " ");
    expect(steps).toContain(
      "Cut 4 strips 4 1/4 in x WOF; subcut 60 triangles [A] (16 from each strip, 12 from the last)",
    );
    expect(steps).toContain("lay the 60-degree line of the ruler on its lower edge");
    expect(steps).toContain("lay the 45-degree line of the ruler on its lower edge");
    expect(steps).toContain("cut at every 2 5/8 in, measured square to the cut before");
    expect(steps).toContain("cut at every 6 7/8 in, measured along the edge where the piece is longer");
    expect(cutsCsv(plan, english)).toContain("aslant from strips 4 1/4 at 60 degrees, from point to point");
  });

  test("the drawing holds every outline, and none of the rectangles", () => {
    const svg = drawFabric(plan, 0, english, { view: "full" });
    const pieces = /<g [^>]*-pieces"[^>]*>(.*?)<\/g>/s.exec(svg)?.[1] ?? "";
    expect(pieces.match(/<path/g)).toHaveLength(60);
    expect(pieces).not.toContain("<rect");
  });
});

test("right triangles stand two to a rectangle", async () => {
  // Legs 3 and 6: the base is 3 + s (1 + root(1 + 1/4) + 1/2) = 3.655, so 3 3/4; the height twice as much, 7.309, so 7 3/8.
  // 11 rectangles of 3 3/4 in take 41 1/4 in of a strip: 22 triangles.
  const { fabrics } = await planOf(cloth(["{ shape: right triangle, side: 3, height: 6, count: 44 }"]));
  expect(fabrics[0]!.bound).toMatchObject({ used: 2 * 7.375 * IN, lengthProven: true });
  const [run] = runsIn(fabrics[0]!);
  expect(run!.shapes!.map(({ x }) => x / IN).slice(0, 4)).toEqual([0, 0, 3.75, 3.75]);
});

test("a print with an up forbids the half that is turned", async () => {
  const file = cloth(["{ shape: triangle, side: 4, count: 60 }"], "    print: one-way along\n");
  const { fabrics } = await planOf(file);
  // 42 in hold eight of 4.907 in: 8 strips of 4 1/4 in.
  expect(fabrics[0]!.bound).toMatchObject({ used: 34 * IN, lengthProven: true });
  expect(runsIn(fabrics[0]!).flatMap(({ shapes }) => shapes!.filter(({ halfTurned }) => halfTurned))).toEqual(
    [],
  );
});

test("a point cut off takes a lower strip", async () => {
  // 4 sin 60 + 2 s = 3.964, so 4 in instead of 4 1/4; the base 4 + 4 s / tan 30 x 1/2 = 4.866, so 4 7/8.
  const { fabrics } = await planOf(cloth(["{ shape: triangle, side: 4, tips: blunt, count: 30 }"]));
  const top = 4.875 - 8 / TAN60;
  const advance = (4.875 + top) / 2;
  const inStrip = 1 + Math.floor((42 - 4.875) / advance);
  expect(fabrics[0]!.bound.used).toBe(Math.ceil(30 / inStrip) * 4 * IN);
});

test("shapes share strips with rectangles, and lie in cloth of a fixed size either way", async () => {
  const mixed = await planOf(
    cloth([
      "{ label: lefts, shape: right triangle, side: 3, height: 6, count: 5, lean: left }",
      "{ label: rights, shape: right triangle, side: 3, height: 6, count: 7 }",
      "{ label: slabs, shape: parallelogram, side: 5, height: 2, angle: 45, count: 9, lean: left }",
      "{ label: odd, shape: trapezoid, side: 6, height: 2, angle: 50, count: 7 }",
      "bars 2 x 7 3/8, 5",
    ]),
  );
  expect(auditPlan(mixed)).toEqual([]);
  expect(mixed.fabrics[0]!.pieces.map(({ count }) => count).reduce((a, b) => a + b)).toBe(33);
  const quarters = await planOf(
    cloth(
      ["{ label: slabs, shape: parallelogram, side: 5, height: 2, angle: 45, count: 25, lean: left }"],
      "    yardage: no\n    have: ['fat quarter, 2']\n",
    ),
  );
  expect(auditPlan(quarters)).toEqual([]);
  expect(runsIn(quarters.fabrics[0]!).reduce((sum, { shapes }) => sum + shapes!.length, 0)).toBe(25);
});

/** Each spoils one thing in a copy of a sound plan. */
const SPOILT: Readonly<Record<string, (run: Part, fabric: FabricPlan) => void>> = {
  "two shapes overlap by a tick": (run) => {
    run.shapes![3]!.x -= 8;
  },
  "a shape is turned that must not be": (run) => {
    run.shapes![2]!.halfTurned = !run.shapes![2]!.halfTurned;
  },
  "a shape is left out": (run) => {
    run.shapes!.splice(4, 1);
  },
  "the outline is larger than the strip": (_, { pieces }) => {
    pieces[0]!.shape!.cut = pieces[0]!.shape!.cut.map(({ x, y }) => ({ x: x * 2, y: y * 2 }));
  },
  "the allowance is too small": (_, { pieces }) => {
    pieces[0]!.shape!.seam = pieces[0]!.shape!.cut;
  },
  "the finished shape is another": (_, { pieces }) => {
    pieces[0]!.nest!.spec!.side += 64;
  },
  "the ruler is set to another angle": (_, { pieces }) => {
    pieces[0]!.nest!.setting.angle = 45;
  },
};

test.each(Object.keys(SPOILT))("the audit notices when %s", (name) => {
  const spoilt = structuredClone(plan);
  const [fabric] = spoilt.fabrics as [FabricPlan];
  SPOILT[name]!(runsIn(fabric)[0]!, fabric);
  expect(auditPlan(spoilt).length).toBeGreaterThan(0);
});

test("with stacked subcuts nothing is called proved that was proved without them", async () => {
  const file = cloth(["{ shape: triangle, side: 4, count: 60 }"]).replace(
    "units: in",
    "units: in\nstyle: strips-3",
  );
  const { fabrics } = await planOf(file);
  // 60 triangles of 4 1/4 in by 4.907 in are 625.7 square inches: 14.9 in of cloth 42 in wide.
  expect(fabrics[0]!.bound).toMatchObject({ used: 17 * IN, lengthProven: false, style: "strips-3" });
  expect(fabrics[0]!.bound.least / IN).toBeCloseTo((60 * 4.25 * 4.25) / TAN60 / 42, 3);
});

test("a run that is trimmed is cut off on the ruler's marks", async () => {
  const file = cloth([
    "{ shape: triangle, side: 3, count: 5 }",
    "{ shape: triangle, side: 2, count: 5 }",
    "bars 2 x 9, 9",
  ]);
  const made = await planOf(file);
  for (const { shapes, across } of runsIn(made.fabrics[0]!))
    if (shapes!.length < 5) expect((across * 8) % IN).toBe(0);
  expect(cuttingSteps(made, true, english)).not.toMatch(/\d\.\d/);
});
