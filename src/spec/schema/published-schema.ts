import { jsonSchema, type SayKey, type SchemaNode } from "./json-schema.ts";

type Node = Record<string, unknown>;
type Nodes = Record<string, SchemaNode>;

const asList = (value: unknown): unknown[] =>
  value === undefined ? [] : Array.isArray(value) ? value : [value];

/** Kinds of value a node speaks of; none when it does not say. */
const kindsOf = (node: SchemaNode): string[] => asList(node.type).map(String);

/**
 * Ways of writing one thing that differ in kind (a line of text, a group of keys) as one node: every keyword speaks of
 * its own kind only. A key that is misspelt in one of them is then told once, and not that the others do not fit either.
 */
function joined(node: SchemaNode): SchemaNode {
  if (node.anyOf === undefined) return node;
  const { anyOf, ...rest } = node;
  const ways = anyOf.map(joined);
  const told = toldByKey(ways);
  if (told !== null) {
    const { key, way, others } = told;
    return {
      ...rest,
      if: { type: "object", required: [key] },
      // biome-ignore lint/suspicious/noThenProperty: a keyword of JSON Schema
      then: way,
      else: joined({ anyOf: others }),
    } as SchemaNode;
  }
  const kinds = ways.flatMap(kindsOf);
  const apart =
    ways.every((way) => way.type !== undefined && way.anyOf === undefined) &&
    new Set(kinds).size === kinds.length;
  if (!apart) return { ...rest, anyOf: ways };
  const merged: SchemaNode = Object.assign({}, ...ways);
  // A choice of words is for texts only, where numbers or groups may stand too.
  const { enum: words, ...others } = merged;
  const choice =
    words !== undefined && kinds.some((kind) => kind !== "string")
      ? {}
      : words === undefined
        ? {}
        : { enum: words };
  return { ...others, ...choice, ...rest, type: kinds as unknown as string };
}

/** Of two groups of keys the one that is told by a key it needs and the other does not know; null where there are no two. */
function toldByKey(
  ways: readonly SchemaNode[],
): { key: string; way: SchemaNode; others: SchemaNode[] } | null {
  const groups = ways.filter(({ properties }) => properties !== undefined);
  const [one, other] = groups;
  if (groups.length !== 2 || one === undefined || other === undefined) return null;
  for (const [way, against] of [
    [other, one],
    [one, other],
  ] as const) {
    const key = asList((way as Node).required)
      .map(String)
      .find((name) => against.properties?.[name] === undefined);
    if (key !== undefined) return { key, way, others: ways.filter((each) => each !== way) };
  }
  return null;
}

/** Every node inside, changed from the leaves up. */
function throughout(
  node: SchemaNode,
  change: (node: SchemaNode, name: string) => SchemaNode,
  name: string,
): SchemaNode {
  const inner = { ...node } as Node;
  const each = (one: SchemaNode, as: string) => throughout(one, change, as);
  if (node.properties !== undefined)
    inner.properties = Object.fromEntries(
      Object.entries(node.properties).map(([key, one]) => [key, each(one, key)]),
    );
  if (typeof node.additionalProperties === "object")
    inner.additionalProperties = each(node.additionalProperties, one(name));
  if (node.items !== undefined) inner.items = each(node.items, one(name));
  if (node.anyOf !== undefined) inner.anyOf = node.anyOf.map((way) => each(way, name));
  return change(inner as SchemaNode, name);
}

/** One of several: `fabrics` holds a `fabric`. */
const one = (name: string) => name.replace(/s$/, "");

/** Groups of keys put under `$defs` by name, each once. */
function withDefinitions(root: SchemaNode): { root: SchemaNode; $defs: Nodes } {
  const $defs: Nodes = {};
  const known = new Map<string, string>();
  const changed = throughout(
    root,
    (node, name) => {
      if (node.properties === undefined || name === "") return node;
      const text = JSON.stringify(node);
      let found = known.get(text);
      if (found === undefined) {
        const same = Object.keys($defs).filter((each) => each === name || each.startsWith(`${name}-`)).length;
        found = same === 0 ? name : `${name}-${same + 1}`;
        known.set(text, found);
        $defs[found] = node;
      }
      return { $ref: `#/$defs/${found}` } as SchemaNode;
    },
    "",
  );
  return { root: changed, $defs };
}

/** A file of either kind as one group of keys: which kind it is shows only in keys that it has. */
function eitherKind(cutList: SchemaNode, quilt: SchemaNode): Node {
  const own = Object.keys(quilt.properties ?? {}).filter((key) => cutList.properties?.[key] === undefined);
  const needed = (node: SchemaNode) => asList((node as Node).required).map(String);
  const besides = needed(quilt).filter((key) => !needed(cutList).includes(key));
  const listed = { properties: { fabrics: { items: { required: ["pieces"] } } } };
  return {
    type: "object",
    properties: { ...cutList.properties, ...quilt.properties },
    required: needed(cutList),
    additionalProperties: false,
    // Keys of a quilt only make sense in one.
    dependentRequired: Object.fromEntries(own.map((key) => [key, besides.filter((other) => other !== key)])),
    // Where nothing is designed, pieces are listed.
    if: { not: { anyOf: besides.map((key) => ({ required: [key] })) } },
    // biome-ignore lint/suspicious/noThenProperty: a keyword of JSON Schema
    then: listed,
  };
}

/** The JSON Schema of the files this program reads, for editors and other programs. */
export function publishedSchema(say: SayKey): object {
  const { $schema, anyOf = [] } = jsonSchema(say) as SchemaNode & { $schema?: string };
  const [cutList = {}, quilt = {}] = anyOf;
  const plain = throughout(eitherKind(cutList, quilt) as SchemaNode, joined, "");
  const { root, $defs } = withDefinitions(plain);
  return {
    ...{ $schema, $id: "urn:crossgrain:file:1", ...say({ about: "file", inches: true }) },
    ...root,
    $defs,
  };
}
