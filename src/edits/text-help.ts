import { nth } from "../length/nth.ts";
import { jsonSchema, keysAt, nodeAt, type SayKey, type SchemaNode } from "../spec/index.ts";

/** Where in the file's structure a place of the text lies, told by indents and brackets alone: the text may be half written. */
export interface TextPlace {
  path: (string | number)[];
  /** The key whose value is being written; null where a key is. */
  key: string | null;
  /** Letters already written of the word. */
  word: string;
}

/** The schema in a language, made when it is first asked for. */
const made = new WeakMap<SayKey, SchemaNode>();

function schemaIn(say: SayKey): SchemaNode {
  const known = made.get(say) ?? (jsonSchema(say) as SchemaNode);
  made.set(say, known);
  return known;
}

const indentOf = (line: string): number => line.search(/\S|$/);

/** Keys and items of the lines above that enclose a line of this indent. */
function enclosing(lines: readonly string[], indent: number): (string | number)[] {
  const path: (string | number)[] = [];
  let least = indent;
  for (let i = lines.length - 1; i >= 0 && least > 0; i--) {
    const line = lines[i] ?? "";
    if (line.trim() === "" || line.trimStart().startsWith("#")) continue;
    const own = indentOf(line);
    const item = /^(\s*)- +(?:([\w-]+(?: [\w-]+)*):)?/.exec(line);
    if (item !== null) {
      const inner = own + 2;
      if (inner === least || (inner < least && item[2] === undefined)) {
        path.unshift(0);
        least = own;
        continue;
      }
      if (inner < least && item[2] !== undefined) {
        path.unshift(0, item[2]);
        least = own;
        continue;
      }
    }
    const key = /^\s*([^\s#:][^:#]*):(\s|$)/.exec(line)?.[1];
    if (key !== undefined && item === null && own < least) {
      path.unshift(key.trim());
      least = own;
    }
  }
  return path;
}

/** The place at the end of a text. */
export function placeAt(before: string): TextPlace {
  const lines = before.split("\n");
  const line = lines.at(-1) ?? "";
  const bare = line.replace(/^(\s*)- /, "$1  ");
  const indent = indentOf(bare);
  const path = enclosing(lines.slice(0, -1), line === bare ? indent : indentOf(line) + 1);
  // A list item on this very line: its keys are one step further in.
  if (line !== bare && typeof path.at(-1) !== "number") path.push(0);
  let rest = bare.slice(indent);
  for (let open = lastOpen(rest); open !== null; open = lastOpen(rest)) {
    const head = rest.slice(0, open);
    const key = /([\w-]+(?: [\w-]+)*):\s*$/.exec(head)?.[1];
    if (key !== undefined) path.push(key);
    else if (head.trim() !== "" && !head.trim().endsWith(",")) break;
    if (rest[open] === "[") path.push(0);
    rest = rest.slice(open + 1);
  }
  const last = rest.split(",").at(-1) ?? "";
  const pair = /^\s*([^:]+):\s+(.*)$/s.exec(last) ?? /^\s*([^:]+):(\s*)$/.exec(last);
  if (pair !== null) return { path, key: nth(pair, 1).trim(), word: nth(pair, 2).trim() };
  return { path, key: null, word: last.trim() };
}

/** The outermost bracket of a line that is not closed on it. */
function lastOpen(text: string): number | null {
  const open: number[] = [];
  for (let i = 0; i < text.length; i++) {
    if (text[i] === "{" || text[i] === "[") open.push(i);
    else if (text[i] === "}" || text[i] === "]") open.pop();
  }
  return open[0] ?? null;
}

export interface Offered {
  label: string;
  detail: string;
}

const described = (schema: SchemaNode, path: readonly (string | number)[]): string => {
  const node = nodeAt(schema, path);
  return (
    node?.description ?? node?.anyOf?.find(({ description }) => description !== undefined)?.description ?? ""
  );
};

/** What may be written at a place: keys that the format knows there, or values. */
export function offeredAt({ path, key }: TextPlace, fabrics: readonly string[], say: SayKey): Offered[] {
  const schema = schemaIn(say);
  if (key === null)
    return [...new Set(keysAt(schema, path))].map((label) => ({
      label,
      detail: described(schema, [...path, label]),
    }));
  const node = nodeAt(schema, [...path, key]);
  const nodes = node === null ? [] : [node, ...(node.anyOf ?? [])];
  const values = nodes.flatMap((one) => one.enum ?? []);
  if (values.length > 0) return values.map((label) => ({ label, detail: "" }));
  return fabrics.map((label) => ({ label, detail: "" }));
}

/** What the format says of a key: its meaning and an example; null for a word that is none. */
export function helpFor(
  path: readonly (string | number)[],
  key: string,
  say: SayKey,
): { meaning: string; example: string } | null {
  const schema = schemaIn(say);
  const node = nodeAt(schema, [...path, key]);
  const meaning = described(schema, [...path, key]);
  if (node === null || meaning === "") return null;
  const [example] = [node, ...(node.anyOf ?? [])].flatMap((one) => one.examples ?? []);
  return { meaning, example: example === undefined ? "" : String(example) };
}
