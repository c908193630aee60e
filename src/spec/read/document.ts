import {
  type Document,
  isAlias,
  isMap,
  isScalar,
  isSeq,
  LineCounter,
  type Node,
  type Pair,
  parseDocument,
  type YAMLMap,
} from "yaml";
import {
  aliasUsed,
  fileEmpty,
  keyRepeated,
  nestedTooDeep,
  tabIndent,
  yamlSyntax,
} from "../../diagnostics/reading.ts";
import type { Diagnostic, Place } from "../../diagnostics/types.ts";

export type Path = readonly (string | number)[];

/**
 * A file as plain values, with the place of each. Numbers come as they are written (`2.50`, `010`), so that no
 * decimal passes through a floating-point number. An empty value is null.
 */
export interface SourceDocument {
  value: unknown;
  /** Place of the value at a path, or of the nearest thing around it. `column` counts inside the value's text. */
  valueAt(path: Path, column?: number): Place;
  /** Place of the key at the end of the path, or of the nearest thing around it. */
  keyAt(path: Path): Place;
}

/** Deeper nesting than any cut list has; the YAML reader itself would run out of stack later. */
const DEEPEST = 60;

/** `fabrics[0].pieces[2].size` */
export function pathText(path: Path): string {
  return path
    .map((step, i) => (typeof step === "number" ? `[${step}]` : i === 0 ? step : `.${step}`))
    .join("")
    .slice(0, 200);
}

/** Offset of the first bracket that lies too deep, counting brackets alone; null when none does. */
function tooDeep(text: string): number | null {
  let depth = 0;
  for (let at = 0; at < text.length; at++) {
    const character = text[at];
    if (character === "[" || character === "{") depth++;
    else if (character === "]" || character === "}") depth = Math.max(0, depth - 1);
    if (depth > DEEPEST) return at;
  }
  return null;
}

/** Reads YAML or JSON. Every problem found is told; there is a value only when there is none. */
export function readDocument(
  text: string,
  file: string,
): { value: SourceDocument | null; diagnostics: Diagnostic[] } {
  const lines = new LineCounter();
  const placeAt = (offset: number): Place => {
    const { line, col } = lines.linePos(Math.min(offset, text.length));
    return { file, line: Math.max(1, line), column: Math.max(1, col) };
  };
  const deep = tooDeep(text);
  if (deep !== null) {
    const line = text.slice(0, deep).split("\n").length;
    const column = deep - text.lastIndexOf("\n", deep);
    return { value: null, diagnostics: [nestedTooDeep({ path: "", at: { file, line, column } })] };
  }
  let document: Document.Parsed;
  try {
    document = parseDocument(text, {
      lineCounter: lines,
      prettyErrors: false,
      strict: true,
      uniqueKeys: false,
      logLevel: "error",
    });
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    return { value: null, diagnostics: [nestedTooDeep({ path: "", at: { file, line: 1, column: 1 } })] };
  }
  const diagnostics = syntaxProblems(document, text, placeAt);
  if (diagnostics.length > 0) return { value: null, diagnostics };
  const { contents } = document;
  if (contents === null || (isScalar(contents) && contents.value === null)) {
    return { value: null, diagnostics: [fileEmpty({ path: "", at: placeAt(0) })] };
  }
  const value = plain(contents, [], 0, placeAt, diagnostics);
  if (diagnostics.length > 0) return { value: null, diagnostics };
  return { value: new Places(value, contents, placeAt, text), diagnostics: [] };
}

/** Only the first fault is told, since the rest follow from it. */
function syntaxProblems(
  document: Document.Parsed,
  text: string,
  placeAt: (offset: number) => Place,
): Diagnostic[] {
  const [first] = document.errors;
  if (first === undefined) return [];
  const { code, message, pos } = first;
  const where = { path: "", at: placeAt(pos[0]) };
  const line = text.slice(text.lastIndexOf("\n", Math.max(0, pos[0] - 1)) + 1).slice(0, 100);
  if (code === "RESOURCE_EXHAUSTION") return [nestedTooDeep(where)];
  if (code === "TAB_AS_INDENT" || /^ *\t/.test(line)) return [tabIndent(where)];
  if (code === "BAD_ALIAS") return [aliasUsed(where, text.slice(pos[0], pos[1]))];
  return [yamlSyntax(where, code, message)];
}

function plain(
  node: unknown,
  path: Path,
  depth: number,
  placeAt: (offset: number) => Place,
  diagnostics: Diagnostic[],
): unknown {
  const start = (node as Node | null)?.range?.[0] ?? 0;
  const where = { path: pathText(path), at: placeAt(start) };
  if (isAlias(node)) {
    diagnostics.push(aliasUsed(where, `*${node.source}`));
    return null;
  }
  if (depth > DEEPEST) {
    diagnostics.push(nestedTooDeep(where));
    return null;
  }
  const anchored = node as { anchor?: string; tag?: string } | null;
  if (anchored?.anchor !== undefined) diagnostics.push(aliasUsed(where, `&${anchored.anchor}`));
  else if (anchored?.tag !== undefined) diagnostics.push(aliasUsed(where, `!${anchored.tag}`));
  if (isScalar(node)) {
    if (typeof node.value === "number") return node.source ?? String(node.value);
    return typeof node.value === "string" || typeof node.value === "boolean" ? node.value : null;
  }
  if (isSeq(node)) {
    return node.items.map((item, i) => plain(item, [...path, i], depth + 1, placeAt, diagnostics));
  }
  if (isMap(node)) {
    // Without a prototype, so that a key such as `__proto__` is a key like any other.
    const made: Record<string, unknown> = Object.create(null);
    for (const { key, value } of node.items) {
      const name = keyText(key);
      plain(key, path, depth + 1, placeAt, diagnostics);
      if (Object.hasOwn(made, name)) {
        const at = placeAt((key as Node | null)?.range?.[0] ?? start);
        diagnostics.push(keyRepeated({ path: pathText([...path, name]), at }, name));
      }
      made[name] = value === null ? null : plain(value, [...path, name], depth + 1, placeAt, diagnostics);
      if (isMap(key) || isSeq(key))
        diagnostics.push(yamlSyntax(where, "MULTILINE_IMPLICIT_KEY", keyText(key)));
    }
    return made;
  }
  return null;
}

function keyText(key: unknown): string {
  if (!isScalar(key)) return "";
  return typeof key.value === "string" ? key.value : (key.source ?? String(key.value));
}

class Places implements SourceDocument {
  readonly value: unknown;
  private readonly root: unknown;
  private readonly placeOf: (offset: number) => Place;
  private readonly text: string;
  /** Looked up by key, so that a file of very many keys is still read quickly. */
  private readonly pairs = new WeakMap<YAMLMap, Map<string, Pair>>();

  constructor(value: unknown, root: unknown, placeOf: (offset: number) => Place, text: string) {
    this.value = value;
    this.root = root;
    this.placeOf = placeOf;
    this.text = text;
  }

  private pairOf(map: YAMLMap, key: string): Pair | undefined {
    let pairs = this.pairs.get(map);
    if (pairs === undefined) {
      pairs = new Map(map.items.map((pair) => [keyText(pair.key), pair]));
      this.pairs.set(map, pairs);
    }
    return pairs.get(key);
  }

  /** The node at the path, or the last one on the way to it, and the key that led there. */
  private find(path: Path): { node: Node | null; key: Node | null; whole: boolean } {
    let node = this.root as Node | null;
    let key: Node | null = null;
    for (const step of path) {
      let next: { node: Node | null; key: Node | null } | null = null;
      if (isSeq(node) && typeof step === "number" && step < node.items.length) {
        next = { node: node.items[step] as Node | null, key: null };
      } else if (isMap(node)) {
        const pair = this.pairOf(node, String(step));
        if (pair) next = { node: pair.value as Node | null, key: pair.key as Node };
      }
      if (next === null) return { node, key, whole: false };
      ({ node, key } = next);
    }
    return { node, key, whole: true };
  }

  valueAt(path: Path, column = 1): Place {
    const { node, key, whole } = this.find(path);
    // An empty value has no place of its own worth showing: its key has.
    const empty = isScalar(node) && node.value === null && key !== null;
    const start = (empty ? key : (node ?? key))?.range?.[0] ?? 0;
    const quoted = isScalar(node) && (this.text[start] === '"' || this.text[start] === "'") ? 1 : 0;
    return this.placeOf(start + (whole && column > 1 ? column - 1 + quoted : 0));
  }

  keyAt(path: Path): Place {
    const { node, key, whole } = this.find(path);
    return this.placeOf((whole ? (key ?? node) : node)?.range?.[0] ?? 0);
  }
}
