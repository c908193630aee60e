import * as z from "zod";
import * as say from "../../diagnostics/fields.ts";
import { parseLength } from "../../length/parse.ts";
import { compare, type Rational, sign } from "../../length/rational.ts";
import type { LengthUnit } from "../../length/types.ts";
import { choice, describes, leaf, length, refuse } from "./written.ts";

/** How a fabric is sold, as written: exact lengths, and the measure to speak in. */
interface WrittenSold {
  unit: "yd" | "m" | "in" | "cm";
  step: Rational;
  least: Rational;
}

function spoken(unit: LengthUnit): WrittenSold["unit"] {
  return unit === "mm" ? "cm" : unit;
}

const SENTENCE =
  /^(?:by|in steps of)?\s*(.+?)(?:\s+in\s+(yd|yards?|m|metres?|meters?|in|inch|inches|cm))?(?:\s*,?\s+least\s+(.+))?$/i;
const SPOKEN: Readonly<Record<string, WrittenSold["unit"]>> = { y: "yd", m: "m", i: "in", c: "cm" };

/** Reads `by 1/8 yd`, `by 10 cm in m`, `by 1/4 yd, least 1/2 yd`. */
function sentence(unit: LengthUnit) {
  return leaf({ about: "fabric.sold" }, (written, context): WrittenSold => {
    const fail = (fault: say.SoldFault) =>
      refuse(context, (where) => say.soldUnreadable(where, written, fault));
    const match = written.length > 120 ? null : SENTENCE.exec(written);
    if (!match) return fail({ is: "not-understood" });
    const [, stepText = "", inText, leastText] = match;
    const step = parseLength(stepText.replace(/,$/, ""), unit);
    if (!step.ok) return fail(step.problem.fault);
    const least = leastText === undefined ? step : parseLength(leastText, unit);
    if (!least.ok) return fail(least.problem.fault);
    if (sign(step.value) <= 0 || sign(least.value) < 0) return fail({ is: "step-zero" });
    const named = inText === undefined ? undefined : SPOKEN[inText[0]?.toLowerCase() ?? ""];
    return {
      unit: named ?? spoken(step.unit ?? unit),
      step: step.value,
      least: larger(step.value, least.value),
    };
  });
}

function larger(a: Rational, b: Rational): Rational {
  return compare(a, b) > 0 ? a : b;
}

function mapping(unit: LengthUnit) {
  return z
    .strictObject({
      by: length(unit, "sold.by", true),
      least: length(unit, "sold.least").optional(),
      in: choice(["yd", "m", "in", "cm"], "sold.in").optional(),
    })
    .transform(({ by, least, in: named }): WrittenSold => {
      const step = by.value;
      return { unit: named ?? spoken(by.unit ?? unit), step, least: larger(step, least?.value ?? step) };
    });
}

export function sold(unit: LengthUnit) {
  return z.union([sentence(unit), mapping(unit)]).meta(describes("fabric.sold", { written: {} }));
}

/** A price as written; `per` is null when it follows the measure the fabric is sold in. */
export interface WrittenPrice {
  hundredths: number;
  per: "yd" | "m" | null;
  currency: string;
}

const PRICE =
  /^([^\d\s.,/]{0,4})\s*(\d{1,7})(?:[.,](\d{1,2}))?\s*([^\d\s.,/]{0,4}?)(?:\s*(?:\/|\bper\b|\ba\b|\bthe\b)\s*(yd|yard|m|metre|meter)\.?)?$/iu;

/** Reads `$12.50 per yd`, `18,90 EUR per m`, `12.50`; null when it is none. */
export function readPrice(written: string): WrittenPrice | null {
  const match = PRICE.exec(written);
  if (!match) return null;
  const [, before = "", whole = "", part = "", after = "", per] = match;
  if (before !== "" && after !== "") return null;
  return {
    hundredths: Number(whole) * 100 + Number(part.padEnd(2, "0")),
    per: per === undefined ? null : per.toLowerCase().startsWith("y") ? "yd" : "m",
    currency: before + after,
  };
}

export function price() {
  return leaf({ about: "fabric.price" }, (written, context): WrittenPrice => {
    return readPrice(written) ?? refuse(context, (where) => say.priceUnreadable(where, written));
  });
}
