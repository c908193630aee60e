import { nearest } from "../diagnostics/nearest.ts";
import { type LengthProblem, parseLength } from "../length/parse.ts";
import type { Rational } from "../length/rational.ts";
import { type ParsedSize, parseSize, sizeExamples } from "../length/size.ts";
import type { LengthUnit } from "../length/types.ts";

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
export interface WrittenProblem {
  kind: "size" | "mixed" | "line" | "length" | "count-missing";
  found: string;
  column: number;
  why: string;
  hint: string;
}

type Reading<T> = { ok: true; value: T } | { ok: false; problem: WrittenProblem };

const FULL_WIDTH = /^\s*(?:wof|full width|width of fabric)\s*$/i;
/** More than any piece line needs. */
const LONGEST_LINE = 300;

function lengthProblem(problem: LengthProblem, by: number): Reading<never> {
  const { found, column, message, hint } = problem;
  return { ok: false, problem: { kind: "length", found, column: column + by, why: message, hint } };
}

function sizeProblem({ problem, kind }: ParsedSize & { ok: false }): Reading<never> {
  const { found, column, message, hint } = problem;
  return { ok: false, problem: { kind, found, column, why: message, hint } };
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

/** Words that may follow the count, and what each says. */
const WORDS: Readonly<Record<string, Partial<WrittenPiece>>> = {
  fixed: { turn: "fixed" },
  free: { turn: "free" },
  "turn fixed": { turn: "fixed" },
  "turn free": { turn: "free" },
  lengthwise: { cut: "lengthwise" },
  "cut lengthwise": { cut: "lengthwise" },
  "cut strips": { cut: "strips" },
  "cut either": { cut: "either" },
  "join straight": { join: "straight" },
  "join diagonal": { join: "diagonal" },
  "join no": { join: "no" },
};

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
  const why = "it has no size";
  return {
    ok: false,
    problem: furthest ?? { kind: "line", found: text, column: 1, why, hint: sizeExamples(unit) },
  };
}

/**
 * Reads a piece on one line: label (optional), size, a comma, the count, and words such as `fixed`, `lengthwise`,
 * `join diagonal` or `note ...`, each after a comma and a space. Never throws.
 */
export function readPieceLine(text: string, unit: LengthUnit): Reading<WrittenPiece> {
  const example = "A piece looks like `sky 2 1/2 x 4 1/2, 24` or `border 4 1/2 x WOF, 6, note outer border`.";
  const refuse = (found: string, column: number, why: string, hint = example): Reading<never> => ({
    ok: false,
    problem: { kind: "line", found, column, why, hint },
  });
  if (text.length > LONGEST_LINE) return refuse(text, 1, "it is too long for one line");
  const parts = [...text.matchAll(/(?:[^,;]|[,;](?!\s|$))+/gu)].map((match) => ({
    text: match[0],
    at: match.index,
  }));
  const [first, second, ...rest] = parts;
  if (first === undefined) return refuse(text, 1, "it is empty");
  const head = splitLabel(first.text, unit);
  if (!head.ok) return { ok: false, problem: { ...head.problem, column: head.problem.column + first.at } };
  if (second === undefined) {
    const problem = {
      kind: "count-missing",
      found: text,
      column: text.length + 1,
      why: "",
      hint: example,
    } as const;
    return { ok: false, problem };
  }
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
    if (said === undefined) {
      const known = Object.keys(WORDS);
      const near = nearest(words, known);
      const hint = near === null ? `Known words: ${known.join(", ")}, note ...` : `Did you mean \`${near}\`?`;
      return refuse(part.text.trim(), column, "this word is not known here", hint);
    }
    piece = { ...piece, ...said };
  }
  return { ok: true, value: piece };
}
