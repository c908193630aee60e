// Plans quilt files and prints how many pages the bench book and the pattern have, and how full the emptiest page but the
// last is: `node bin/pages.mjs [files]`; without files every quilt of fixtures/.
import { readdirSync, readFileSync } from "node:fs";
import { join, relative } from "node:path";
import { fileURLToPath } from "node:url";

const root = fileURLToPath(new URL("..", import.meta.url));
const { english, loadBook, planSpec, readSpecFile, solveHere, USUAL_OPTIONS } = await import(
  "../.build/index.js"
);
const { bookOf, laidOut, patternOf } = await loadBook();

const inFolder = (name) => readdirSync(join(root, name)).map((file) => join(root, name, file));
const given = process.argv.slice(2);
const files = given.length > 0 ? given : [...inFolder("fixtures/quilts"), ...inFolder("fixtures/trials")];

/** Pages with the cover, and the share used of the emptiest but the last, in percent. */
function told(book) {
  const laid = laidOut(book);
  const { fill, sheets } = laid;
  const least = Math.min(1, ...fill.slice(0, fill.length - sheets - 1));
  return { pages: fill.length + 1, least: Math.round(least * 100) };
}

console.log("quilt".padEnd(44), "fabrics", "bench", "least", "pattern", "least");
for (const file of files) {
  const { value: spec } = readSpecFile(readFileSync(file, "utf8"), file);
  if (spec?.kind !== "quilt") continue;
  const { value: plan } = await planSpec(spec, USUAL_OPTIONS, solveHere);
  if (plan?.top == null) continue;
  const [bench, pattern] = [told(bookOf(plan, english)), told(patternOf(plan, spec.pattern, english))];
  const numbers = [plan.fabrics.length, bench.pages, `${bench.least} %`, pattern.pages, `${pattern.least} %`];
  console.log(
    relative(root, file).padEnd(44),
    ...numbers.map((each, i) => String(each).padStart([7, 5, 5, 7, 5][i])),
  );
}
