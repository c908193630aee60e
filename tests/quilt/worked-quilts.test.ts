import { readFileSync } from "node:fs";
import { beforeAll, describe, expect, test } from "vitest";
import type { CutPiece } from "../../src/cutlist/types.ts";
import { planQuilt, solveHere, USUAL_OPTIONS } from "../../src/index.ts";
import { exactToNumber } from "../../src/quilt/exact.ts";
import { PUBLISHED_QUILTS } from "./published-quilts.ts";

const INCH = 16256;

/** Sizes with counts, shorter side first; how a piece may lie and what it is for do not matter here. */
function counts(pieces: readonly Pick<CutPiece, "across" | "along" | "count">[]): Map<string, number> {
  const found = new Map<string, number>();
  for (const { across, along, count } of pieces) {
    const key = `${Math.min(across, along) / INCH} x ${Math.max(across, along) / INCH}`;
    found.set(key, (found.get(key) ?? 0) + count);
  }
  return found;
}

describe.each(PUBLISHED_QUILTS)("$file", ({ file, finished, fabrics }) => {
  let planned: Awaited<ReturnType<typeof planQuilt>>;
  beforeAll(async () => {
    const path = new URL(`../../fixtures/quilts/${file}.yaml`, import.meta.url);
    planned = await planQuilt(readFileSync(path, "utf8"), `${file}.yaml`, USUAL_OPTIONS, solveHere);
  });

  test("has no errors and the published size", () => {
    const { value, diagnostics } = planned;
    expect(diagnostics.filter(({ severity }) => severity === "error")).toEqual([]);
    const top = value?.top;
    expect(exactToNumber(top?.across ?? { n: 0, r: 0, d: 1 }) / INCH).toBeCloseTo(finished[0], 3);
    expect(exactToNumber(top?.down ?? { n: 0, r: 0, d: 1 }) / INCH).toBeCloseTo(finished[1], 3);
  });

  test.each(fabrics.filter((fabric) => fabric.cutsDiffer === undefined))("cuts of $name", (fabric) => {
    const { value } = planned;
    const plan = value?.fabrics.find(({ name }) => name === fabric.name);
    const published = fabric.pieces.map(([a, b, count]) => ({ across: a * INCH, along: b * INCH, count }));
    expect(Object.fromEntries(counts(plan?.pieces ?? []))).toEqual(Object.fromEntries(counts(published)));
  });

  test.each(fabrics.filter((fabric) => fabric.inches !== null))("amount of $name", (fabric) => {
    const { value } = planned;
    const plan = value?.fabrics.find(({ name }) => name === fabric.name);
    const bought = (plan?.purchase?.length ?? Number.POSITIVE_INFINITY) / INCH;
    if (fabric.amountDiffers === undefined) expect(bought).toBeLessThanOrEqual(fabric.inches ?? 0);
    else expect(bought).toBeGreaterThan(fabric.inches ?? 0);
  });
});
