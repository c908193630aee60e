import { describe, expect, test } from "vitest";
import { packagedFor } from "../../src/cutlist/wadding-sizes.ts";
import { seamsAt } from "../../src/making/finishing.ts";
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

describe("wadding", () => {
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
