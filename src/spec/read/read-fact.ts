import type { FactFault } from "../../diagnostics/work.ts";
import { TICKS_PER } from "../../length/measures.ts";
import { parseLength } from "../../length/parse.ts";
import { floor } from "../../length/rational.ts";
import { parseSize } from "../../length/size.ts";
import type { LengthUnit, Ticks } from "../../length/types.ts";
import { DONE } from "../key-words.ts";
import type { Fact, What } from "../work-types.ts";

type Read<T> = { value: T } | { problem: FactFault };

/** More than any fabric has. */
const MOST_NUMBER = 100_000;

/** The word of what happened, before or after what it happened to: `strip 7 spoiled`, `cut to strip 12`. */
function splitKind(text: string): { kind: "cut" | "cut-off" | "spoiled"; rest: string } | null {
  const small = text.toLowerCase();
  for (const [word, kind] of DONE) {
    if (small === word) return { kind, rest: "" };
    if (small.endsWith(` ${word}`)) {
      const rest = text.slice(0, -word.length - 1).replace(/ (?:is|are|were|was)$/i, "");
      return { kind, rest };
    }
    if (small.startsWith(`${word} `)) return { kind, rest: text.slice(word.length + 1) };
  }
  return null;
}

function number(text: string): number | null {
  const value = /^\d{1,6}$/.test(text) ? Number(text) : 0;
  return value >= 1 && value <= MOST_NUMBER ? value : null;
}

/** `1 to 6, 9 and 11`. */
function readNumbers(text: string): Read<number[]> {
  const found: number[] = [];
  for (const part of text.split(/\s*(?:,|;|&|\band\b)\s*/i).filter((each) => each !== "")) {
    const [from = "", to = from, more] = part.split(/\s*(?:-|–|\bto\b)\s*/i);
    const [first, last] = [number(from), number(to)];
    if (first === null || last === null || more !== undefined || last < first)
      return { problem: { is: "no-strip-range", text: part } };
    for (let n = first; n <= last; n++) found.push(n);
  }
  if (found.length === 0) return { problem: { is: "no-strips" } };
  return { value: [...new Set(found)].sort((a, b) => a - b) };
}

function clothOf(text: string | undefined): string | null {
  return text === undefined || text === "" ? null : text;
}

function readWhat(text: string): Read<What> {
  const plain = text.replace(/^(?:the|my) /i, "");
  const toStrip = /^(?:up )?to strip (\d+)(?: of (.+))?$/i.exec(plain);
  if (toStrip !== null) {
    const last = number(toStrip[1] ?? "");
    return last === null
      ? { problem: { is: "no-strip-number", text: toStrip[1] ?? "" } }
      : { value: { of: "to-strip", last, cloth: clothOf(toStrip[2]) } };
  }
  if (/^strips?$/i.test(plain)) return { problem: { is: "no-strips" } };
  const strips = /^strips? (.+?)(?: of (.+))?$/i.exec(plain);
  if (strips !== null) {
    const numbers = readNumbers(strips[1] ?? "");
    return "problem" in numbers
      ? numbers
      : { value: { of: "strips", numbers: numbers.value, cloth: clothOf(strips[2]) } };
  }
  const pieces = /^(\d+) (?:of |pieces of )?\[?([A-Za-z]{1,3}\d{0,3})\]?$/i.exec(plain);
  if (pieces !== null) {
    const count = number(pieces[1] ?? "");
    if (count === null) return { problem: { is: "no-piece-count", text: pieces[1] ?? "" } };
    return { value: { of: "pieces", count, letter: (pieces[2] ?? "").toUpperCase() } };
  }
  if (/^(?:|all|everything|all of it)$/i.test(plain)) return { value: { of: "all", cloth: null } };
  return { value: { of: "all", cloth: plain.replace(/^all of (?:the )?/i, "") } };
}

function readTicks(text: string, unit: LengthUnit, least: Ticks): Read<Ticks> {
  const read = parseLength(text, unit);
  if (!read.ok) return { problem: read.problem.fault };
  const value = Number(floor(read.value));
  if (value < least || value > 100 * TICKS_PER.m) return { problem: { is: "no-cloth-length", text } };
  return { value };
}

function readCloth(text: string, unit: LengthUnit): Read<Fact> {
  const [, times, size = ""] = /^(?:(\d{1,4}) of )?(.+)$/i.exec(text) ?? [];
  const read = parseSize(size, unit);
  if (!read.ok) return { problem: read.problem.fault };
  const [across, along] = [Number(floor(read.across)), Number(floor(read.along))];
  if (across <= 0 || along <= 0) return { problem: { is: "no-cloth-size", text: size } };
  return { value: { kind: "in-hand", across, along, count: Number(times ?? 1) } };
}

/**
 * Reads one thing said of a fabric: `cut to strip 12`, `strip 7 spoiled`, `6 of A cut`, `40 in wide`. Never throws.
 * @param unit measure of a number written without one
 */
export function readFact(written: string, unit: LengthUnit): Read<Fact> {
  const text = written.trim().replace(/\s+/g, " ").replace(/\.$/, "");
  if (text === "") return { problem: { is: "nothing" } };
  if (text.length > 200) return { problem: { is: "too-long" } };
  const wide = /^(.+) wide$/i.exec(text) ?? /^(?:width|wide) (.+)$/i.exec(text);
  if (wide !== null) {
    const width = readTicks(wide[1] ?? "", unit, TICKS_PER.in);
    return "problem" in width ? width : { value: { kind: "wide", width: width.value } };
  }
  const left = /^(.+) left$/i.exec(text) ?? /^left (.+)$/i.exec(text);
  if (left !== null) {
    const none = /^(?:nothing|none)$/i.test(left[1] ?? "");
    const length = none ? { value: 0 } : readTicks(left[1] ?? "", unit, 0);
    return "problem" in length ? length : { value: { kind: "left", length: length.value } };
  }
  // What is said of strips may name a cloth of any name.
  const inHand =
    /^\d.* in hand$/i.test(text) || /^in hand /i.test(text) ? text.replace(/ ?\bin hand\b ?/i, "") : null;
  if (inHand !== null) return readCloth(inHand, unit);
  const inBag = /^(.+) in (?:the|its|my) bag$/i.exec(text);
  const said = inBag !== null ? { kind: "in-bag" as const, rest: inBag[1] ?? "" } : splitKind(text);
  if (said === null) return { problem: { is: "no-happening" } };
  const what = readWhat(said.rest);
  if ("problem" in what) return what;
  const { value } = what;
  if (said.kind === "in-bag")
    return value.of === "pieces"
      ? { value: { kind: "in-bag", what: value } }
      : { problem: { is: "bag-unlettered" } };
  if (said.kind === "cut-off" && value.of === "pieces") return { problem: { is: "pieces-cut-off" } };
  return { value: { kind: said.kind, what: value } };
}
