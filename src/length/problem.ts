import type { LengthUnit } from "./types.ts";

/** What is wrong with a text that should be a length, or two of them. `text` is the part that is spoken of. */
export type LengthFault =
  | { is: "zero-divisor"; text: string }
  /** The fraction after a whole number. */
  | { is: "not-below-one"; text: string }
  | { is: "too-many-digits"; text: string }
  /** `1,500`: thousands, or a decimal comma. */
  | { is: "thousands-or-tenths"; text: string; whole: string; part: string }
  | { is: "no-fraction"; text: string }
  | { is: "no-number"; text: string }
  | { is: "feet" }
  | { is: "no-measure"; text: string }
  | { is: "left-over"; text: string }
  | { is: "does-not-follow"; text: string; after: LengthUnit }
  | { is: "length-too-long" }
  | { is: "no-length" }
  | { is: "size-too-long" }
  | { is: "one-length" }
  | { is: "many-lengths" }
  | { is: "families-mixed"; first: LengthUnit; second: LengthUnit }
  /** A yard or a metre written after one of two lengths. */
  | { is: "measure-once"; measure: LengthUnit };

/** Why a text is not a length. `column` counts from 1 inside the text. */
export interface LengthProblem {
  /** The part that could not be read. */
  found: string;
  column: number;
  fault: LengthFault;
  /** Measure of bare numbers where it was read: examples are shown in it. */
  unit: LengthUnit;
}
