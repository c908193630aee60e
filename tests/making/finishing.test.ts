import { describe, expect, test } from "vitest";
import { packagedFor } from "../../src/cutlist/wadding-sizes.ts";
import { quiltingThread } from "../../src/making/amounts.ts";
import { halvesAt, rollFor, seamsAt } from "../../src/making/finishing.ts";
import type { Finishing } from "../../src/making/types.ts";
import { INCH } from "../quilt/reading.ts";
import { make } from "./fixture.ts";

/** Sizes are the quilt's raw size, as printed in the sources: half an inch more than the patchwork. */
function finishing(width: number, height: number, tail: string, cloth = 43): Finishing {
  return make(`fabrics:
  - { name: top, width: 200 in }
  - { name: back, width: ${cloth} in, selvage: 1/2 in }
blocks: { whole: { size: ${width - 0.5} x ${height - 0.5}, cell: { rectangle: top } } }
setting: { rows: whole }
${tail}`).making.finishing;
}

const panelsOf = ({ backing }: Finishing) =>
  backing === null ? null : [backing.panels, backing.panel.along / INCH, backing.seams];

describe("backing", () => {
  // Quilt Backings - Fabric Calculation: 72 x 90 in, two panels 42 x 94 in.
  test("two panels, the seam down the quilt", () => {
    const told = finishing(72, 90, "backing: { fabric: back, overhang: 2 }");
    expect(panelsOf(told)).toEqual([2, 94, "vertical"]);
    // derived geometry: 2 x 42 - 1/2 = 83 1/2 in, trimmed 3 3/4 in each side to 76: the seam lies in the middle.
    expect(told.backing?.seamAt).toEqual([38 * INCH]);
  });

  // 5 quick steps to calculate yardage for quilt backing: 42 x 64 in at 40 in, pieced across, backing 48 x 72 in.
  test("two panels, the seam across the quilt", () => {
    const told = finishing(42, 64, "backing: { fabric: back, overhang: 3 }", 41);
    expect(told.backing?.across).toBe(48 * INCH);
    expect(panelsOf(told)).toEqual([2, 48, "horizontal"]);
  });

  // Flower Patch pattern: materials: 73 1/2 in square, wide backing of 108 in: one piece.
  test("wide backing takes one panel", () => {
    expect(panelsOf(finishing(73.5, 73.5, "backing: { fabric: back, overhang: 4 }", 109))?.[0]).toBe(1);
  });

  // derived geometry: three panels of 42 in make 125 in; for 119 in 3 in fall away at each side.
  test("three panels", () => {
    const told = finishing(111, 111, "backing: { fabric: back, overhang: 4 }");
    expect(panelsOf(told)).toEqual([3, 119, "vertical"]);
    expect(told.backing?.seamAt).toEqual([38.75 * INCH, 80.25 * INCH]);
    expect(seamsAt(3, 42 * INCH, INCH / 4, 119 * INCH)).toEqual([38.75 * INCH, 80.25 * INCH]);
  });
});

describe("backing as published", () => {
  // Simple pieced sashing, Karen Says Sew, 2010: 66 x 82 in, two lengths of 90 in, the seam upright.
  // Backing and batting for a lap quilt, Quilting Board, 2015: 65 x 78 in in all, 130 in across.
  // Mathematically challenged, Quilting Board: 56 x 80 in with a seam across at 40 in falls half an inch short.
  test.each([
    [66, 82, "4", 43, "either", [2, 90, "vertical"]],
    [57, 70, "4", 43, "either", [2, 65, "horizontal"]],
    [57, 70, "4", 43, "vertical", [2, 78, "vertical"]],
    [56, 79.5, "0", 41, "horizontal", [2, 56, "horizontal"]],
    [56, 80, "0", 41, "horizontal", [3, 56, "horizontal"]],
  ])("%d x %d in, %s in over, cloth of %d in, %s", (width, height, over, cloth, seams, expected) => {
    const tail = `backing: { fabric: back, overhang: ${over}, seams: ${seams} }`;
    expect(panelsOf(finishing(width, height, tail, cloth))).toEqual(expected);
  });

  // Quilt Backings - Fabric Calculation, BellaOnline: the same two panels, one split into halves of 21 in.
  test("one panel halved keeps the seam out of the middle", () => {
    // derived geometry: 42 + 21 + 21 in less four seams make 83 in, trimmed 3 1/2 in each side to 76.
    expect(halvesAt(42 * INCH, INCH / 4, 76 * INCH)).toEqual([17.25 * INCH, 58.75 * INCH]);
    expect(finishing(72, 90, "backing: { fabric: back, overhang: 2 }").backing?.halvedAt).toEqual([
      17.25 * INCH,
      58.75 * INCH,
    ]);
    // Half an inch wider than two whole panels would need.
    expect(halvesAt(42 * INCH, INCH / 4, 83.25 * INCH)).toBeNull();
  });

  // 2 to 3 in for hand or hoop: Quilt backing, stcroixquilters.com; 4 to 5 in: Quilt Backings, BellaOnline; 5 in for a
  // long-arm frame: Quilt top and backing preparation, Quilt Your Quilt.
  test.each([
    ["hand", 3],
    ["machine", 4],
    ["long-arm", 5],
  ])("quilted by %s it reaches %d in beyond the quilt", (by, inches) => {
    const { backing, wadding } = finishing(40, 40, `quilting: { by: ${by} }\nbacking: back\nwadding: {}`);
    expect(backing?.overhang).toBe(inches * INCH);
    expect(wadding?.across).toBe((40 + 2 * inches) * INCH);
  });

  test("a print with a direction keeps it: the panels stand upright whatever takes less", () => {
    const text = (print: string) => `fabrics:
  - { name: top, width: 200 in }
  - { name: back, width: 43 in, selvage: 1/2 in${print} }
blocks: { whole: { size: 42 x 64, cell: { rectangle: top } } }
setting: { rows: whole }
backing: { fabric: back, overhang: 3 }`;
    const told = (print: string) => make(text(print)).making.finishing.backing;
    expect([told("")?.seams, told("")?.directional]).toEqual(["horizontal", false]);
    expect([told(", print: one-way along")?.seams, told(", print: one-way along")?.directional]).toEqual([
      "vertical",
      true,
    ]);
  });
});

describe("wadding", () => {
  // Magazine lists: Flight of Geese 60 1/2 in, 69 in of wadding; So Many Squares 110 3/4 in, 119 in; Vintage-Inspired
  // Crib Quilt 38 1/2 in, 45 in: American Patchwork & Quilting.
  test.each([
    [60.5, "4 1/4", 69],
    [110.75, "4 1/8", 119],
    [38.5, "3 1/4", 45],
  ])("%d in quilt with %s in over", (quilt, over, expected) => {
    expect((finishing(quilt, quilt, `wadding: { overhang: ${over} }`).wadding?.across ?? 0) / INCH).toBe(
      expected,
    );
  });

  // 96 in wide off the roll: Common Quilt and Batting Sizes, Honey Be Good, 2012. Derived geometry: widths butted.
  test("off the roll, in one width or two, whichever buys less", () => {
    expect(rollFor(80 * INCH, 100 * INCH, 96 * INCH)).toEqual({
      width: 96 * INCH,
      widths: 1,
      length: 100 * INCH,
    });
    expect(rollFor(100 * INCH, 80 * INCH, 96 * INCH)).toEqual({
      width: 96 * INCH,
      widths: 1,
      length: 100 * INCH,
    });
    expect(rollFor(128 * INCH, 140 * INCH, 96 * INCH)).toEqual({
      width: 96 * INCH,
      widths: 2,
      length: 256 * INCH,
    });
  });

  // Packaged sizes in US trade: Common Quilt and Batting Sizes.
  test.each([
    [45, 60, "crib"],
    [60, 45, "crib"],
    [46, 60, "twin"],
    [71, 94, "full"],
    [73, 90, "full"],
    [90, 108, "queen"],
    [109, 100, "king"],
    [121, 100, undefined],
  ])("%d x %d in", (across, down, name) => {
    expect(packagedFor(across * INCH, down * INCH)?.name).toBe(name);
  });

  // Common Quilt and Batting Sizes: 65 x 88 in quilt, about 6 in more each way: 71 x 94 in.
  test("is larger than the quilt by its overhang", () => {
    const { wadding } = finishing(65, 88, "wadding: { overhang: 3 }");
    expect([wadding?.across, wadding?.down]).toEqual([71 * INCH, 94 * INCH]);
  });
});

describe("binding as published", () => {
  // Edge and 10 in over at 40 in: Quilty Math, Christa Quilts. Edge over (width - 2): How to calculate the number of
  // strips to bind a quilt, Castilleja Cotton, 2013: 50 x 60 in, 6. 102 1/2 in square, 425 in: Neon Dreams, American
  // Patchwork & Quilting, 2019. 66 x 82 in, eight strips: Simple pieced sashing, Karen Says Sew, 2010. 63 1/2 x 90 1/2 in,
  // eight: Meadow Goose Quilt Tutorial, Fox Favorites, 2016.
  test.each([
    [60, 72, 10, 41, 274, 7],
    [50, 60, 10, 41, 230, 6],
    [102.5, 102.5, 15, 43, 425, 11],
    [66, 82, 10, 43, 306, 8],
    [63.5, 90.5, 10, 43, 318, 8],
  ])("%d x %d in and %d in to spare", (width, height, extra, cloth, length, strips) => {
    const { binding } = finishing(
      width,
      height,
      `binding: { fabric: back, extra: ${extra}, join: straight }`,
      cloth,
    );
    expect([(binding?.length ?? 0) / INCH, (binding?.extra ?? 0) / INCH]).toEqual([length, extra]);
    expect(binding?.count).toBe(strips);
  });

  // 60 1/2 in square from 20 in lengths: 13 strips; diagonal joins leave 230 in for 242 in, which is too little: Flight of
  // Geese, American Patchwork & Quilting. Joins counted, as here, more strips are needed.
  test("short strips lose much at diagonal joins", () => {
    const strips = (join: string): number =>
      finishing(60.5, 60.5, `binding: { fabric: back, extra: 0, join: ${join} }`, 21).binding?.count ?? 0;
    expect(strips("straight")).toBeLessThanOrEqual(13);
    expect(strips("diagonal")).toBeGreaterThan(13);
  });

  // 2 1/2 in in general: How to calculate how much binding tape to make, Broadcloth Studio.
  test("strips are 2 1/2 in wide unless the file says otherwise", () => {
    expect(finishing(40, 40, "binding: back").binding?.width).toBe(2.5 * INCH);
  });

  // 98 in of 1 in bias takes 10.4 in, not 10: Continuous bias tape: a magic formula, The Button Ship, 2014.
  test("a square for bias counts whole strips", () => {
    const { binding } = finishing(20, 20, "binding: { fabric: back, width: 1, cut: bias, extra: 18 }");
    expect((binding?.square ?? 0) / INCH).toBe(10.5);
  });
});

describe("thread for quilting", () => {
  const of = (by: "hand" | "machine", lines: "parallel" | "crossed", spacing: number) =>
    quiltingThread({ by, lines, spacing: spacing * INCH, told: true }, 40 * INCH, 60 * INCH);

  // C = 2 + 2 T S: How to calculate the amount of sewing thread consumption; T = 0.08 in through the three layers and
  // S = 10 (2.5 mm: Don't sell yourself short, Cre8tive Quilter, 2008: 10.16): common practice, no source.
  test("by machine 3.6 times the lines and 15 percent", () => {
    const told = of("machine", "parallel", 2);
    expect(told.perLine).toBe(3600);
    // derived geometry: 40 x 60 / 2 = 1200 in of lines.
    expect(told.stitched).toBe(1200 * INCH);
    expect(told.length).toBe(Math.ceil(1200 * INCH * 3.6 * 1.15));
  });

  test("crossed lines take twice, wider spacing less, one thread by hand less", () => {
    expect(of("machine", "crossed", 2).length).toBe(2 * of("machine", "parallel", 2).length);
    expect(of("machine", "parallel", 4).stitched).toBe(600 * INCH);
    // derived geometry: a running stitch goes twice through 0.08 in, eight times to the inch: 1 + 1.28.
    expect(of("hand", "parallel", 2).perLine).toBe(2280);
  });
});

describe("binding", () => {
  // How to make a double-fold flange quilt binding: 54 x 60 in and 10 in to spare: 238 in, 6 strips of 42 in.
  test("straight strips", () => {
    const { binding, edge } = finishing(54, 60, "binding: { fabric: back, extra: 10, join: straight }");
    expect(edge).toBe(228 * INCH);
    expect([binding?.length, binding?.count, binding?.square]).toEqual([238 * INCH, 6, null]);
  });

  // derived geometry: floor((D - 1/2) / (w root 2)) strips of (D - 1/2) root 2; 28 in gives 272.236 in of 2 1/2 in.
  test("continuous bias from a square", () => {
    const { binding } = finishing(64, 64, "binding: { fabric: back, width: 2 1/2, cut: bias, extra: 16 }");
    expect(binding?.length).toBe(272 * INCH);
    expect(binding?.square).toBeLessThanOrEqual(28 * INCH);
    expect(binding?.count).toBe(1);
  });
});
