import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import type { Book } from "../../../src/content/book/content.ts";
import { makingSteps } from "../../../src/content/index.ts";
import { planSpec, solveHere, USUAL_OPTIONS } from "../../../src/index.ts";
import { bookOf, classSheet, laidOut, pageOf, patternOf } from "../../../src/print/index.ts";
import { emptiest } from "../../../src/print/paper/paginate.ts";
import { readSpecFile } from "../../../src/spec/index.ts";
import { english, wordsFor } from "../../../src/words/index.ts";
import { firstOf } from "../../support/sweep.ts";

/** Fabrics up to which a pattern keeps to twelve pages, and the least that is used of any page but the last. */
const [FEW_FABRICS, MOST_PAGES, LEAST_FILL] = [6, 12, 0.55] as const;
/** One pattern that left pages half empty, and one that was too long; all with `PAGES=all`. */
const FIRST: ReadonlySet<string> = new Set(firstOf(["foundation-slanting.yaml", "regatta.yaml"], 1));

const files = ["quilts", "trials"].flatMap((folder) => {
  const at = new URL(`../../../fixtures/${folder}/`, import.meta.url);
  return readdirSync(at).map((name) => ({ name, url: new URL(name, at) }));
});
const chosen = process.env.PAGES === "all" ? files : files.filter(({ name }) => FIRST.has(name));

/** Words of a book as it is read, without drawings, style and script. */
function readIn(book: Book): string {
  const [, main = ""] = pageOf(book, english).split('<main id="book">');
  return main
    .replace(/<(svg|script|style)\b.*?<\/\1>/gs, "")
    .replace(/<[^>]+>/g, "\n")
    .replace(/&[a-z#0-9]+;/g, " ");
}

/** A key of the file stands within marks of code, or the paper speaks of the file itself. */
const OF_THE_FILE =
  /`|\bthe file\b|\bDatei\b|\bplan again\b|\bprove[nd]\b|\bbewiesen\b|\bassumed\b|\bangenommen\b|\bundefined\b|\bNaN\b/;

const german = await wordsFor("de");

describe.each(chosen)("$name", ({ name, url }) => {
  test("has full pages, a short pattern, and no word about the file in it", async () => {
    const { value: spec } = readSpecFile(readFileSync(url, "utf8"), name);
    if (spec?.kind !== "quilt") return;
    const { value: plan } = await planSpec(spec, USUAL_OPTIONS, solveHere);
    if (plan === null || plan.top === null) return;
    const pattern = patternOf(plan, spec.pattern, english);
    for (const book of [bookOf(plan, english), pattern])
      expect(emptiest(laidOut(book)), book.purpose).toBeGreaterThanOrEqual(LEAST_FILL);
    if (plan.fabrics.length <= FEW_FABRICS)
      expect(laidOut(pattern).fill.length + 1).toBeLessThanOrEqual(MOST_PAGES);
    for (const words of [english, german]) {
      const sorts = [{ kits: 3, sort: null, single: plan, dealt: plan }];
      const sheet = classSheet({ kits: 3, batch: plan, sorts, fabrics: [] }, words);
      for (const book of [patternOf(plan, spec.pattern, words), sheet])
        expect(readIn(book)).not.toMatch(OF_THE_FILE);
      expect(makingSteps({ ...plan, kits: 3 }, words)).not.toMatch(OF_THE_FILE);
    }
  });
});
