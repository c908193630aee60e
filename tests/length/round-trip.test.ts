import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  formatLength,
  formatMeasure,
  formatSize,
  type LengthUnit,
  METRE,
  parseLength,
  parseSize,
  type Ruler,
  toTicksExact,
  YARD,
} from "../../src/length/index.ts";

function read(text: string, unit: LengthUnit): number | null {
  const parsed = parseLength(text, unit);
  return parsed.ok ? toTicksExact(parsed.value) : null;
}

const rulers: [string, Ruler, number][] = [
  ["1/8 in", { unit: "in", mark: 2032 }, 10 * YARD],
  ["1/16 in", { unit: "in", mark: 1016 }, 10 * YARD],
  ["1/4 in", { unit: "in", mark: 4064 }, 10 * YARD],
  ["0.25 cm", { unit: "cm", mark: 1600 }, 10 * METRE],
  ["0.5 cm", { unit: "cm", mark: 3200 }, 10 * METRE],
  ["1 mm", { unit: "mm", mark: 640 }, 10 * METRE],
  ["1 mm, in cm", { unit: "cm", mark: 640 }, 10 * METRE],
];

describe.each(rulers)("every mark of a ruler in %s up to ten yards or metres", (_name, ruler, most) => {
  test("is printed so that it reads back the same, and printed the same again", () => {
    const wrong: string[] = [];
    for (let ticks = 0; ticks <= most; ticks += ruler.mark) {
      const plain = formatLength(ticks, ruler);
      const back = read(plain, "m");
      const bare = read(formatLength(ticks, ruler, { unit: false }), ruler.unit);
      const typeset = read(formatLength(ticks, ruler, { typeset: true }), "m");
      const again = back === null ? "" : formatLength(back, ruler);
      if (back !== ticks || bare !== ticks || typeset !== ticks || again !== plain) wrong.push(plain);
    }
    expect(wrong).toEqual([]);
  });
});

test("amounts in every measure a shop uses read back the same", () => {
  for (const [unit, step] of [
    ["yd", YARD / 8],
    ["yd", YARD / 3],
    ["m", METRE / 20],
    ["cm", METRE / 20],
    ["in", YARD / 36],
  ] as const) {
    for (let ticks = 0; ticks <= 20 * YARD; ticks += step) {
      expect(read(formatMeasure(ticks, unit), "mm")).toBe(ticks);
    }
  }
});

test("any whole number of ticks is printed finely enough to tell it from its neighbours", () => {
  fc.assert(
    fc.property(
      fc.integer({ min: -6_000_000, max: 6_000_000 }),
      fc.constantFrom(...rulers.map(([, ruler]) => ruler)),
      (ticks, ruler) => {
        const parsed = parseLength(formatLength(ticks, ruler), "m");
        if (!parsed.ok) throw new Error(JSON.stringify(parsed.problem.fault));
        expect(Math.round(Number(parsed.value.n) / Number(parsed.value.d)) - ticks).toBe(0);
      },
    ),
    { seed: 20, numRuns: 2000 },
  );
});

test("sizes read back the same", () => {
  const sides = fc.integer({ min: 1, max: 3000 });
  fc.assert(
    fc.property(sides, sides, fc.constantFrom(...rulers), fc.boolean(), (a, b, [, ruler], typeset) => {
      const parsed = parseSize(formatSize(a * ruler.mark, b * ruler.mark, ruler, { typeset }), "m");
      if (!parsed.ok) throw new Error(JSON.stringify(parsed.problem.fault));
      expect([toTicksExact(parsed.across), toTicksExact(parsed.along)]).toEqual([
        a * ruler.mark,
        b * ruler.mark,
      ]);
    }),
    { seed: 21, numRuns: 1000 },
  );
});

test("junk never throws", () => {
  fc.assert(
    fc.property(fc.string({ unit: "binary", maxLength: 60 }), (text) => {
      expect(typeof parseLength(text, "in").ok).toBe("boolean");
      expect(typeof parseSize(text, "cm").ok).toBe("boolean");
    }),
    { seed: 22, numRuns: 3000 },
  );
});

describe("how lengths look", () => {
  const eighths: Ruler = { unit: "in", mark: 2032 };
  const centimetres: Ruler = { unit: "cm", mark: 1600 };
  test.each([
    [formatLength(40640, eighths), "2 1/2 in"],
    [formatLength(40640, eighths, { unit: false }), "2 1/2"],
    [formatLength(40640, eighths, { typeset: true }), "2½ in"],
    [formatLength(37592, eighths, { typeset: true }), "2⁵⁄₁₆ in"],
    [formatLength(8128, eighths), "1/2 in"],
    [formatLength(0, eighths), "0 in"],
    [formatLength(-2032, eighths), "-1/8 in"],
    [formatLength(41600, centimetres), "6.5 cm"],
    // A length the ruler cannot say is told in one that can, with its measure even where none was asked for.
    [formatLength(41600, eighths, { unit: false }), "65 mm"],
    [formatLength(2032, centimetres), "1/8 in"],
    [formatSize(40640, 73152, eighths), "2 1/2 x 4 1/2 in"],
    [formatSize(40640, 73152, eighths, { typeset: true }), "2½ × 4½ in"],
    [formatSize(40640, 73152, eighths, { unit: false }), "2 1/2 x 4 1/2"],
    [formatSize(40640, 41600, eighths), "2 1/2 in x 65 mm"],
    [formatMeasure((11 * YARD) / 8, "yd"), "1 3/8 yd"],
    [formatMeasure((4 * YARD) / 3, "yd"), "1 1/3 yd"],
    [formatMeasure((11 * METRE) / 10, "m"), "1.1 m"],
  ])("%s", (printed, expected) => {
    expect(printed).toBe(expected);
  });
});
