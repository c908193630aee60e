import type { LengthUnit, Ticks } from "../length/types.ts";
import type { Read } from "./option.ts";
import { type Option, text, toggle } from "./option.ts";

/** Options that ask a plan for more than the file does. */

/** The most kits of one class; more are a factory. */
const MOST_KITS = 1000;

/** `--kits 30`. */
export const kits: Option<number | null> = {
  flags: "--kits <number>",
  help: "cut so many quilts together, as kits for a class",
  standard: "one quilt",
  absent: null,
  read: (typed): Read<number | null> => {
    const value = /^\s*\d+\s*$/.test(typed) ? Number(typed) : 0;
    return value >= 1 && value <= MOST_KITS
      ? { value }
      : { problem: `Kits are a whole number from 1 to ${MOST_KITS}, for example 12.` };
  },
};

export const usable = text(
  "--width <length>",
  "try another usable width of fabric, in place of every one up to 60 in",
  "as the file says",
);

export const stash = text("--stash <file>", "use the cloth of this table first (CSV)", "all is bought");

export const fatQuarters = toggle(
  "--fat-quarters",
  "take every colour from fat quarters (18 x 21 in, or 50 x 55 cm) where its pieces fit one",
);

/** Narrower cloth is ribbon. */
const LEAST = 16256;

/** A width from the command line, in ticks. */
export async function readWidth(
  typed: string,
  bare: LengthUnit,
): Promise<{ value: Ticks } | { problem: string }> {
  const { floor, parseLength } = await import("../index.ts");
  const read = parseLength(typed, bare);
  if (!read.ok) return { problem: `--width "${typed}" is not a length: ${read.problem.message}` };
  const value = Number(floor(read.value));
  if (value < LEAST || value > 400 * LEAST) return { problem: `--width ${typed} is no width of a fabric` };
  return { value };
}
