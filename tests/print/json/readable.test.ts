import { describe, expect, test } from "vitest";
import { readable, readablePortions } from "../../../src/print/json/readable.ts";

/** The rule in its plainest form: a value stands on one line where that is at most 220 columns with its margin. */
function plainly(value: unknown, margin = ""): string {
  const line = JSON.stringify(value);
  if (typeof value !== "object" || value === null || line.length === 2) return line;
  if (margin.length + line.length <= 220) return line;
  const inner = `${margin}  `;
  const lines = Array.isArray(value)
    ? value.map((part) => inner + plainly(part, inner))
    : Object.entries(value).flatMap(([key, part]) =>
        part === undefined ? [] : [`${inner}${JSON.stringify(key)}: ${plainly(part, inner)}`],
      );
  const [open, close] = Array.isArray(value) ? "[]" : "{}";
  return `${open}\n${lines.join(",\n")}\n${margin}${close}`;
}

describe("JSON to be read", () => {
  const row = { name: "a\nb", sizes: [1, 2.5, null], none: undefined, empty: [], within: { nothing: {} } };
  const nested = { first: Array.from({ length: 40 }, () => row), second: { list: Array(109).fill(1), row } };

  test("stands on one line where it fits, and is indented where it does not", () => {
    for (const value of [row, nested, [nested, []], "text", 3, null, [], {}])
      expect(readable(value)).toBe(plainly(value));
    for (const letters of [205, 206, 207, 208, 209, 210, 211, 212])
      expect(readable({ long: "x".repeat(letters) })).toBe(plainly({ long: "x".repeat(letters) }));
  });

  test("comes in portions that are the same text", () => {
    const many = { all: Array.from({ length: 5000 }, (_, i) => ({ ...row, i })) };
    const portions = [...readablePortions(many)];
    expect(portions.length).toBeGreaterThan(3);
    expect(portions.join("")).toBe(readable(many));
    expect(JSON.parse(portions.join(""))).toEqual(JSON.parse(JSON.stringify(many)));
  });
});
