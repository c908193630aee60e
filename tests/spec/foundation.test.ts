import { describe, expect, test } from "vitest";
import { jsonSchema } from "../../src/index.ts";
import { readSpecFile } from "../../src/spec/index.ts";
import { allSaid, assumedIn } from "../support/in-words.ts";

const INCH = 16256;
const CM = 6400;

function read(foundation: string, head = "") {
  const { value, diagnostics } = readSpecFile(
    `${head}fabrics: [{ name: a }, { name: web, note: washed }]
foundation: { fabric: web, ${foundation} }
blocks: { g: { size: 4 x 2, cell: { flying geese: a } } }
setting: { rows: g }
`,
    "quilt.yaml",
  );
  if (value !== null && value.kind !== "quilt") throw new Error("no quilt");
  return {
    spec: value,
    codes: diagnostics.map(({ code }) => code),
    hints: allSaid(diagnostics).map(({ hint }) => hint),
  };
}

const assumed = (foundation: string, head = "") =>
  [read(foundation, head).spec]
    .flatMap((spec) => (spec === null ? [] : assumedIn(spec)))
    .filter(({ subject }) => /foundation/.test(subject))
    .map(({ subject, value }) => `${subject}: ${value}`);

describe("what is taken for granted, each told", () => {
  // Common practice, no source: published ways differ, so each is a field.
  test("pieced, in inches", () => {
    expect(read("grid: 1 in").spec?.foundation).toMatchObject({
      grid: INCH,
      way: "pieced",
      per: "motif",
      allowance: 1,
      ease: INCH / 4,
      hold: "fusible",
      after: "left in",
      halves: false,
      blocks: null,
    });
    expect(assumed("grid: 1 in")).toEqual([
      "foundation: pieced patch by patch",
      "one piece of foundation for each: motif",
      "foundation beyond the outermost seam line: 1 square",
      "patches for the foundation larger by: 1/4 in",
      "foundation: fusible, left in",
    ]);
  });

  // 0.75 cm of seam take one square of 2 cm, or two of 0.5 cm.
  test("in centimetres the allowance holds the seam", () => {
    expect(read("grid: 2", "units: cm\n").spec?.foundation).toMatchObject({
      grid: 2 * CM,
      allowance: 1,
      ease: CM / 2,
    });
    expect(read("grid: 0.5", "units: cm\n").spec?.foundation).toMatchObject({ allowance: 2 });
  });

  test("folded, a block to a piece, seams of so many squares", () => {
    expect(read("grid: 1/8 in, way: folded").spec?.foundation).toMatchObject({
      per: "block",
      allowance: 2,
      ease: 0,
    });
  });

  test("what is said is not assumed; torn away means sewn in", () => {
    const all = "grid: 1 in, way: pieced, per: unit, allowance: 2, ease: 0, hold: sew-in, after: torn away";
    expect(assumed(all)).toEqual([]);
    expect(read("grid: 1 in, after: torn away").spec?.foundation?.hold).toBe("sew-in");
  });

  test("its fabric is straightened by whole squares and says so", () => {
    const web = read("grid: 3/4 in").spec?.fabrics[1];
    expect([web?.straighten, web?.note, web?.onPrintedLines]).toEqual([1.5 * INCH, "washed", true]);
    expect(read("grid: 3/4 in").spec?.fabrics[0]?.straighten).toBe(INCH);
  });
});

describe("what cannot be", () => {
  test.each([
    ["grid: 1 in, allowence: 1", "KEY-UNKNOWN", "allowance"],
    ["grid: 1 in, per: blok", "CHOICE-UNKNOWN", "block"],
    ["grid: 0 in", "SIZE-NOT-POSITIVE", ""],
    ["grid: 1 in, allowance: 0", "COUNT-NOT-WHOLE", "24"],
    ["per: unit", "FIELD-MISSING", "grid"],
    ["grid: 1/4 in, way: folded, allowance: 3", "FOUNDATION-CHOICE", "Leave `allowance` out"],
  ])("%s", (foundation, code, hint) => {
    const { codes, hints } = read(foundation);
    expect(codes).toEqual([code]);
    expect(hints[0]).toContain(hint);
  });
});

test("the published schema knows every key", () => {
  const text = JSON.stringify(jsonSchema());
  for (const key of ["half-lines", "allowance", "ease", "hold", "after", "torn away", "folded"])
    expect(text).toContain(`"${key}"`);
});
