import type { MeasureFault } from "../../diagnostics/fields.ts";
import type { LengthFault } from "../../length/problem.ts";
import type { LengthUnit } from "../../length/types.ts";

const inInches = (unit: LengthUnit): boolean => unit === "in" || unit === "yd";

/** Why a text is no length, or no size: a clause that follows a colon. */
export function lengthWhy(fault: MeasureFault): string {
  switch (fault.is) {
    case "zero-divisor":
      return `\`${fault.text}\` divides by zero`;
    case "not-below-one":
      return `\`${fault.text}\` after a whole number is not less than one`;
    case "too-many-digits":
      return `\`${fault.text}\` has too many digits for a length`;
    case "thousands-or-tenths":
      return `\`${fault.text}\` could mean thousands or a decimal comma`;
    case "no-fraction":
      return `\`${fault.text}\` is not a fraction`;
    case "no-number":
      return `\`${fault.text}\` is not a number`;
    case "feet":
      return "feet are not read";
    case "no-measure":
      return `\`${fault.text}\` is not a measure; known are in, yd, mm, cm and m`;
    case "left-over":
      return `\`${fault.text}\` was left over after the number`;
    case "does-not-follow":
      return `\`${fault.text}\` does not go on from ${fault.after}`;
    case "families-mixed":
      return `${fault.first} and ${fault.second} are mixed in one size`;
    case "measure-once":
      return `it is not clear whether both lengths are in ${fault.measure}`;
    default:
      return SHORT[fault.is];
  }
}

const SHORT = {
  "length-too-long": "this text is too long to be a length",
  "no-length": "there is no length here",
  "size-too-long": "this text is too long to be a size",
  "one-length": "only one length was found",
  "many-lengths": "more than two lengths were found",
  "not-above-zero": "it must be more than zero",
} as const;

/** What a length looks like, in the measure of the file. */
function lengthExamples(unit: LengthUnit): string {
  return inInches(unit)
    ? "A length looks like `2 1/2`, `2.5 in` or `1 1/4 yd`."
    : "A length looks like `6.5 cm`, `65 mm` or `1.2 m`.";
}

/** What a size looks like, in the measure of the file. */
export function sizeExamples(unit: LengthUnit): string {
  const example = inInches(unit) ? "2 1/2 x 4 1/2 in" : "6.5 x 11.5 cm";
  return `A size is two lengths, across the fabric first: \`${example}\`.`;
}

const OF_SIZES: readonly LengthFault["is"][] = ["size-too-long", "one-length", "many-lengths"];

/** What would help, with something to copy. */
export function lengthHint(fault: MeasureFault, unit: LengthUnit): string {
  switch (fault.is) {
    case "thousands-or-tenths":
      return `Write \`${fault.whole}.${fault.part}\` or \`${fault.whole}${fault.part}\`.`;
    case "feet":
      return "Write inches or yards: `18 in`, `1/2 yd`.";
    case "families-mixed":
      return "Write both lengths in inches, or both in centimetres.";
    case "measure-once":
      return "Write the measure after each length: `4 1/2 in x 2 yd`.";
    case "not-above-zero":
      return "";
    default:
      return OF_SIZES.includes(fault.is) ? sizeExamples(unit) : lengthExamples(unit);
  }
}

/** What is wrong with a text that should be a length. */
export const lengthFaults = { why: lengthWhy, hint: lengthHint };
