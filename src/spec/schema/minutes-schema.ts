import * as z from "zod";
import { minutesUnreadable } from "../../diagnostics/fields.ts";
import type { FileKey } from "../../diagnostics/file-keys.ts";
import { METRES_IN_A_YARD, type StepMinutes, USUAL_MINUTES } from "../step-minutes.ts";
import { describes, leaf, refuse } from "../written/written.ts";

/** Nobody takes longer for one step. */
const MOST = 1000;

function step(about: FileKey) {
  return leaf({ about, type: { type: "number" } }, (written, context): number => {
    const value = /^\d{1,4}(?:[.,]\d{1,4})?$/.test(written) ? Number(written.replace(",", ".")) : Number.NaN;
    if (value <= MOST) return value;
    return refuse(context, (where, field) => minutesUnreadable(where, field, written, MOST));
  }).optional();
}

/** The maker's own minutes for a step, for the estimates of `compare`. */
export function minutesSchema() {
  return z
    .strictObject({
      strip: step("minutes.strip"),
      subcut: step("minutes.subcut"),
      mark: step("minutes.mark"),
      seam: step("minutes.seam"),
      metre: step("minutes.metre"),
      yard: step("minutes.yard"),
      press: step("minutes.press"),
      trim: step("minutes.trim"),
    })
    .meta(describes("minutes"));
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
