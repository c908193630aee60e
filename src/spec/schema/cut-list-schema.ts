import * as z from "zod";
import { choiceUnknown } from "../../diagnostics/fields.ts";
import { parseLength } from "../../length/parse.ts";
import type { LengthUnit } from "../../length/types.ts";
import { LANGUAGES } from "../../length/writing.ts";
import { choice, describes, leaf, length, refuse, words } from "../written/written.ts";
import { allFabricsSchema, fabricSchema } from "./fabric-schema.ts";

const UNITS = ["in", "yd", "mm", "cm", "m"] as const;

/** A measure by any of its spellings: `in`, `inches`, `centimetres`; null when it is none. */
export function readMeasure(written: string): LengthUnit | null {
  const one = parseLength(`1 ${written}`, "in");
  return one.ok ? one.unit : null;
}

function units() {
  return leaf({ about: "file.units" }, (written, context): LengthUnit => {
    const found = readMeasure(written);
    return found ?? refuse(context, (where, field) => choiceUnknown(where, field, written, UNITS));
  });
}

function folded() {
  return z.boolean().meta(describes("file.folded", { written: {} }));
}

/** What a file of either kind may say before its fabrics. Made for the measure of bare numbers. */
export function fileFields(unit: LengthUnit) {
  return {
    name: words("file.name").optional(),
    language: choice(LANGUAGES, "file.language").optional(),
    units: units().optional(),
    ruler: length(unit, "file.ruler", true).optional(),
    "ruler-length": length(unit, "file.ruler-length", true).optional(),
    "mat-length": length(unit, "file.mat-length", true).optional(),
    folded: folded().optional(),
    style: choice(["strips-2", "strips-3"], "file.style").optional(),
    prefer: choice(["sparing", "simple"], "file.prefer").optional(),
    "keep-from": length(unit, "file.keep-from").optional(),
    "join-from": length(unit, "file.join-from").optional(),
    "all-fabrics": allFabricsSchema(unit).optional(),
  };
}

/** A plain cut list. */
export function cutListSchema(unit: LengthUnit) {
  return z
    .strictObject({
      ...fileFields(unit),
      fabrics: z
        .array(fabricSchema(unit, true))
        .min(1)
        .meta(describes("cut-list.fabrics", { written: {} })),
    })
    .meta(describes("cut-list"));
}

export type WrittenFile = z.output<z.ZodObject<ReturnType<typeof fileFields>>>;
