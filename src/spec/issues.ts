import type * as z from "zod";
import * as say from "../diagnostics/fields.ts";
import { nearest } from "../diagnostics/nearest.ts";
import type { Diagnostic } from "../diagnostics/types.ts";
import { type Path, pathText, type SourceDocument } from "./document.ts";
import { keysAt, nodeAt, type SchemaNode } from "./json-schema.ts";
import type { Wording } from "./written.ts";

type Issue = z.core.$ZodIssue;

/** True when the value is of the wrong kind as a whole, so that this branch of a union was never meant. */
function wrongKind(issue: Issue): boolean {
  if (issue.path.length > 0) return false;
  if (issue.code === "invalid_union") return issue.errors.every((branch) => branch.some(wrongKind));
  return issue.code === "invalid_type";
}

/** How many keys of the value itself a branch of a union does not know. */
function keysUnknown(branch: readonly Issue[]): number {
  return branch.reduce(
    (sum, issue) =>
      sum + (issue.code === "unrecognized_keys" && issue.path.length === 0 ? issue.keys.length : 0),
    0,
  );
}

/** Replaces a union's issues by those of the one branch the maker meant: the first that knows most of its keys. */
function flatten(issue: Issue): Issue[] {
  if (issue.code !== "invalid_union") return [issue];
  const possible = issue.errors.filter((branch) => branch.length > 0 && !branch.some(wrongKind));
  const fewest = Math.min(...possible.map(keysUnknown));
  const meant = possible.find((branch) => keysUnknown(branch) === fewest);
  if (meant === undefined) return [issue];
  return meant.map((inner) => ({ ...inner, path: [...issue.path, ...inner.path] })).flatMap(flatten);
}

function at(value: unknown, path: Path): unknown {
  let here = value;
  for (const step of path) {
    if (typeof here !== "object" || here === null || !Object.hasOwn(here, step)) return undefined;
    here = (here as Record<string | number, unknown>)[step];
  }
  return here;
}

function kindOf(value: unknown): string {
  if (Array.isArray(value)) return value.length === 0 ? "an empty list" : "a list";
  if (typeof value === "object" && value !== null) return "a group of keys";
  if (typeof value === "boolean") return `\`${value}\``;
  return "text";
}

/** What a node of the schema wants, in plain words. */
function expectedKind(node: SchemaNode | null): string {
  if (node === null) return "something else";
  if (node.items !== undefined) return "a list with something in it, each entry after a `-`";
  if (node.properties !== undefined || typeof node.additionalProperties === "object")
    return "a group of keys";
  if (node.type === "boolean") return "`true` or `false`";
  if (node.enum !== undefined) return `one of ${node.enum.map((option) => `\`${option}\``).join(", ")}`;
  if (node.type === "integer") return "a whole number";
  const kinds = (node.anyOf ?? []).map(expectedKind).filter((kind) => kind !== "a number or text");
  return kinds.includes("a group of keys") ? "a text on one line, or a group of keys" : "a number or text";
}

/** Turns everything zod found into diagnostics with places, in the schema's own words. */
export function wordIssues(
  issues: readonly Issue[],
  document: SourceDocument,
  schema: SchemaNode,
  root: Path = [],
): Diagnostic[] {
  const flat = issues.flatMap(flatten);
  const misspelt = new Set(flat.flatMap((issue) => meantKeys(issue, document, schema, root)));
  return flat.flatMap((issue) => {
    // A misspelt key is told once, not also as the missing one.
    const path = pathText(fullPath(issue, root));
    return misspelt.has(path) ? [] : wordIssue(issue, document, schema, root);
  });
}

function fullPath(issue: Issue, root: Path): Path {
  return [...root, ...issue.path.map((step) => (typeof step === "symbol" ? String(step) : step))];
}

/** Paths of the fields that unknown keys most likely stand for. */
function meantKeys(issue: Issue, document: SourceDocument, schema: SchemaNode, root: Path): string[] {
  if (issue.code !== "unrecognized_keys") return [];
  const path = fullPath(issue, root);
  return issue.keys.flatMap((key) => {
    if (lineHint(key, at(document.value, [...path, key])) !== "") {
      return ["size", "count"].map((field) => pathText([...path, field]));
    }
    const near = nearest(key, keysAt(schema, path));
    return near === null || at(document.value, [...path, near]) !== undefined
      ? []
      : [pathText([...path, near])];
  });
}

function wordIssue(issue: Issue, document: SourceDocument, schema: SchemaNode, root: Path): Diagnostic[] {
  const path = fullPath(issue, root);
  const last = path.at(-1);
  const field =
    typeof last === "number" ? String(path.at(-2) ?? "entry").replace(/s$/, "") : (last ?? "file");
  const where = { path: pathText(path), at: document.valueAt(path) };
  if (issue.code === "custom") {
    const { build, column } = issue.params as unknown as Wording;
    return [build({ ...where, at: document.valueAt(path, column) }, field)];
  }
  if (issue.code === "unrecognized_keys") {
    return issue.keys.map((key) => {
      const keyPath = [...path, key];
      const keyWhere = { path: pathText(keyPath), at: document.keyAt(keyPath) };
      const hint = lineHint(key, at(document.value, keyPath));
      return say.keyUnknown(keyWhere, key, keysAt(schema, path), hint, fieldWith(key, nodeAt(schema, path)));
    });
  }
  const node = nodeAt(schema, path);
  const help = { description: node?.description ?? "", example: String(node?.examples?.[0] ?? "") };
  const value = at(document.value, path);
  if (value === null) return [say.fieldEmpty(where, field, shown(field, last, help))];
  if (value === undefined) return [say.fieldMissing(where, field, shown(field, last, help))];
  return [say.fieldType(where, field, kindOf(value), expectedKind(node), shown(field, last, help))];
}

/** The field that takes the word as its value: `layout` for `on point`; empty where none does. */
function fieldWith(word: string, node: SchemaNode | null): string {
  const fields = Object.entries(node?.properties ?? {});
  return fields.find(([, field]) => field.enum?.includes(word) === true)?.[0] ?? "";
}

/** Examples of a key are shown with the key; lists are shown as lists. */
function shown(field: string, last: string | number | undefined, help: say.FieldHelp): say.FieldHelp {
  if (help.example === "" || typeof last === "number") return help;
  if (help.example.startsWith("- "))
    return {
      ...help,
      example: `${field}:
  ${help.example}`,
    };
  return { ...help, example: `${field}: ${help.example}` };
}

/** A label with a colon after it turns a one-line piece into a key. */
function lineHint(key: string, value: unknown): string {
  if (typeof value !== "string" || !/\d.*[x×].*,/.test(value)) return "";
  return `To write a piece on one line leave out the colon: \`- ${key} ${value}\`.`.slice(0, 160);
}
