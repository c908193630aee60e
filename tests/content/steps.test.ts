import { describe, expect, test } from "vitest";
import { cuttingSteps, instructionsFor } from "../../src/content/index.ts";
import { listCuts } from "../../src/cutlist/list-cuts.ts";
import type { SegmentUse, StockLayout, StripSection } from "../../src/engine/types.ts";
import { planCutLists } from "../../src/plan/plan-cut-lists.ts";
import type { Solve } from "../../src/plan/request.ts";
import type { Plan } from "../../src/plan/types.ts";
import type { CutListSpec } from "../../src/spec/types.ts";
import { english } from "../../src/words/index.ts";
import { CM, cutListSpec, fabric, fullWidth, IN, piece } from "../support/cut-list-spec.ts";
import { answering, borders } from "../support/hand-made-packings.ts";

/** The steps of the only fabric, each in one line. */
function told(plan: Plan): string[] {
  return plan.fabrics.flatMap((fabric) =>
    instructionsFor(plan, fabric, english).map(({ phrases, parts }) =>
      [phrases.join("; "), ...parts.map((part) => `${part.strips.join()}: ${part.phrases.join("; ")}`)].join(
        " | ",
      ),
    ),
  );
}

async function planned(spec: CutListSpec, solve: Solve): Promise<Plan> {
  const cutLists = listCuts(spec).value ?? [];
  const { value } = await planCutLists({ spec, cutLists, solve });
  if (value === null) throw new Error("the packing written by hand makes no plan");
  return value;
}

function segments(across: number, count: number, ...items: [item: number, count: number][]): SegmentUse {
  return {
    across: across * IN,
    count,
    stack: items.map(([item, count]) => ({ item, turned: false, count })),
  };
}

function strip(along: number, count: number, ...cut: SegmentUse[]): StripSection {
  return { kind: "strips", count, column: { along: along * IN, segments: cut } };
}

function onRoll(...sections: StripSection[]): { layouts: StockLayout[]; length: number } {
  const length = sections.reduce((sum, section) => sum + section.count * section.column.along, 0);
  return { layouts: [{ stock: "roll", sheet: -1, count: 1, firstCut: "across", sections }], length };
}

/** The sentences of one fabric cut as the packing says, 42 in usable. Items come in the order of the letters. */
async function sentences(
  pieces: Parameters<typeof fabric>[1],
  sections: StripSection[],
  more: Parameters<typeof fabric>[2] = {},
): Promise<string[]> {
  const { layouts, length } = onRoll(...sections);
  const spec = cutListSpec([fabric("Sea", pieces, more)], { style: "strips-3" });
  const bound = { value: length, kind: "exhausted", style: "strips-3" } as const;
  const plan = await planned(spec, answering(layouts, length, { bound }));
  return told(plan);
}

describe("a step as a maker writes it", () => {
  test("strips, squares, and the rest trimmed for smaller squares", async () => {
    const pieces = [piece("sky", 4.5, 4.5, 26), piece("foam", 2.5, 2.5, 6)];
    const steps = await sentences(pieces, [
      strip(4.5, 2, segments(4.5, 9, [0, 1])),
      strip(4.5, 1, segments(4.5, 8, [0, 1]), segments(2.5, 2, [1, 1])),
      strip(2.5, 1, segments(2.5, 4, [1, 1])),
    ]);
    expect(steps).toEqual([
      "Cut 3 strips 4 1/2 in x WOF | 1,2: subcut 18 squares 4 1/2 in [A] (9 from each strip) | 3: subcut 8 squares 4 1/2 in [A]; trim the rest to 2 1/2 in and subcut 2 squares 2 1/2 in [B]",
      "Cut 1 strip 2 1/2 in x WOF; subcut 4 squares 2 1/2 in [B]",
    ]);
  });

  test("one of a thing is one", async () => {
    const steps = await sentences([piece("a", 6, 9, 1)], [strip(9, 1, segments(6, 1, [0, 1]))], {
      straighten: IN,
    });
    expect(steps).toEqual([
      "Straighten the cut end, square to the selvage: trim off 1 in",
      "Cut 1 strip 9 in x WOF; subcut 1 rectangle 6 x 9 in [A]",
    ]);
  });

  test("full-width strips are kept whole", async () => {
    const steps = await sentences([fullWidth("binding", 2.25, 3)], [strip(2.25, 3, segments(42, 1, [0, 1]))]);
    expect(steps).toEqual(["Cut 3 strips 2 1/4 in x WOF; keep 3 whole [A]"]);
  });

  test("two sizes from each of several strips", async () => {
    const pieces = [piece("a", 6, 4, 8, { turn: "fixed" }), piece("b", 2, 4, 6, { turn: "fixed" })];
    const steps = await sentences(pieces, [strip(4, 2, segments(6, 4, [0, 1]), segments(2, 3, [1, 1]))]);
    expect(steps).toEqual([
      "Cut 2 strips 4 in x WOF; subcut 8 rectangles 6 x 4 in [A] and 6 rectangles 2 x 4 in [B] (4 and 3 from each strip)",
    ]);
  });

  test("strips of one width are cut together, then told apart", async () => {
    const pieces = [piece("a", 6, 4, 9, { turn: "fixed" }), piece("b", 2, 4, 12, { turn: "fixed" })];
    const steps = await sentences(pieces, [
      strip(4, 1, segments(6, 7, [0, 1])),
      strip(4, 2, segments(6, 1, [0, 1]), segments(2, 6, [1, 1])),
    ]);
    expect(steps).toEqual([
      "Cut 3 strips 4 in x WOF | 1,2: subcut 2 rectangles 6 x 4 in [A] and 12 rectangles 2 x 4 in [B] (1 and 6 from each strip) | 3: subcut 7 rectangles 6 x 4 in [A]",
    ]);
  });

  test("stacks are cut again along the strip, equal rows told together", async () => {
    const pieces = [piece("a", 6, 4, 10, { turn: "fixed" }), piece("b", 5, 3, 10, { turn: "fixed" })];
    const plain = await sentences(
      [piece("a", 6, 4, 10, { turn: "fixed" })],
      [strip(8, 1, segments(6, 5, [0, 2]))],
    );
    expect(plain).toEqual([
      "Cut 1 strip 8 in x WOF; subcut 5 segments 6 in and cut each along the strip into 2 rectangles 6 x 4 in [A]",
    ]);
    // b is narrower than its segment: the five stacks come off as one block, cut into rows, then subcut.
    const rows = await sentences(pieces, [strip(14, 1, segments(6, 5, [0, 2], [1, 2]))]);
    expect(rows).toEqual([
      // 24 in of the ruler reach along four stacks.
      "Cut 1 strip 14 in x WOF; subcut 1 segment 24 in and cut it along the strip into 2 rows 4 in (8 rectangles 6 x 4 in [A]) and 2 rows 3 in (8 rectangles 5 x 3 in [B]); subcut 1 segment 6 in and cut it along the strip into 2 rectangles 6 x 4 in [A] and 2 rectangles 5 x 3 in [B]",
    ]);
  });

  test("lengthwise strips and the width beside them", async () => {
    const { spec, solve } = borders();
    const plan = await planned(spec, solve);
    expect(told(plan)).toEqual([
      "Straighten the cut end, square to the selvage: trim off 1/2 in",
      "Cut off one length of 60 in, the whole width of the fabric | 1,2: cut 2 strips 6 in wide lengthwise, along the selvage; keep 2 whole [A] | 3,4,5,6: cut 4 strips 12 in x 30 in out of the width beside those; subcut 12 rectangles 9 x 12 in [B] (3 from each strip)",
    ]);
  });
});

describe("the handout", () => {
  test("cautions come before the first cut, and amounts are called estimates", async () => {
    const { spec, solve } = borders();
    const text = cuttingSteps(await planned(spec, solve), true, english);
    expect(text.indexOf("Close the blade after every cut")).toBeGreaterThan(0);
    expect(text.indexOf("Close the blade after every cut")).toBeLessThan(text.indexOf("  1. "));
    expect(text).toMatch("Amounts are estimates: check them");
  });

  test("lines stay within a page and end without blanks", async () => {
    const { spec, solve } = borders();
    for (const line of cuttingSteps(await planned(spec, solve), true, english).split("\n")) {
      expect(line.length).toBeLessThanOrEqual(110);
      expect(line).toBe(line.trimEnd());
    }
  });

  test("metric rulers read in decimals", async () => {
    const ruler = { unit: "cm", mark: 1600 } as const;
    const cm = (value: number) => (value * CM) / IN;
    const spec = cutListSpec(
      [fabric("Frost", [piece("a", cm(6.5), cm(11.5), 9, { turn: "fixed" })], { straighten: 2.5 * CM })],
      { ruler },
    );
    const { layouts, length } = onRoll(strip(cm(11.5), 1, segments(cm(6.5), 9, [0, 1])));
    const plan = await planned(spec, answering(layouts, length));
    expect(told(plan)).toEqual([
      "Straighten the cut end, square to the selvage: trim off 2.5 cm",
      "Cut 1 strip 11.5 cm x WOF; subcut 9 rectangles 6.5 x 11.5 cm [A]",
    ]);
  });
});
