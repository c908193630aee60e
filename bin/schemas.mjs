// Makes schemas/: JSON Schemas of every answer from the types in src/print/json/answers.ts. Run it when those types, or
// the types of a plan, change: `npm run schemas`. The schemas of the quilt and of the work come from the readers of those files.
import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { createGenerator } from "ts-json-schema-generator";
import { keyReference } from "./key-reference.mjs";

const root = fileURLToPath(new URL("..", import.meta.url));
const into = process.argv[2] ?? join(root, "src/schemas");

/** File, type and title of each schema. */
const ANSWERS = [
  ["plan", "PlanAnswer", "A cutting plan: plan.json, plan --json and pieces --json"],
  ["buy", "BuyAnswer", "buy --json"],
  ["buy-sizes", "BuySizesAnswer", "buy --sizes --json"],
  ["units", "UnitsAnswer", "sizes --json without a unit"],
  ["sizes", "SizesAnswer", "sizes --json"],
  ["compare", "CompareAnswer", "compare --json"],
  ["savings", "SavingsAnswer", "savings --json"],
  ["arrange", "ArrangeAnswer", "arrange --json"],
  ["stash", "StashAnswer", "stash --json"],
  ["diagnostics", "DiagnosticsAnswer", "check --json, and every answer without a result"],
];

const WHERE = /^#\/definitions\//;

/** The same with `$defs`, and with ticks as the whole numbers they are. */
function modern(node) {
  if (Array.isArray(node)) return node.map(modern);
  if (typeof node !== "object" || node === null) return node;
  return Object.fromEntries(
    Object.entries(node).map(([key, value]) =>
      key === "$ref" ? [key, decodeURIComponent(value).replace(WHERE, "#/$defs/")] : [key, modern(value)],
    ),
  );
}

const generator = createGenerator({
  path: join(root, "src/print/json/answers.ts"),
  tsconfig: join(root, "tsconfig.json"),
  skipTypeCheck: true,
  additionalProperties: false,
  topRef: false,
  encodeRefs: false,
  expose: "export",
});

mkdirSync(into, { recursive: true });
const write = (name, schema) => writeFileSync(join(into, name), `${JSON.stringify(schema, null, 1)}\n`);
for (const [name, type, title] of ANSWERS) {
  const { $schema: _draft, definitions, ...rest } = generator.createSchema(type);
  if (definitions?.Ticks !== undefined) definitions.Ticks.type = "integer";
  write(`${name}.schema.json`, {
    $schema: "https://json-schema.org/draft/2020-12/schema",
    $id: `urn:crossgrain:${name}:1`,
    title,
    ...modern(rest),
    $defs: modern(definitions ?? {}),
  });
}
const { publishedSchema, workJsonSchema } = await import(pathToFileURL(join(root, ".build/index.js")).href);
write("schema.json", publishedSchema());
writeFileSync(join(into, "README.md"), keyReference(publishedSchema()));
write("work.schema.json", { ...workJsonSchema(), $id: "urn:crossgrain:work:1" });
