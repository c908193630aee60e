import { describe, expect, test } from "vitest";
import { cutsOf, type WorkedOut, workOut } from "./reading.ts";

function codes(worked: WorkedOut): string[] {
  return worked.diagnostics.filter(({ severity }) => severity !== "info").map(({ code }) => code);
}

const STAR = (print: string, extra = ""): WorkedOut =>
  workOut(`fabrics: [{ name: boats${print} }, { name: white }, { name: gold }]
${extra}
blocks:
  star:
    size: 8
    grid: |
      c   g   -   c
      g<  m   -   g>
      |   |   -   |
      c   gv  -   c
    cells: { c: { square: white }, g: { flying geese: [boats, white] }, m: { square: gold } }
setting: { rows: star star }
`);

const ROW = (print: string, marks: string, extra = ""): WorkedOut =>
  workOut(`fabrics: [{ name: boats${print} }, { name: white }]
${extra}
blocks: { g: { size: 4 x 2, cell: { flying geese: [boats, white] } } }
setting: { rows: "${marks}" }
`);

// derived geometry: the large square of four-at-a-time geese is quartered, so the four geese show its print four ways.
describe("geese of a one-way print", () => {
  test("round a star, upright prints are just what a quartered square gives", () => {
    const worked = STAR(", print: one-way");
    expect(cutsOf(worked, "boats")).toEqual(["5.25 x 5.25 x 2"]);
    expect(codes(worked)).toEqual([]);
  });

  test("round a star, prints that turn with the geese need each goose cut by itself", () => {
    const worked = STAR(", print: one-way", "prints: with unit");
    expect(cutsOf(worked, "boats")).toEqual(["4.5 x 2.5 x 8"]);
    expect(codes(worked)).toEqual(["DIRECTION-OTHER-METHOD"]);
  });

  test("all flying up, likewise", () => {
    const worked = ROW(", print: one-way", "g*8");
    expect(cutsOf(worked, "boats")).toEqual(["4.5 x 2.5 x 8"]);
    expect(codes(worked)).toEqual(["DIRECTION-OTHER-METHOD"]);
  });

  test("without a direction the way of the geese makes no difference", () => {
    expect(cutsOf(STAR(""), "boats")).toEqual(cutsOf(ROW("", "g*8"), "boats"));
  });

  test("a fabric printed sideways is cut the other way across", () => {
    expect(cutsOf(ROW(", print: one-way across", "g*8"), "boats")).toEqual(["2.5 x 4.5 x 8"]);
  });

  test("asked for, four at a time is kept and its spares are told", () => {
    const worked = ROW(", print: one-way", "g*8", "methods: { flying geese: four at a time }");
    expect(cutsOf(worked, "boats")).toEqual(["5.25 x 5.25 x 8"]);
    expect(codes(worked)).toEqual(["DIRECTION-SPARES"]);
  });

  test("up and down suits a two-way print: half of each square", () => {
    const worked = ROW(", print: two-way", "g*4 gv*4", "methods: { flying geese: four at a time }");
    expect(cutsOf(worked, "boats")).toEqual(["5.25 x 5.25 x 4"]);
  });
});

// derived geometry: halved on `/`, a square gives right angles at the top left and bottom right of its cloth.
describe("half-square triangles of a one-way print", () => {
  const half = (rows: string): WorkedOut =>
    workOut(`fabrics: [{ name: boats, print: one-way }, { name: white }]
methods: { half-square triangle: single triangles }
blocks: { h: { size: 4, cell: { half-square triangle: [boats, white] } } }
setting: { rows: "${rows}" }
`);

  test("opposite corners share a square, cut on one diagonal", () => {
    const worked = half("h*3 hv*3");
    expect(cutsOf(worked, "boats")).toEqual(["4.875 x 4.875 x 3"]);
    expect(worked.cutLists[0]?.pieces.map(({ diagonal }) => diagonal)).toEqual(["rising"]);
  });

  test("neighbouring corners need one diagonal each", () => {
    const worked = half("h*3 h>*3");
    expect(worked.cutLists[0]?.pieces.map(({ diagonal, count }) => [diagonal, count])).toEqual([
      ["rising", 3],
      ["falling", 3],
    ]);
  });
});

// derived geometry: a quartered square gives one triangle for each edge of the quilt, print upright.
describe("setting triangles of a one-way print", () => {
  const onPoint = (across: number, down: number, print: string): WorkedOut =>
    workOut(`fabrics: [{ name: red }, { name: sky${print} }]
blocks: { b: { size: 6, cell: { square: red } } }
setting: { layout: on point, rows: b, fill: ${across} x ${down}, triangles: sky }
`);

  test.each([
    [5, 5, "4 sides of 4 triangles", 4],
    [8, 3, "the long edges decide", 7],
    [3, 8, "the long edges decide", 7],
  ])("%i x %i: %s", (across, down, _, squares) => {
    const cuts = cutsOf(onPoint(across, down, ", print: one-way"), "sky");
    expect(cuts).toEqual([`9.75 x 9.75 x ${squares}`, "5.125 x 5.125 x 1", "5.125 x 5.125 x 1"]);
  });

  test("without a direction four to a square", () => {
    expect(cutsOf(onPoint(8, 3, ""), "sky")).toEqual(["9.75 x 9.75 x 5", "5.125 x 5.125 x 2"]);
  });

  test("blocks on point lean their print, and it is said", () => {
    const worked = workOut(`fabrics: [{ name: boats, print: one-way }, { name: sky }]
blocks: { b: { size: 6, cell: { square: boats } } }
setting: { layout: on point, rows: b, fill: 2 x 2, triangles: sky }
`);
    expect(codes(worked)).toEqual(["PRINT-TILTED"]);
    expect(new Set(worked.top.patches.map((patch) => patch.up))).toEqual(new Set([45, null]));
  });
});

test("side borders of an upright print lie along the selvage, top and bottom across", () => {
  const worked = workOut(`fabrics: [{ name: red }, { name: vines, print: one-way }]
blocks: { b: { size: 20 x 30, cell: { rectangle: red } } }
setting: { rows: b }
borders: [{ fabric: vines, width: 4 }]
`);
  expect(cutsOf(worked, "vines")).toEqual(["4.5 x 30.5 x 2", "28.5 x 4.5 x 2"]);
  const pieces = worked.cutLists.find(({ fabric }) => fabric.name === "vines")?.pieces ?? [];
  expect(pieces.map(({ cut, turnable }) => [cut, turnable])).toEqual([
    ["either", false],
    ["strips", false],
  ]);
});

describe("strip sets", () => {
  // Summer Salsa, American Patchwork & Quilting, 2014: from 21 in strips eight segments; four nine-patches take eight
  // segments of one set and four of the other. These sources cut from the strip's very end, so no set is squared here.
  test("the last set is only as long as its segments need", () => {
    const worked = workOut(`fabrics: [{ name: red, width: 22 in }, { name: white, width: 22 in }]
blocks: { n: { size: 6, cell: { nine-patch: { corners: red, sides: white, centre: red } } } }
setting: { rows: n*4 }
straighten-sets: 0
`);
    expect(cutsOf(worked, "red")).toEqual(["21 x 2.5 x 2", "10 x 2.5 x 1"]);
    expect(cutsOf(worked, "white")).toEqual(["21 x 2.5 x 1", "10 x 2.5 x 2"]);
  });

  // Quick Rail Fence using 2.5-inch strips and scraps: five 2 1/2 in strips, three 10 1/2 in blocks from 40 in, four from
  // 42 in; 42 blocks take 14 sets, 70 strips (or 11 sets of 42 in, the last of them for two blocks).
  test.each([
    [41, 0, ["40 x 2.5 x 70"]],
    [43, 0, ["42 x 2.5 x 50", "21 x 2.5 x 5"]],
    // Four segments of 10 1/2 in fill 42 in to the end: with 1/2 in to square it three are left, as from 40 in.
    [43, 1 / 2, ["42 x 2.5 x 70"]],
  ])("rail blocks at %i in wide, %f in to square a set", (width, squared, cuts) => {
    const worked = workOut(`fabrics: [{ name: red, width: ${width} in, selvage: 1/2 in }]
blocks: { r: { size: 10, cell: { rails: [red, red, red, red, red] } } }
setting: { rows: r, fill: 6 x 7 }
straighten-sets: ${squared}
`);
    expect(cutsOf(worked, "red")).toEqual(cuts);
  });
});

// Forty thousand squares are answered, more patches are refused (fixtures/bad/QUILT-TOO-LARGE-two-hundred).
test("200 x 200 blocks are worked out", () => {
  const worked = workOut(`fabrics: [{ name: red }]
blocks: { s: { size: 1, cell: { square: red } } }
setting: { rows: s, fill: 200 x 200 }
`);
  expect(cutsOf(worked, "red")).toEqual(["1.5 x 1.5 x 40000"]);
  // One record for all of them: what is alike is never counted one by one.
  expect(worked.units).toHaveLength(1);
  expect(worked.work.placings).toHaveLength(1);
});
