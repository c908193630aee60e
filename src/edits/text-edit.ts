import { type Document, isMap, isScalar, isSeq, type Node, type Pair, type YAMLMap } from "yaml";
import { lastOf, nth } from "../length/nth.ts";
import {
  keyOf,
  nodeAt,
  type Path,
  parsed,
  partNamed,
  readDocument,
  type TextRead,
  valueIn,
} from "./text-parts.ts";
import { sameValue, type Value, writtenText, writtenValue } from "./values.ts";

export { type Path, readText } from "./text-parts.ts";

/*
 * Edits of a YAML or JSON text that leave every letter alone that need not change: comments, order, spelling, blank
 * lines. Each edit is cut into the text at the place the parser names, and read back; where the cut text does not
 * mean what was wanted, the parser's own printing of the changed document is taken instead. Where the text falls into
 * parts, only the part of the key is read and written.
 */

const isJson = (text: string): boolean => text.trimStart().startsWith("{");

/** The plain value at a path; undefined where there is none. */
export const valueAt = (read: TextRead, path: Path): unknown => read.value(path);

const splice = (text: string, from: number, to: number, by: string): string =>
  text.slice(0, from) + by + text.slice(to);

/** Letters of a text with what stands in their place after an edit. */
interface Cut {
  from: number;
  to: number;
  by: string;
}

const lineStart = (text: string, at: number): number => text.lastIndexOf("\n", at - 1) + 1;

/** Just past the end of the line on which the character before `at` stands. */
function pastLine(text: string, at: number): number {
  if (at > 0 && text[at - 1] === "\n") return at;
  const end = text.indexOf("\n", at);
  return end === -1 ? text.length : end + 1;
}

function endOf(node: Node | null | undefined): number {
  const range = node?.range;
  if (range === null || range === undefined) return 0;
  return range[1];
}

const endOfPair = (pair: Pair): number =>
  Math.max(endOf(pair.value as Node | null), endOf(pair.key as Node | null));

const startOf = (node: unknown): number => (node as Node).range?.[0] ?? 0;

const column = (text: string, at: number): number => at - lineStart(text, at);

/** Several lines as a literal block under a key that stands at `indent`. */
function literal(lines: string, indent: number): string {
  const margin = " ".repeat(indent + 2);
  return `|\n${lines
    .replace(/\n+$/, "")
    .split("\n")
    .map((line) => margin + line)
    .join("\n")}\n`;
}

/** Inside brackets a text of several lines has to be quoted. */
function inBrackets(doc: Document.Parsed, path: Path): boolean {
  for (let depth = 0; depth <= path.length; depth++) {
    const node = nodeAt(doc, path.slice(0, depth)) as { flow?: boolean } | null;
    if (node?.flow === true) return true;
  }
  return false;
}

function replaced(text: string, doc: Document.Parsed, path: Path, value: Value): Cut | null {
  const node = nodeAt(doc, path);
  const range = node?.range;
  if (node === null || range === null || range === undefined) return null;
  const old = text.slice(range[0], range[1]);
  const json = isJson(text);
  if (typeof value === "string" && value.includes("\n") && !inBrackets(doc, path.slice(0, -1))) {
    const keyStart = text.slice(lineStart(text, range[0]), range[0]).search(/[^\s-]/);
    if (keyStart < 0) return null;
    // A literal block keeps its own margin.
    const margin = /^[|>][^\n]*\n( +)/.exec(old)?.[1]?.length;
    const by = literal(value, margin === undefined ? keyStart : margin - 2);
    const to = old.endsWith("\n") ? range[1] : pastLine(text, range[1]);
    return { from: range[0], to, by };
  }
  let by = writtenValue(value, json);
  // The kind of quotes she chose stays.
  if (isScalar(node) && typeof value === "string" && !json) {
    if (node.type === "QUOTE_DOUBLE") by = JSON.stringify(value);
    if (node.type === "QUOTE_SINGLE") by = `'${value.replaceAll("'", "''")}'`;
  }
  if (range[0] === range[1] && text[range[0] - 1] === ":") by = ` ${by}`;
  return { from: range[0], to: range[1], by: old.endsWith("\n") ? `${by}\n` : by };
}

/** A value after its key, over as many lines as makers give it: drawings and lists of groups downwards, the rest on one. */
function spreadOver(value: Value, indent: number, json: boolean): string {
  const margin = " ".repeat(indent + 2);
  if (typeof value === "string" && value.includes("\n")) return ` ${literal(value, indent)}`;
  if (json || typeof value !== "object") return ` ${writtenValue(value, json)}\n`;
  if (Array.isArray(value))
    return value.length > 0 && value.every((one) => typeof one === "object")
      ? `\n${value.map((one) => `${margin}- ${writtenValue(one, json)}\n`).join("")}`
      : ` ${writtenValue(value, json)}\n`;
  const pairs = Object.entries(value);
  return pairs.some(([, one]) => typeof one === "string" && one.includes("\n"))
    ? `\n${pairs
        .map(([key, one]) => `${margin}${writtenText(key, json)}:${spreadOver(one, indent + 2, json)}`)
        .join("")}`
    : ` ${writtenValue(value, json)}\n`;
}

function addedToMap(
  text: string,
  map: YAMLMap,
  key: string,
  value: Value,
  after: string | null,
): string | null {
  const json = isJson(text);
  const name = writtenText(key, json);
  const range = map.range;
  if (range === null || range === undefined) return null;
  const pairs = map.items as Pair[];
  if (map.flow === true || pairs.length === 0) {
    if (pairs.length === 0) {
      // An empty map on a line of its own key grows downwards, a line for each pair.
      const head = text.slice(lineStart(text, range[0]), range[0]);
      const alone = /^( *)[^\s{[#-][^{[#]*: *$/.exec(head);
      if (alone === null || json)
        return splice(text, range[0], range[1], `{ ${name}: ${writtenValue(value, json)} }`);
      const line = `\n${" ".repeat(nth(alone, 1).length + 2)}${name}: ${writtenValue(value, json)}`;
      return splice(text, lineStart(text, range[0]) + head.trimEnd().length, range[1], line);
    }
    const last = (after === null ? undefined : pairs.find((pair) => keyOf(pair) === after)) ?? lastOf(pairs);
    return splice(text, endOfPair(last), endOfPair(last), `, ${name}: ${writtenValue(value, json)}`);
  }
  const indent = column(text, startOf(nth(pairs, 0).key));
  const last = (after === null ? undefined : pairs.find((pair) => keyOf(pair) === after)) ?? lastOf(pairs);
  let at = pastLine(text, endOfPair(last));
  // What trails a nested value (blank lines, the next heading's note) belongs to what comes after.
  const tail = text.slice(lineStart(text, startOf(last.key)), at);
  const trimmed = tail.replace(/(\n[ \t]*)+$/, "\n");
  at -= tail.length - trimmed.length;
  const lead = at > 0 && text[at - 1] !== "\n" ? "\n" : "";
  return splice(text, at, at, `${lead}${" ".repeat(indent)}${name}:${spreadOver(value, indent, json)}`);
}

function addedToSeq(text: string, doc: Document.Parsed, path: Path, at: number, value: Value): string | null {
  const seq = nodeAt(doc, path);
  if (!isSeq(seq) || seq.range === null || seq.range === undefined) return null;
  const json = isJson(text);
  const by = writtenValue(value, json);
  const items = seq.items as Node[];
  if (items.length === 0) return splice(text, seq.range[0], seq.range[1], `[${by}]`);
  if (seq.flow === true) {
    const next = items[at];
    if (next !== undefined) return splice(text, startOf(next), startOf(next), `${by}, `);
    const end = endOf(items.at(-1));
    return splice(text, end, end, `, ${by}`);
  }
  const dash = text.slice(lineStart(text, startOf(items[0])), startOf(items[0])).lastIndexOf("-");
  if (dash < 0) return null;
  const next = items[at];
  let place = next === undefined ? pastLine(text, endOf(items.at(-1))) : lineStart(text, startOf(next));
  if (next === undefined) {
    const head = text.slice(0, place);
    place = head.replace(/(\n[ \t]*)+$/, "\n").length;
  }
  const lead = place > 0 && text[place - 1] !== "\n" ? "\n" : "";
  return splice(text, place, place, `${lead}${" ".repeat(dash)}- ${by}\n`);
}

function removed(text: string, doc: Document.Parsed, path: Path): string | null {
  const parent = nodeAt(doc, path.slice(0, -1));
  const step = lastOf(path);
  if (!(isMap(parent) || isSeq(parent)) || parent.range === null || parent.range === undefined) return null;
  const items = parent.items as (Pair | Node)[];
  const index = isSeq(parent) ? Number(step) : items.findIndex((one) => keyOf(one as Pair) === String(step));
  const item = items[index];
  if (item === undefined) return null;
  const from = (one: Pair | Node): number => (isMap(parent) ? startOf((one as Pair).key) : startOf(one));
  const to = (one: Pair | Node): number => (isMap(parent) ? endOfPair(one as Pair) : endOf(one as Node));
  if (parent.flow === true) {
    if (items.length === 1)
      return splice(text, parent.range[0], parent.range[1], isSeq(parent) ? "[]" : "{}");
    const next = items[index + 1];
    if (next !== undefined) return splice(text, from(item), from(next), "");
    return splice(text, to(nth(items, index - 1)), to(item), "");
  }
  if (items.length === 1) return null;
  const start = lineStart(text, from(item));
  const head = text.slice(start, from(item));
  if (isSeq(parent) ? !/^\s*-\s*$/.test(head) : head.trim() !== "") return null;
  return splice(text, start, pastLine(text, to(item)), "");
}

/** Writes into plain values; a path that leads nowhere changes nothing. */
function setAt(whole: unknown, path: Path, value: Value): void {
  let parent = whole;
  for (const step of path.slice(0, -1))
    parent = (parent as Record<string | number, unknown> | undefined)?.[step];
  if (typeof parent === "object" && parent !== null)
    (parent as Record<string | number, unknown>)[lastOf(path)] = value;
}

/** Changes the plain value as the edit should: what the edited text has to mean. */
function changed(
  value: unknown,
  path: Path,
  change: (parent: unknown, step: string | number) => void,
): unknown {
  const copy = structuredClone(value ?? {});
  let parent: unknown = copy;
  for (const step of path.slice(0, -1)) parent = (parent as Record<string | number, unknown>)[step];
  if (typeof parent === "object" && parent !== null) change(parent, lastOf(path));
  return copy;
}

/** The cut text where it means what was wanted and brings no fault that was not there; else null. */
function checked(text: string | null, wanted: unknown, before: Document.Parsed): string | null {
  if (text === null) return null;
  const doc = readDocument(text);
  return doc.errors.length <= before.errors.length && sameValue(plain(doc), wanted) ? text : null;
}

/** The whole as plain values; null where aliases run in circles or are too many. */
function plain(doc: Document.Parsed): unknown {
  try {
    return doc.toJS();
  } catch {
    return null;
  }
}

/**
 * The parser's own printing: comments and order stay, spacing may not. A text the parser cannot read whole is never
 * printed anew, since what it did not understand would be lost: it stays as it is.
 */
function printed(text: string, change: (doc: Document.Parsed) => void): string {
  const doc = parsed(text);
  if (doc.errors.length > 0) return text;
  change(doc);
  return doc.toString({ lineWidth: 0 });
}

/** An edit below one key of the file, in the letters of that key alone where the text falls into parts. */
function inPart(text: string, path: Path, change: (part: string) => string): string {
  const part = partNamed(text, path[0]);
  if (part === null) return change(text);
  const made = change(text.slice(part.from, part.to));
  return splice(text, part.from, part.to, made);
}

/**
 * The text with a value written at a path. What lies between is made where it is missing.
 * @param after key of the same map behind which a new one is put; at the end where there is none of that name
 */
export function withValue(text: string, path: Path, value: Value, after: string | null = null): string {
  return inPart(text, path, (part) => withValueWhole(part, path, value, after));
}

function withValueWhole(text: string, path: Path, value: Value, after: string | null): string {
  const doc = readDocument(text);
  if (sameValue(valueIn(doc, path), value)) return text;
  const parentPath = path.slice(0, -1);
  const parent = nodeAt(doc, parentPath);
  if (!isMap(parent) && !isSeq(parent)) {
    if (path.length < 2) return text;
    const key = lastOf(path);
    return withValueWhole(text, parentPath, typeof key === "number" ? [value] : { [key]: value }, after);
  }
  const step = lastOf(path);
  const wanted = changed(plain(doc), path, (at, key) => {
    (at as Record<string | number, unknown>)[key] = value;
  });
  const there = isSeq(parent)
    ? parent.items[Number(step)] !== undefined
    : parent.items.some((pair) => keyOf(pair) === String(step));
  const cut = there
    ? cutInto(text, [replaced(text, doc, path, value)])
    : isMap(parent)
      ? addedToMap(text, parent, String(step), value, after)
      : addedToSeq(text, doc, parentPath, Number(step), value);
  return checked(cut, wanted, doc) ?? printed(text, (whole) => whole.setIn(path, whole.createNode(value)));
}

/** Letters put in at several places; null where one place is not known or two lie on one another. */
function cutInto(text: string, cuts: readonly (Cut | null)[]): string | null {
  let made = text;
  let before = text.length;
  for (const cut of [...cuts].sort((a, b) => (b?.from ?? 0) - (a?.from ?? 0))) {
    if (cut === null || cut.to > before) return null;
    made = splice(made, cut.from, cut.to, cut.by);
    before = cut.from;
  }
  return made;
}

/** The text with one value written at several paths at which there is one. */
export function withValueAtAll(text: string, paths: readonly Path[], value: string): string {
  const keys = new Set(paths.map(([key]) => key));
  return [...keys].reduce((made: string, key) => {
    const own = paths.filter(([first]) => first === key);
    return inPart(made, [key ?? ""], (part) => {
      const doc = readDocument(part);
      const wanted = structuredClone(plain(doc));
      for (const path of own) setAt(wanted, path, value);
      const cuts = own.map((path) => replaced(part, doc, path, value));
      return (
        checked(cutInto(part, cuts), wanted, doc) ??
        own.reduce((one: string, path) => withValueWhole(one, path, value, null), part)
      );
    });
  }, text);
}

/** The text with a value put into a list before its item `at`. */
export function withItem(text: string, path: Path, at: number, value: Value): string {
  return inPart(text, path, (part) => withItemWhole(part, path, at, value));
}

function withItemWhole(text: string, path: Path, at: number, value: Value): string {
  const doc = readDocument(text);
  const list = valueIn(doc, path);
  if (!Array.isArray(list)) return withValueWhole(text, path, [value], null);
  const wanted = changed(plain(doc), [...path, 0], (items) => void (items as unknown[]).splice(at, 0, value));
  const cut = addedToSeq(text, doc, path, at, value);
  return (
    checked(cut, wanted, doc) ??
    printed(text, (whole) => {
      const seq = whole.getIn(path);
      if (isSeq(seq)) seq.items.splice(at, 0, whole.createNode(value));
    })
  );
}

/** The text without what stands at a path; the text itself where there is nothing. */
export function withoutValue(text: string, path: Path): string {
  // A key goes with the line it stands on, and what is left has to be read without it.
  if (path.length < 2) return withoutValueWhole(text, path);
  return inPart(text, path, (part) => withoutValueWhole(part, path));
}

function withoutValueWhole(text: string, path: Path): string {
  const doc = readDocument(text);
  if (valueIn(doc, path) === undefined) return text;
  const wanted = changed(plain(doc), path, (at, key) => {
    if (Array.isArray(at)) at.splice(Number(key), 1);
    else delete (at as Record<string | number, unknown>)[key];
  });
  return (
    checked(removed(text, doc, path), wanted, doc) ?? printed(text, (whole) => void whole.deleteIn(path))
  );
}
