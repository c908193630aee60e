import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { checkLaid } from "../../src/audit/check-laid.ts";
import { auditPlan } from "../../src/audit/index.ts";
import { listAll, planListed, USUAL_OPTIONS } from "../../src/pipeline.ts";
import type { Plan } from "../../src/plan/types.ts";
import type { PiecedPart } from "../../src/quilt/index.ts";
import { readSpecFile } from "../../src/spec/index.ts";
import { make } from "../making/fixture.ts";
import { INCH, workOut } from "../quilt/reading.ts";
import { solveHere } from "../support/cut-list-spec.ts";
import { firstOf } from "../support/sweep.ts";

/*
 * Patches are laid on foundation by hand: the cloth as cut, laid as told, must cover its place and a seam allowance
 * all round it. Here every point a seam away from the place is looked for in the cloth.
 */

interface Spot {
  x: number;
  y: number;
}

const SLANTING = readFileSync(
  new URL("../../fixtures/trials/foundation-slanting.yaml", import.meta.url),
  "utf8",
);

/** A quilt of one unit, pieced on the foundation. */
const QUILT = (
  unit: string,
  size: string,
  more = "",
): string => `fabrics: [{ name: a, print: one-way }, { name: b },
  { name: web, width: 44 in, selvage: 0, sold: by 1/4 yd }]
foundation: { fabric: web, grid: 1 in, per: unit${more} }
blocks: { A: { size: ${size}, cell: { ${unit} } } }
setting: { rows: "${size.includes("x") ? "A Av" : "A A> Av A<"}" }
`;

const partsOf = (text: string): PiecedPart[] =>
  (workOut(text).work.foundation?.parts ?? []).filter((part): part is PiecedPart => part.kind === "pieced");

/** How far a point lies outside each edge of a clockwise outline; negative inside. */
function besideEach({ x, y }: Spot, outline: readonly Spot[]): number[] {
  return outline.map((a, i) => {
    const b = outline[(i + 1) % outline.length] ?? a;
    return ((b.y - a.y) * (x - a.x) - (b.x - a.x) * (y - a.y)) / Math.hypot(b.x - a.x, b.y - a.y);
  });
}

const outside = (point: Spot, outline: readonly Spot[]): number => Math.max(...besideEach(point, outline));

/** The point of the place and its seam allowance that the cloth misses by most, in ticks. */
function missing(corners: readonly Spot[], laid: readonly Spot[], seam: number): number {
  const round = Array.from({ length: 72 }, (_, i) => (i * Math.PI) / 36);
  return Math.max(
    ...corners.flatMap(({ x, y }) =>
      round.map((angle) => outside({ x: x + seam * Math.cos(angle), y: y + seam * Math.sin(angle) }, laid)),
    ),
  );
}

const UNITS: [string, string][] = [
  ["half-square triangle: [a, b]", "3"],
  ["half-square triangle: [b, a]", "3"],
  ["half-rectangle triangle: [a, b]", "2 x 4"],
  ["half-rectangle triangle: [b, b], leaning: falling", "5 x 3"],
  ["flying geese: [a, b]", "4 x 2"],
  ["flying geese: [b, a]", "6 x 3"],
  ["square in a square: [a, b]", "4"],
  ["square in a square: [b, a]", "4"],
  ["snowball: [a, b], corner: 1", "4"],
  ["rails: [a, b, a]", "6"],
];

describe.each(UNITS)("%s, %s in", (unit, size) => {
  test.each(["", ", ease: 0", ", ease: 1/2"])("laid as told it covers its place%s", (ease) => {
    for (const { patches, seams } of partsOf(QUILT(unit, size, ease))) {
      for (const { number, corners, laid, lay } of patches) {
        expect(missing(corners, laid, INCH / 4)).toBeLessThanOrEqual(2);
        const line = seams.find(({ adds }) => adds === number);
        expect(lay === "first").toBe(line === undefined);
        if (line === undefined || lay !== "edge") continue;
        // The edge it is laid by: both ends of the line a seam allowance inside it.
        const [from, to] = [
          besideEach({ x: line.x1, y: line.y1 }, laid),
          besideEach({ x: line.x2, y: line.y2 }, laid),
        ];
        const beside = laid.some((_, i) =>
          [from[i], to[i]].every((by) => Math.abs((by ?? 0) + INCH / 4) <= 2),
        );
        expect(beside).toBe(true);
      }
    }
  });
});

// The audit must hold for whatever the planner may choose, or a sound quilt would be refused.
test.each([
  ["a wide seam", "seam: 3/8\n", ", allowance: 1"],
  ["sixteenths, the trade's constants", "ruler: 1/16 in\nrounding: trade\n", ""],
  ["prints that turn with their unit", "prints: with unit\n", ", ease: 3/8"],
  ["motifs", "prints: with block\n", ", ease: 1/8"],
])("every unit is cut as it is laid: %s", (_, head, more) => {
  for (const [unit, size] of UNITS) {
    for (const print of firstOf(["one-way", "two-way across", "none"], 1)) {
      const text = `${head}${QUILT(unit, size, more)}`.replace("print: one-way", `print: ${print}`);
      const { making, cutLists } = make(text);
      const fabrics = cutLists.map(({ fabric, pieces }) => ({ name: fabric.name, pieces }));
      expect([unit, print, checkLaid({ making, fabrics } as unknown as Plan)]).toEqual([unit, print, []]);
    }
  }
});

test("only the printed square goes by a rectangle, the corners stay halved squares", () => {
  const cuts = (unit: string): string[] =>
    workOut(QUILT(unit, "4")).cutLists.flatMap(({ fabric, pieces }) =>
      fabric.name === "web" ? [] : pieces.map(({ subcut }) => `${fabric.name} ${subcut}`),
    );
  expect(cuts("square in a square: [a, b]")).toEqual(["a none", "b once-diagonal"]);
});

describe("foundation-slanting", () => {
  const parts = partsOf(SLANTING);
  const patch = parts[0]?.patches[1];

  // By hand: 3 x 4 3/4 laid by its long edge along the line of 4.47 in reaches 4.75 in: 5.14 are needed.
  test("by an edge along its line it would miss the tips; it is creased along the line", () => {
    expect(patch?.lay).toBe("crease");
    const line = parts[0]?.seams[0];
    if (patch === undefined || line === undefined) throw new Error("no second patch");
    const [run, high] = [4.75 * INCH, 3 * INCH];
    const length = Math.hypot(line.x2 - line.x1, line.y2 - line.y1);
    const along = { x: (line.x2 - line.x1) / length, y: (line.y2 - line.y1) / length };
    const toward = {
      x: Math.sign(line.toward.x) * Math.abs(along.y),
      y: Math.sign(line.toward.y) * Math.abs(along.x),
    };
    const middle = { x: (line.x1 + line.x2) / 2, y: (line.y1 + line.y2) / 2 };
    const at = (a: number, b: number): Spot => ({
      x: middle.x + a * along.x + b * toward.x,
      y: middle.y + a * along.y + b * toward.y,
    });
    const low = -INCH / 4;
    const wrong = [at(-run / 2, low), at(run / 2, low), at(run / 2, high + low), at(-run / 2, high + low)];
    const clockwise = outside(at(0, high / 2), wrong) < 0 ? wrong : [...wrong].reverse();
    expect(missing(patch.corners, clockwise, INCH / 4)).toBeGreaterThan(INCH / 16);
    expect(missing(patch.corners, patch.laid, INCH / 4)).toBeLessThanOrEqual(2);
  });

  test("the audit lays it, and finds what is changed", async () => {
    const read = readSpecFile(SLANTING, "quilt.yaml");
    const listed = read.value === null ? null : listAll(read.value).value;
    if (read.value === null || listed === null) throw new Error("not read");
    const options = { ...USUAL_OPTIONS, effort: 50 };
    const { value: plan } = await planListed(read.value, listed, [], options, solveHere);
    if (plan === null) throw new Error("no plan");
    expect(auditPlan(plan)).toEqual([]);
    const spoil = (change: (patch: PiecedPart["patches"][number]) => void): string => {
      const copy: Plan = structuredClone(plan);
      const part = copy.making?.foundation?.parts[0];
      const own = part?.kind === "pieced" ? part.patches[1] : undefined;
      if (own === undefined) throw new Error("no second patch");
      change(own);
      return auditPlan(copy).join("; ");
    };
    expect(spoil((own) => Object.assign(own, { lay: "edge" }))).toContain(
      "no edge one seam allowance beyond",
    );
    expect(spoil((own) => Object.assign(own, { lay: "first" }))).toContain("laid first, or added by a line");
    const moved = (by: number) => (own: PiecedPart["patches"][number]) => {
      own.laid = own.laid.map(({ x, y }) => ({ x: x + by, y }));
    };
    expect(spoil(moved(INCH / 4))).toContain("does not cover its place");
    expect(spoil((own) => Object.assign(own, { fabric: "web" }))).toContain("not cut from web");
    const larger = (own: PiecedPart["patches"][number]): void => {
      const right = Math.max(...own.laid.map(({ x }) => x));
      own.laid = own.laid.map(({ x, y }) => ({ x: x === right ? x + INCH / 8 : x, y }));
    };
    expect(spoil(larger)).toContain("not cut from pale");
  });
});
