import { describe, expect, test } from "vitest";
import type { PackingItem, StripColumn } from "../../src/engine/types.ts";
import { buildLay } from "../../src/plan/lays/build-lay.ts";
import { buildStrip } from "../../src/plan/lays/build-strip.ts";
import { everyPart } from "../../src/plan/lays/parts.ts";
import type { Part } from "../../src/plan/types.ts";

function item(across: number, along: number): PackingItem {
  return { across, along, demand: 1, turnable: true, place: "strips" };
}

/** A part as text: `4x6` a piece, `(4x6)` waste, `[... | ...]` cut along, `[... / ...]` cut across. */
function drawn(part: Part): string {
  const size = `${part.across}x${part.along}`;
  if (part.parts.length === 0) return part.cause === null ? size : `(${size})`;
  return `[${part.parts.map(drawn).join(part.cut === "along" ? " | " : " / ")}]`;
}

const ITEMS = [item(6, 8), item(4, 3), item(3, 3), item(2, 4)];
const FRAME = { items: ITEMS, swapped: false, keepFrom: 4 };

function use(index: number, turned = false, count = 1) {
  return { item: index, turned, count };
}

describe("a strip", () => {
  test("has whole pieces first, then one run for each trimmed height, its end last", () => {
    const column: StripColumn = {
      along: 8,
      segments: [
        { across: 3, count: 2, stack: [use(2)] },
        { across: 4, count: 1, stack: [use(1)] },
        { across: 6, count: 2, stack: [use(0)] },
      ],
    };
    const strip = buildStrip(column, 30, FRAME);
    expect(drawn(strip)).toBe("[6x8 | 6x8 | [[4x3 | 3x3 | 3x3] / (10x5)] | (8x8)]");
  });

  // The rest of the strip is trimmed in one cut, as a maker would; but an end worth keeping as high as the strip
  // stays so where trimmed it would not be kept, and one longer than the pieces is not cut up for them.
  test("has its end trimmed with the last run", () => {
    const column = (count: number): StripColumn => ({
      along: 8,
      segments: [
        { across: 6, count: 1, stack: [use(0)] },
        { across: 3, count, stack: [use(2)] },
      ],
    });
    const strip = (count: number, keepFrom: number) =>
      drawn(buildStrip(column(count), 20, { ...FRAME, keepFrom }));
    expect(strip(3, 3)).toBe("[6x8 | [[3x3 | 3x3 | 3x3 | (5x3)] / (14x5)]]");
    expect(strip(3, 6)).toBe("[6x8 | [[3x3 | 3x3 | 3x3 | (5x3)] / (14x5)]]");
    expect(strip(3, 4)).toBe("[6x8 | [[3x3 | 3x3 | 3x3] / (9x5)] | (5x8)]");
    expect(strip(2, 3)).toBe("[6x8 | [[3x3 | 3x3] / (6x5)] | (8x8)]");
  });

  test("takes equal stacks apart row by row where they need a trim", () => {
    const column: StripColumn = { along: 8, segments: [{ across: 4, count: 3, stack: [use(1), use(2)] }] };
    expect(drawn(buildStrip(column, 12, FRAME))).toBe(
      "[[[4x3 | 4x3 | 4x3] / [3x3 | 3x3 | 3x3 | (3x3)] / (12x2)]]",
    );
  });

  test("leaves equal stacks apart where nothing is trimmed", () => {
    const column: StripColumn = { along: 6, segments: [{ across: 4, count: 2, stack: [use(1, false, 2)] }] };
    expect(drawn(buildStrip(column, 8, FRAME))).toBe("[[4x3 / 4x3] | [4x3 / 4x3]]");
  });

  test("gives a segment wider than its only piece no trimming of its own", () => {
    const column: StripColumn = { along: 8, segments: [{ across: 9, count: 1, stack: [use(0)] }] };
    expect(drawn(buildStrip(column, 9, FRAME))).toBe("[6x8 | (3x8)]");
  });

  test("says which pieces lie turned", () => {
    const column: StripColumn = { along: 6, segments: [{ across: 8, count: 1, stack: [use(0, true)] }] };
    const [leaf] = buildStrip(column, 8, FRAME).parts;
    expect(leaf).toMatchObject({ across: 8, along: 6, turned: true, piece: 0 });
  });
});

describe("a lay", () => {
  const cloth = {
    source: "bolt",
    name: "bolt",
    across: 30,
    along: 60,
    straighten: 2,
    strip: false,
    keepFrom: 4,
  } as const;

  test("is straightened, cut lengthwise first, then into strips from the widest down", () => {
    const layout = {
      stock: "roll",
      sheet: -1,
      count: 1,
      firstCut: "across",
      sections: [
        {
          kind: "strips",
          count: 1,
          column: { along: 3, segments: [{ across: 4, count: 1, stack: [use(1)] }] },
        },
        {
          kind: "strips",
          count: 2,
          column: { along: 8, segments: [{ across: 6, count: 1, stack: [use(0)] }] },
        },
        {
          kind: "bands",
          along: 20,
          count: 1,
          bands: [{ across: 6, count: 2, stack: [use(0, false, 2)] }],
          restAcross: 18,
          rest: [
            {
              kind: "strips",
              count: 1,
              column: { along: 8, segments: [{ across: 6, count: 3, stack: [use(0)] }] },
            },
          ],
        },
      ],
    } as const;
    const sections = structuredClone(layout) as unknown as Parameters<typeof buildLay>[1][number];
    const { root } = buildLay(cloth, [sections], ITEMS);
    expect(root.parts.map(drawn)).toEqual([
      "(30x2)",
      "[[6x8 / 6x8 / (6x4)] | [6x8 / 6x8 / (6x4)] | [[6x8 | 6x8 | 6x8] / (18x12)]]",
      "[6x8 | (24x8)]",
      "[6x8 | (24x8)]",
      "[4x3 | (26x3)]",
      "(30x19)",
    ]);
    const numbered = [...everyPart(root)].filter(({ number }) => number > 0);
    expect(numbered.map(({ role, number, kind }) => [role, number, kind])).toEqual([
      ["band", 1, 0],
      ["band", 2, 0],
      ["strip", 3, 1],
      ["strip", 4, 2],
      ["strip", 5, 2],
      ["strip", 6, 3],
    ]);
  });

  test("of a fixed piece may be cut along first: axes swap, and turns speak of the cloth", () => {
    // The strip runs along the sheet's 20; the 6 x 8 piece as written stands 8 along the sheet.
    const column: StripColumn = { along: 6, segments: [{ across: 8, count: 2, stack: [use(0)] }] };
    const layout = {
      stock: "sheet",
      sheet: 0,
      count: 1,
      firstCut: "along",
      sections: [{ kind: "strips", count: 1, column }],
    } as const;
    const scrap = {
      source: "fixed",
      name: "scrap",
      across: 10,
      along: 20,
      straighten: 0,
      strip: false,
      keepFrom: 4,
    } as const;
    const { root } = buildLay(scrap, [{ ...layout, sections: [...layout.sections] }], ITEMS);
    expect(root).toMatchObject({ x: 0, y: 0, across: 10, along: 20, cut: "along" });
    expect(drawn(root)).toBe("[[6x8 / 6x8 / (6x4)] | (4x20)]");
    expect(root.parts[0]?.parts[0]).toMatchObject({ role: "piece", turned: false });
  });

  test("longer than its cloth is refused", () => {
    const column: StripColumn = { along: 59, segments: [] };
    const layout = {
      stock: "roll",
      sheet: -1,
      count: 1,
      firstCut: "across",
      sections: [{ kind: "strips", count: 1, column }],
    } as const;
    expect(() => buildLay(cloth, [{ ...layout, sections: [...layout.sections] }], ITEMS)).toThrow(
      /longer than/,
    );
  });
});
