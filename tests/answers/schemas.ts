import { readdirSync, readFileSync } from "node:fs";
import { Ajv2020, type ValidateFunction } from "ajv/dist/2020.js";

const FOLDER = new URL("../../src/schemas/", import.meta.url);

export interface Schema {
  $id: string;
  $ref?: string;
  $defs: Record<string, Node>;
}

/** A node of a schema, as far as tests look into it. */
export interface Node {
  $ref?: string;
  properties?: Record<string, Node>;
  items?: Node;
  anyOf?: Node[];
  type?: string | string[];
}

/** All but the work's, which is a file that is read and no answer. */
export const SCHEMA_FILES: readonly string[] = readdirSync(FOLDER).filter(
  (name) => name.endsWith("schema.json") && name !== "work.schema.json",
);

export function schemaOf(name: string): Schema {
  return JSON.parse(readFileSync(new URL(name, FOLDER), "utf8")) as Schema;
}

const ajv = new Ajv2020({
  allErrors: true,
  strict: true,
  allowUnionTypes: true,
  strictTypes: false,
  strictRequired: false,
});
const made = new Map<string, ValidateFunction>();

/** What a schema has against a value, one line for each error. */
export function faults(name: string, value: unknown): string[] {
  const check = made.get(name) ?? ajv.compile(schemaOf(name));
  made.set(name, check);
  if (check(value)) return [];
  return (check.errors ?? []).map(
    ({ instancePath, message = "", params }) => `${instancePath} ${message} ${JSON.stringify(params)}`,
  );
}
