import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join, relative, sep } from "node:path";
import ts from "typescript";
import { describe, expect, test } from "vitest";
import { differing } from "./support/ratchet.ts";

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

const SRC = join(import.meta.dirname, "..", "src");
const LIST = join(import.meta.dirname, "sentences.json");

/** A word, a space, a word: what no key, code or unit has. */
const SENTENCE = /[\p{L}\p{N}][^\s]* +[^\s]*\p{L}/u;

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
 * of several words such as `on point`. Nothing else may stand there: a test looks.
 */
const KEY_WORDS = "spec/key-words.ts";

const READING_REGEX = ["test", "exec"];

/** The doors choose a language; nobody else does. */
const DOORS = /^(cli\/main|index|planning|page\/.*)\.tsx?$/;

function filesIn(folder: string): string[] {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const path = join(folder, entry.name);
    return entry.isDirectory() ? filesIn(path) : /\.tsx?$/.test(entry.name) ? [path] : [];
  });
}

/** Told to us, not to a maker: a promise of the program's own that was broken. */
function isThrown(node: ts.Node): boolean {
  for (let each: ts.Node | undefined = node; each !== undefined; each = each.parent)
    if (ts.isThrowStatement(each)) return true;
  return false;
}

function isSentence(node: ts.Node): boolean {
  if (ts.isStringLiteralLike(node)) return SENTENCE.test(node.text) && !isThrown(node);
  if (ts.isTemplateExpression(node)) {
    const text = [node.head.text, ...node.templateSpans.map(({ literal }) => literal.text)].join("1");
    return SENTENCE.test(text) && !isThrown(node);
  }
  return ts.isJsxText(node) && SENTENCE.test(node.text);
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
  for (const path of filesIn(SRC)) {
    const key = relative(SRC, path).split(sep).join("/");
    if (key.startsWith("words/")) continue;
    const text = readFileSync(path, "utf8");
    const source = ts.createSourceFile(path, text, ts.ScriptTarget.ES2023, true);
    const isKeyWords = key === KEY_WORDS;
    const [sentences, readers] = [isKeyWords ? 0 : count(source, isSentence), count(source, readsWords)];
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

test("key words are short values, and no sentences", () => {
  const source = ts.createSourceFile(
    KEY_WORDS,
    readFileSync(join(SRC, KEY_WORDS), "utf8"),
    ts.ScriptTarget.ES2023,
    true,
  );
  const texts: string[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isStringLiteralLike(node)) texts.push(node.text);
    else if (ts.isTemplateExpression(node)) texts.push(node.getText());
    ts.forEachChild(node, visit);
  };
  visit(source);
  expect(texts.filter((text) => !/^[a-z-]+(?: [a-z-]+){0,2}$/.test(text))).toEqual([]);
});

test("a language is handed down from the doors", () => {
  expect(found.english).toEqual(listed.english);
});

describe("what counts", () => {
  const parsed = (text: string) => ts.createSourceFile("a.ts", text, ts.ScriptTarget.ES2023, true);

  test.each([
    ['const a = "Cut two strips"', 1],
    [`const a = \`Cut ${"$"}{2} strips\``, 1],
    [`const a = \`${"$"}{2} strips now\``, 1],
    ['const a = "cut-list"', 0],
    ['throw new Error("this cannot be")', 0],
    ['import a from "./words.ts"', 0],
  ])("%s", (text, expected) => {
    expect(count(parsed(text), isSentence)).toBe(expected);
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
