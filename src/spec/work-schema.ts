import { z } from "zod";
import { factUnreadable } from "../diagnostics/work.ts";
import type { LengthUnit } from "../length/types.ts";
import { readFact } from "./read-fact.ts";
import type { Fact } from "./work-types.ts";
import { choice, count, leaf, length, readCount, refuse, size, words } from "./written.ts";

/** What the file of the work is called, beside plan.json. */
export const WORK_NAME = "work.yaml";

/** Its first lines: a file without them is not ours. */
export const WORK_FORMAT = "crossgrain work";
export const WORK_VERSION = "1";

const fact = (unit: LengthUnit) =>
  leaf(
    { description: "one thing said of the fabric while it is cut", example: "cut to strip 12" },
    (written, context): { text: string; fact: Fact } => {
      const read = readFact(written, unit);
      if ("value" in read) return { text: written.trim(), fact: read.value };
      return refuse(context, (where) => factUnreadable(where, written, read.problem));
    },
  );

const toggle = (description: string) =>
  z.boolean().meta({ description, example: true, written: {} }).optional();

/** The file of the work, for the measure of bare numbers. */
export function workSchema(unit: LengthUnit) {
  const cloth = z.strictObject({
    fabric: words({ description: "the fabric it is of", example: "ivory" }),
    name: words({ description: "what it is called", example: "scrap" }),
    size: size(unit, { description: "its usable size, across first", example: "21 x 18 in" }),
    count: count("how many there are"),
  });
  const planned = z.strictObject({
    kits: count("how many quilts are cut together").optional(),
    style: choice(["strips-2", "strips-3"], "how strips may be cut", "strips-2").optional(),
    prefer: choice(["sparing", "simple"], "what was aimed at", "simple").optional(),
    thorough: toggle("searched longer"),
    "fat-quarters": toggle("every colour from fat quarters"),
    width: length(
      unit,
      { description: "usable width tried on every bolt", example: "41 in" },
      true,
    ).optional(),
    bolt: length(
      unit,
      { description: "where every bolt was taken to end", example: "12 yd" },
      true,
    ).optional(),
    ruler: choice(["in", "cm"], "ruler that the quilt was restated for", "cm").optional(),
    budget: leaf(
      { description: "seconds that each fabric was searched at most", example: 60 },
      (written, context): number => {
        const seconds = Number(written);
        return Number.isFinite(seconds) && seconds > 0 ? seconds : readCount(written, context);
      },
    ).optional(),
    cloth: z
      .array(cloth)
      .meta({
        description: "cloth from the drawer that was offered",
        example: "- fabric: ivory",
        written: {},
      })
      .optional(),
  });
  const said = z.strictObject({
    fabric: words({ description: "the fabric that is spoken of", example: "ivory" }),
    plan: words({ description: "mark of the plan that the numbers are of", example: "5f0c7a2be9d14c31" }),
    facts: z
      .array(fact(unit))
      .meta({ description: "what was said, in order", example: "- cut to strip 12", written: {} }),
  });
  return z
    .strictObject({
      format: choice([WORK_FORMAT], "says what this file is", WORK_FORMAT),
      version: choice([WORK_VERSION], "version of the format", WORK_VERSION),
      planned: planned.meta({ description: "how the plan was made that the cutting began with" }).optional(),
      said: z
        .array(said)
        .meta({ description: "what was said of the work, in order", example: "- fabric: ivory", written: {} })
        .nullish(),
    })
    .meta({
      title: "Crossgrain work",
      description: "what is cut, measured and spoiled of a quilt that is being cut",
    });
}
