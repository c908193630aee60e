import { readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import ts from "typescript";
import { describe, expect, test } from "vitest";
import { keyOf, sourceFile, sourcePaths } from "./support/sources.ts";

/**
 * The floor plan as data: which rooms of src may import which. `types` may be imported as types only.
 * A room is the folder under src; `index` and `pipeline` are files of their own.
 */
interface Rule {
  rooms: readonly string[];
  types: readonly string[];
  packages: readonly string[];
}

const FLOOR_PLAN: Readonly<Record<string, Rule>> = {
  length: { rooms: [], types: [], packages: [] },
  diagnostics: { rooms: ["length"], types: [], packages: [] },
  words: {
    rooms: ["length", "diagnostics", "stock"],
    types: ["choices", "plan", "quilt", "cutlist", "making", "spec", "stash", "savings", "state"],
    packages: [],
  },
  stock: { rooms: ["length"], types: ["spec"], packages: [] },
  spec: { rooms: ["length", "diagnostics", "stock"], types: [], packages: ["zod", "yaml"] },
  quilt: { rooms: ["length", "diagnostics"], types: ["spec"], packages: [] },
  making: { rooms: ["length", "stock", "quilt", "cutlist"], types: ["spec", "diagnostics"], packages: [] },
  cutlist: { rooms: ["length", "diagnostics", "stock", "quilt"], types: ["spec"], packages: [] },
  engine: { rooms: ["engine/solver"], types: [], packages: [] },
  "engine/solver": { rooms: [], types: [], packages: ["highs"] },
  plan: {
    rooms: ["length", "diagnostics", "stock", "cutlist", "engine"],
    types: ["quilt", "spec", "making"],
    packages: [],
  },
  "plan/proved": { rooms: [], types: ["plan"], packages: [] },
  stash: {
    rooms: ["length", "diagnostics", "stock"],
    types: ["plan", "spec"],
    packages: ["csv-parse", "csv-stringify"],
  },
  audit: { rooms: [], types: ["plan", "cutlist", "making", "quilt", "length", "diagnostics"], packages: [] },
  content: {
    rooms: ["words", "length", "diagnostics", "stock", "plan/proved"],
    types: ["plan", "quilt", "cutlist", "making", "stash", "choices", "savings", "state"],
    packages: ["string-width"],
  },
  draw: {
    rooms: ["words", "length", "content", "plan/proved"],
    types: ["plan", "quilt", "cutlist", "making", "choices"],
    packages: ["@svgdotjs/svg.js", "@xmldom/xmldom"],
  },
  "draw/fonts": { rooms: [], types: [], packages: ["fontkit"] },
  "draw/png": { rooms: [], types: [], packages: ["@resvg/resvg-js", "@resvg/resvg-wasm"] },
  "content/book": {
    rooms: ["words", "length", "content", "draw", "print/paper"],
    types: ["plan", "quilt", "cutlist", "making", "choices", "spec"],
    packages: [],
  },
  "print/paper": { rooms: ["draw", "length"], types: ["content/book"], packages: [] },
  "print/html": {
    rooms: ["words", "draw", "content/book", "print/paper"],
    types: ["plan"],
    packages: [],
  },
  "print/handouts": { rooms: ["words", "content", "content/book", "draw"], types: ["plan"], packages: [] },
  "print/pdf": {
    rooms: ["words", "length", "content", "draw", "content/book", "print/paper", "draw/fonts"],
    types: ["plan", "quilt", "choices", "spec"],
    packages: ["pdfkit", "bidi-js"],
  },
  "print/csv": {
    rooms: ["words", "length", "content", "stock", "plan/proved"],
    types: ["plan", "quilt", "cutlist", "choices"],
    packages: ["csv-stringify"],
  },
  "print/json": {
    rooms: ["words", "length", "diagnostics", "content", "plan/proved"],
    types: ["plan", "quilt", "cutlist", "making", "stash", "choices", "savings", "state"],
    packages: [],
  },
  "print/files": {
    rooms: [
      "words",
      "content",
      "draw",
      "content/book",
      "print",
      "print/csv",
      "print/html",
      "print/paper",
      "print/handouts",
    ],
    types: ["plan", "spec", "choices"],
    packages: [],
  },
  print: {
    rooms: ["content/book", "print/html", "print/paper", "print/handouts", "print/files"],
    types: [],
    packages: [],
  },
  pipeline: {
    rooms: ["length", "diagnostics", "spec", "quilt", "making", "cutlist", "plan", "audit", "engine"],
    types: [],
    packages: [],
  },
  choices: {
    rooms: [
      "length",
      "diagnostics",
      "stock",
      "spec",
      "quilt",
      "cutlist",
      "plan",
      "plan/proved",
      "stash",
      "pipeline",
    ],
    types: ["engine"],
    packages: [],
  },
  state: {
    rooms: [
      "length",
      "diagnostics",
      "stock",
      "spec",
      "quilt",
      "cutlist",
      "plan",
      "audit",
      "pipeline",
      "choices",
    ],
    types: ["engine"],
    packages: [],
  },
  edits: { rooms: ["length", "stock", "spec", "quilt"], types: [], packages: ["yaml"] },
  savings: {
    rooms: ["length", "diagnostics", "spec", "quilt", "pipeline", "choices", "edits"],
    types: ["plan"],
    packages: [],
  },
  planning: {
    rooms: [
      "words",
      "pipeline",
      "state",
      "choices",
      "diagnostics",
      "length",
      "plan",
      "plan/proved",
      "stock",
      "spec",
      "quilt",
      "content",
      "draw",
      "content/book",
      "print",
      "print/csv",
      "print/json",
      "print/files",
      "engine",
      "stash",
    ],
    types: ["plan"],
    packages: [],
  },
  page: {
    rooms: ["words", "planning", "edits", "savings"],
    types: [],
    packages: [
      "preact",
      "@preact/signals",
      "yaml",
      "fflate",
      "idb-keyval",
      "browser-fs-access",
      "@codemirror/autocomplete",
      "@codemirror/commands",
      "@codemirror/lang-yaml",
      "@codemirror/language",
      "@codemirror/lint",
      "@codemirror/state",
      "@codemirror/view",
    ],
  },
  index: {
    rooms: [
      "words",
      "pipeline",
      "state",
      "choices",
      "diagnostics",
      "length",
      "spec",
      "quilt",
      "plan",
      "audit",
      "content",
      "draw",
      "content/book",
      "print",
      "print/csv",
      "print/json",
      "print/files",
      "print/pdf",
      "draw/png",
      "draw/fonts",
      "engine",
      "stash",
      "savings",
    ],
    types: ["cutlist"],
    packages: [],
  },
  cli: {
    rooms: ["words", "index", "diagnostics"],
    types: ["plan", "quilt", "length", "spec", "engine", "stash", "choices", "state"],
    packages: ["commander"],
  },
};

/** A worker thread starts the engine alone: it must not load the file reader for every thread. */
const ENGINE_DOOR_FOR = ["cli/threads/worker.ts", "cli/threads/pool.ts"];

/** Only these rooms may touch files, the environment or the process. */
const ROOMS_WITH_NODE = ["cli"];

/** Only these may ask the clock: when a quilt was last kept is told to the maker and decides nothing. */
const ROOMS_WITH_A_CLOCK = ["cli", "page"];

/** What comes inside the page as a file of the solver's own package, past its door for Node. */
const SOLVER_ITSELF = "node_modules/highs/build/highs.mjs";

const CEILING = 400;
/** Longer than the ceiling because they are one table. */
const TABLES: readonly string[] = ["draw/scene/metrics-table.ts"];

const BANNED_NAMES = [
  "utils",
  "util",
  "helpers",
  "helper",
  "common",
  "misc",
  "shared",
  "lib",
  "core",
  "tools",
];

interface Import {
  from: string;
  to: string;
  typeOnly: boolean;
}

function isTypeOnly(statement: ts.ImportDeclaration | ts.ExportDeclaration): boolean {
  if (ts.isExportDeclaration(statement)) {
    const named = statement.exportClause;
    const all =
      named !== undefined && ts.isNamedExports(named) && named.elements.every((one) => one.isTypeOnly);
    return statement.isTypeOnly || all;
  }
  const clause = statement.importClause;
  if (clause === undefined) return false;
  const named = clause.namedBindings;
  const all =
    named !== undefined && ts.isNamedImports(named) && named.elements.every((one) => one.isTypeOnly);
  return clause.phaseModifier === ts.SyntaxKind.TypeKeyword || (clause.name === undefined && all);
}

function importsOf(path: string): Import[] {
  const source = sourceFile(path);
  const found: Import[] = [];
  const add = (specifier: ts.Expression | undefined, typeOnly: boolean) => {
    if (specifier === undefined || !ts.isStringLiteral(specifier)) return;
    const { text } = specifier;
    const to = text.startsWith(".") ? keyOf(join(dirname(path), text)) : text;
    found.push({ from: keyOf(path), to, typeOnly });
  };
  const visit = (node: ts.Node): void => {
    if (ts.isImportDeclaration(node)) add(node.moduleSpecifier, isTypeOnly(node));
    if (ts.isExportDeclaration(node)) add(node.moduleSpecifier, isTypeOnly(node));
    if (ts.isImportTypeNode(node) && ts.isLiteralTypeNode(node.argument)) add(node.argument.literal, true);
    if (ts.isCallExpression(node) && node.expression.kind === ts.SyntaxKind.ImportKeyword) {
      add(node.arguments[0], false);
    }
    ts.forEachChild(node, visit);
  };
  visit(source);
  return found;
}

/** The room a file belongs to: the deepest folder the floor plan knows. */
function roomOf(key: string): string {
  const parts = key.split("/");
  for (let depth = parts.length - 1; depth > 0; depth -= 1) {
    const folder = parts.slice(0, depth).join("/");
    if (folder in FLOOR_PLAN) return folder;
  }
  return key.replace(/\.tsx?$/, "");
}

const isOurs = (to: string) => /\.tsx?$/.test(to);
const packageOf = (to: string) =>
  (to.startsWith("@") ? to.split("/").slice(0, 2) : to.split("/").slice(0, 1)).join("/");

const paths = sourcePaths();
const imports = paths.flatMap(importsOf);

/** An import of a room that stands above its own, or beside it without being named. */
function isUpward({ from, to, typeOnly }: Import): boolean {
  if (!isOurs(to)) return false;
  const [room, target] = [roomOf(from), roomOf(to)];
  const rule = FLOOR_PLAN[room];
  if (rule === undefined || room === target || rule.rooms.includes(target)) return false;
  if (ENGINE_DOOR_FOR.includes(from) && to === "engine/index.ts") return false;
  return !(typeOnly && rule.types.includes(target));
}

describe("the floor plan", () => {
  test("every file of src is in a known room", () => {
    const unknown = paths.map(keyOf).filter((key) => !(roomOf(key) in FLOOR_PLAN));
    expect(unknown).toEqual([]);
  });

  test("rooms import only downwards", () => {
    expect(imports.filter(isUpward).map(({ from, to }) => `${from} imports ${to}`)).toEqual([]);
  });

  test.each([
    ["length/format.ts", "content/buying/buy.ts", false],
    ["plan/assemble-fabric.ts", "words/en/cutting.ts", false],
    ["cutlist/joins.ts", "words/index.ts", true],
    ["content/buying/buy.ts", "cutlist/letters.ts", false],
    ["words/en/cutting.ts", "plan/assemble-fabric.ts", false],
    ["engine/index.ts", "plan/types.ts", true],
  ])("%s may not import %s", (from, to, typeOnly) => {
    expect(isUpward({ from, to, typeOnly })).toBe(true);
  });

  test("the page takes no words before it knows its language", () => {
    // A module is read once, in whatever language that is; what a drawing says is asked when it is drawn.
    const early = paths
      .filter((path) => keyOf(path).startsWith("page/"))
      .filter((path) =>
        /^(?:export )?(?:const|let) .*=\s*(?:words|tongue|language)\b/m.test(readFileSync(path, "utf8")),
      );
    expect(early.map(keyOf).filter((key) => !key.startsWith("page/words/"))).toEqual([]);
  });

  test("a language is a folder that nobody but the doors' own list names", () => {
    const isLanguage = (key: string) => /^words\/(en|de)\//.exec(key)?.[1];
    const wrong = imports.filter(({ from, to, typeOnly }) => {
      const [own, other] = [isLanguage(from), isLanguage(to)];
      if (other === undefined || own === other || typeOnly) return false;
      return from !== "words/index.ts";
    });
    expect(wrong.map(({ from, to }) => `${from} imports ${to}`)).toEqual([]);
    const outside = imports.filter(
      ({ from, to }) =>
        isLanguage(from) === "de" &&
        isOurs(to) &&
        !/^(words|length|diagnostics|stock)\//.test(to) &&
        !/^(quilt|spec|choices|plan|cutlist|making)\//.test(to),
    );
    expect(outside.map(({ from, to }) => `${from} imports ${to}`)).toEqual([]);
  });

  test("each package is used in its own room only", () => {
    const wrong = imports.filter(({ from, to, typeOnly }) => {
      if (isOurs(to) || to.startsWith("node:") || to.endsWith(SOLVER_ITSELF) || typeOnly) return false;
      return !(FLOOR_PLAN[roomOf(from)]?.packages ?? []).includes(packageOf(to));
    });
    expect(wrong.map(({ from, to }) => `${from} imports ${to}`)).toEqual([]);
  });

  test("only the command line touches files and the process", () => {
    const wrong = imports
      .filter(({ from, to }) => to.startsWith("node:") && !ROOMS_WITH_NODE.includes(roomOf(from)))
      // Packages that are loaded late need `require`; it reads no file of the maker's.
      .filter(({ from, to }) => !(to === "node:module" && ["draw", "engine/solver"].includes(roomOf(from))));
    expect(wrong.map(({ from, to }) => `${from} imports ${to}`)).toEqual([]);
    const asking = paths
      .filter((path) => !ROOMS_WITH_A_CLOCK.includes(roomOf(keyOf(path))))
      .filter((path) =>
        /\bprocess\.(env|argv|exit|std|cwd|on)|Math\.random|new Date\b|toLocale\w*\(\)/.test(
          readFileSync(path, "utf8"),
        ),
      );
    expect(asking.map(keyOf)).toEqual([]);
  });

  test("no file reaches itself through its imports", () => {
    const next = new Map<string, string[]>();
    for (const { from, to, typeOnly } of imports) {
      if (isOurs(to) && !typeOnly) next.set(from, [...(next.get(from) ?? []), to]);
    }
    const finished = new Set<string>();
    const cycles: string[] = [];
    const visit = (file: string, trail: readonly string[]): void => {
      if (trail.includes(file)) cycles.push([...trail.slice(trail.indexOf(file)), file].join(" > "));
      if (finished.has(file) || trail.includes(file)) return;
      for (const to of next.get(file) ?? []) visit(to, [...trail, file]);
      finished.add(file);
    };
    for (const file of next.keys()) visit(file, []);
    expect(cycles).toEqual([]);
  });
});

describe("files", () => {
  test(`none is longer than ${CEILING} lines, tables excepted`, () => {
    const long = paths
      .filter((path) => readFileSync(path, "utf8").split("\n").length > CEILING + 1)
      .map(keyOf)
      .filter((key) => !TABLES.includes(key));
    expect(long).toEqual([]);
  });

  test("none has a name that says nothing", () => {
    const vague = paths.map(keyOf).filter((key) =>
      key
        .replace(/\.tsx?$/, "")
        .split("/")
        .some((part) => BANNED_NAMES.includes(part)),
    );
    expect(vague).toEqual([]);
  });
});
