import { PATTERN_PARTS, type PatternPart } from "../spec/index.ts";
import { readText, valueAt, withoutValue, withValue } from "./text-edit.ts";
import type { Value } from "./values.ts";

/** Lines of an author's that stand on the cover or at the end. */
export type PatternLine =
  | "author"
  | "level"
  | "copyright"
  | "contact"
  | "credits"
  | "date"
  | "version"
  | "sizes";

/** A value of the pattern; empty ones go, and the pattern with its last. */
function withPattern(text: string, path: readonly string[], value: Value | ""): string {
  const doc = readText(text);
  const there = valueAt(doc, ["pattern"]);
  if (value !== "") {
    const [field = "", part] = path;
    if (there === undefined)
      return withValue(
        text,
        ["pattern"],
        part === undefined ? { [field]: value } : { [field]: { [part]: value } },
      );
    return part !== undefined && valueAt(doc, ["pattern", field]) === undefined
      ? withValue(text, ["pattern", field], { [part]: value })
      : withValue(text, ["pattern", ...path], value);
  }
  return valueAt(doc, ["pattern", ...path]) === undefined
    ? text
    : withPatternAbove(text, ["pattern", ...path]);
}

/** Takes out what would be left empty, as far up as that goes. */
function withPatternAbove(text: string, path: readonly string[]): string {
  const above = path.slice(0, -1);
  const left = above.length === 0 ? null : valueAt(readText(text), above);
  return typeof left === "object" && left !== null && Object.keys(left).length === 1
    ? withPatternAbove(text, above)
    : withoutValue(text, path);
}

export const setPatternLine = (text: string, line: PatternLine, value: string): string =>
  withPattern(text, [line], value);

/** The author's own words, in Markdown, before or after a part. */
export const setPatternWords = (
  text: string,
  where: "before" | "after",
  part: PatternPart,
  value: string,
): string => withPattern(text, [where, part], value);

/** Parts of the pattern in their order; all in the usual order are not written. */
export function setPatternParts(text: string, parts: readonly PatternPart[]): string {
  if (parts.length === 0) return text;
  return withPattern(text, ["parts"], parts.join() === PATTERN_PARTS.join() ? "" : [...parts]);
}

/** The pattern as far as the text tells it, whatever state the text is in. */
export function patternOfText(text: string): {
  parts: PatternPart[];
  line(line: PatternLine): string;
  words(where: "before" | "after", part: PatternPart): string;
} {
  const doc = readText(text);
  const at = (...path: string[]): string => {
    const value = valueAt(doc, ["pattern", ...path]);
    return typeof value === "string" || typeof value === "number" ? String(value) : "";
  };
  const written = valueAt(doc, ["pattern", "parts"]);
  const parts = Array.isArray(written) ? PATTERN_PARTS.filter((part) => written.includes(part)) : [];
  const inOrder = Array.isArray(written) ? written.filter((one) => parts.includes(one)) : [...PATTERN_PARTS];
  return { parts: inOrder, line: (line) => at(line), words: (where, part) => at(where, part) };
}
