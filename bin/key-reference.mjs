// The reference of every key of a file, made from the schema that the reader itself publishes, so that no key can be
// forgotten in it.

const IS_DEF = /^#\/\$defs\//;

/** Definitions that stand for one thing under two names of the schema's own. */
const heading = (name) => name.replace(/-\d+$/, "");

/** What a node is made of: its items, what it may be instead. */
function partsOf({ items, then, else: other, anyOf = [], oneOf = [] }) {
  return [items, then, other, ...anyOf, ...oneOf].filter((part) => part !== undefined);
}

/** Tables of keys inside a node, however deep: of itself, of its items, of what it may be instead. */
function tablesIn(node) {
  const own = node.properties === undefined ? [] : [node.properties];
  return [...own, ...partsOf(node).flatMap(tablesIn)];
}

function refsIn(node) {
  const { $ref, additionalProperties: more } = node;
  const own = $ref === undefined ? [] : [$ref.replace(IS_DEF, "")];
  return [...own, ...[...partsOf(node), ...(typeof more === "object" ? [more] : [])].flatMap(refsIn)];
}

const cell = (text) => text.replaceAll("|", "\\|").replaceAll("\n", " ");

/** Values that may be written, or an example. */
function example({ enum: values, examples }) {
  const shown = values ?? examples ?? [];
  return shown
    .map((value) => `\`${typeof value === "string" ? value : JSON.stringify(value)}\``)
    .join(values === undefined ? " " : ", ");
}

function rowsOf(properties, defs) {
  return Object.entries(properties).map(([key, node]) => {
    const [ref] = refsIn(node);
    const named = ref === undefined ? undefined : defs[ref];
    const said = node.description ?? named?.description ?? "";
    const link = ref === undefined ? "" : ` (see [${heading(ref)}](#${heading(ref)}))`;
    return `| \`${key}\` | ${cell(said)}${link} | ${cell(example(node))} |`;
  });
}

/** The reference as Markdown: the keys of the whole file, then of every part. */
export function keyReference(schema) {
  const defs = schema.$defs ?? {};
  const table = (rows) =>
    rows.length === 0
      ? []
      : ["| key | what it says | example, or what may be written |", "| --- | --- | --- |", ...rows, ""];
  const inside = (node) => [...new Set(tablesIn(node).flatMap((properties) => rowsOf(properties, defs)))];
  const lists = Object.entries(schema.properties ?? {}).filter(
    ([, node]) => node.$ref === undefined && tablesIn(node).length > 0,
  );
  const seen = new Set();
  const parts = Object.entries(defs).flatMap(([name, node]) => {
    const nested = Object.entries(node.properties ?? {}).filter(
      ([, own]) => own.$ref === undefined && tablesIn(own).length > 0,
    );
    const title = heading(name);
    const repeated = seen.has(title);
    seen.add(title);
    const rows = inside(node);
    if (repeated || rows.length === 0) return [];
    return [
      `## ${title}`,
      "",
      ...(node.description === undefined ? [] : [`${node.description}.`, ""]),
      ...table(rows),
      ...nested.flatMap(([key, own]) => [`### ${title}: ${key}`, "", ...table(inside(own))]),
    ];
  });
  return [
    "<!-- made from the schema; `npm run schemas` writes it, `npm test` compares -->",
    "# Every key of a file",
    "",
    "A quilt or a cut list is YAML or JSON. Lengths may be written with their measure (`2 1/2 in`, `6.5 cm`) or bare, in the",
    "file's `units`. What each part is for, with whole examples, stands in [spec/README.md](../spec/README.md).",
    "",
    "## The file",
    "",
    ...table(rowsOf(schema.properties ?? {}, defs)),
    ...lists.flatMap(([key, node]) => [`### ${key}`, "", ...table(inside(node))]),
    ...parts,
  ]
    .join("\n")
    .replace(/\n+$/, "\n");
}
