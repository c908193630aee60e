import * as z from "zod";
import type { FileKey } from "../../diagnostics/file-keys.ts";
import { cutListSchema } from "./cut-list-schema.ts";
import { quiltSchema } from "./quilt-schema.ts";
import { workSchema } from "./work-schema.ts";

/** A node of a JSON Schema, as far as we look into it. */
export interface SchemaNode {
  /** The code of what it means, as long as it is not said in a language. */
  about?: FileKey;
  inches?: boolean;
  of?: string;
  title?: string;
  description?: string;
  examples?: unknown[];
  type?: string;
  enum?: string[];
  properties?: Record<string, SchemaNode>;
  additionalProperties?: SchemaNode | boolean;
  items?: SchemaNode;
  anyOf?: SchemaNode[];
}

/** What a language says of a key: its meaning, and an example of it. */
interface KeySaid {
  title?: string;
  description: string;
  examples?: unknown[];
}

/** Says what a key means in a language. */
export type SayKey = (node: { about: FileKey; inches: boolean; of?: string }) => KeySaid;

/**
 * The JSON Schema of what a maker writes, from a zod schema, with codes for what keys mean; leaves read by us are told by
 * their `written` type.
 */
export function describeSchema(schema: z.ZodType): SchemaNode {
  const described = z.toJSONSchema(schema, {
    io: "input",
    reused: "inline",
    // zod leaves examples out where a value is transformed, and knows only text or number where we read more.
    override: ({ jsonSchema }) => {
      const node = jsonSchema as { written?: object; type?: unknown; anyOf?: unknown };
      if (node.written === undefined) return;
      if ("type" in node.written) delete node.anyOf;
      // Examples stand last, when they are said.
      Object.assign(node, node.written, { examples: [] });
      delete node.written;
    },
  });
  return described as SchemaNode;
}

/** The schema with what its keys mean in a language in place of their codes. */
function inLanguage(schema: SchemaNode, say: SayKey): SchemaNode {
  const { about, inches = true, of } = schema;
  const said = about === undefined ? null : say({ about, inches, ...(of === undefined ? {} : { of }) });
  const each = (node: SchemaNode) => inLanguage(node, say);
  const made: Record<string, unknown> = {};
  for (const [key, value] of Object.entries(schema)) {
    if (key === "about") {
      Object.assign(made, said?.title === undefined ? {} : { title: said.title });
      made.description = said?.description;
      // Of a leaf they stand behind its type, where there is a place for them already.
      if (schema.examples === undefined && said?.examples !== undefined) made.examples = said.examples;
    } else if (key === "examples") {
      if (said?.examples !== undefined) made.examples = said.examples;
    } else if (key === "properties") made.properties = mapped(value as Record<string, SchemaNode>, each);
    else if (key === "anyOf") made.anyOf = (value as SchemaNode[]).map(each);
    else if (key === "items") made.items = each(value as SchemaNode);
    else if (key === "additionalProperties" && typeof value === "object")
      made.additionalProperties = each(value as SchemaNode);
    else if (key !== "inches" && key !== "of") made[key] = value;
  }
  return made as SchemaNode;
}

function mapped<Value>(
  record: Record<string, Value>,
  change: (value: Value) => Value,
): Record<string, Value> {
  return Object.fromEntries(Object.entries(record).map(([key, value]) => [key, change(value)]));
}

/** The node for a path in a file, or null where the schema knows none. */
export function nodeAt(root: SchemaNode, path: readonly (string | number)[]): SchemaNode | null {
  let nodes: SchemaNode[] = [root];
  for (const step of path) {
    nodes = nodes
      .flatMap((node) => [node, ...(node.anyOf ?? [])])
      .flatMap((node) => {
        if (typeof step === "number") return node.items ?? [];
        if (node.properties !== undefined && Object.hasOwn(node.properties, step))
          return node.properties[step] ?? [];
        return typeof node.additionalProperties === "object" ? node.additionalProperties : [];
      });
  }
  return nodes[0] ?? null;
}

/** Keys known at a path, in the order of the schema. */
export function keysAt(root: SchemaNode, path: readonly (string | number)[]): string[] {
  const node = nodeAt(root, path);
  const all = node === null ? [] : [node, ...(node.anyOf ?? [])];
  return all.flatMap((each) => Object.keys(each.properties ?? {}));
}

/** The JSON Schema of the files this program reads: a cut list, or a quilt design. */
export function jsonSchema(say: SayKey): object {
  const { $schema, ...cutList } = describeSchema(cutListSchema("in")) as SchemaNode & { $schema?: string };
  const { $schema: _same, ...quilt } = describeSchema(quiltSchema("in")) as SchemaNode & { $schema?: string };
  const { title } = say({ about: "file", inches: true });
  return { $schema, title, anyOf: [inLanguage(cutList, say), inLanguage(quilt, say)] };
}

/** The JSON Schema of the file that keeps what is cut of a quilt. */
export function workJsonSchema(say: SayKey): object {
  const { properties = {}, ...rest } = inLanguage(describeSchema(workSchema("in")), say);
  const { type: _text, enum: versions = [], ...version } = properties.version ?? {};
  // Written without quotes it is a number.
  const either = { ...version, enum: versions.flatMap((each) => [each, Number(each)]) };
  return { ...rest, properties: { ...properties, version: either } };
}
