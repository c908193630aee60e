import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { workOf } from "../../src/engine/easing/work-measure.ts";
import { lessenWork, pack, verify } from "../../src/engine/index.ts";
import type {
  CuttingStyle,
  PackingItem,
  PackingProblem,
  PackingResult,
  SegmentUse,
  StripSection,
} from "../../src/engine/types.ts";
import { upTo } from "../support/sweep.ts";

function item(across: number, along: number, demand: number, turnable = false): PackingItem {
  return { across, along, demand, turnable, place: "strips" };
}

function onRoll(width: number, items: PackingItem[], style: CuttingStyle = "strips-2"): PackingProblem {
  return { style, items, roll: { width, available: null, costPerLength: 1 }, sheets: [] };
}

function segment(across: number, count: number, of: number): SegmentUse {
  return { across, count, stack: [{ item: of, turned: false, count: 1 }] };
}

function strip(along: number, count: number, ...segments: SegmentUse[]): StripSection {
  return { kind: "strips", column: { along, segments }, count };
}

function cutSo(problem: PackingProblem, bound: number, ...sections: StripSection[]): PackingResult {
  const rollLength = sections.reduce((sum, { column, count }) => sum + column.along * count, 0);
  const result: PackingResult = {
    status: rollLength === bound ? "proven" : "best-found",
    objective: rollLength * (problem.roll?.costPerLength ?? 0),
    rollLength,
    bound: { value: bound, kind: "dual", style: problem.style },
    layouts: [{ stock: "roll", sheet: -1, count: 1, firstCut: "across", sections }],
    missing: [],
    stats: { milliseconds: 0, cutShort: null },
  };
  expect(verify(problem, result)).toEqual([]);
  return result;
}

describe("the work of a plan, counted by hand", () => {
  test("strips, settings, kinds, subcuts and trims", () => {
    const problem = onRoll(40, [item(10, 6, 7), item(8, 5, 3)]);
    const plan = cutSo(
      problem,
      1,
      strip(6, 1, segment(10, 4, 0)),
      strip(6, 1, segment(10, 3, 0)),
      strip(5, 1, segment(8, 3, 1)),
    );
    // Widths 6 and 5, sizes 10 and 8. Four tens fill the forty: three cuts. The strip of three is part of it.
    expect(workOf(problem, plan)).toMatchObject({ strips: 3, settings: 4, kinds: 2, subcuts: 9, trims: 0 });
  });

  test("a run of one height is trimmed once", () => {
    const problem = onRoll(40, [item(10, 6, 2), item(8, 5, 2)]);
    const plan = cutSo(problem, 1, strip(6, 1, segment(10, 2, 0), segment(8, 2, 1)));
    expect(workOf(problem, plan)).toMatchObject({ strips: 1, settings: 4, kinds: 1, subcuts: 5, trims: 1 });
  });

  test("a stack is cut apart segment by segment", () => {
    const problem = onRoll(40, [item(10, 3, 6)], "strips-3");
    const pair = { across: 10, count: 3, stack: [{ item: 0, turned: false, count: 2 }] };
    const plan = cutSo(problem, 1, strip(6, 1, pair));
    expect(workOf(problem, plan)).toMatchObject({ strips: 1, settings: 3, kinds: 1, subcuts: 6, trims: 0 });
  });

  test("a stack that does not fill its strip is trimmed in every segment", () => {
    const problem = onRoll(40, [item(10, 3, 6), item(8, 7, 1)], "strips-3");
    const pair = { across: 10, count: 3, stack: [{ item: 0, turned: false, count: 2 }] };
    const plan = cutSo(problem, 1, strip(7, 1, pair, segment(8, 1, 1)));
    expect(workOf(problem, plan)).toMatchObject({ strips: 1, trims: 3 });
  });

  test("strips of the whole width need no subcut", () => {
    const problem = onRoll(40, [item(40, 4, 5)]);
    const plan = cutSo(problem, 20, strip(4, 5, segment(40, 1, 0)));
    expect(workOf(problem, plan)).toMatchObject({ strips: 5, settings: 1, kinds: 1, subcuts: 0, trims: 0 });
  });
});

describe("what the ruler cannot do in one go, counted by hand", () => {
  const problem = onRoll(60, [item(10, 30, 6), item(3, 12, 4), item(3, 1, 8)]);
  const plan = cutSo(
    problem,
    1,
    strip(30, 1, segment(10, 6, 0)),
    strip(12, 1, segment(3, 4, 1)),
    strip(1, 1, segment(3, 8, 2)),
  );

  test("a ruler of 24 reaches across 48 folded once and along a strip of 24", () => {
    // Every strip is longer than the reach; of the strip 30 high all five subcuts are longer than the ruler too.
    const table = { across: 48, inside: 24, narrow: 0 };
    expect(workOf(problem, plan, table)).toMatchObject({ strips: 3, long: 8, narrow: 0, turns: 3 });
    expect(workOf(problem, plan).long).toBe(0);
  });

  test("narrow parts: a narrow strip is one, narrow segments are one each", () => {
    // Under 4: four segments of 3, and in the strip 1 high the strip itself and eight of 3.
    const table = { across: 60, inside: 30, narrow: 4 };
    expect(workOf(problem, plan, table)).toMatchObject({ long: 0, narrow: 13 });
  });

  test("the mat is turned once to subcut, and again to cut along the strip", () => {
    const stacks = onRoll(40, [item(10, 3, 6), item(40, 2, 1), item(9, 6, 1)], "strips-3");
    const pair = { across: 10, count: 3, stack: [{ item: 0, turned: false, count: 2 }] };
    const cut = cutSo(stacks, 1, strip(6, 1, pair, segment(9, 1, 2)), strip(2, 1, segment(40, 1, 1)));
    expect(workOf(stacks, cut).turns).toBe(2);
  });

  test("narrow pieces that may turn lie along a narrow strip", async () => {
    const slim = onRoll(40, [item(2, 10, 4, true)]);
    const upright = cutSo(slim, 1, strip(10, 1, segment(2, 4, 0)));
    const table = { across: Infinity, inside: Infinity, narrow: 3 };
    const eased = await lessenWork(slim, upright, 10, {}, table);
    expect(workOf(slim, eased, table)).toMatchObject({ strips: 1, narrow: 1 });
    expect(eased.rollLength).toBe(2);
  });
});

describe("strips that can only be rearranged among themselves", () => {
  const mixed = [
    strip(5, 1, segment(10, 2, 0), segment(8, 2, 1)),
    strip(5, 1, segment(8, 3, 1)),
    strip(5, 1, segment(10, 2, 0)),
  ];

  test("beside a band they are sorted too, the band stays", async () => {
    const border: PackingItem = { ...item(6, 20, 1), place: "bands" };
    const problem = onRoll(46, [item(10, 5, 4), item(8, 5, 5), border]);
    const band = segment(6, 1, 2);
    const plan: PackingResult = {
      ...cutSo(onRoll(40, [item(10, 5, 4), item(8, 5, 5)]), 1, ...mixed),
      objective: 20,
      rollLength: 20,
      layouts: [
        {
          stock: "roll",
          sheet: -1,
          count: 1,
          firstCut: "across",
          sections: [{ kind: "bands", along: 20, count: 1, bands: [band], restAcross: 40, rest: mixed }],
        },
      ],
    };
    expect(verify(problem, plan)).toEqual([]);
    const eased = await lessenWork(problem, plan, 20);
    expect(verify(problem, eased)).toEqual([]);
    // The band and two strips, each of one size: 10 and 8 wide, 5 high, 20 and 6 of the band.
    expect(workOf(problem, eased)).toMatchObject({ strips: 3, kinds: 3 });
    expect(workOf(problem, plan)).toMatchObject({ strips: 4 });
    expect(eased.layouts[0]?.sections[0]).toMatchObject({ kind: "bands", along: 20, bands: [band] });
  });

  test.each(["across", "along"] as const)("on a sheet cut %s first", async (firstCut) => {
    const turned = firstCut === "along";
    const size = (across: number, along: number, demand: number): PackingItem =>
      turned ? item(along, across, demand) : item(across, along, demand);
    const [across, along] = turned ? [18, 40] : [40, 18];
    const problem: PackingProblem = {
      style: "strips-2",
      items: [size(10, 5, 4), size(8, 5, 5)],
      roll: null,
      sheets: [{ across, along, available: 1, cost: 1, firstCut: "either" }],
    };
    const plan: PackingResult = {
      ...cutSo(onRoll(40, [item(10, 5, 4), item(8, 5, 5)]), 1, ...mixed),
      status: "proven",
      objective: 1,
      rollLength: 0,
      layouts: [{ stock: "sheet", sheet: 0, count: 1, firstCut, sections: mixed }],
    };
    expect(verify(problem, plan)).toEqual([]);
    const eased = await lessenWork(problem, plan, 0);
    expect(verify(problem, eased)).toEqual([]);
    expect(workOf(problem, eased)).toMatchObject({ strips: 2, kinds: 2 });
  });
});

describe("plans whose simplest form is known", () => {
  test("two sizes of one width mixed in every strip are sorted, each to its own strip", async () => {
    // Both plans take two strips of 5: only the kinds of strip differ.
    const problem = onRoll(40, [item(10, 5, 4), item(8, 5, 5)]);
    const mixed = cutSo(
      problem,
      10,
      strip(5, 1, segment(10, 2, 0), segment(8, 2, 1)),
      strip(5, 1, segment(8, 3, 1)),
      strip(5, 1, segment(10, 2, 0)),
    );
    const eased = await lessenWork(problem, mixed, mixed.rollLength);
    expect(workOf(problem, eased)).toMatchObject({ strips: 2, settings: 3, kinds: 2, subcuts: 7, trims: 0 });
    expect(eased).toMatchObject({ rollLength: 10, objective: 10, status: "proven" });
  });

  test("length to spare lets one size have one strip width", async () => {
    // Turned, the last two pieces fit in a strip 6 high; upright they are cut like the rest.
    const problem = onRoll(40, [item(10, 9, 6, true)]);
    const sections = [strip(9, 1, segment(10, 4, 0)), { ...strip(10, 1), count: 1 }];
    sections[1]!.column.segments = [{ across: 9, count: 2, stack: [{ item: 0, turned: true, count: 1 }] }];
    const turned = cutSo(problem, 18, ...sections);
    const eased = await lessenWork(problem, turned, 20);
    expect(workOf(problem, eased)).toMatchObject({ strips: 2, settings: 2, kinds: 1, trims: 0 });
    expect(eased.rollLength).toBe(18);
  });

  test("a strip with two pieces in it is spread over the ends of others", async () => {
    const problem = onRoll(40, [item(15, 7, 4), item(10, 7, 2)]);
    const loose = cutSo(problem, 14, strip(7, 2, segment(15, 2, 0)), strip(7, 1, segment(10, 2, 1)));
    const eased = await lessenWork(problem, loose, loose.rollLength);
    expect(workOf(problem, eased)).toMatchObject({ strips: 2, kinds: 1 });
    expect(eased.rollLength).toBe(14);
  });

  test("of equal work and length, the waste is gathered in one strip's end", async () => {
    const problem = onRoll(40, [item(8, 5, 6)]);
    const even = cutSo(problem, 10, strip(5, 2, segment(8, 3, 0)));
    const eased = await lessenWork(problem, even, 10);
    const ends = eased.layouts[0]!.sections.map((section) =>
      section.kind === "strips"
        ? 40 - section.column.segments.reduce((sum, { across, count }) => sum + across * count, 0)
        : 0,
    );
    expect(Math.max(...ends)).toBe(32);
  });

  test("whole-width strips, sheets and the bound are left alone", async () => {
    const problem: PackingProblem = {
      ...onRoll(40, [item(40, 4, 3), item(10, 5, 4), item(8, 5, 7)]),
      sheets: [{ across: 8, along: 5, available: 1, cost: 0, firstCut: "across" }],
    };
    const roll = [
      strip(5, 1, segment(10, 2, 1), segment(8, 2, 2)),
      strip(5, 1, segment(10, 1, 1), segment(8, 3, 2)),
      strip(5, 1, segment(10, 1, 1), segment(8, 1, 2)),
      strip(4, 3, segment(40, 1, 0)),
    ];
    const plain = cutSo(
      { ...problem, items: [problem.items[0]!, problem.items[1]!, item(8, 5, 6)] },
      20,
      ...roll,
    );
    const sheet = {
      stock: "sheet" as const,
      sheet: 0,
      count: 1,
      firstCut: "across" as const,
      sections: [strip(5, 1, segment(8, 1, 2))],
    };
    const mixed: PackingResult = { ...plain, layouts: [sheet, ...plain.layouts] };
    const eased = await lessenWork(problem, mixed, mixed.rollLength);
    expect(verify(problem, eased)).toEqual([]);
    expect(eased.layouts[0]).toEqual(sheet);
    expect(eased.bound).toEqual(mixed.bound);
    expect(eased.layouts[1]!.sections).toContainEqual(strip(4, 3, segment(40, 1, 0)));
    expect(workOf(problem, eased).total).toBeLessThan(workOf(problem, mixed).total);
  });

  test("what cannot be bettered comes back itself", async () => {
    const problem = onRoll(40, [item(10, 5, 8)]);
    const plan = cutSo(problem, 10, strip(5, 2, segment(10, 4, 0)));
    expect((await lessenWork(problem, plan, 100)).layouts).toBe(plan.layouts);
  });

  test("thousands of copies are as few layouts as a few copies", async () => {
    const problem = onRoll(340, [
      item(20, 20, 9000, true),
      item(28, 52, 4000, true),
      item(33, 20, 2500, true),
    ]);
    const result = await pack(problem, { effort: 300 });
    const eased = await lessenWork(problem, result, result.rollLength + 36);
    // Counts are no objects: the copies of a layout are one entry.
    expect(eased.layouts.length).toBeLessThan(200);
    expect(verify(problem, eased)).toEqual([]);
  });
});

const RUNS = { seed: 20_250, numRuns: upTo(4, 10) };

function rolls(style: CuttingStyle): fc.Arbitrary<PackingProblem> {
  return fc.integer({ min: 12, max: 40 }).chain((width) => {
    const one = fc.record({
      across: fc.integer({ min: 1, max: width }),
      along: fc.integer({ min: 1, max: 20 }),
      demand: fc.integer({ min: 1, max: 12 }),
      turnable: fc.boolean(),
      place: fc.constant("strips" as const),
    });
    return fc.array(one, { minLength: 1, maxLength: 5 }).map((items) => onRoll(width, items, style));
  });
}

for (const style of ["strips-2", "strips-3"] as const) {
  describe(`laws of less work in ${style}`, () => {
    test("right, no longer than allowed, never more work, and not to be bettered twice", () =>
      fc.assert(
        fc.asyncProperty(rolls(style), fc.integer({ min: 0, max: 20 }), async (problem, spare) => {
          const result = await pack(problem, { effort: 300 });
          const limit = result.rollLength + spare;
          const table = { across: 30, inside: 12, narrow: 3 };
          const lessen = (plan: PackingResult) => lessenWork(problem, plan, limit, {}, table);
          const eased = await lessen(result);
          expect(verify(problem, eased)).toEqual([]);
          expect(eased.rollLength).toBeLessThanOrEqual(limit);
          expect(eased.bound).toEqual(result.bound);
          expect(eased.status === "proven").toBe(eased.objective === eased.bound.value);
          expect(workOf(problem, eased, table).total).toBeLessThanOrEqual(
            workOf(problem, result, table).total,
          );
          expect((await lessen(eased)).layouts).toBe(eased.layouts);
          expect((await lessen(result)).layouts).toEqual(eased.layouts);
        }),
        RUNS,
      ));

    test("the order of the sizes changes nothing", () =>
      fc.assert(
        fc.asyncProperty(rolls(style), async (problem) => {
          const turned = { ...problem, items: problem.items.slice().reverse() };
          const works: number[] = [];
          for (const one of [problem, turned]) {
            const result = await pack(one, { effort: 300 });
            // A search cut short may end anywhere; only finished ones are bound to agree.
            if (result.status !== "proven") return;
            works.push(workOf(one, await lessenWork(one, result, result.rollLength + 10)).total);
          }
          expect(works[0]).toBe(works[1]);
        }),
        RUNS,
      ));
  });
}
