import type { Rational } from "../length/rational.ts";
import type { Ticks } from "../length/types.ts";
import { tell } from "./tell.ts";
import type { Diagnostic, InFile } from "./types.ts";

function gcd(a: bigint, b: bigint): bigint {
  return b === 0n ? a : gcd(b, a % b);
}

/** A length counted in printed squares: `3`, `2 1/4`, `3/4`. */
export function gridSquares({ n, d }: Rational, grid: Ticks): string {
  const [above, below] = [n, d * BigInt(grid)];
  const [whole, rest] = [above / below, above % below];
  if (rest === 0n) return String(whole);
  const common = gcd(rest, below);
  const part = `${rest / common}/${below / common}`;
  return whole === 0n ? part : `${whole} ${part}`;
}

/** Two choices that exclude each other. */
export type FoundationClash =
  | { is: "per"; way: "pieced" | "folded"; per: string; allowed: readonly string[] }
  /** Fusible, and torn away. */
  | { is: "fusible-torn" }
  /** Folded, with squares beyond. */
  | { is: "folded-allowance" };

/** What is told of each, to be put in words. */
export interface FoundationFacts {
  /** So many squares of that side. */
  foundationAllowance: { squares: number; side: string; seam: string; needed: number };
  foundationBlock: { message: string; hint: string };
  foundationChoice: FoundationClash;
  foundationGrid: { found: string };
  foundationMarks: { block: string; size: string; mark: string };
  foundationMethod: { unit: string; method: string };
  foundationOffGrid: {
    what: string;
    squares: string;
    nearest: { sizes: readonly string[]; blocks: readonly string[] };
    halves: boolean;
  };
  foundationSeam: { seam: string; squares: string; fits: readonly string[] };
  foundationUnit: { unit: string; reason: string; hint: string };
  foundationUnknown: { what: string; word: string; known: readonly string[] };
}

/** Too few squares beyond the seam line to hold the seam allowance. */
export function foundationAllowance(
  where: InFile,
  reaches: { squares: number; side: string },
  seam: string,
  needed: number,
): Diagnostic {
  const facts = { ...reaches, seam, needed };
  return tell("FOUNDATION-ALLOWANCE", "error", where, "foundationAllowance", facts);
}

/** A block, or a row of blocks, that does not go onto one piece of foundation as asked. */
export function foundationBlock(where: InFile, message: string, hint: string): Diagnostic {
  return tell("FOUNDATION-BLOCK", "error", where, "foundationBlock", { message, hint });
}

/** A unit beside what is pieced on the foundation, whose size with its seams lies between two marks of the ruler. */
export function foundationMarks(where: InFile, facts: FoundationFacts["foundationMarks"]): Diagnostic {
  return tell("FOUNDATION-MARKS", "error", where, "foundationMarks", facts);
}

/** Choices that exclude each other. */
export function foundationChoice(where: InFile, clash: FoundationClash): Diagnostic {
  return tell("FOUNDATION-CHOICE", "error", where, "foundationChoice", clash);
}

/** A printed square whose side cannot be told exactly. */
export function foundationGrid(where: InFile, found: string): Diagnostic {
  return tell("FOUNDATION-GRID", "error", where, "foundationGrid", { found });
}

/** On a foundation patches go on one by one, whatever the method for other units. */
export function foundationMethod(where: InFile, unit: string, method: string): Diagnostic {
  return tell("FOUNDATION-METHOD", "info", where, "foundationMethod", { unit, method });
}

/**
 * Seams that fall between the printed lines.
 * @param nearest sizes of the unit that fit, and of the whole block with its proportions kept
 */
export function foundationOffGrid(
  where: InFile,
  what: string,
  squares: string,
  nearest: { sizes: readonly string[]; blocks: readonly string[] },
  halves: boolean,
): Diagnostic {
  return tell("FOUNDATION-OFF-GRID", "error", where, "foundationOffGrid", { what, squares, nearest, halves });
}

/** A seam allowance of so many squares and a rest: folded, the seam would miss the line. */
export function foundationSeam(
  where: InFile,
  seam: string,
  squares: string,
  fits: readonly string[],
): Diagnostic {
  return tell("FOUNDATION-SEAM", "error", where, "foundationSeam", { seam, squares, fits });
}

/** A unit whose patches cannot be added one by one with straight seams. */
export function foundationUnit(where: InFile, unit: string, reason: string, hint: string): Diagnostic {
  return tell("FOUNDATION-UNIT", "error", where, "foundationUnit", { unit, reason, hint });
}

/** No such fabric, or a block that is not in the file. */
export function foundationUnknown(
  where: InFile,
  what: string,
  word: string,
  known: readonly string[],
): Diagnostic {
  return tell("FOUNDATION-UNKNOWN", "error", where, "foundationUnknown", { what, word, known });
}
