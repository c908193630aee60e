import { describe, expect, test } from "vitest";
import { nearest, quote, type WordedDiagnostic } from "../../src/diagnostics/index.ts";
import { formatDiagnostic } from "../../src/words/index.ts";

const diagnostic: WordedDiagnostic = {
  code: "COUNT-NOT-WHOLE",
  severity: "error",
  message: "The count is `1.5`.",
  hint: "For example `24`.",
  path: "fabrics[0].pieces[0].count",
  at: { file: "a.yaml", line: 2, column: 8 },
};

describe("a printed diagnostic", () => {
  test("has place, code, field, message, the line with a caret, and what would help", () => {
    expect(formatDiagnostic(diagnostic, "name: x\ncount: 1.5\n")).toBe(
      [
        "a.yaml:2:8: error COUNT-NOT-WHOLE (fabrics[0].pieces[0].count)",
        "  The count is `1.5`.",
        "  2 | count: 1.5",
        "    |        ^",
        "  For example `24`.",
      ].join("\n"),
    );
  });

  test("does without the text, the place and the hint", () => {
    expect(formatDiagnostic({ ...diagnostic, at: null, hint: "", path: "" })).toBe(
      "error COUNT-NOT-WHOLE\n  The count is `1.5`.",
    );
  });

  test("shows a window of a very long line", () => {
    const text = `${"x".repeat(500)}HERE${"y".repeat(500)}`;
    const printed = formatDiagnostic({ ...diagnostic, at: { file: "a", line: 1, column: 501 } }, text).split(
      "\n",
    );
    const caret = printed[3]?.indexOf("^") ?? -1;
    expect(printed[2]?.slice(caret, caret + 4)).toBe("HERE");
    expect(printed[2]?.length).toBeLessThan(110);
  });

  test("never sends control characters to the terminal", () => {
    const printed = formatDiagnostic(
      { ...diagnostic, at: { file: "a\u001b", line: 1, column: 1 } },
      "\u001b[31mred\u202e",
    );
    expect(printed.includes("\u001b") || printed.includes("\u202e")).toBe(false);
    expect(quote("a\u001bb")).toBe("`a\\u{1b}b`");
  });
});

describe("the nearest word", () => {
  const keys = ["name", "colour", "width", "selvage", "pieces", "ruler-length"];
  test.each([
    ["nam", "name"],
    ["color", "colour"],
    ["widht", "width"],
    ["selvedge", "selvage"],
    ["rulerlength", "ruler-length"],
    ["Ruler length", "ruler-length"],
    ["piece", "pieces"],
    ["zebra", null],
    ["", null],
  ])("%s is taken for %s", (word, expected) => {
    expect(nearest(word, keys)).toBe(expected);
  });
});
