import type * as z from "zod";
import * as say from "../../diagnostics/fields.ts";
import { nearest } from "../../diagnostics/nearest.ts";
import type { Diagnostic } from "../../diagnostics/types.ts";
import { keysAt, nodeAt, type SchemaNode } from "../schema/json-schema.ts";
import type { Wording } from "../written/written.ts";
import { type Path, pathText, type SourceDocument } from "./document.ts";

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

function kindOf(value: unknown): say.FoundKind {
  if (Array.isArray(value)) return value.length === 0 ? "empty-list" : "list";
  if (typeof value === "object" && value !== null) return "group";
  if (typeof value === "boolean") return value ? "true" : "false";
  return "text";
}

/** What a node of the schema wants. */
function expectedKind(node: SchemaNode | null): say.ExpectedKind {
  if (node === null) return { is: "other" };
  if (node.items !== undefined) return { is: "list" };
  if (node.properties !== undefined || typeof node.additionalProperties === "object") return { is: "group" };
  if (node.type === "boolean") return { is: "boolean" };
  if (node.enum !== undefined) return { is: "one-of", options: node.enum };
  if (node.type === "integer") return { is: "whole-number" };
  const group = (node.anyOf ?? []).some((way) => expectedKind(way).is === "group");
  return { is: group ? "line-or-group" : "number-or-text" };
}

/** Turns everything zod found into diagnostics with places. */
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
    if (pieceMeant(key, at(document.value, [...path, key])) !== "") {
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
      const line = pieceMeant(key, at(document.value, keyPath));
      return say.keyUnknown(keyWhere, key, keysAt(schema, path), line, fieldWith(key, nodeAt(schema, path)));
    });
  }
  const node = nodeAt(schema, path);
  const help = helpOf(node, typeof last !== "number");
  const value = at(document.value, path);
  if (value === null) return [say.fieldEmpty(where, field, help)];
  if (value === undefined) return [say.fieldMissing(where, field, help)];
  return [say.fieldType(where, field, kindOf(value), expectedKind(node), help)];
}

/** The field that takes the word as its value: `layout` for `on point`; empty where none does. */
function fieldWith(word: string, node: SchemaNode | null): string {
  const fields = Object.entries(node?.properties ?? {});
  return fields.find(([, field]) => field.enum?.includes(word) === true)?.[0] ?? "";
}

/** @param keyed whether the value stands under its key: examples are shown with it then */
function helpOf(node: SchemaNode | null, keyed: boolean): say.FieldHelp {
  const { about = null, inches = true, of } = node ?? {};
  return { about, inches, keyed, ...(of === undefined ? {} : { of }) };
}

/** A label with a colon after it turns a one-line piece into a key: the piece that is meant; empty for none. */
function pieceMeant(key: string, value: unknown): string {
  return typeof value === "string" && /\d.*[x×].*,/.test(value) ? `${key} ${value}` : "";
}
