import * as z from "zod";
import { cutListSchema } from "./cut-list-schema.ts";
import { quiltSchema } from "./quilt-schema.ts";
import { workSchema } from "./work-schema.ts";

/** A node of a JSON Schema, as far as we look into it. */
export interface SchemaNode {
  description?: string;
  examples?: unknown[];
  type?: string;
  enum?: string[];
  properties?: Record<string, SchemaNode>;
  additionalProperties?: SchemaNode | boolean;
  items?: SchemaNode;
  anyOf?: SchemaNode[];
}

/** The JSON Schema of what a maker writes, from a zod schema; leaves read by us are told by their `written` type. */
export function describeSchema(schema: z.ZodType): SchemaNode {
  const described = z.toJSONSchema(schema, {
    io: "input",
    reused: "inline",
    // zod leaves examples out where a value is transformed, and knows only text or number where we read more.
    override: ({ jsonSchema }) => {
      const node = jsonSchema as { written?: object; example?: unknown; type?: unknown; anyOf?: unknown };
      if (node.written === undefined) return;
      if ("type" in node.written) delete node.anyOf;
      Object.assign(node, node.written, { examples: [node.example] });
      delete node.written;
      delete node.example;
    },
  });
  return described as SchemaNode;
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
export function jsonSchema(): object {
  const { $schema, ...cutList } = describeSchema(cutListSchema("in")) as SchemaNode & { $schema?: string };
  const { $schema: _same, ...quilt } = describeSchema(quiltSchema("in")) as SchemaNode & { $schema?: string };
  return { $schema, title: "Crossgrain file", anyOf: [cutList, quilt] };
}

/** The JSON Schema of the file that keeps what is cut of a quilt. */
export function workJsonSchema(): object {
  const { properties = {}, ...rest } = describeSchema(workSchema("in"));
  const { type: _text, enum: versions = [], ...version } = properties.version ?? {};
  // Written without quotes it is a number.
  const either = { ...version, enum: versions.flatMap((each) => [each, Number(each)]) };
  return { ...rest, properties: { ...properties, version: either } };
}
