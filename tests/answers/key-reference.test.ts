import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { publishedSchema } from "../../src/index.ts";
import { schemaOf } from "./schemas.ts";

const ROOT = join(import.meta.dirname, "..", "..");
const document = readFileSync(join(ROOT, "src/schemas/README.md"), "utf8");

/** Every key that a schema knows, however deep. */
function keysOf(node: unknown): string[] {
  if (Array.isArray(node)) return node.flatMap(keysOf);
  if (typeof node !== "object" || node === null) return [];
  const { properties = {} } = node as { properties?: Record<string, unknown> };
  return [...Object.keys(properties), ...Object.values(node).flatMap(keysOf)];
}

test("the reference of keys is the one the schema makes: `npm run schemas` writes it", async () => {
  const maker = new URL("../../bin/key-reference.mjs", import.meta.url).href;
  const { keyReference } = (await import(maker)) as { keyReference(schema: object): string };
  expect(document).toBe(keyReference(JSON.parse(JSON.stringify(publishedSchema()))));
});

test("no key of a file is missing in it", () => {
  const told = new Set([...document.matchAll(/^\| `([^`]+)` \|/gm)].map(([, key]) => key));
  const keys = [...new Set(keysOf(schemaOf("schema.json")))];
  expect(keys.length).toBeGreaterThan(100);
  expect(keys.filter((key) => !told.has(key))).toEqual([]);
});
