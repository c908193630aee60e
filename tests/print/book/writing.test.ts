import { expect, test } from "vitest";
import { coverageOf, lettersWithout, STAND_IN, withStandIns } from "../../../src/draw/fonts/index.ts";
import { drawFabric } from "../../../src/draw/index.ts";
import { nativePainter } from "../../../src/draw/png/index.ts";
import { fitText, isolated } from "../../../src/draw/scene/text-fit.ts";
import { visualRuns } from "../../../src/print/pdf/direction.ts";
import { bookPdf } from "../../../src/print/pdf/index.ts";
import { english } from "../../../src/words/index.ts";
import { PDF_FONTS } from "../../support/fonts.ts";
import { smallestPlan } from "./book-plans.ts";

/** A line as it looks from left to right: runs that turn have their letters turned. */
function seen(line: string, base?: "ltr" | "rtl"): string {
  return visualRuns(line, base)
    .map(({ text, rightToLeft }) => (rightToLeft ? Array.from(text).reverse().join("") : text))
    .join("");
}

// Unicode Standard Annex 9, "Unicode Bidirectional Algorithm", revision 50, 2024: rules W2, N0, N1, L2 and L4,
// followed by hand for a name of two words with a number in brackets, and for signs at its end.
test.each([
  ["blue", "ltr", "blue"],
  ["בד כחול", "ltr", "לוחכ דב"],
  ["בד כחול (2) כהה", "rtl", "ההכ (2) לוחכ דב"],
  ["בד!", "rtl", "!דב"],
  ["בד!", "ltr", "דב!"],
  ["night: בד 12", "ltr", "night: 12 דב"],
  ["\u2068בד\u2069: 2 of 17", "ltr", "דב: 2 of 17"],
] as const)("%s reads the right way in a line that is %s", (line, base, wanted) => {
  expect(seen(line, base)).toBe(wanted);
});

test("a name that turns is kept apart from the words around it, and no stray mark gets through", () => {
  expect(isolated("night")).toBe("night");
  expect(fitText(`${isolated("בד")}: 2`)).toBe("\u2068בד\u2069: 2");
  expect(fitText(isolated("בד\u2069\u202e"))).toBe("\u2068בד  \u2069");
  expect(fitText("a\u2068b \u202ec")).toBe("a b  c");
});

test("letters that no font has are found, and what stands for them is a letter the font has", () => {
  const plain = coverageOf(PDF_FONTS.plain);
  expect(coverageOf(new TextEncoder().encode("no font at all"))).toBe(null);
  if (plain === null) throw new Error("the font is not read");
  expect(lettersWithout("Größe 16½ בד قماش Ёлка\u200d\n", [plain])).toEqual([]);
  expect(lettersWithout("藍の布, 藍", [plain])).toEqual(["藍", "の", "布"]);
  expect(withStandIns("藍の布", ["藍", "布"])).toBe(`${STAND_IN}の${STAND_IN}`);
  expect(plain.has(STAND_IN.codePointAt(0) ?? 0)).toBe(true);
});

/** How often a font is put into a PDF. */
const fontsIn = (file: Uint8Array, name: string) =>
  Buffer.from(file).toString("latin1").split(`+${name}`).length - 1;

test("a letter the usual fonts lack is set in another that has it, in book and picture", async () => {
  const { fontPath, ownFont } = await import("../../support/fonts.ts");
  const { readFileSync } = await import("node:fs");
  // U+27C2, of mathematics, stands for any letter that DejaVu Sans lacks and another file has.
  const path = fontPath("DejaVuMathTeXGyre");
  const plan = await smallestPlan();
  const named = {
    ...plan,
    fabrics: plan.fabrics.map((fabric) => ({ ...fabric, name: "Plain \u27c2 \u2a00" })),
  };
  const file = await bookPdf(
    named,
    {
      fonts: { ...PDF_FONTS, others: [readFileSync(path)] },
      paper: "a4",
      made: new Date(0),
    },
    english,
  );
  expect(fontsIn(file, "DejaVuMathTeXGyre")).toBeGreaterThan(0);
  const without = await bookPdf(
    plan,
    {
      fonts: { ...PDF_FONTS, others: [readFileSync(path)] },
      paper: "a4",
      made: new Date(0),
    },
    english,
  );
  expect(fontsIn(without, "DejaVuMathTeXGyre")).toBe(0);
  const svg = drawFabric(named, 0, english);
  const fontAt = (where: string) => ({ path: where, bytes: readFileSync(where) });
  const ours = [ownFont("plain"), ownFont("plain-bold")].map(fontAt);
  const pngOf = await nativePainter();
  const [one, other] = [pngOf(svg, 300, ours), pngOf(svg, 300, [...ours, fontAt(path)])];
  expect(Buffer.compare(Buffer.from(one ?? []), Buffer.from(other ?? []))).not.toBe(0);
});

test("what is no drawing gives no picture", async () => {
  const paint = await nativePainter();
  expect(paint("<svg", 100, [])).toBe(null);
});
