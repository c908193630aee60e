import type { Rational } from "../../length/rational.ts";
import type { SpokenLength, SpokenSize } from "../../length/spoken.ts";
import type { Ticks } from "../../length/types.ts";
import { tell } from "../tell.ts";
import type { Diagnostic, InFile } from "../types.ts";
import type { FoundationArea, FoundationBlockFault } from "./design-faults.ts";

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

/** What lies off the printed lines. Counts of squares are as they are written: `3`, `2 1/4`. */
export type OffGrid =
  /** `seam`: how far in a seam lies that misses the lines, where the unit's sides lie on them. */
  | { of: "unit"; kind: string; finished: SpokenSize; across: string; down: string; seam: string | null }
  /** Columns and rows count from 1. */
  | {
      of: "column" | "row";
      area: FoundationArea;
      number: number;
      finished: SpokenLength;
      squares: string;
    };

/** Sizes that would fit: of the unit, of the whole block with its proportions kept, of a column or row. */
export interface NearestSizes {
  sizes: readonly SpokenSize[];
  lengths: readonly SpokenLength[];
  blocks: readonly SpokenSize[];
}

/** What is told of each, to be put in words. */
export interface FoundationFacts {
  /** So many squares of that side. */
  foundationAllowance: { squares: number; side: string; seam: string; needed: number };
  foundationBlock: { fault: FoundationBlockFault };
  foundationChoice: FoundationClash;
  foundationGrid: { found: string };
  foundationMarks: { block: string; size: SpokenSize; mark: string };
  foundationMethod: { unit: string; method: string };
  foundationOffGrid: { off: OffGrid; nearest: NearestSizes; halves: boolean };
  foundationSeam: { seam: string; squares: string; fits: readonly string[] };
  foundationUnit: { unit: string; why: "off-corners" | "no-order" };
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
export function foundationBlock(where: InFile, fault: FoundationBlockFault): Diagnostic {
  return tell("FOUNDATION-BLOCK", "error", where, "foundationBlock", { fault });
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
  off: OffGrid,
  nearest: NearestSizes,
  halves: boolean,
): Diagnostic {
  return tell("FOUNDATION-OFF-GRID", "error", where, "foundationOffGrid", { off, nearest, halves });
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
export function foundationUnit(where: InFile, unit: string, why: "off-corners" | "no-order"): Diagnostic {
  return tell("FOUNDATION-UNIT", "error", where, "foundationUnit", { unit, why });
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
