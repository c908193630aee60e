import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join, relative, sep } from "node:path";
import ts from "typescript";
import { describe, expect, test } from "vitest";
import { differing } from "./support/ratchet.ts";

/**
 * Short functions, few parameters, folders one can look over, few words over the compiler's head. What is beyond stands in
 * `habits.json` and may only become less: a new one is a fault, and so is one that has become smaller until the list says
 * so. `HABITS=count` writes the list anew. The engine's functions may be a little longer: a table and what is read off it
 * belong together.
 */
interface Listed {
  /** How many functions of more lines there are, by file. */
  lines: Record<string, number>;
  /** The same of the engine's functions, which may be longer. */
  engine: Record<string, number>;
  /** How many functions of more parameters there are, by file. */
  parameters: Record<string, number>;
  /** Folders of more files side by side. */
  folders: Record<string, number>;
  /** Types asserted (`x as T`), by file: the compiler takes our word for them. `as const` asserts nothing. */
  assertions: Record<string, number>;
  /** Values said not to be missing (`x!`), by file. */
  presences: Record<string, number>;
}

const MOST = { lines: 60, engine: 80, parameters: 5, folders: 25, assertions: 0, presences: 0 } as const;
const NOTHING = (): Listed => ({
  lines: {},
  engine: {},
  parameters: {},
  folders: {},
  assertions: {},
  presences: {},
});
const SRC = join(import.meta.dirname, "..", "src");
const LIST = join(import.meta.dirname, "habits.json");

function measure(text: string, key: string, found: Listed): void {
  const source = ts.createSourceFile(key, text, ts.ScriptTarget.ES2023, true);
  const line = (at: number): number => source.getLineAndCharacterOfPosition(at).line;
  const note = (list: "lines" | "engine" | "parameters", size: number): void => {
    if (size > MOST[list]) found[list][key] = (found[list][key] ?? 0) + 1;
  };
  const count = (list: "assertions" | "presences"): void => {
    found[list][key] = (found[list][key] ?? 0) + 1;
  };
  const visit = (node: ts.Node): void => {
    if (ts.isNonNullExpression(node)) count("presences");
    if (ts.isTypeAssertionExpression(node)) count("assertions");
    if (ts.isAsExpression(node) && !ts.isConstTypeReference(node.type)) count("assertions");
    if (ts.isFunctionLike(node) && "body" in node && node.body !== undefined) {
      const inEngine = key.startsWith("engine/");
      note(inEngine ? "engine" : "lines", line(node.end) - line(node.getStart()) + 1);
      if (!inEngine) note("parameters", node.parameters.length);
    }
    ts.forEachChild(node, visit);
  };
  visit(source);
}

function look(folder = SRC, found: Listed = NOTHING()): Listed {
  const key = relative(SRC, folder).split(sep).join("/");
  const entries = readdirSync(folder, { withFileTypes: true }).sort((a, b) => (a.name < b.name ? -1 : 1));
  const files = entries.filter((entry) => entry.isFile());
  if (files.length > MOST.folders) found.folders[key] = files.length;
  for (const entry of entries) {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) look(path, found);
    else if (/\.tsx?$/.test(entry.name))
      measure(readFileSync(path, "utf8"), relative(SRC, path).split(sep).join("/"), found);
  }
  return found;
}

const found = look();
if (process.env.HABITS === "count") writeFileSync(LIST, `${JSON.stringify(found, null, 2)}\n`);
const listed = JSON.parse(readFileSync(LIST, "utf8")) as Listed;

describe.each(["lines", "engine", "parameters", "folders", "assertions", "presences"] as const)(
  "%s",
  (habit) => {
    test(`more than ${MOST[habit]} are no more than are listed`, () => {
      expect(differing(found[habit], listed[habit], true)).toEqual([]);
    });

    test("are listed no higher than they are: HABITS=count writes the list", () => {
      expect(differing(found[habit], listed[habit], false)).toEqual([]);
    });
  },
);

test("a long function and one of many parameters are seen", () => {
  const seen = NOTHING();
  measure(
    `function long() {\n${"one();\n".repeat(60)}}\nconst many = (a, b, c, d, e, f) => a;`,
    "a.ts",
    seen,
  );
  expect(seen).toEqual({ ...NOTHING(), lines: { "a.ts": 1 }, parameters: { "a.ts": 1 } });
});

test("asserted types and values said to be there are seen, names in imports and constants are not", () => {
  const seen = NOTHING();
  measure(
    `import { a as b } from "./a.ts";\nconst c = [1] as const;\nconst d = b as unknown as number;\nc[0]!.toFixed();\nif (!d) b();`,
    "a.ts",
    seen,
  );
  expect(seen).toEqual({ ...NOTHING(), assertions: { "a.ts": 2 }, presences: { "a.ts": 1 } });
});
