import { describe, expect, test } from "vitest";
import { type LengthUnit, parseLength, parseSize, toTicksExact } from "../../src/length/index.ts";
import { english } from "../../src/words/index.ts";

function ticks(text: string, unit: LengthUnit = "in"): number | null {
  const read = parseLength(text, unit);
  if (!read.ok) throw new Error(`${text}: ${JSON.stringify(read.problem.fault)}`);
  return toTicksExact(read.value);
}

describe("lengths as makers write them", () => {
  const halfInch = 8128;
  test.each([
    ["2 1/2", 5 * halfInch],
    ["2-1/2", 5 * halfInch],
    ["2 - 1/2", 5 * halfInch],
    ["2½", 5 * halfInch],
    ["2 ½", 5 * halfInch],
    ['2.5"', 5 * halfInch],
    ["2 1/2″", 5 * halfInch],
    ["2 1/2''", 5 * halfInch],
    ["2 1/2 in.", 5 * halfInch],
    ["2 1/2 Inches", 5 * halfInch],
    ["2\u00a01\u20442 inch", 5 * halfInch],
    ["2⁵⁄₁₆ in", 37 * 1016],
    ["½", halfInch],
    [".5", halfInch],
    ["1/8", 2032],
    ["9/8", 9 * 2032],
    ["0.125 in", 2032],
    ["0,125 in", 2032],
    ["1/128 in", 127],
    ["6,5 cm", 41600],
    ["6.5 cm", 41600],
    ["65 mm", 41600],
    ["0.05 mm", 32],
    ["1 1/4 yd", 45 * 2 * halfInch],
    ["1/3 yd", 12 * 2 * halfInch],
    ["1.2 m", 768000],
    ["1,2 m", 768000],
    ["1 yd 9 in", 45 * 2 * halfInch],
    ["1 m 20 cm", 768000],
    ["-2 in", -4 * halfInch],
  ])("%s", (text, expected) => {
    expect(ticks(text)).toBe(expected);
  });

  test("a bare number is in the default measure and says so", () => {
    expect(parseLength("6,5", "cm")).toMatchObject({ ok: true, unit: null });
    expect(ticks("6,5", "cm")).toBe(41600);
    expect(parseLength("6,5 cm", "in")).toMatchObject({ ok: true, unit: "cm" });
  });

  test("thirds are kept exact", () => {
    const read = parseLength("1/3", "in");
    expect(read.ok && [read.value.n, read.value.d]).toEqual([16256n, 3n]);
  });
});

describe("what is not a length says what and where", () => {
  test.each([
    ["2 1/x", "1/x", 3],
    ["2 5/4", "5/4", 3],
    ["1/0", "1/0", 1],
    ["1,200 mm", "1,200", 1],
    ["", "", 1],
    ["   ", "", 4],
    ["abc", "abc", 1],
    ["2 1/2 inchs", "inchs", 7],
    ["2½ inchs", "inchs", 4],
    ["1' 6\"", "' 6\"", 2],
    ["1 yd 20 cm", "20 cm", 6],
    ["2.5.5", ".5", 4],
    ["1e5", "e5", 2],
    ["NaN", "NaN", 1],
    ["Infinity", "Infinity", 1],
    ["2 1/2-", "-", 6],
    ["1/2/3", "/3", 4],
    ["99999999999999999999", "99999999999999999999", 1],
  ])("%s", (text, found, column) => {
    const read = parseLength(text, "in");
    expect(read).toMatchObject({ ok: false, problem: { found, column } });
    expect(read.ok ? "" : english.lengthFaults.hint(read.problem.fault, read.problem.unit)).toMatch(/`/);
  });

  test("the hint follows the measure of the file", () => {
    const read = parseLength("x", "cm");
    expect(read.ok ? "" : english.lengthFaults.hint(read.problem.fault, read.problem.unit)).toContain(
      "6.5 cm",
    );
  });

  test("a very long text is refused unread", () => {
    expect(parseLength("1 ".repeat(1e6), "in").ok).toBe(false);
    expect(parseSize(" ".repeat(2e6), "in").ok).toBe(false);
  });
});

describe("sizes", () => {
  test.each([
    "2 1/2 x 4 1/2 in",
    "2 1/2 x 4 1/2",
    "2 1/2 in x 4 1/2",
    '2.5" by 4.5"',
    "2½×4½",
    "2 1/2 X 4 1/2 in",
    "2.5*4.5",
  ])("%s", (text) => {
    const read = parseSize(text, "in");
    expect(read.ok && [toTicksExact(read.across), toTicksExact(read.along)]).toEqual([40640, 73152]);
  });

  test("one measure holds for both", () => {
    const read = parseSize("6,5 x 11,5 cm", "in");
    expect(read.ok && [toTicksExact(read.across), toTicksExact(read.along)]).toEqual([41600, 73600]);
  });

  test("squares", () => {
    const read = parseSize("4 1/2 in square", "in");
    expect(read.ok && [toTicksExact(read.across), toTicksExact(read.along)]).toEqual([73152, 73152]);
  });

  test("inches and yards go together, inches and centimetres do not", () => {
    expect(parseSize("4 1/2 in x 2 yd", "in").ok).toBe(true);
    expect(parseSize("2 in x 5 cm", "in")).toMatchObject({
      ok: false,
      kind: "mixed",
      problem: { column: 8 },
    });
  });

  test.each([
    ["2 1/2", 1],
    ["2 x 4 x 5", 1],
    ["2 x", 4],
    ["4 1/2 x 2 yd", 1],
    ["2 x 1/q", 5],
    ["2 1/x x 4 1/2", 3],
    ["q x 2", 1],
  ])("%s is refused", (text, column) => {
    expect(parseSize(text, "in")).toMatchObject({ ok: false, problem: { column } });
  });
});
