import { existsSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import { nestLength } from "../../../src/engine/nested/nest.ts";
import { halfTurned, hullOf, leastAdvance, nestRun } from "../../../src/quilt/units/outlines/nest.ts";
import { overlap } from "../../support/polygons.ts";

interface Point {
  x: number;
  y: number;
}

const SHARED = fileURLToPath(new URL("../../../../shared/corpus/nested.json", import.meta.url));
/** Ticks to an inch. */
const INCH = 16256;

/** The shapes of a run where they come to lie. */
function laid(outline: readonly Point[], count: number, halfTurns: boolean, less = 0): Point[][] {
  const run = nestRun(outline, halfTurns);
  const shape = hullOf(outline);
  return Array.from({ length: count }, (_, i) => {
    const turned = run.alternates && (i % 2 === 1) !== run.startsTurned;
    const start = nestLength(0, run.advances, i + 1) - less * i;
    return (turned ? halfTurned(shape) : shape).map(({ x, y }) => ({ x: x + start, y }));
  });
}

function anyOverlap(shapes: readonly (readonly Point[])[]): boolean {
  return shapes.some((a, i) => shapes.slice(i + 1).some((b) => overlap(a, b)));
}

/** A triangle of 60 degrees with its points left on; derived geometry: height side x root 3 / 2 + 3 seams. */
function triangle60(side: number, seam: number): Point[] {
  const base = Math.round(side + 2 * Math.sqrt(3) * seam);
  const high = Math.round((side * Math.sqrt(3)) / 2 + 3 * seam);
  return [
    { x: 0, y: high },
    { x: Math.round(base / 2), y: 0 },
    { x: base, y: high },
  ];
}

describe("runs of equal shapes", () => {
  test("triangles of 60 degrees stand at half a base, those with an up at a whole one", () => {
    const shape = triangle60(4 * INCH, INCH / 4);
    const run = nestRun(shape, true);
    expect(run.alternates).toBe(true);
    expect(run.first / INCH).toBeCloseTo(4.866, 3);
    expect(run.height / INCH).toBeCloseTo(4.2141, 3);
    expect(run.advances.length).toBe(1);
    expect(run.advances[0]! / INCH).toBeCloseTo(2.433, 3);
    // 16 from 42 in: 4.866 + 15 x 2.433 = 41.36.
    expect(nestLength(run.first, run.advances, 16)).toBeLessThan(42 * INCH);
    expect(nestLength(run.first, run.advances, 17)).toBeGreaterThan(42 * INCH);
    const upright = nestRun(shape, false);
    expect(upright).toMatchObject({ alternates: false, advances: [upright.first] });
  });

  test("two right-angled triangles lie in one rectangle, and the advances alternate", () => {
    const shape = [
      { x: 0, y: 0 },
      { x: 3000, y: 5000 },
      { x: 0, y: 5000 },
    ];
    const run = nestRun(shape, true);
    expect(run).toMatchObject({ first: 3000, height: 5000, advances: [0, 3000] });
    expect([1, 2, 3, 4].map((count) => nestLength(run.first, run.advances, count))).toEqual([
      3000, 3000, 6000, 6000,
    ]);
    const mirrored = nestRun(
      shape.map(({ x, y }) => ({ x: 3000 - x, y })),
      true,
    );
    expect(mirrored.advances).toEqual([0, 3000]);
    expect(mirrored.startsTurned).not.toBe(run.startsTurned);
  });

  test("diamonds need no turning: they stand at the chord along the strip", () => {
    const shape = [
      { x: 2000, y: 0 },
      { x: 6000, y: 0 },
      { x: 4000, y: 2000 },
      { x: 0, y: 2000 },
    ];
    expect(nestRun(shape, true)).toMatchObject({ advances: [4000], alternates: false, first: 6000 });
    expect(nestRun(shape, false)).toEqual(nestRun(shape, true));
  });

  test("half hexagons stand at the mean of their sides", () => {
    const shape = [
      { x: 1000, y: 0 },
      { x: 3000, y: 0 },
      { x: 4000, y: 1732 },
      { x: 0, y: 1732 },
    ];
    expect(nestRun(shape, true)).toMatchObject({ advances: [3000], alternates: true, first: 4000 });
    expect(nestRun(shape, false)).toMatchObject({ advances: [4000], alternates: false });
  });

  test("random shapes: at the advance none overlaps, one tick nearer two do", () => {
    let state = 20261;
    const random = (most: number) => {
      state = (state * 48271) % 2147483647;
      return state % most;
    };
    for (let round = 0; round < 400; round++) {
      const points = Array.from({ length: 3 + random(6) }, () => ({ x: random(900), y: random(600) }));
      const raw = hullOf(points);
      const [left, top] = [Math.min(...raw.map(({ x }) => x)), Math.min(...raw.map(({ y }) => y))];
      const shape = raw.map(({ x, y }) => ({ x: x - left, y: y - top }));
      if (shape.length < 3) continue;
      for (const halfTurns of [true, false]) {
        expect(anyOverlap(laid(shape, 5, halfTurns)), JSON.stringify(shape)).toBe(false);
        const run = nestRun(shape, halfTurns);
        expect(nestLength(run.first, run.advances, 5)).toBeLessThanOrEqual(5 * run.first);
        // No neighbours but those that touch nothing before: the last stands as near as it may.
        const turned = halfTurned(shape);
        for (const [before, next] of halfTurns
          ? [[shape, turned] as const, [turned, shape] as const]
          : [[shape, shape] as const]) {
          const advance = leastAdvance(before, next);
          if (advance < 1) continue;
          const moved = (by: number) => next.map(({ x, y }) => ({ x: x + by, y }));
          expect(overlap(before, moved(advance))).toBe(false);
          expect(overlap(before, moved(advance - 1))).toBe(true);
        }
      }
    }
  });

  test("a notch is taken as filled, so that straight cuts part the shapes", () => {
    const arrow = [
      { x: 0, y: 0 },
      { x: 400, y: 0 },
      { x: 300, y: 200 },
      { x: 400, y: 400 },
      { x: 0, y: 400 },
    ];
    expect(nestRun(arrow, false)).toMatchObject({ first: 400, advances: [400] });
  });
});

interface CorpusLie {
  height: number;
  first: number;
  advances: number[];
  geometry: { corners: [number, number][]; turned_advances: number[]; advance_with_an_up: number };
}

describe.skipIf(!existsSync(SHARED))("the corpus beside the project", () => {
  test("every lie has the height, the first and the advances that its corners give", () => {
    const { instances } = JSON.parse(readFileSync(SHARED, "utf8")) as {
      instances: { name: string; step: string; shapes: { lies: CorpusLie[] }[] }[];
    };
    let lies = 0;
    for (const { name, step, shapes } of instances) {
      // Corners in inches or, where the step is 0.05 mm, in centimetres; a step is 127 or 32 ticks.
      const [unit, ticks] = step === "1/128 in" ? [INCH, 127] : [6400, 32];
      for (const lie of shapes.flatMap((shape) => shape.lies)) {
        lies++;
        const { corners, turned_advances, advance_with_an_up } = lie.geometry;
        const outline = corners.map(([x, y]) => ({ x: Math.round(x * unit), y: Math.round(y * unit) }));
        const up = (value: number) => Math.ceil((value - 1) / ticks) + 0;
        const free = nestRun(outline, true);
        const fixed = nestRun(outline, false);
        const where = `${name} ${lie.height}`;
        expect([up(free.height), up(free.first)], where).toEqual([lie.height, lie.first]);
        expect(free.advances.map(up), where).toEqual(turned_advances);
        expect(fixed.advances.map(up), where).toEqual([advance_with_an_up]);
      }
    }
    expect(lies).toBeGreaterThan(30);
  });
});
