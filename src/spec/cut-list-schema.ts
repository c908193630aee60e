import * as z from "zod";
import { choiceUnknown } from "../diagnostics/fields.ts";
import { parseLength } from "../length/parse.ts";
import type { LengthUnit } from "../length/types.ts";
import type { Language } from "../length/writing.ts";
import { allFabricsSchema, fabricSchema } from "./fabric-schema.ts";
import { choice, leaf, length, refuse, words } from "./written.ts";

const UNITS = ["in", "yd", "mm", "cm", "m"] as const;

/** A measure by any of its spellings: `in`, `inches`, `centimetres`; null when it is none. */
export function readMeasure(written: string): LengthUnit | null {
  const one = parseLength(`1 ${written}`, "in");
  return one.ok ? one.unit : null;
}

function units() {
  const help = { description: "the measure of bare numbers", example: "in" };
  return leaf(help, (written, context): LengthUnit => {
    const found = readMeasure(written);
    return found ?? refuse(context, (where, field) => choiceUnknown(where, field, written, UNITS));
  });
}

function folded() {
  const description = "whether fabric is folded once, selvage to selvage, for cutting strips";
  return z.boolean().meta({ description, example: true, written: {} });
}

/** What a file of either kind may say before its fabrics. Made for the measure of bare numbers. */
export function fileFields(unit: LengthUnit) {
  const inches = unit === "in" || unit === "yd";
  const pick = (imperial: string, metric: string) => (inches ? imperial : metric);
  return {
    name: words({ description: "what the quilt is called", example: "Harbour lights" }).optional(),
    language: choice(
      ["en", "de"] satisfies [Language, ...Language[]],
      "the language of what is printed; without it that of your system",
      "de",
    ).optional(),
    units: units().optional(),
    ruler: length(
      unit,
      { description: "distance between two marks of your ruler", example: pick("1/8 in", "0.25 cm") },
      true,
    ).optional(),
    "ruler-length": length(
      unit,
      { description: "longest cut one placing of your ruler can make", example: pick("24 in", "60 cm") },
      true,
    ).optional(),
    "mat-length": length(
      unit,
      { description: "longer side of your cutting mat", example: pick("36 in", "90 cm") },
      true,
    ).optional(),
    folded: folded().optional(),
    style: choice(
      ["strips-2", "strips-3"],
      "strip and subcut, or a further cut into stacks",
      "strips-2",
    ).optional(),
    prefer: choice(
      ["sparing", "simple"],
      "least fabric, or fewer cuts for a little more",
      "sparing",
    ).optional(),
    "keep-from": length(unit, {
      description: "leftovers this big both ways are worth keeping",
      example: pick("2 in", "5 cm"),
    }).optional(),
    "all-fabrics": allFabricsSchema(unit).optional(),
  };
}

/** A plain cut list. */
export function cutListSchema(unit: LengthUnit) {
  return z
    .strictObject({
      ...fileFields(unit),
      fabrics: z.array(fabricSchema(unit, true)).min(1).meta({
        description: "the fabrics, each with its pieces",
        example: "- name: Night sea",
        written: {},
      }),
    })
    .meta({ title: "Crossgrain cut list", description: "fabrics and the pieces to cut from each" });
}

export type WrittenFile = z.output<z.ZodObject<ReturnType<typeof fileFields>>>;
