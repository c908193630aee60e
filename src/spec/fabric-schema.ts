import * as z from "zod";
import * as say from "../diagnostics/fields.ts";
import { parseSize } from "../length/size.ts";
import type { LengthUnit } from "../length/types.ts";
import { have, readyCut, yardage } from "./cloth-line.ts";
import { readColour } from "./colours.ts";
import type { WrittenSize } from "./piece-line.ts";
import { pieces } from "./piece-schema.ts";
import { price, sold } from "./sold.ts";
import type { Print } from "./types.ts";
import { checkSize, leaf, length, refuse, refuseProblem, words } from "./written.ts";

const MOST_SHRINK = 25;

/** Tenths of a percent. */
function percent(description: string) {
  return leaf({ description, example: "3%" }, (written, context): number => {
    const match = /^(\d{1,2})(?:[.,](\d))?\s*%?$/.exec(written);
    const tenths = match ? Number(match[1]) * 10 + Number(match[2] ?? 0) : Number.POSITIVE_INFINITY;
    if (tenths > MOST_SHRINK * 10)
      return refuse(context, (where) => say.percentUnreadable(where, written, MOST_SHRINK));
    return tenths;
  });
}

function shrinkage() {
  const description = "how much it shrinks when washed before cutting";
  const both = percent(description).transform((tenths) => ({ across: tenths, along: tenths }));
  const each = z
    .strictObject({
      across: percent("shrinkage of its width").optional(),
      along: percent("shrinkage of its length").optional(),
    })
    .transform(({ across, along }) => ({ across: across ?? 0, along: along ?? 0 }));
  return z.union([both, each]).meta({ description, example: "3%", written: {} });
}

const PRINTS = [
  "none",
  "two-way",
  "one-way",
  "two-way along",
  "two-way across",
  "one-way along",
  "one-way across",
] as const;

function print() {
  const description = "which way its print reads, and whether its up runs along the selvage or across";
  const type = { type: "string", enum: [...PRINTS] };
  return leaf({ description, example: "one-way along", type }, (written, context): Print => {
    const known = PRINTS.find((option) => option === written.toLowerCase().replace(/\s+/g, " "));
    if (known === undefined)
      return refuse(context, (where, field) => say.choiceUnknown(where, field, written, PRINTS));
    const [kind, axis] = known.split(" ") as [Print["kind"], Print["axis"] | undefined];
    return { kind, axis: axis ?? "along" };
  });
}

/** How often a print comes again; one length for both ways. */
function repeat(unit: LengthUnit, example: string) {
  const description = "how often its print comes again, across and along the fabric";
  return leaf({ description, example }, (written, context): WrittenSize => {
    const read = parseSize(/[x×*]|\bby\b/i.test(written) ? written : `${written} x ${written}`, unit);
    if (read.ok)
      return checkSize(
        { text: written, across: read.across, along: read.along, fullWidth: false },
        written,
        context,
      );
    const { message, ...problem } = read.problem;
    return refuseProblem(context, written, { kind: read.kind, why: message, ...problem });
  });
}

function colour() {
  return leaf(
    { description: "the colour it is drawn in", example: '"#1d3557"' },
    (written, context): string => {
      return readColour(written) ?? refuse(context, (where) => say.colourUnreadable(where, written));
    },
  );
}

/** `12 yd`; `endless` where the shop has as much as is wanted in one length, read as null. */
function boltLength(unit: LengthUnit) {
  const inches = unit === "in" || unit === "yd";
  const description =
    "how long a bolt is at the shop: no strip crosses its end; endless: as long as is wanted";
  const ticks = length(unit, { description, example: inches ? "12 yd" : "10 m" }, true);
  const endless = z.literal("endless").transform((): null => null);
  return z.union([endless, ticks]).meta({ description, example: inches ? "12 yd" : "10 m", written: {} });
}

/** What may be said of one fabric or, under `all-fabrics`, of every fabric that does not say otherwise. */
function clothFields(unit: LengthUnit) {
  const inches = unit === "in" || unit === "yd";
  const pick = (imperial: string, metric: string) => (inches ? imperial : metric);
  return {
    width: length(
      unit,
      { description: "width of fabric, selvage to selvage", example: pick("43 in", "110 cm") },
      true,
    ).optional(),
    selvage: length(unit, {
      description: "width of one selvage",
      example: pick("1/2 in", "1.5 cm"),
    }).optional(),
    print: print().optional(),
    repeat: repeat(unit, pick("6 x 8 in", "15 x 20 cm")).optional(),
    shrinkage: shrinkage().optional(),
    straighten: length(unit, {
      description: "length lost in straightening the cut end",
      example: pick("1 in", "2.5 cm"),
    }).optional(),
    "square-up": length(unit, {
      description: "what squaring takes off cloth of a fixed size, off one edge each way",
      example: pick("1/2 in", "1 cm"),
    }).optional(),
    sold: sold(unit).optional(),
    bolt: boltLength(unit).optional(),
    price: price().optional(),
    spare: length(unit, {
      description: "extra length to buy beyond the plan",
      example: pick("2 in", "5 cm"),
    }).optional(),
    have: have(unit).optional(),
    "ready-cut": readyCut(unit).optional(),
    yardage: yardage().optional(),
  };
}

export function allFabricsSchema(unit: LengthUnit) {
  return z
    .strictObject(clothFields(unit))
    .meta({ description: "what holds for every fabric unless it says otherwise" });
}

/** One fabric. A quilt design works out its pieces itself, so there they may be left out. */
export function fabricSchema(unit: LengthUnit, piecesNeeded: boolean) {
  const listed = pieces(unit);
  return z
    .strictObject({
      name: words({ description: "what the fabric is called", example: "Night sea" }),
      colour: colour().optional(),
      ...clothFields(unit),
      note: words(
        { description: "anything to print with the fabric", example: "for the border" },
        "note",
      ).optional(),
      pieces: piecesNeeded ? listed : listed.optional(),
    })
    .meta({ description: "one fabric and what is cut from it" });
}

export type WrittenCloth = z.output<ReturnType<typeof allFabricsSchema>>;
export type WrittenFabric = z.output<ReturnType<typeof fabricSchema>>;
