import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import type { CutPiece } from "../../src/cutlist/types.ts";
import { exactToNumber } from "../../src/quilt/exact.ts";
import type { Patch } from "../../src/quilt/types.ts";
import { oneIn } from "../support/sweep.ts";
import { INCH, type WorkedOut, workOut } from "./reading.ts";

/*
 * Cloth is followed by hand from the bolt into the quilt: laid on the bolt as its list says, turned until its print
 * points as it does in the drawing, it must be the patch that is drawn there. Turning is done again here.
 */

interface Spot {
  x: number;
  y: number;
}

const trial = (name: string): string =>
  readFileSync(new URL(`../../fixtures/trials/${name}.yaml`, import.meta.url), "utf8");

/** Degrees clockwise, y down. */
function turned(points: readonly Spot[], degrees: number): Spot[] {
  const [c, s] = [
    Math.round(Math.cos((degrees * Math.PI) / 180)),
    Math.round(Math.sin((degrees * Math.PI) / 180)),
  ];
  return points.map(({ x, y }) => ({ x: c * x - s * y, y: s * x + c * y }));
}

/** Corners from the corner of their box, in a fixed order: equal for outlines that lie alike. */
function placed(points: readonly Spot[]): string {
  const [left, upper] = [Math.min(...points.map(({ x }) => x)), Math.min(...points.map(({ y }) => y))];
  // A sixteenth of an inch tells one outline from another; ticks may be rounded by one.
  const told = points.map(({ x, y }) =>
    [Math.round((x - left) / 1016), Math.round((y - upper) / 1016)].join(","),
  );
  return told.sort().join(" ");
}

/** A template turned face down with its print's up where it was. */
function faceDown(points: readonly Spot[], axis: "along" | "across"): Spot[] {
  return points.map(({ x, y }) => (axis === "along" ? { x: -x, y } : { x, y: -y }));
}

const outlineOf = ({ outline }: Patch): Spot[] =>
  outline.map(({ x, y }) => ({ x: exactToNumber(x), y: exactToNumber(y) }));

function piecesOf(worked: WorkedOut, fabric: string): CutPiece[] {
  return worked.cutLists.find((each) => each.fabric.name === fabric)?.pieces ?? [];
}

const KINDS = ["one-way", "two-way", "none"] as const;
const AXES = ["along", "across"] as const;
const MARKS = ["", ">", "v", "<"] as const;

/** Turns that leave a print as it is. */
const ALIKE = { "one-way": [0], "two-way": [0, 180], none: [0, 90, 180, 270] };

const TRAPEZIA = (
  print: string,
  follow: string,
  rows: string,
): string => `fabrics: [{ name: p, print: ${print} }, { name: b }]
prints: ${follow}
blocks:
  A: { size: 4, cell: { drawn-on: 4 x 4, drawn patches: { u: p, v: b }, patches: [
      { part: u, corners: [[0,0],[3,0],[1,4],[0,4]] }, { part: v, corners: [[3,0],[4,0],[4,4],[1,4]] } ] } }
  M: { size: 4, cell: { drawn-on: 4 x 4, drawn patches: { u: p, v: b }, patches: [
      { part: u, corners: [[1,0],[4,0],[4,4],[3,4]] }, { part: v, corners: [[0,0],[1,0],[3,4],[0,4]] } ] } }
setting: { rows: "${rows}" }
`;

/** Every patch of the fabric matched with cloth cut as told: how many templates it takes, and how they lie. */
function templatesUsed(
  worked: WorkedOut,
  kind: (typeof KINDS)[number],
  axis: (typeof AXES)[number],
): string[] {
  const left = piecesOf(worked, "p").map((piece) => ({ piece, drawn: 0, reversed: 0 }));
  for (const patch of worked.top.patches.filter(({ fabric }) => fabric === "p")) {
    const onBolt = (patch.up ?? 0) - (axis === "across" ? 90 : 0);
    const lies = ALIKE[kind].map((more) => placed(turned(outlineOf(patch), more - onBolt)));
    const match = left.find(({ piece }) => lies.includes(placed(piece.shape?.seam ?? [])));
    const over = left.find(({ piece }) => lies.includes(placed(faceDown(piece.shape?.seam ?? [], axis))));
    if (match !== undefined) match.drawn += 1;
    else if (over !== undefined) over.reversed += 1;
    else throw new Error(`no template lies as the patch ${lies[0]} with its print`);
  }
  return left.map(({ drawn, reversed }) => `${drawn} as drawn, ${reversed} reversed`);
}

describe("a template lands with its print as designed", () => {
  const lists = ["A", "A>", "Av", "A<", "M A>", "A*2 Av A> M< Mv A<"];
  describe.each(oneIn(2, KINDS))("%s", (kind) => {
    test.each(AXES)("up %s", (axis) => {
      for (const rows of lists) {
        const follow = rows === "A<" ? "with block" : "upright";
        const worked = workOut(TRAPEZIA(kind === "none" ? "none" : `${kind} ${axis}`, follow, rows));
        const told = piecesOf(worked, "p").map(
          ({ shape }) => `${shape?.asDrawn} as drawn, ${shape?.reversed} reversed`,
        );
        expect([rows, ...templatesUsed(worked, kind, axis)]).toEqual([rows, ...told]);
      }
    });
  });

  // derived geometry: the block turned clockwise has the level edge of 4 in above, and the heads of its print too.
  test("turned once, the level edge is above", () => {
    const [piece] = piecesOf(workOut(trial("templates-turned")), "p");
    const corners = piece?.shape?.seam.map(({ x, y }) => [x / INCH, y / INCH]);
    expect(corners?.sort()).toEqual(
      [
        [4.25, 0.25],
        [4.25, 3.25],
        [0.25, 1.25],
        [0.25, 0.25],
      ].sort(),
    );
  });
});

describe("a rectangle is cut as its print lies in the quilt", () => {
  describe.each(oneIn(2, KINDS))("%s", (kind) => {
    test.each(AXES)("up %s", (axis) => {
      const print = kind === "none" ? "none" : `${kind} ${axis}`;
      for (const mark of MARKS) {
        for (const follow of ["upright", "with block"]) {
          const worked = workOut(`fabrics: [{ name: p, print: ${print} }, { name: b }]
prints: ${follow}
blocks: { A: { columns: [1, 3], lines: [4], grid: "r s", cells: { r: { rectangle: p }, s: { rectangle: b } } } }
setting: { rows: "A${mark} A${mark}" }
`);
          const [patch] = worked.top.patches.filter(({ fabric }) => fabric === "p");
          if (patch === undefined) throw new Error("no patch");
          const { across, along } = sidesOf(
            turned(outlineOf(patch), (axis === "across" ? 90 : 0) - (patch.up ?? 0)),
          );
          const raw = [across, along].map((side) => side / INCH + 0.5);
          const [piece] = piecesOf(worked, "p");
          const cut = [(piece?.across ?? 0) / INCH, (piece?.along ?? 0) / INCH];
          const loose = kind === "none" ? [raw.sort(), cut.sort()] : [raw, cut];
          expect([mark, follow, loose[1]]).toEqual([mark, follow, loose[0]]);
          expect(piece?.turnable).toBe(kind === "none");
        }
      }
    });
  });
});

/** Which diagonal leaves such a triangle, its right angle where it is on the bolt. */
function diagonalOf(points: readonly Spot[]): "rising" | "falling" {
  const corner = points.find((p, i) => {
    const others = points.filter((_, j) => j !== i);
    return others.some(({ x }) => x === p.x) && others.some(({ y }) => y === p.y);
  });
  const right = (corner?.x ?? 0) > Math.min(...points.map(({ x }) => x));
  const low = (corner?.y ?? 0) > Math.min(...points.map(({ y }) => y));
  return right === low ? "rising" : "falling";
}

function sidesOf(points: readonly Spot[]): { across: number; along: number } {
  const span = (values: number[]): number => Math.max(...values) - Math.min(...values);
  return { across: span(points.map(({ x }) => x)), along: span(points.map(({ y }) => y)) };
}

/** Halves of each diagonal that are drawn, and that are cut. */
function halves(
  worked: WorkedOut,
  fabric: string,
  axis: "along" | "across",
): { drawn: string[]; cut: string[] } {
  const count = new Map<string, number>();
  const add = (key: string, by: number): Map<string, number> => count.set(key, (count.get(key) ?? 0) + by);
  for (const patch of worked.top.patches.filter((each) => each.fabric === fabric)) {
    let laid = turned(outlineOf(patch), (axis === "across" ? 90 : 0) - (patch.up ?? 0));
    // Plain cloth is told with its longer side along the selvage.
    if (patch.up === null && sidesOf(laid).across > sidesOf(laid).along) laid = turned(laid, 90);
    const { across, along } = sidesOf(laid);
    const shape = across === along ? "square" : across > along ? "wide" : "high";
    add(`${shape} ${diagonalOf(laid)}`, 1);
  }
  const cut = piecesOf(worked, fabric).map((piece) => {
    const { across, along } = piece;
    const shape = across === along ? "square" : across > along ? "wide" : "high";
    return `${2 * piece.count} ${shape} ${piece.diagonal}`;
  });
  return { drawn: [...count].map(([key, n]) => `${n} ${key}`).sort(), cut: cut.sort() };
}

describe("a halved square or rectangle is cut on the diagonal that is drawn", () => {
  const half = (unit: string, size: string, print: string, rows: string): WorkedOut =>
    workOut(`fabrics: [{ name: p, print: ${print} }, { name: b }]
blocks:
  A: { size: ${size}, cell: { ${unit}: [p, b], method: single triangles } }
setting: { rows: "${rows}" }
`);

  describe.each(KINDS.slice(0, 2))("%s", (kind) => {
    test.each(AXES)("up %s", (axis) => {
      for (const mark of MARKS) {
        const print = `${kind} ${axis}`;
        // Two alike: of a print with two ways up just one square, else one each and spares.
        const rows = `A${mark}*2`;
        const times = kind === "two-way" ? 1 : 2;
        for (const [unit, size] of [
          ["half-square triangle", "4"],
          ["half-rectangle triangle", "2 x 4"],
        ] as const) {
          const { drawn, cut } = halves(half(unit, size, print, rows), "p", axis);
          expect([rows, cut]).toEqual([rows, drawn.map((told) => told.replace(/^2/, `${2 * times}`))]);
        }
      }
    });
  });

  // By hand: up and to the right on the bolt, the right angle of the birds comes to lie above and to the right.
  test("with its up across the fabric the line falls on the bolt", () => {
    const worked = workOut(trial("triangles-print-across"));
    expect(new Set(piecesOf(worked, "birds").map(({ diagonal }) => diagonal))).toEqual(new Set(["falling"]));
    expect(halves(worked, "birds", "across").drawn).toEqual(["8 square falling"]);
  });

  test("setting triangles of a print up across the fabric", () => {
    const corners = (axis: string): unknown =>
      piecesOf(
        workOut(`fabrics: [{ name: red }, { name: sky, print: one-way ${axis} }]
blocks: { b: { size: 6, cell: { square: red } } }
setting: { layout: on point, rows: b, fill: 2 x 2, triangles: sky }
`),
        "sky",
      )
        .filter(({ subcut }) => subcut === "once-diagonal")
        .map(({ diagonal, count }) => `${count} ${diagonal}`);
    expect(corners("along")).toEqual(["1 rising", "1 falling"]);
    expect(corners("across")).toEqual(["1 falling", "1 rising"]);
  });

  // Mirror images: halved the other way, both halves lean the other way, however plain the cloth is.
  test("half-rectangle triangles lean as they are cut, two leanings are two bags", () => {
    const falling = workOut(trial("half-rectangles-falling"));
    const rising = workOut(trial("half-rectangles-falling").replace("falling}", "rising}"));
    for (const fabric of ["red", "pale"]) {
      expect(halves(falling, fabric, "along")).toEqual({
        drawn: ["8 high falling"],
        cut: ["8 high falling"],
      });
      expect(halves(rising, fabric, "along")).toEqual({ drawn: ["8 high rising"], cut: ["8 high rising"] });
    }
    const both = workOut(
      trial("half-rectangles-falling").replace(
        /A: .*/,
        `A: { size: 6, grid: "b c", cells: { b: {half-rectangle triangle: [red, pale], leaning: falling}, c: {half-rectangle triangle: [red, pale], leaning: rising} } }`,
      ),
    );
    expect(halves(both, "red", "along").cut).toEqual(["8 high falling", "8 high rising"]);
  });
});
