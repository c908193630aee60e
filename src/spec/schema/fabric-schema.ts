import * as z from "zod";
import * as say from "../../diagnostics/fields.ts";
import type { FileKey } from "../../diagnostics/file-keys.ts";
import { parseSize } from "../../length/size.ts";
import type { LengthUnit } from "../../length/types.ts";
import { PRINTS } from "../key-words.ts";
import type { Print } from "../types.ts";
import { have, readyCut, yardage } from "../written/cloth-line.ts";
import { readColour } from "../written/colours.ts";
import type { WrittenSize } from "../written/piece-line.ts";
import { price, sold } from "../written/sold.ts";
import {
  checkSize,
  describes,
  inInches,
  leaf,
  length,
  refuse,
  refuseProblem,
  words,
} from "../written/written.ts";
import { pieces } from "./piece-schema.ts";

const MOST_SHRINK = 25;

/** Tenths of a percent. */
function percent(about: FileKey) {
  return leaf({ about }, (written, context): number => {
    const match = /^(\d{1,2})(?:[.,](\d))?\s*%?$/.exec(written);
    const tenths = match ? Number(match[1]) * 10 + Number(match[2] ?? 0) : Number.POSITIVE_INFINITY;
    if (tenths > MOST_SHRINK * 10)
      return refuse(context, (where) => say.percentUnreadable(where, written, MOST_SHRINK));
    return tenths;
  });
}

function shrinkage() {
  const about = "fabric.shrinkage";
  const both = percent(about).transform((tenths) => ({ across: tenths, along: tenths }));
  const each = z
    .strictObject({
      across: percent("fabric.shrinkage.across").optional(),
      along: percent("fabric.shrinkage.along").optional(),
    })
    .transform(({ across, along }) => ({ across: across ?? 0, along: along ?? 0 }));
  return z.union([both, each]).meta(describes(about, { written: {} }));
}

function print() {
  const type = { type: "string", enum: [...PRINTS] };
  return leaf({ about: "fabric.print", type }, (written, context): Print => {
    const known = PRINTS.find((option) => option === written.toLowerCase().replace(/\s+/g, " "));
    if (known === undefined)
      return refuse(context, (where, field) => say.choiceUnknown(where, field, written, PRINTS));
    const [kind, axis] = known.split(" ") as [Print["kind"], Print["axis"] | undefined];
    return { kind, axis: axis ?? "along" };
  });
}

/** How often a print comes again; one length for both ways. */
function repeat(unit: LengthUnit) {
  return leaf({ about: "fabric.repeat", inches: inInches(unit) }, (written, context): WrittenSize => {
    const read = parseSize(/[x×*]|\bby\b/i.test(written) ? written : `${written} x ${written}`, unit);
    if (read.ok)
      return checkSize(
        { text: written, across: read.across, along: read.along, fullWidth: false },
        written,
        context,
      );
    const { kind, problem } = read;
    return refuseProblem(context, written, { kind, column: problem.column, problem });
  });
}

function colour() {
  return leaf({ about: "fabric.colour" }, (written, context): string => {
    return readColour(written) ?? refuse(context, (where) => say.colourUnreadable(where, written));
  });
}

/** `12 yd`; `endless` where the shop has as much as is wanted in one length, read as null. */
function boltLength(unit: LengthUnit) {
  const ticks = length(unit, "fabric.bolt", true);
  const endless = z.literal("endless").transform((): null => null);
  return z.union([endless, ticks]).meta(describes("fabric.bolt", { inches: inInches(unit), written: {} }));
}

/** What may be said of one fabric or, under `all-fabrics`, of every fabric that does not say otherwise. */
function clothFields(unit: LengthUnit) {
  return {
    width: length(unit, "fabric.width", true).optional(),
    selvage: length(unit, "fabric.selvage").optional(),
    print: print().optional(),
    repeat: repeat(unit).optional(),
    shrinkage: shrinkage().optional(),
    straighten: length(unit, "fabric.straighten").optional(),
    "square-up": length(unit, "fabric.square-up").optional(),
    sold: sold(unit).optional(),
    bolt: boltLength(unit).optional(),
    price: price().optional(),
    spare: length(unit, "fabric.spare").optional(),
    have: have(unit).optional(),
    "ready-cut": readyCut(unit).optional(),
    yardage: yardage().optional(),
  };
}

export function allFabricsSchema(unit: LengthUnit) {
  return z.strictObject(clothFields(unit)).meta(describes("all-fabrics"));
}

/** One fabric. A quilt design works out its pieces itself, so there they may be left out. */
export function fabricSchema(unit: LengthUnit, piecesNeeded: boolean) {
  const listed = pieces(unit);
  return z
    .strictObject({
      name: words("fabric.name"),
      colour: colour().optional(),
      ...clothFields(unit),
      note: words("fabric.note", "note").optional(),
      pieces: piecesNeeded ? listed : listed.optional(),
    })
    .meta(describes("fabric"));
}

export type WrittenCloth = z.output<ReturnType<typeof allFabricsSchema>>;
export type WrittenFabric = z.output<ReturnType<typeof fabricSchema>>;
