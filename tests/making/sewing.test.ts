import { readdirSync, readFileSync } from "node:fs";
import { isDeepStrictEqual } from "node:util";
import { describe, expect, test } from "vitest";
import { threadFor } from "../../src/making/amounts.ts";
import { borderFaults } from "../../src/making/border-rounds.ts";
import { diagonalFaults } from "../../src/making/diagonal.ts";
import { sewTogether } from "../../src/making/joins.ts";
import type { JoinStep } from "../../src/making/types.ts";
import { INCH } from "../quilt/reading.ts";
import { make, pressingOf, quiltOfSquares } from "./fixture.ts";

const QUILTS = new URL("../../fixtures/quilts/", import.meta.url);
const read = (name: string) => readFileSync(new URL(name, QUILTS), "utf8");
const sizeOf = (join: JoinStep, scale: number) =>
  [join.size.across, join.size.down].map((size) => size / scale / INCH);

describe("sewn together in the order told", () => {
  test.each(readdirSync(QUILTS))("%s: every piece comes out as stated, and the last is the quilt", (name) => {
    const { making, top, spec } = make(read(name));
    const raw = (size: { n: number; r: number; d: number }) =>
      ((size.n + size.r * Math.SQRT2) / size.d + 2 * spec.seam) * making.scale;
    // Rows on point and borders of every kind are held to their own sizes.
    expect(diagonalFaults(making.diagonal, top, making.scale)).toEqual([]);
    expect(making.diagonal.length > 0).toBe(top.centre.onPoint);
    expect(borderFaults(making.borders, making.seam, making.square)).toEqual([]);
    expect(making.borders).toHaveLength(top.borders.length);
    expect(making.square.across).toBe(Math.round(raw(top.across) / making.scale));
    if (top.centre.onPoint || top.borders.at(-1)?.kind === "mitred") return;
    const whole = { across: raw(top.across), down: raw(top.down) };
    expect(sewTogether(making.joins, making.seam, making.scale, whole)).toEqual([]);
    // Each part of a joining has been made before it, or is a unit or a piece as cut.
    const { joins } = making;
    for (const [i, join] of joins.entries()) {
      const made = joins
        .slice(0, i)
        .filter(({ design, stage }) => design === join.design && stage === join.stage);
      for (const [j, part] of join.from.entries()) {
        if (part.is !== "line" && part.is !== "part") continue;
        const before = made.find(({ makes }) => isDeepStrictEqual(makes, part));
        expect(before?.size).toEqual(join.parts[j]);
      }
    }
  });

  test("longest seams come last within a block and within the top", () => {
    const { making } = make(read("allotments.yaml"));
    for (const design of new Set(making.joins.map((join) => join.design))) {
      const lengths = making.joins
        .filter((join) => join.design === design && join.stage !== "border")
        .map(({ seamLength }) => seamLength);
      expect(lengths.at(-1)).toBe(Math.max(...lengths));
    }
  });

  test("parts that do not fit are told", () => {
    const [join] = make(quiltOfSquares([{ name: "F", squares: 2 }], [[{ block: 0, turn: 0 }]])).making.joins;
    if (join === undefined) throw new Error("no joining");
    const wrong = { ...join, size: { ...join.size, across: join.size.across + 1 } };
    expect(sewTogether([wrong], 4064, 1, null)).toEqual([expect.stringContaining("comes out")]);
    expect(sewTogether([join], 4064, 1, { across: 1, down: 1 })).toEqual([expect.stringContaining("quilt")]);
  });

  // Nine 1 1/2 in squares sewn three by three measure 3 1/2 in: Precision Piecing.
  test("the seam test comes out", () => {
    const text = quiltOfSquares([{ name: "N", squares: 3 }], [[{ block: 0, turn: 0 }]]).replace(
      "size: 12",
      "size: 3",
    );
    const { making } = make(text);
    const last = making.joins.at(-1);
    expect(last?.parts.map(({ down }) => down / INCH / making.scale)).toEqual([1.5, 1.5, 1.5]);
    expect(last === undefined ? [] : sizeOf(last, making.scale)).toEqual([3.5, 3.5]);
  });

  // 4-H club sampler 3 x 4 of 12 in blocks with 2 in sashing and a 4 in border: 48 x 62 in. Borders & Sashing
  // (Sarpy County 4-H quilt club); sewn sizes are half an inch more.
  test("a sashed and bordered sampler comes out at the published size", () => {
    const rows = Array.from({ length: 4 }, () =>
      Array.from({ length: 3 }, () => ({ block: 0, turn: 0 as const })),
    );
    const text = `${quiltOfSquares([{ name: "S", squares: 2 }], rows)}  sashing: { width: 2, fabric: red, cornerstones: red }\nborders: [{ fabric: red, width: 4, join: straight }]\n`;
    const { making } = make(text);
    const sizes = making.joins.map((join) => sizeOf(join, making.scale).join(" x "));
    expect(sizes).toContain("40.5 x 54.5");
    expect(sizes.at(-1)).toBe("48.5 x 62.5");
  });
});

describe("amounts", () => {
  // 2.508 of thread to 1 of seam, two layers of quilting cotton at 2 mm: formula of How to calculate the amount of
  // sewing thread consumption; 10 to 15 percent for ends: Thread Consumption Methods.
  test("thread is 2.508 times the seams and 15 percent", () => {
    expect(threadFor(1_000_000)).toEqual({ length: 2_884_200, perSeam: 2508, wastePercent: 15 });
  });

  // derived geometry: a 12 in block of 2 x 2 squares: two seams 6 1/2 in and one 12 1/2 in.
  test("every seam is counted from cut edge to cut edge", () => {
    const { totals } = make(quiltOfSquares([{ name: "F", squares: 2 }], [[{ block: 0, turn: 0 }]])).making;
    expect(totals).toMatchObject({ seams: 3, total: 25.5 * INCH, blocks: 25.5 * INCH, top: 0 });
  });
});

describe("pressing in published practice", () => {
  // Rows of neighbouring rows in opposite directions, towards setting squares: So Many Squares.
  test("many squares: odd rows one way, even rows the other", () => {
    const { rows, open } = pressingOf(make(read("many-squares.yaml")));
    expect(new Set(rows.filter(({ row }) => row % 2 === 1).map(({ press }) => press))).toEqual(
      new Set(["right"]),
    );
    expect(new Set(rows.filter(({ row }) => row % 2 === 0).map(({ press }) => press))).toEqual(
      new Set(["left"]),
    );
    expect(open).toEqual([]);
  });

  test("sashes and setting squares take the seams beside them", () => {
    expect(pressingOf(make(read("allotments.yaml"))).rows.map(({ press }) => press)).toEqual(
      Array(11).fill("sashes"),
    );
    expect(new Set(pressingOf(make(read("four-patch-orchard.yaml"))).rows.map(({ press }) => press))).toEqual(
      new Set(["plain-blocks"]),
    );
  });

  // Four-patch: the two pair seams in opposite directions: Reproduction Print Table Topper.
  test("the pair seams of a four-patch lie opposite", () => {
    const block = pressingOf(make(read("four-patch-orchard.yaml"))).blocks.find(
      ({ seams }) => seams.length > 0,
    );
    // Its pairs are segments of one strip set, which stand side by side.
    const pairs = block?.seams.filter(({ y1, y2 }) => y1 === y2).map(({ press }) => press);
    expect(pairs?.sort()).toEqual(["down", "up"]);
  });
});
