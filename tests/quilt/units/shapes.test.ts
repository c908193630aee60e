import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { toNumber } from "../../../src/length/rational.ts";
import { matchShapes, mirroredShape, turnedShape } from "../../../src/quilt/units/outlines/shapes.ts";
import { UNIT_KINDS } from "../../../src/quilt/units/registry.ts";
import type { PatchShape, Quarter, ShapePoint } from "../../../src/quilt/units/types.ts";
import { designsOf, exactly } from "./support/designs.ts";
import { INCH, QUARTER, recipeOf, TRADE, unit } from "./support/making.ts";

type Line = readonly ShapePoint[];

const after = (line: Line, i: number): ShapePoint => line[(i + 1) % line.length] ?? { x: 0, y: 0 };
const before = (line: Line, i: number): ShapePoint =>
  line[(i + line.length - 1) % line.length] ?? { x: 0, y: 0 };

function area(line: Line): number {
  return line.reduce((sum, a, i) => sum + a.x * after(line, i).y - after(line, i).x * a.y, 0) / 2;
}

/** A line `n . p = c` with `n` of length one pointing out of a clockwise outline (y down). */
interface Straight {
  n: ShapePoint;
  c: number;
}

/** The edge from `a` to `b` moved outwards. */
function movedEdge(a: ShapePoint, b: ShapePoint, seam: number): Straight {
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  const n = { x: (b.y - a.y) / length, y: -(b.x - a.x) / length };
  return { n, c: n.x * a.x + n.y * a.y + seam };
}

/** Where two lines meet, by Cramer's rule: a way to offset corners that shares nothing with the program's. */
function meeting(p: Straight, q: Straight): ShapePoint {
  const det = p.n.x * q.n.y - p.n.y * q.n.x;
  return { x: (p.c * q.n.y - q.c * p.n.y) / det, y: (p.n.x * q.c - q.n.x * p.c) / det };
}

const off = ({ n, c }: Straight, p: ShapePoint): number => n.x * p.x + n.y * p.y - c;

/** Every template of a recipe, and the other lie of those that have one. */
function shapesOf(
  kind: (typeof UNIT_KINDS)[number],
  design: Parameters<typeof kind.check>[0],
  how: typeof QUARTER,
) {
  return kind.methods.flatMap((method) => {
    const answer = method.recipe(design, how);
    if (!answer.ok) return [];
    const { pieces, stripSets } = answer.recipe;
    return [
      ...pieces.flatMap(({ template, freeLay, across, along }) => [
        ...(template === null ? [] : [{ shape: template, across, along }]),
        ...(freeLay === null
          ? []
          : [{ shape: freeLay.template, across: freeLay.across, along: freeLay.along }]),
      ]),
      ...stripSets.flatMap(({ shape, strips }) =>
        shape === null ? [] : [{ shape, across: Number.POSITIVE_INFINITY, along: strips[0]?.width ?? 0 }],
      ),
    ];
  });
}

describe.each(UNIT_KINDS.map((kind) => [kind.name, kind] as const))("outlines of %s", (_, kind) => {
  test("have the seam allowance along every edge, and lie in their pieces", () => {
    fc.assert(
      fc.property(designsOf(kind.name), exactly, (design, how) => {
        const seam = toNumber(how.seam);
        for (const { shape, across, along } of shapesOf(kind, design, how)) {
          const { cut } = shape;
          const edges = shape.seam.map((a, i) => movedEdge(a, after(shape.seam, i), seam));
          // Corners are rounded to ticks, and a short edge magnifies that: a hundredth of a millimetre is 6 ticks.
          const near = 6.4;
          let at = 0;
          shape.seam.forEach((corner, i) => {
            const [one, two] = [edges[(i + edges.length - 1) % edges.length], edges[i]];
            if (one === undefined || two === undefined) throw new Error("no edges");
            const full = meeting(one, two);
            const [first, second] = [cut[at], cut[at + 1]];
            if (first === undefined) throw new Error(`corner ${i} is missing`);
            if (Math.hypot(first.x - full.x, first.y - full.y) <= near) at += 1;
            else {
              // Blunted: both ends lie on the moved edges, beyond the corner, and the full point was a long one.
              if (second === undefined) throw new Error(`corner ${i} is cut off once`);
              expect(Math.abs(off(one, first))).toBeLessThan(near);
              expect(Math.abs(off(two, second))).toBeLessThan(near);
              expect(Math.hypot(full.x - corner.x, full.y - corner.y)).toBeGreaterThan(3 * seam - near);
              // The cut across the point stays a seam allowance away from the corner of the seam line.
              expect(-off(movedEdge(first, second, 0), corner)).toBeGreaterThan(seam - near);
              at += 2;
            }
          });
          expect(at).toBe(cut.length);
          expect(Math.min(...cut.flatMap(({ x, y }) => [x, y]))).toBe(0);
          expect(Math.max(...cut.map(({ x }) => x))).toBeLessThanOrEqual(across);
          expect(Math.max(...cut.map(({ y }) => y))).toBeLessThanOrEqual(along);
        }
      }),
      { seed: 1880, numRuns: 6 },
    );
  });
});

test("the area of a cut outline is the patch, its edges and its corners", () => {
  // derived geometry (Steiner's formula with square corners): area + seam x edges + seam^2 x sum of tan(turn / 2)
  const fine = { ...QUARTER, mark: 1 };
  const kite = recipeOf("eight-pointed star", "from strips", unit(8, 8), fine).stripSets[0]?.shape;
  const triangle = recipeOf("sixty-degree triangles", "from strips", unit(9, 3), fine).stripSets[0]?.shape;
  for (const shape of [kite, triangle]) {
    if (shape === null || shape === undefined) throw new Error("no outline");
    const { seam: line } = shape;
    const around = line.reduce(
      (sum, a, i) => sum + Math.hypot(after(line, i).x - a.x, after(line, i).y - a.y),
      0,
    );
    const corners = line.reduce((sum, p, i) => {
      const [a, b] = [before(line, i), after(line, i)];
      const turn = Math.atan2(b.y - p.y, b.x - p.x) - Math.atan2(p.y - a.y, p.x - a.x);
      return sum + Math.tan((turn < 0 ? turn + 2 * Math.PI : turn) / 2);
    }, 0);
    const expected = area(line) + 4064 * around + 4064 ** 2 * corners;
    expect(Math.abs(area(shape.cut) / expected - 1)).toBeLessThan(1e-4);
  }
});

describe("figures makers know", () => {
  const box = (shape: PatchShape | null | undefined): [number, number] => [
    Math.max(...(shape?.cut ?? []).map(({ x }) => x / INCH)),
    Math.max(...(shape?.cut ?? []).map(({ y }) => y / INCH)),
  ];

  // "How to measure and cut triangles", Granny Maud's Girl, 2018: 2 7/8 for 2 in, 3 7/8 for 3 in
  test.each([
    [2, 2.875],
    [3, 3.875],
  ])("half-square triangle finishing %f in: a template of the finished side and 7/8 in", (side, cut) => {
    for (const how of [QUARTER, TRADE]) {
      const [piece] = recipeOf("half-square triangle", "templates", unit(side, side), how).pieces;
      expect([piece?.across, piece?.along]).toEqual([cut * INCH, cut * INCH]);
      // derived geometry: exactly seam x (2 + root 2) more
      expect(box(piece?.template)[0]).toBeCloseTo(side + 0.25 * (2 + Math.SQRT2), 4);
    }
  });

  test("quarter-square triangle finishing 4 in: half a square of 5 1/4 in", () => {
    // "Cutting Quarter Square Triangles", Quiltville, 2005: 5 1/4 in for 4 in
    const [piece] = recipeOf("four-triangle square", "templates", unit(4, 4), QUARTER).pieces;
    expect([piece?.across, piece?.along]).toEqual([5.25 * INCH, 2.625 * INCH]);
  });

  test("60-degree triangle finishing 3 in high: 3 3/4 in, its base 4.33 in", () => {
    // derived geometry: height + 3 seams, base = height x 2 / root 3
    const [set] = recipeOf("sixty-degree triangles", "from strips", unit(9, 3), QUARTER).stripSets;
    const [base, height] = box(set?.shape);
    expect(height).toBeCloseTo(3.75, 4);
    expect(base).toBeCloseTo(4.330127, 4);
  });

  test("45-degree diamond 2 in wide between parallel sides: 2 1/2 in", () => {
    // "Rotary cutting, part 7: 45-degree diamonds", Chris and Barbara Quilts, 2015: finished width + 1/2 in
    const block = 2 * (2 * Math.SQRT2 + 2);
    const sides = recipeOf("eight-pointed star", "from strips", unit(block, block), QUARTER).stripSets[0];
    // the width asked is the nearest 1/128 in to 2 root 2 x (2 + root 2)
    expect(box(sides?.shape)[1]).toBeCloseTo(2.5, 1);
  });
});

describe("matching outlines", () => {
  const shape: PatchShape = {
    cut: [
      { x: 0, y: 0 },
      { x: 900, y: 0 },
      { x: 900, y: 300 },
      { x: 200, y: 500 },
    ],
    seam: [
      { x: 100, y: 50 },
      { x: 850, y: 50 },
      { x: 850, y: 250 },
      { x: 220, y: 430 },
    ],
    marks: [{ x: 400, y: 50 }],
  };
  const quarters: readonly Quarter[] = [0, 1, 2, 3];

  test("a turned or mirrored outline is known again, as far as the cloth lets it turn", () => {
    for (const quarter of quarters)
      for (const mirrored of [false, true]) {
        const other = turnedShape(mirrored ? mirroredShape(shape) : shape, quarter);
        expect(matchShapes(shape, other, "free")).toEqual({ mirrored, marks: shape.marks });
        expect(matchShapes(shape, other, "half") !== null).toBe(quarter % 2 === 0);
        expect(matchShapes(shape, other, "none") !== null).toBe(quarter === 0);
        // with the print's up at the right, turning over from top to bottom keeps it there
        expect(matchShapes(shape, other, "none", false) !== null).toBe(quarter === (mirrored ? 2 : 0));
      }
  });

  test("turning four times and mirroring twice change nothing", () => {
    expect(quarters.reduce((turned) => turnedShape(turned, 1), shape)).toEqual(shape);
    expect(mirroredShape(mirroredShape(shape))).toEqual(shape);
    expect(area(mirroredShape(shape).cut)).toBe(area(shape.cut));
  });

  test("another outline in the same box is another shape", () => {
    const other = { ...shape, cut: shape.cut.map((p, i) => (i === 3 ? { x: 210, y: 500 } : p)) };
    expect(matchShapes(shape, other, "free")).toBe(null);
  });
});
