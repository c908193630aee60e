import { describe, expect, test } from "vitest";
import { auditPlan } from "../../src/audit/index.ts";
import { listCuts } from "../../src/cutlist/list-cuts.ts";
import { planCutLists } from "../../src/plan/plan-cut-lists.ts";
import type { FixedPiece } from "../../src/plan/pose-problem.ts";
import type { PieceSpec } from "../../src/spec/types.ts";
import { CM, cutListSpec, fabric, IN, piece, solveHere } from "../support/cut-list-spec.ts";

/** Plans from cloth to hand alone; null when it does not hold everything. */
async function fromDrawer(pieces: readonly PieceSpec[], cloth: FixedPiece) {
  const spec = cutListSpec([fabric("Drawer", pieces)]);
  const { value, diagnostics } = await planCutLists({
    spec,
    cutLists: listCuts(spec).value ?? [],
    fixedStock: [[cloth]],
    bolt: "none",
    solve: solveHere,
  });
  if (value === null) {
    expect(diagnostics.map(({ code }) => code)).toEqual(["STOCK-SHORT"]);
    return null;
  }
  expect(auditPlan(value)).toEqual([]);
  return value.fabrics[0]!;
}

function fatQuarters(available: number): FixedPiece {
  return { name: "fat quarter", across: 22 * IN, along: 18 * IN, available };
}

describe("published numbers of fat quarters, 18 x 22 in", () => {
  test.each([
    // Meadow Goose Quilt Tutorial, Fox Favorites, 2016: six to a fat quarter, lying one way.
    { what: "113 rectangles 9 1/2 x 5 in", size: [9.5, 5, 113], needed: 19 },
    // Orchard Lane, American Patchwork & Quilting, 2014: four to a fat quarter.
    { what: "49 squares 8 1/2 in", size: [8.5, 8.5, 49], needed: 13 },
    // Block construction (rail fence), Crazy Mom Quilts, 2014: seven strips to a fat quarter.
    { what: "99 strips 2 1/2 x 21 in", size: [2.5, 21, 99], needed: 15 },
  ] as const)("$what: $needed", async ({ size: [across, along, count], needed }) => {
    const pieces = [piece("piece", across, along, count)];
    const plan = await fromDrawer(pieces, fatQuarters(needed + 3));
    expect(plan?.lays).toHaveLength(needed);
    expect(plan?.purchase).toBeNull();
    expect(await fromDrawer(pieces, fatQuarters(needed - 1))).toBeNull();
  });
});

describe("squares from one fat quarter", () => {
  const METRIC = { name: "fat quarter", across: 55 * CM, along: 50 * CM, available: 1 };

  // Fat quarters, Gone to Earth, 2009: 50 x 55 cm still gives twelve 5 in squares.
  test("twelve of 5 in from 50 x 55 cm, and no more", async () => {
    expect(await fromDrawer([piece("square", 5, 5, 12)], METRIC)).not.toBeNull();
    expect(await fromDrawer([piece("square", 5, 5, 13)], METRIC)).toBeNull();
  });

  // derived geometry: rows of floor(55 / s), floor(50 / s) rows.
  test.each([
    [5, 110],
    [6.5, 56],
    [8, 36],
    [13, 12],
    [16, 9],
  ])("%f cm from 50 x 55 cm: %i", async (size, count) => {
    const square = (wanted: number) => {
      return { ...piece("square", 1, 1, wanted), across: size * CM, along: size * CM };
    };
    expect(await fromDrawer([square(count)], METRIC)).not.toBeNull();
    expect(await fromDrawer([square(count + 1)], METRIC)).toBeNull();
  });

  // derived geometry: only without straightening; pinked or narrow edges lose a row.
  test("a 10 in precut square gives four 5 in or sixteen 2 1/2 in squares, or two 5 x 9 1/2 in", async () => {
    const precut = { name: "precut square", across: 10 * IN, along: 10 * IN, available: 1 };
    expect(await fromDrawer([piece("a", 5, 5, 4)], precut)).not.toBeNull();
    expect(await fromDrawer([piece("b", 2.5, 2.5, 16)], precut)).not.toBeNull();
    expect(await fromDrawer([piece("c", 5, 9.5, 2)], precut)).not.toBeNull();
    expect(await fromDrawer([piece("c", 5, 9.5, 3)], precut)).toBeNull();
  });
});

test("the drawer first, then the bolt", async () => {
  const spec = cutListSpec([fabric("Sea", [piece("square", 8.5, 8.5, 14), piece("small", 4, 4, 30)])]);
  const { value } = await planCutLists({
    spec,
    cutLists: listCuts(spec).value ?? [],
    fixedStock: [[fatQuarters(2)]],
    solve: solveHere,
  });
  expect(auditPlan(value!)).toEqual([]);
  const [sea] = value!.fabrics;
  expect(sea?.lays.filter(({ source }) => source === "fixed").length).toBeGreaterThan(0);
  const alone = await planCutLists({ spec, cutLists: listCuts(spec).value ?? [], solve: solveHere });
  expect(sea!.bound.used).toBeLessThan(alone.value!.fabrics[0]!.bound.used);
});
