import * as z from "zod";
import { minutesUnreadable } from "../diagnostics/fields.ts";
import { METRES_IN_A_YARD, type StepMinutes, USUAL_MINUTES } from "./step-minutes.ts";
import { leaf, refuse } from "./written.ts";

/** Nobody takes longer for one step. */
const MOST = 1000;

function step(description: string, example: number) {
  return leaf({ description, example, type: { type: "number" } }, (written, context): number => {
    const value = /^\d{1,4}(?:[.,]\d{1,4})?$/.test(written) ? Number(written.replace(",", ".")) : Number.NaN;
    if (value <= MOST) return value;
    return refuse(context, (where, field) => minutesUnreadable(where, field, written, MOST));
  }).optional();
}

/** The maker's own minutes for a step, for the estimates of `compare`. */
export function minutesSchema() {
  return z
    .strictObject({
      strip: step("cutting one strip across the fabric", 1),
      subcut: step("one cut across a strip, or through a sewn unit", 0.2),
      mark: step("drawing one line to sew along", 0.25),
      seam: step("pinning and starting one seam", 0.25),
      metre: step("sewing one metre", 0.5),
      yard: step("sewing one yard, in place of `metre`", 0.45),
      press: step("pressing one seam", 0.25),
      trim: step("trimming one unit to size", 0.75),
    })
    .meta({
      description: "your own minutes for a step, for the estimates of time",
      examples: ["{ seam: 0.5, trim: 1 }"],
    });
}

type WrittenMinutes = { [Step in keyof StepMinutes | "yard"]?: number | undefined };

/** The usual minutes with the maker's own in their place. */
export function fillMinutes(written: WrittenMinutes | undefined): StepMinutes {
  const filled = { ...USUAL_MINUTES };
  for (const name of Object.keys(filled) as (keyof StepMinutes)[])
    filled[name] = written?.[name] ?? filled[name];
  if (written?.yard !== undefined) filled.metre = written.yard / METRES_IN_A_YARD;
  return filled;
}
