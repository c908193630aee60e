import type { PieceFault } from "../../diagnostics/fields.ts";
import { parseLength } from "../../length/parse.ts";
import type { LengthProblem } from "../../length/problem.ts";
import type { Rational } from "../../length/rational.ts";
import { type ParsedSize, parseSize } from "../../length/size.ts";
import type { LengthUnit } from "../../length/types.ts";
import { PIECE_WORDS } from "../key-words.ts";

/** A size as written: full width when one side is `WOF`; `across` is then not used. */
export interface WrittenSize {
  text: string;
  across: Rational;
  along: Rational;
  fullWidth: boolean;
}

/** A piece as written, before defaults. */
export interface WrittenPiece {
  label: string;
  size: WrittenSize;
  /** As written; looked at by the same rule as the `count` field. */
  count: string;
  turn?: "free" | "fixed";
  cut?: "strips" | "lengthwise" | "either";
  join?: "no" | "straight" | "diagonal";
  note: string;
}

/** Why a text cannot be read: the kind decides the wording. `column` counts from 1 inside the text. */
export type WrittenProblem = { column: number } & (
  | { kind: "size" | "mixed" | "length"; problem: LengthProblem }
  | { kind: "line"; fault: PieceFault }
  | { kind: "count-missing" }
);

type Reading<T> = { ok: true; value: T } | { ok: false; problem: WrittenProblem };

const FULL_WIDTH = /^\s*(?:wof|full width|width of fabric)\s*$/i;
/** More than any piece line needs. */
const LONGEST_LINE = 300;

function lengthProblem(problem: LengthProblem, by: number): Reading<never> {
  return { ok: false, problem: { kind: "length", column: problem.column + by, problem } };
}

function sizeProblem({ problem, kind }: ParsedSize & { ok: false }): Reading<never> {
  return { ok: false, problem: { kind, column: problem.column, problem } };
}

/** Reads `2 1/2 x 4 1/2`, `4 1/2 square` or, for a strip of the whole width, `2 1/2 x WOF`. */
export function readSize(text: string, unit: LengthUnit): Reading<WrittenSize> {
  const sides = /^(.*?)\s*(?:[x×*]|\bby\b)\s*(.*)$/iu.exec(text.slice(0, LONGEST_LINE));
  const [, first = "", second = ""] = sides ?? [];
  const full = FULL_WIDTH.test(first) ? second : FULL_WIDTH.test(second) ? first : null;
  if (full !== null) {
    const width = parseLength(full, unit);
    if (!width.ok) return lengthProblem(width.problem, full === second ? text.length - second.length : 0);
    return { ok: true, value: { text, across: { n: 0n, d: 1n }, along: width.value, fullWidth: true } };
  }
  const size = parseSize(text, unit);
  if (!size.ok) return sizeProblem(size);
  return { ok: true, value: { text, across: size.across, along: size.along, fullWidth: false } };
}

const WORDS: Readonly<Record<string, Partial<WrittenPiece>>> = PIECE_WORDS;

/** Where the size begins in `label size`: the earliest start after a space that makes the rest a size. */
function splitLabel(text: string, unit: LengthUnit): Reading<{ label: string; size: WrittenSize }> {
  let furthest: WrittenProblem | null = null;
  for (const { index } of text.matchAll(/(?<=^|\s)(?=[\d.½⅓⅔¼¾⅛⅜⅝⅞-]|wof\b|full width|width of)/giu)) {
    const size = readSize(text.slice(index), unit);
    const label = text.slice(0, index).trim().replace(/:$/, "");
    if (size.ok) return { ok: true, value: { label, size: size.value } };
    const problem: WrittenProblem = { ...size.problem, column: size.problem.column + index };
    // Of several starts the one that gets furthest was meant; one that finds no two lengths hardly counts.
    const reach = (each: WrittenProblem | null) =>
      each === null ? -1 : each.kind === "size" ? 0 : each.column;
    if (reach(problem) > reach(furthest)) furthest = problem;
  }
  return {
    ok: false,
    problem: furthest ?? { kind: "line", column: 1, fault: { is: "no-size", unit } },
  };
}

/** A piece line with the count it wants: the one written in front of the size, where that is what was meant. */
export function withCount(written: string): string {
  const [, count, size] = /^(\d+)\s*(?:of|pieces of|pcs|Stück|mal)\s+(.+)$/iu.exec(written) ?? [];
  return count === undefined || size === undefined ? `${written}, 24` : `${size}, ${count}`;
}

/**
 * Reads a piece on one line: label (optional), size, a comma, the count, and words such as `fixed`, `lengthwise`,
 * `join diagonal` or `note ...`, each after a comma and a space. Never throws.
 */
export function readPieceLine(text: string, unit: LengthUnit): Reading<WrittenPiece> {
  const refuse = (column: number, fault: PieceFault): Reading<never> => ({
    ok: false,
    problem: { kind: "line", column, fault },
  });
  if (text.length > LONGEST_LINE) return refuse(1, { is: "too-long" });
  const parts = [...text.matchAll(/(?:[^,;]|[,;](?!\s|$))+/gu)].map((match) => ({
    text: match[0],
    at: match.index,
  }));
  const [first, second, ...rest] = parts;
  if (first === undefined) return refuse(1, { is: "empty" });
  const head = splitLabel(first.text, unit);
  if (!head.ok) return { ok: false, problem: { ...head.problem, column: head.problem.column + first.at } };
  if (second === undefined) return { ok: false, problem: { kind: "count-missing", column: text.length + 1 } };
  let piece: WrittenPiece = { ...head.value, count: second.text.trim(), note: "" };
  for (const part of rest) {
    const words = part.text.trim().toLowerCase().replace(/\s+/g, " ");
    const column = part.at + 1 + part.text.length - part.text.trimStart().length;
    const note = /^\s*note:?\s+(.+)$/isu.exec(part.text);
    const said = Object.hasOwn(WORDS, words) ? WORDS[words] : undefined;
    if (note) {
      // A note runs to the end of the line, commas and all.
      return {
        ok: true,
        value: {
          ...piece,
          note: text
            .slice(column - 1)
            .replace(/^note:?\s+/i, "")
            .trim(),
        },
      };
    }
    if (said === undefined)
      return refuse(column, { is: "word-unknown", word: words, known: Object.keys(WORDS) });
    piece = { ...piece, ...said };
  }
  return { ok: true, value: piece };
}
