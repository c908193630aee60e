import type { Rational } from "../length/rational.ts";
import type { Ticks } from "../length/types.ts";
import { nearest } from "./nearest.ts";
import type { InFile } from "./reading.ts";
import type { Diagnostic, Severity } from "./types.ts";

/** A length counted in printed squares: `3`, `2 1/4`, `3/4`. */
export function gridSquares({ n, d }: Rational, grid: Ticks): string {
  const [above, below] = [n, d * BigInt(grid)];
  const [whole, rest] = [above / below, above % below];
  if (rest === 0n) return String(whole);
  const common = gcd(rest, below);
  const part = `${rest / common}/${below / common}`;
  return whole === 0n ? part : `${whole} ${part}`;
}

function gcd(a: bigint, b: bigint): bigint {
  return b === 0n ? a : gcd(b, a % b);
}

/** The same said: `3 squares`, `1 square`, `3/4 of a square`. */
export function sayGridSquares(length: Rational, grid: Ticks): string {
  const count = gridSquares(length, grid);
  if (count === "1") return "1 square";
  return count.includes("/") && !count.includes(" ") ? `${count} of a square` : `${count} squares`;
}

function say(code: string, severity: Severity, where: InFile, message: string, hint: string): Diagnostic {
  return { code, severity, message, hint, path: where.path, at: where.at };
}

/** Too few squares beyond the seam line to hold the seam allowance. */
export function foundationAllowance(
  where: InFile,
  squares: string,
  seam: string,
  needed: number,
): Diagnostic {
  return say(
    "FOUNDATION-ALLOWANCE",
    "error",
    where,
    `The foundation reaches ${squares} beyond the outermost seam line; the seam allowance is ${seam}.`,
    `Write \`allowance: ${needed}\`, counted in printed squares.`,
  );
}

/** A block, or a row of blocks, that does not go onto one piece of foundation as asked. */
export function foundationBlock(where: InFile, message: string, hint: string): Diagnostic {
  return say("FOUNDATION-BLOCK", "error", where, message, hint);
}

/** Two choices that exclude each other. */
export function foundationChoice(where: InFile, message: string, hint: string): Diagnostic {
  return say("FOUNDATION-CHOICE", "error", where, message, hint);
}

/** A printed square whose side cannot be told exactly. */
export function foundationGrid(where: InFile, found: string, why: string): Diagnostic {
  return say(
    "FOUNDATION-GRID",
    "error",
    where,
    `The printed squares are \`${found}\`; ${why}.`,
    "For example `grid: 1 in`, `grid: 1/4 in` or `grid: 2 cm`.",
  );
}

/** On a foundation patches go on one by one, whatever the method for other units. */
export function foundationMethod(where: InFile, unit: string, method: string): Diagnostic {
  return say(
    "FOUNDATION-METHOD",
    "info",
    where,
    `${unit}: made on the foundation, not ${method}.`,
    "To keep the method, list the blocks that are made on the foundation: `blocks: [...]`.",
  );
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
  return say(
    "FOUNDATION-OFF-GRID",
    "error",
    where,
    `${what} is ${squares}: its seams would not lie on the printed lines.`,
    `Nearest sizes that fit: ${nearest.sizes.join(" or ")}${
      nearest.blocks.length === 0 ? "" : `; for the whole block ${nearest.blocks.join(" or ")}`
    }.${halves ? "" : " Where a seam may lie half-way between two lines, write `half-lines: true`."}`,
  );
}

/** A seam allowance of so many squares and a rest: folded, the seam would miss the line. */
export function foundationSeam(
  where: InFile,
  seam: string,
  squares: string,
  fits: readonly string[],
): Diagnostic {
  return say(
    "FOUNDATION-SEAM",
    "error",
    where,
    `Folded on a line, the seam lies one allowance from the fold: ${seam} is ${squares}, so it would miss the printed lines.`,
    `Use squares of ${fits.join(" or ")}, or piece patch by patch: \`way: pieced\`.`,
  );
}

/** A unit whose patches cannot be added one by one with straight seams. */
export function foundationUnit(where: InFile, unit: string, reason: string, hint: string): Diagnostic {
  return say("FOUNDATION-UNIT", "error", where, `${unit} cannot be pieced on a foundation: ${reason}`, hint);
}

/** No such fabric, or a block that is not in the file. */
export function foundationUnknown(
  where: InFile,
  what: string,
  word: string,
  known: readonly string[],
): Diagnostic {
  const near = nearest(word, [...known]);
  return say(
    "FOUNDATION-UNKNOWN",
    "error",
    where,
    `There is no ${what} \`${word}\`.`,
    near === null
      ? `Known here: ${known.map((each) => `\`${each}\``).join(", ")}.`
      : `Did you mean \`${near}\`?`,
  );
}
