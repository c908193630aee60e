import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { quickSolve, withoutEasing } from "../../src/choices/quick-solve.ts";
import { commands } from "../../src/cli/commands/index.ts";
import { fabricScene } from "../../src/draw/cutting/draw-fabric.ts";
import { blockScene } from "../../src/draw/quilt/draw-block.ts";
import { topScene } from "../../src/draw/quilt/draw-top.ts";
import type { Scene } from "../../src/draw/scene/scene.ts";
import { assemblyScene } from "../../src/draw/sewing/making-assembly.ts";
import { blocksScene } from "../../src/draw/sewing/making-blocks.ts";
import { bordersScene } from "../../src/draw/sewing/making-borders.ts";
import { finishScene } from "../../src/draw/sewing/making-finish.ts";
import { pressingScene } from "../../src/draw/sewing/making-pressing.ts";
import { unitStepsScenes } from "../../src/draw/steps/draw-unit-steps.ts";
import { planSpec, USUAL_OPTIONS } from "../../src/pipeline.ts";
import type { Plan } from "../../src/plan/types.ts";
import { type PatternSource, planFiles } from "../../src/print/files/plan-files.ts";
import { readSpecFile } from "../../src/spec/index.ts";
import { german } from "../../src/words/de/index.ts";
import { english, type Words, wordAll } from "../../src/words/index.ts";
import { solveHere } from "../support/cut-list-spec.ts";
import { faultsOf } from "../support/sound-scene.ts";
import { vocabularyOf, withoutCode, wordsOf } from "./vocabulary.ts";

const ROOT = join(import.meta.dirname, "..", "..");

/** Words that only English says. Names of beds, of papers and of measures are alike in both. */
const SAID_IN_GERMAN = vocabularyOf(join(ROOT, "src/words/de"));
const ENGLISH = new Set(
  [...vocabularyOf(join(ROOT, "src/words/en"))].filter((word) => !SAID_IN_GERMAN.has(word)),
);

/** Text that is read or heard, of a drawing or a page: what stands between tags, and what names a picture. */
function readable(name: string, text: string): string {
  if (!/\.(svg|html)$/.test(name)) return text;
  const heard = [...text.matchAll(/ (?:aria-label|alt|title|placeholder)="([^"]*)"/g)].map(
    ([, said]) => said,
  );
  const seen = text.replace(/<(style|script)\b.*?<\/\1>/gs, " ").replace(/<[^>]*>/g, " ");
  return `${seen} ${heard.join(" ")}`.replace(/&\w+;/g, " ");
}

/** English words in what was printed, with a little of what stands around the first of each. */
function englishIn(printed: string, own: ReadonlySet<string>): string[] {
  const text = withoutCode(printed);
  const found = new Set(wordsOf(text).filter((word) => ENGLISH.has(word) && !own.has(word)));
  return [...found].map((word) => {
    const at = text.search(new RegExp(`(?<!\\p{L})${word}(?!\\p{L})`, "iu"));
    return `${word}: ${text.slice(Math.max(0, at - 40), at + 40).replace(/\s+/g, " ")}`;
  });
}

/** What a maker's file brings in: the names and notes in it, not its keys. */
/** Names of beds, in which wadding is sold too, stay as shops write them. */
const BEDS = ["full", "twin", "queen", "king"];

const ownOf = (text: string): Set<string> =>
  new Set(BEDS.concat(wordsOf(text.replace(/^ *(?:- )?[a-z][\w-]*:(?= |$)/gm, " "))));

const FEW = [
  "quilts/nine-stars.yaml",
  "quilts/geese-and-bars.yaml",
  "quilts/salsa-on-point.yaml",
  "quilts/regatta.yaml",
  "quilts/wild-geese-round.yaml",
  "cutlists/rock-pool.yaml",
  "cutlists/tide-pool.yaml",
];
const all = ["cutlists", "quilts", "trials"].flatMap((folder) =>
  readdirSync(`${ROOT}/fixtures/${folder}`)
    .filter((name) => name.endsWith(".yaml"))
    .map((name) => `${folder}/${name}`),
);
const looked = process.env.GERMAN === "all" ? all : FEW;

const quickly = withoutEasing(quickSolve(solveHere));

async function planOf(
  file: string,
): Promise<{ plan: Plan | null; pattern: PatternSource | null; told: string; own: Set<string> }> {
  const text = readFileSync(`${ROOT}/fixtures/${file}`, "utf8");
  const read = readSpecFile(text, file, null, "de");
  const spec = read.value;
  const made = spec === null ? null : await planSpec(spec, { ...USUAL_OPTIONS, effort: 5 }, quickly);
  const told = wordAll([...read.diagnostics, ...(made?.diagnostics ?? [])], german)
    .map(({ message, hint }) => `${message}\n${hint}`)
    .join("\n");
  const plan = made?.value ?? null;
  const pattern = spec?.kind === "quilt" ? { told: spec.pattern, sizes: [] } : null;
  return { plan, pattern, told, own: ownOf(text) };
}

/** What is drawn of a plan: German words are longer, and lie apart and on the page all the same. */
function scenesOf(plan: Plan, words: Words): Scene[] {
  const { top, making, fabrics, ruler } = plan;
  const cut = fabrics.map((_, i) => fabricScene(plan, i, words, {}));
  if (top === null || making === undefined) return cut;
  return [
    ...cut,
    topScene(top, fabrics, ruler, words),
    ...top.designs.map((design) => blockScene(design, fabrics, ruler, words)),
    blocksScene(top, making, fabrics, ruler, words),
    assemblyScene({ top, making, fabrics, ruler }, words),
    pressingScene({ top, making, fabrics, ruler }, words),
    bordersScene({ top, making, fabrics, ruler }, words),
    finishScene(top, making, ruler, words),
    ...unitStepsScenes(top, making, fabrics, ruler, words),
  ].filter((scene) => scene !== null);
}

describe("no English is left in German", () => {
  test.each(looked)("%s", async (file) => {
    const { plan, pattern, told, own } = await planOf(file);
    const left = englishIn(told, own);
    if (plan !== null) {
      const files = planFiles(plan, german, pattern);
      for (const [name, text] of Object.entries(files))
        left.push(...englishIn(readable(name, text), own).map((found) => `${name} ${found}`));
    }
    expect(left).toEqual([]);
    if (plan === null) return;
    expect(scenesOf(plan, german).flatMap(faultsOf)).toEqual([]);
  });

  test("faults of files", () => {
    const left = readdirSync(`${ROOT}/fixtures/bad`).flatMap((folder) => {
      const name = readdirSync(`${ROOT}/fixtures/bad/${folder}`).find((each) => each.startsWith("input."));
      if (name === undefined) return [];
      const text = readFileSync(`${ROOT}/fixtures/bad/${folder}/${name}`, "utf8");
      const { diagnostics } = readSpecFile(text, name, null, "de");
      const own = ownOf(`${name} ${text}`);
      return wordAll(diagnostics, german).flatMap(({ message, hint }) =>
        englishIn(`${message}\n${hint}`, own).map((found) => `${folder} ${found}`),
      );
    });
    expect(left).toEqual([]);
  });

  test("help", () => {
    const left = commands(german).flatMap(({ summary, about, arguments: given, options }) => [
      ...[summary, about, ...given.map(({ help }) => help)].flatMap((text) => englishIn(text, new Set())),
      // The words an option takes are typed as they stand.
      ...Object.values(options).flatMap(({ help, standard, words = [] }) =>
        englishIn(`${help}. ${standard}`, new Set(words.flatMap((word: string) => wordsOf(word)))),
      ),
    ]);
    expect(left).toEqual([]);
  });
});

/** The keys of a table of words, with how many stand in each list. */
function shapeOf(table: unknown, path = ""): string[] {
  if (Array.isArray(table)) return [`${path} ${table.length}`];
  if (typeof table !== "object" || table === null || table instanceof RegExp)
    return [`${path} ${typeof table === "function" ? "function" : "text"}`];
  return Object.entries(table).flatMap(([key, value]) => shapeOf(value, `${path}.${key}`));
}

/** Lists in which a language has as many entries as it needs. */
const OWN_LENGTH = /^\.book\.bench\.glossary\.terms /;

test("German has every key that English has, and none besides", () => {
  const shared = (shape: string[]) => shape.filter((line) => !OWN_LENGTH.test(line)).sort();
  // Columns of the comparison are explained by their headings.
  const without = (shape: string[]) => shape.filter((line) => !line.startsWith(".compare.explained."));
  expect(without(shared(shapeOf(german)))).toEqual(without(shared(shapeOf(english))));
  expect(Object.keys(german.compare.explained)).toHaveLength(Object.keys(english.compare.explained).length);
});
