import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import ts from "typescript";
import { describe, expect, test } from "vitest";
import { differing } from "./support/ratchet.ts";
import { keyOf, SRC, sourceFile, sourcePaths } from "./support/sources.ts";

/**
 * Every sentence stands in `src/words`, and nothing outside reads one back. What has not moved yet is listed in
 * `sentences.json` with how much of it there is, and may only become less: a file with more than it says is a fault,
 * and so is one with fewer until the list says so. `SENTENCES=count` writes the list anew.
 */
interface Listed {
  /** Texts with a space between words, by file. */
  sentences: Record<string, number>;
  /** Places that look for words in a text, by file. */
  readers: Record<string, number>;
  /** Files beside the doors that take English by themselves instead of being handed a language. */
  english: string[];
}

const LIST = join(import.meta.dirname, "sentences.json");

/** A word, a space, a word: what no key, code or unit has. */
const SENTENCE = /[\p{L}\p{N}][^\s]* +[^\s]*\p{L}/u;
/** A whole word of two letters at least, as no path of a drawing and no measure beside a figure is. */
const WORD = /(?<!\S)["'(]?\p{L}[\p{L}'’-]+(?=[\s.,;:!?)"']|$)/u;

/** A figure with its measure, which a length is and no sentence. */
const MEASURE = /\d (?:sq )?(?:in|cm|mm|m|yd)\b/g;

/** Methods by which a text is searched or taken apart. */
const READING = [
  "startsWith",
  "endsWith",
  "includes",
  "indexOf",
  "match",
  "matchAll",
  "replace",
  "replaceAll",
];

/**
 * Where the words of the file's own language stand, which a maker writes whatever language she is told things in: values
 * of several words such as `on point`, names of units, sizes of the trade. Nothing else may stand there: a test looks. The
 * same texts are key words wherever they are compared.
 */
const KEY_WORDS = [
  "spec/key-words.ts",
  "quilt/terms/names.ts",
  "stock/trade-sizes.ts",
  "stock/mattress-sizes.ts",
  "stock/cloth-names.ts",
];

/** What a maker types in a line of the file, in its own language, and how the file of the work is written again. */
const GRAMMAR = [
  "spec/written/cloth-line.ts",
  "spec/written/kit-line.ts",
  "spec/written/piece-line.ts",
  "spec/read/read-fact.ts",
  "spec/read/write-work.ts",
  "stash/change-stash.ts",
  "stash/read-cloth.ts",
  "stash/read-stash.ts",
  "state/ticks.ts",
];

/** Faults of our own: told to us with exit code 70, never to a maker. */
const OWN_FAULTS = /^(audit\/|engine\/|making\/(border-rounds|diagonal|joins)\.ts$)/;

/** Style sheets, markup and scripts that a browser or a shell reads. */
const FOR_MACHINES =
  /^(print\/html\/(book-page|print-style|script|style|blocks)\.ts|draw\/scene\/canvas\.ts|page\/ui\/pattern-sheets\.ts|cli\/shell\/(bash|fish|zsh)\.ts)$/;

/** What an answer or a file of ours says it is. */
const FORMAT = /^crossgrain [a-z ]+$/;

/** Names of fonts and of ways to fit a drawing, as browsers and printers know them. */
const KNOWN_TO_MACHINES = ["DejaVu Sans", "xMinYMin meet"];

/** Methods that take a selector of a style sheet. */
const SELECTING = ["closest", "matches", "matchMedia", "querySelector", "querySelectorAll"];

/** Attributes that are read or heard; the others are for the browser. */
const HEARD = ["alt", "aria-label", "aria-description", "placeholder", "title"];

const READING_REGEX = ["test", "exec"];

/** The doors choose a language; nobody else does. */
const DOORS = /^(cli\/main|index|planning|page\/.*)\.tsx?$/;

/** Told to us, not to a maker: a promise of the program's own that was broken. */
function isThrown(node: ts.Node): boolean {
  for (let each: ts.Node | undefined = node; each !== undefined; each = each.parent)
    if (ts.isThrowStatement(each)) return true;
  return false;
}

/** In an attribute of markup that nobody reads: a class, a place, a selector. */
function isForBrowser(node: ts.Node): boolean {
  for (let each: ts.Node | undefined = node; each !== undefined; each = each.parent)
    if (ts.isJsxAttribute(each)) return !HEARD.includes(each.name.getText());
  const { parent } = node;
  // Other names by which a file may call a unit are key words of it.
  if (ts.isArrayLiteralExpression(parent) && ts.isPropertyAssignment(parent.parent))
    return parent.parent.name.getText() === "alsoCalled";
  return (
    ts.isCallExpression(parent) &&
    ts.isPropertyAccessExpression(parent.expression) &&
    SELECTING.includes(parent.expression.name.text)
  );
}

function textOf(node: ts.Node): string | null {
  if (ts.isStringLiteralLike(node)) return node.text;
  if (ts.isTemplateExpression(node))
    return [node.head.text, ...node.templateSpans.map(({ literal }) => literal.text)].join("1");
  return ts.isJsxText(node) ? node.text : null;
}

function isSentence(node: ts.Node, keyWords: ReadonlySet<string> = NONE): boolean {
  const text = textOf(node);
  if (text === null) return false;
  const told = text.replace(MEASURE, "1");
  // A font in letters and figures has no space, and the pattern would try it from every place.
  if (!told.includes(" ") || !SENTENCE.test(told) || !WORD.test(told)) return false;
  return !(
    keyWords.has(text) ||
    FORMAT.test(text) ||
    KNOWN_TO_MACHINES.includes(text) ||
    isThrown(node) ||
    isForBrowser(node)
  );
}

const NONE: ReadonlySet<string> = new Set();

/** The values that are key words of the file. */
function keyWords(): Set<string> {
  const found = new Set<string>();
  for (const key of KEY_WORDS) {
    const text = readFileSync(join(SRC, key), "utf8");
    const visit = (node: ts.Node): void => {
      if (ts.isStringLiteralLike(node)) found.add(node.text);
      ts.forEachChild(node, visit);
    };
    visit(ts.createSourceFile(key, text, ts.ScriptTarget.ES2023, true));
  }
  return found;
}

/** Words with a space after or between them, as a regular expression has them. */
const READS_WORDS = /[a-z]{2,} (?![+*?{])|[a-z]{3,}\\s\+?[a-z]/i;

function readsWords(node: ts.Node): boolean {
  if (!ts.isCallExpression(node) || !ts.isPropertyAccessExpression(node.expression)) return false;
  const { name, expression } = node.expression;
  const looked = READING.includes(name.text)
    ? node.arguments[0]
    : READING_REGEX.includes(name.text)
      ? expression
      : undefined;
  if (looked === undefined) return false;
  return (
    (ts.isStringLiteralLike(looked) || ts.isRegularExpressionLiteral(looked)) && READS_WORDS.test(looked.text)
  );
}

function count(source: ts.SourceFile, is: (node: ts.Node) => boolean): number {
  let found = 0;
  const visit = (node: ts.Node): void => {
    if (is(node)) found += 1;
    ts.forEachChild(node, visit);
  };
  visit(source);
  return found;
}

function look(): Listed {
  const found: Listed = { sentences: {}, readers: {}, english: [] };
  const known = keyWords();
  for (const path of sourcePaths()) {
    const key = keyOf(path);
    if (key.startsWith("words/")) continue;
    const source = sourceFile(path);
    const { text } = source;
    const isSaid = !(
      KEY_WORDS.includes(key) ||
      GRAMMAR.includes(key) ||
      OWN_FAULTS.test(key) ||
      FOR_MACHINES.test(key) ||
      key.startsWith("page/words/")
    );
    const sentences = isSaid ? count(source, (node) => isSentence(node, known)) : 0;
    const readers = GRAMMAR.includes(key) || FOR_MACHINES.test(key) ? 0 : count(source, readsWords);
    if (sentences > 0) found.sentences[key] = sentences;
    if (readers > 0) found.readers[key] = readers;
    if (/\benglish\b|^import (?!type)[^;]*words\/en\//m.test(text) && !DOORS.test(key))
      found.english.push(key);
  }
  found.english.sort();
  return found;
}

const found = look();
if (process.env.SENTENCES === "count") writeFileSync(LIST, `${JSON.stringify(found, null, 2)}\n`);
const listed = JSON.parse(readFileSync(LIST, "utf8")) as Listed;

describe.each(["sentences", "readers"] as const)("%s outside words", (kind) => {
  test("are no more than are listed: put a new one in src/words", () => {
    expect(differing(found[kind], listed[kind], true)).toEqual([]);
  });

  test("are listed no higher than they are: SENTENCES=count writes the list", () => {
    expect(differing(found[kind], listed[kind], false)).toEqual([]);
  });
});

test.each(KEY_WORDS)("%s: key words are short values, and no sentences", (key) => {
  const text = readFileSync(join(SRC, key), "utf8");
  const texts: string[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isImportDeclaration(node)) return;
    if (ts.isStringLiteralLike(node)) texts.push(node.text);
    ts.forEachChild(node, visit);
  };
  visit(ts.createSourceFile(key, text, ts.ScriptTarget.ES2023, true));
  expect(
    texts.filter((word) => !/^(?:[a-z0-9/-]+(?:,? [a-z0-9-]+){0,4} ?)? ?$|^(?:US|UK|EU)$/.test(word)),
  ).toEqual([]);
});

test("a language is handed down from the doors", () => {
  expect(found.english).toEqual(listed.english);
});

describe("what counts", () => {
  const parsed = (text: string) => ts.createSourceFile("a.tsx", text, ts.ScriptTarget.ES2023, true);

  test.each([
    ['const a = "Cut two strips"', 1],
    [`const a = \`Cut ${"$"}{2} strips\``, 1],
    [`const a = \`${"$"}{2} strips now\``, 1],
    ['const a = "cut-list"', 0],
    ['throw new Error("this cannot be")', 0],
    ['import a from "./words.ts"', 0],
    ['const a = "crossgrain plan"', 0],
    ['const a = <p class="row wide">Cut two</p>', 1],
    ['const a = <p title="Cut two">{b}</p>', 1],
    ['const a = "M1 4H43"', 0],
    [`const a = \`${"$"}{2} mm x ${"$"}{3} mm\``, 0],
  ])("%s", (text, expected) => {
    expect(count(parsed(text), (node) => isSentence(node))).toBe(expected);
  });

  test.each([
    ['said.startsWith("stash piece")', 1],
    ["name.replace(/^bought /, '')", 1],
    ['message.includes("no such file")', 1],
    ['key.startsWith("borders")', 0],
    ["text.replace(/\\s+$/, '')", 0],
  ])("%s", (text, expected) => {
    expect(count(parsed(text), readsWords)).toBe(expected);
  });
});
