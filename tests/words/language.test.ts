import { expect, test } from "vitest";
import { keyUnknown } from "../../src/diagnostics/fields.ts";
import { bladeCautions } from "../../src/words/en/cautions.ts";
import { aOrAn, counted, list } from "../../src/words/en/language.ts";
import { english, formatDiagnostic, wordDiagnostic } from "../../src/words/index.ts";

test.each([
  ["8 in strip", "an 8 in strip"],
  ["8 1/2 in one", "an 8 1/2 in one"],
  ["11,5 cm strip", "an 11,5 cm strip"],
  ["11.5 cm strip", "an 11.5 cm strip"],
  ["18 in strip", "an 18 in strip"],
  ["80 cm strip", "an 80 cm strip"],
  ["110 cm strip", "a 110 cm strip"],
  ["1 1/2 in strip", "a 1 1/2 in strip"],
  ["7 in strip", "a 7 in strip"],
  ["eight-pointed star", "an eight-pointed star"],
  ["unit", "a unit"],
])("%s has its article", (what, expected) => {
  expect(aOrAn(what)).toBe(expected);
});

test("things are counted and listed by the language's rules", () => {
  expect([counted(1, "strip"), counted(0, "strip"), counted(3, "strip")]).toEqual([
    "1 strip",
    "0 strips",
    "3 strips",
  ]);
  expect([list([]), list(["A"]), list(["A", 2]), list(["A", "B", "C"])]).toEqual([
    "",
    "A",
    "A and 2",
    "A, B and C",
  ]);
});

test("a diagnostic is a record that survives JSON, and is worded only when it is printed", () => {
  const record = keyUnknown({ path: "nam", at: null }, "nam", ["name"]);
  expect(record).toMatchObject({ told: "keyUnknown", facts: { key: "nam", known: ["name"] } });
  expect(record).not.toHaveProperty("message");
  const sent = JSON.parse(JSON.stringify(record)) as typeof record;
  const other = {
    ...english,
    diagnostics: { ...english.diagnostics, keyUnknown: () => ({ message: "Unbekannt.", hint: "" }) },
  };
  expect(formatDiagnostic(wordDiagnostic(sent, other))).toContain("Unbekannt.");
  expect(wordDiagnostic(sent, english).hint).toBe("Did you mean `name`?");
});

test("a waste cause and a caution have one name on every paper", () => {
  for (const [cause, name] of Object.entries(english.drawings.cutting.waste))
    expect(name.toLowerCase()).toBe(
      english.cutting.causes[cause as keyof typeof english.drawings.cutting.waste],
    );
  expect(english.drawings.cutting.caution).toContain(bladeCautions.shut);
  expect(english.cutting.cautions).toContain(bladeCautions.shut);
  expect(english.making.cutSewn).toContain(bladeCautions.pins);
});

test("a thick place is opened only where that helps, as far as the quilt's own measure says", () => {
  expect(english.making.tooThick(12, false)).toContain("for a few centimetres to both sides");
  expect(english.making.tooThick(12, true)).toContain("for an inch or two to both sides");
  expect(english.making.thickAt([{ x: "5 in", y: "2 in" }], 13, null)).toBe(
    "13 layers (cut off the points, an open seam does not help), from the left and from the top: 5 in and 2 in",
  );
});
