import type { MeasureFault } from "../../diagnostics/fields.ts";
import type { LengthFault } from "../../length/problem.ts";
import type { LengthUnit } from "../../length/types.ts";
import { list } from "./language.ts";

const inInches = (unit: LengthUnit): boolean => unit === "in" || unit === "yd";

/** Why a text is no length, or no size: a clause that follows a colon. */
export function lengthWhy(fault: MeasureFault): string {
  switch (fault.is) {
    case "zero-divisor":
      return `\`${fault.text}\` teilt durch null`;
    case "not-below-one":
      return `\`${fault.text}\` nach einer ganzen Zahl ist nicht kleiner als eins`;
    case "too-many-digits":
      return `\`${fault.text}\` hat zu viele Stellen für eine Länge`;
    case "thousands-or-tenths":
      return `\`${fault.text}\` könnte Tausender oder ein Dezimalkomma meinen`;
    case "no-fraction":
      return `\`${fault.text}\` ist kein Bruch`;
    case "no-number":
      return `\`${fault.text}\` ist keine Zahl`;
    case "feet":
      return "Fuß werden nicht gelesen";
    case "no-measure":
      return `\`${fault.text}\` ist keine Maßeinheit; bekannt sind ${list(["in", "yd", "mm", "cm", "m"])}`;
    case "left-over":
      return `\`${fault.text}\` blieb nach der Zahl übrig`;
    case "does-not-follow":
      return `\`${fault.text}\` passt nicht hinter ${fault.after}`;
    case "families-mixed":
      return `${fault.first} und ${fault.second} sind in einem Maß gemischt`;
    case "measure-once":
      return `es ist nicht klar, ob beide Längen in ${fault.measure} sind`;
    default:
      return SHORT[fault.is];
  }
}

const SHORT = {
  "length-too-long": "dieser Text ist zu lang für eine Länge",
  "no-length": "hier steht keine Länge",
  "size-too-long": "dieser Text ist zu lang für ein Maß",
  "one-length": "nur eine Länge wurde gefunden",
  "many-lengths": "mehr als zwei Längen wurden gefunden",
  "not-above-zero": "es muss größer als null sein",
} as const;

/** What a length looks like, in the measure of the file. */
function lengthExamples(unit: LengthUnit): string {
  return inInches(unit)
    ? "Eine Länge sieht so aus: `2 1/2`, `2.5 in` oder `1 1/4 yd`."
    : "Eine Länge sieht so aus: `6,5 cm`, `65 mm` oder `1,2 m`.";
}

/** What a size looks like, in the measure of the file. */
export function sizeExamples(unit: LengthUnit): string {
  const example = inInches(unit) ? "2 1/2 x 4 1/2 in" : "6,5 x 11,5 cm";
  return `Ein Maß sind zwei Längen, quer zum Stoff zuerst: \`${example}\`.`;
}

const OF_SIZES: readonly LengthFault["is"][] = ["size-too-long", "one-length", "many-lengths"];

/** What would help, with something to copy. */
export function lengthHint(fault: MeasureFault, unit: LengthUnit): string {
  switch (fault.is) {
    case "thousands-or-tenths":
      return `\`${fault.whole}.${fault.part}\` oder \`${fault.whole}${fault.part}\` schreiben.`;
    case "feet":
      return "Zoll oder Yard schreiben: `18 in`, `1/2 yd`.";
    case "families-mixed":
      return "Beide Längen in Zoll schreiben, oder beide in Zentimetern.";
    case "measure-once":
      return "Die Maßeinheit hinter jede Länge schreiben: `4 1/2 in x 2 yd`.";
    case "not-above-zero":
      return "";
    default:
      return OF_SIZES.includes(fault.is) ? sizeExamples(unit) : lengthExamples(unit);
  }
}

/** What is wrong with a text that should be a length. */
export const lengthFaults = { why: lengthWhy, hint: lengthHint };
