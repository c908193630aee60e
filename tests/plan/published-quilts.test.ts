import { describe, expect, test } from "vitest";
import { auditPlan } from "../../src/audit/index.ts";
import { listCuts } from "../../src/cutlist/list-cuts.ts";
import { planCutLists } from "../../src/plan/plan-cut-lists.ts";
import { cutListSpec, fabric, fullWidth, IN, piece, solveHere } from "../support/cut-list-spec.ts";

type Size = readonly [across: number, along: number, count: number];

interface Published {
  fabric: string;
  /** As cut, in inches; 42 across is a strip across the whole width. */
  pieces: readonly Size[];
  /** Length by each size on its own strips, the better way round, in inches: derived geometry. */
  ownStrips: number;
  /** Length the pattern asks for, in inches. */
  asked: number;
}

/**
 * Cutting lists of printed patterns, all at 42 in usable. A plan may not take less than the area divided by
 * the width, nor more than each size on its own strips; and what the pattern asks for must be enough.
 */
const PATTERNS: Readonly<Record<string, readonly Published[]>> = {
  "Striking Stars, American Patchwork & Quilting, 2014": [
    {
      fabric: "blue print",
      pieces: [
        [5.25, 5.25, 6],
        [2.875, 2.875, 24],
        [2.5, 2.5, 16],
      ],
      ownStrips: 13.5,
      asked: 18,
    },
    {
      fabric: "green stripe",
      pieces: [
        [5.25, 5.25, 4],
        [34.5, 1.5, 2],
        [32.5, 1.5, 2],
      ],
      ownStrips: 11.25,
      asked: 18,
    },
    { fabric: "pink medium floral", pieces: [[8.5, 8.5, 5]], ownStrips: 17, asked: 18 },
    {
      fabric: "pink large floral",
      pieces: [
        [42, 6.5, 3],
        [34.5, 6.5, 2],
      ],
      ownStrips: 32.5,
      asked: 40.5,
    },
  ],
  "Summer Salsa, American Patchwork & Quilting, 2014": [
    {
      fabric: "red floral",
      pieces: [
        [42, 2.5, 9],
        [9.75, 9.75, 9],
        [6.5, 6.5, 44],
        [5.125, 5.125, 2],
      ],
      ownStrips: 108.875,
      asked: 139.5,
    },
    { fabric: "yellow print", pieces: [[6.5, 6.5, 90]], ownStrips: 97.5, asked: 108 },
  ],
  "Sign of the Times, American Patchwork & Quilting, 2021": [
    {
      fabric: "aqua print",
      pieces: [
        [7.5, 7.5, 4],
        [35.5, 4, 2],
        [28.5, 4, 2],
      ],
      ownStrips: 23.5,
      asked: 31.5,
    },
    { fabric: "solid light grey", pieces: [[1.5, 7.5, 48]], ownStrips: 15, asked: 18 },
  ],
  "Vintage-Inspired Crib Quilt, American Patchwork & Quilting, 2013": [
    {
      fabric: "solid turquoise",
      pieces: [
        [2.5, 2.5, 65],
        [1.5, 1.5, 64],
      ],
      ownStrips: 17,
      asked: 24,
    },
    {
      fabric: "green print",
      pieces: [
        [42, 2.5, 9],
        [2.5, 2.5, 60],
      ],
      ownStrips: 32.5,
      asked: 40.5,
    },
  ],
  "Stars and Sashing Wall Hanging, American Patchwork & Quilting": [
    { fabric: "houndstooth print", pieces: [[3.5, 4.375, 72]], ownStrips: 26.25, asked: 36 },
    {
      fabric: "aqua floral",
      pieces: [
        [3.5, 7.5, 36],
        [3.5, 3.5, 36],
      ],
      ownStrips: 33,
      asked: 45,
    },
    {
      fabric: "aqua dot",
      pieces: [
        [4, 4, 4],
        [42, 2.5, 6],
      ],
      ownStrips: 19,
      asked: 22.5,
    },
  ],
  "Fussy-Cut Baby Quilt, American Patchwork & Quilting, 2013": [
    {
      fabric: "green floral",
      pieces: [
        [42, 2.5, 4],
        [33.5, 2.5, 2],
        [33, 2.5, 2],
        [3.5, 10, 13],
      ],
      ownStrips: 34,
      asked: 40.5,
    },
  ],
};

describe.each(Object.entries(PATTERNS))("%s", (_, fabrics) => {
  test.each(fabrics)("$fabric", async ({ pieces, ownStrips, asked }) => {
    const written = pieces.map(([across, along, count], i) =>
      across === 42 ? fullWidth(`strip ${i}`, along, count) : piece(`size ${i}`, across, along, count),
    );
    const spec = cutListSpec([fabric("Cloth", written, { straighten: IN / 2 })]);
    const cutLists = listCuts(spec).value ?? [];
    const { value } = await planCutLists({ spec, cutLists, solve: solveHere });
    expect(auditPlan(value!)).toEqual([]);
    const { bound, purchase } = value!.fabrics[0]!;
    const area = pieces.reduce((sum, [across, along, count]) => sum + across * along * count, 0);
    expect(bound.ruleOfThumb).toBe(ownStrips * IN);
    expect(bound.used).toBeLessThanOrEqual(ownStrips * IN);
    expect(bound.used).toBeGreaterThanOrEqual((area / 42) * IN);
    expect(bound.least).toBeGreaterThanOrEqual((area / 42) * IN - 1);
    expect(purchase!.length).toBeLessThanOrEqual(asked * IN);
  });
});
