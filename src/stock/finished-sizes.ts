import { CENTIMETRE, INCH } from "../length/measures.ts";
import type { Ticks } from "../length/types.ts";

/** A finished size that quilts for no bed are usually made to. */
export interface FinishedSize {
  name: string;
  across: Ticks;
  down: Ticks;
}

/**
 * Usual finished sizes by name (common practice, no source: shops and books differ by several inches). A crib quilt is
 * laid over a child or hung; one that covers a cot's mattress is asked for with its drop.
 */
const INCHES: readonly (readonly [string, number, number])[] = [
  ["crib", 36, 52],
  ["lap", 48, 60],
  ["throw", 50, 65],
];

/** The same in round centimetres. */
const METRIC: readonly (readonly [string, number, number])[] = [
  ["crib", 90, 130],
  ["lap", 120, 150],
  ["throw", 130, 165],
];

export const FINISHED_NAMES: readonly string[] = INCHES.map(([name]) => name);

/** The size of that name, in inches or in centimetres; `throw quilt` is the same as `throw`. Null when there is none. */
export function finishedSize(typed: string, family: "imperial" | "metric"): FinishedSize | null {
  const wanted = typed
    .toLowerCase()
    .replace(/\b(?:quilt|size)\b/g, "")
    .trim();
  const [rows, unit] = family === "imperial" ? [INCHES, INCH] : [METRIC, CENTIMETRE];
  const found = rows.find(([name]) => name === wanted);
  if (found === undefined) return null;
  const [name, across, down] = found;
  return { name, across: across * unit, down: down * unit };
}
