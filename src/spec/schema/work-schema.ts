import * as z from "zod";
import type { FileKey } from "../../diagnostics/file-keys.ts";
import { factUnreadable } from "../../diagnostics/work.ts";
import type { LengthUnit } from "../../length/types.ts";
import { WORK_FORMAT } from "../key-words.ts";
import { readFact } from "../read/read-fact.ts";
import type { Fact } from "../work-types.ts";
import {
  choice,
  count,
  describes,
  leaf,
  length,
  readCount,
  refuse,
  size,
  words,
} from "../written/written.ts";

/** What the file of the work is called, beside plan.json. */
export const WORK_NAME = "work.yaml";

export const WORK_VERSION = "1";

const fact = (unit: LengthUnit) =>
  leaf({ about: "work.fact" }, (written, context): { text: string; fact: Fact } => {
    const read = readFact(written, unit);
    if ("value" in read) return { text: written.trim(), fact: read.value };
    return refuse(context, (where) => factUnreadable(where, written, read.problem));
  });

const toggle = (about: FileKey) =>
  z
    .boolean()
    .meta(describes(about, { written: {} }))
    .optional();

/** The file of the work, for the measure of bare numbers. */
export function workSchema(unit: LengthUnit) {
  const cloth = z.strictObject({
    fabric: words("work.cloth.fabric"),
    name: words("work.cloth.name"),
    size: size(unit, "work.cloth.size"),
    count: count("work.cloth.count"),
  });
  const planned = z.strictObject({
    kits: count("work.planned.kits").optional(),
    style: choice(["strips-2", "strips-3"], "work.planned.style").optional(),
    prefer: choice(["sparing", "simple"], "work.planned.prefer").optional(),
    thorough: toggle("work.planned.thorough"),
    "fat-quarters": toggle("work.planned.fat-quarters"),
    width: length(unit, "work.planned.width", true).optional(),
    bolt: length(unit, "work.planned.bolt", true).optional(),
    ruler: choice(["in", "cm"], "work.planned.ruler").optional(),
    budget: leaf({ about: "work.planned.budget" }, (written, context): number => {
      const seconds = Number(written);
      return Number.isFinite(seconds) && seconds > 0 ? seconds : readCount(written, context);
    }).optional(),
    cloth: z
      .array(cloth)
      .meta(describes("work.planned.cloth", { written: {} }))
      .optional(),
  });
  const said = z.strictObject({
    fabric: words("work.said.fabric"),
    plan: words("work.said.plan"),
    facts: z.array(fact(unit)).meta(describes("work.said.facts", { written: {} })),
  });
  return z
    .strictObject({
      format: choice([WORK_FORMAT], "work.format"),
      version: choice([WORK_VERSION], "work.version"),
      planned: planned.meta(describes("work.planned")).optional(),
      said: z
        .array(said)
        .meta(describes("work.said", { written: {} }))
        .nullish(),
    })
    .meta(describes("work"));
}
