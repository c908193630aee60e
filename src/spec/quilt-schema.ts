import * as z from "zod";
import { sizeUnreadable } from "../diagnostics/fields.ts";
import { gridsizeUnreadable, turnNotQuarter } from "../diagnostics/quilt-file.ts";
import { parseLength } from "../length/parse.ts";
import type { Rational } from "../length/rational.ts";
import { parseSize } from "../length/size.ts";
import type { LengthUnit } from "../length/types.ts";
import { fileFields } from "./cut-list-schema.ts";
import { fabricSchema } from "./fabric-schema.ts";
import { backing, binding, wadding, word } from "./finishing-schema.ts";
import { foundationSchema } from "./foundation-schema.ts";
import { minutesSchema } from "./minutes-schema.ts";
import { patternSchema } from "./pattern-schema.ts";
import type { QuarterTurn } from "./quilt-types.ts";
import { mostLayersSchema, quiltingSchema } from "./quilting-schema.ts";
import { choice, leaf, length, refuse, text } from "./written.ts";

/** More cells than this across or down are no block and no quilt. */
const MOST_CELLS = 500;

/** Width and height of something finished. */
interface WrittenFinished {
  across: Rational;
  down: Rational;
}

/** One length for a square, or two: `8` or `6 x 3`. */
function finishedSize(unit: LengthUnit, description: string, example: string) {
  return leaf({ description, example }, (written, context) => readFinished(written, context, unit, example));
}

function readFinished(
  written: string,
  context: z.RefinementCtx,
  unit: LengthUnit,
  example: string,
): WrittenFinished {
  const one = parseLength(written, unit);
  if (one.ok && one.value.n > 0n) return { across: one.value, down: one.value };
  const two = parseSize(written, unit);
  if (two.ok && two.across.n > 0n && two.along.n > 0n) return { across: two.across, down: two.along };
  const why = one.ok || two.ok ? "it must be more than zero" : two.problem.message;
  return refuse(context, (where) => sizeUnreadable(where, written, why, `For example \`${example}\`.`));
}

/** Finished width of a border; `fit`: worked out so that the pieced border outside it comes out. */
function borderWidth(unit: LengthUnit) {
  const description =
    "finished width; two when sides and ends differ, sides first; `fit`: as the pieced border outside it needs";
  return leaf({ description, example: "4" }, (written, context): WrittenFinished | "fit" =>
    written.toLowerCase() === "fit" ? "fit" : readFinished(written, context, unit, "4"),
  );
}

/** How many across and down. */
function cells(field: string, description: string, example: string) {
  return leaf({ description, example }, (written, context): { columns: number; rows: number } => {
    const match = /^([1-9]\d{0,3})\s*(?:x|×|by)\s*([1-9]\d{0,3})$/iu.exec(written);
    const [columns, rows] = [Number(match?.[1]), Number(match?.[2])];
    if (match === null || columns > MOST_CELLS || rows > MOST_CELLS) {
      return refuse(context, (where) => gridsizeUnreadable(where, field, written, MOST_CELLS));
    }
    return { columns, rows };
  });
}

function turn(description: string) {
  return leaf({ description, example: 90 }, (written, context): QuarterTurn => {
    const degrees = Number(/^(\d{1,4})\s*(?:°|deg|degrees)?$/.exec(written)?.[1] ?? Number.NaN);
    if (degrees % 90 !== 0) return refuse(context, (where) => turnNotQuarter(where, written));
    return (degrees % 360) as QuarterTurn;
  });
}

const PRINTS = ["upright", "with block", "with unit"] as const;

function prints() {
  return choice(
    PRINTS,
    "whether a directional print stays upright in the quilt, or turns with its block or unit",
    "upright",
  );
}

function borderPrints() {
  return choice(
    ["upright", "round", "outwards"],
    "how a directional print lies in this border: upright in the quilt; running round it, stripes along the border and heads " +
      "outwards; or its up outwards on every side",
    "round",
  );
}

/** A drawing: one text of several lines, or a list of lines. */
function drawing(description: string, example: string) {
  return z.union([text(), z.array(text()).min(1)]).meta({ description, examples: [example] });
}

/** Fabrics of a unit: one for all parts, a list in the usual order, or by part. */
function fabricsOfUnit() {
  const name = word("a fabric, or a role", "cream");
  return z
    .union([name, z.array(name).min(1), z.record(z.string(), name)])
    .meta({ description: "a unit with the fabrics of its parts", examples: ["flying geese: [gold, sky]"] });
}

const CORNERS = ["top-left", "top-right", "bottom-right", "bottom-left"] as const;

function point(unit: LengthUnit) {
  const at = length(unit, { description: "distance from the left, then from the top", example: "2" });
  return z.array(at).min(2).max(2);
}

/** What the cells of one code hold: a unit with its fabrics, and how it lies. */
function cellSchema(unit: LengthUnit) {
  const size = (description: string) => length(unit, { description, example: "1" }, true);
  return z
    .object({
      turn: turn("degrees the unit is turned, clockwise").optional(),
      span: cells("span", "cells it covers, across first, before it is turned", "2 x 1").optional(),
      method: word("how it is made", "four at a time").optional(),
      prints: prints().optional(),
      corner: size("finished size of flipped corners").optional(),
      corners: z
        .array(choice(CORNERS, "a corner of the unit", "top-left"))
        .min(1)
        .optional(),
      strips: z.array(size("finished width of a strip")).min(1).optional(),
      count: leaf({ description: "how many rails or rounds", example: 3 }, (written, context): number => {
        const count = Number(written);
        if (Number.isInteger(count) && count >= 1 && count <= 100) return count;
        return refuse(context, (where) => gridsizeUnreadable(where, "count", written, 100));
      }).optional(),
      centre: size("finished size of the centre").optional(),
      leaning: choice(["rising", "falling"], "which way the diagonal leans", "rising").optional(),
      patches: z
        .array(
          z.strictObject({ part: word("name of the patch", "sail"), corners: z.array(point(unit)).min(3) }),
        )
        .min(1)
        .optional(),
      "drawn-on": cells(
        "drawn-on",
        "squares the unit is divided into; corners of patches are then counted in them",
        "8 x 8",
      ).optional(),
    })
    .catchall(fabricsOfUnit())
    .meta({ description: "a unit and its fabrics", examples: ["{ square: cream }"] });
}

/** Fields of a cell that are no unit. */
export const CELL_FIELDS = [
  "turn",
  "span",
  "method",
  "prints",
  "corner",
  "corners",
  "strips",
  "count",
  "centre",
  "leaning",
  "patches",
  "drawn-on",
] as const;

function roles(description: string) {
  return z
    .record(z.string(), word("a fabric, or another role", "navy"))
    .meta({ description, examples: ["{ star: gold }"] });
}

/** Parts of a block that are turned by themselves: how many across and down, or codes of its grid. */
function motifs() {
  const description = "parts that `arrange` turns: how many across and down, or codes of the grid";
  return leaf({ description, example: "2 x 2" }, (written) => {
    const match = /^([1-9]\d{0,2})\s*(?:x|×|by)\s*([1-9]\d{0,2})$/iu.exec(written);
    if (match === null)
      return { columns: 0, rows: 0, codes: written.split(/[\s,]+/).filter((code) => code !== "") };
    return { columns: Number(match[1]), rows: Number(match[2]), codes: [] };
  });
}

function blockSchema(unit: LengthUnit) {
  const sizes = (what: string) =>
    z
      .array(length(unit, { description: `finished size of one of the ${what}`, example: "3" }, true))
      .min(1)
      .meta({ description: `finished sizes of the ${what}, when they differ`, examples: ["[3, 6, 3]"] });
  return z
    .strictObject({
      name: word("name of the block", "Harbour star").optional(),
      size: finishedSize(unit, "finished size", "8").optional(),
      columns: sizes("columns").optional(),
      lines: sizes("lines").optional(),
      grid: drawing("the cells, line by line", "c g - c").optional(),
      cells: z
        .record(z.string(), cellSchema(unit))
        .meta({ description: "what each code in the drawing stands for" })
        .optional(),
      cell: cellSchema(unit).optional(),
      roles: roles("fabrics of this block's roles").optional(),
      motifs: motifs().optional(),
    })
    .meta({ description: "a block design", examples: ["{ size: 8, grid: ..., cells: ... }"] });
}

/** A fabric by name, or a block. */
function plainOrBlock(what: string) {
  const fields = {
    block: word("a block design", "corner"),
    turn: turn("degrees it is turned").optional(),
    colourway: word("its colours", "night").optional(),
  };
  const description = `${what}: a fabric, or \`{ block: ... }\``;
  return z
    .union([word("a fabric", "cream"), z.strictObject(fields)])
    .meta({ description, examples: ["cream"] });
}

function sashing(unit: LengthUnit) {
  return z
    .strictObject({
      width: length(unit, { description: "finished width of the sashes", example: "2" }, true),
      fabric: word("fabric of the sashes", "cream").optional(),
      block: word("block that makes the sash", "sash").optional(),
      colourway: word("colours of the sash block", "night").optional(),
      cornerstones: plainOrBlock("what stands where sashes cross").optional(),
      ring: z
        .boolean()
        .meta({ description: "sashes all round the outside too", examples: [true] })
        .optional(),
    })
    .meta({ description: "strips between the blocks" });
}

function setting(unit: LengthUnit) {
  const triangles = z.union([
    word("fabric of all setting triangles", "cream"),
    z.strictObject({
      sides: word("fabric of the side triangles", "cream"),
      corners: word("fabric of the corners", "cream"),
    }),
  ]);
  return z
    .strictObject({
      layout: choice(
        ["straight", "on point"],
        "blocks in straight rows, or standing on a corner",
        "straight",
      ).optional(),
      rows: drawing("the blocks, row by row", "star plain star"),
      fill: cells("fill", "repeat the rows to this many blocks, across first", "8 x 10").optional(),
      turn: turn("degrees the whole centre is turned").optional(),
      sashing: sashing(unit).optional(),
      triangles: triangles
        .meta({ description: "fabric of the setting triangles, on point", examples: ["cream"] })
        .optional(),
    })
    .meta({ description: "how the blocks are set", examples: ["{ rows: ... }"] });
}

function border(unit: LengthUnit) {
  return z
    .strictObject({
      name: word("name of the border", "outer border").optional(),
      width: borderWidth(unit),
      fabric: word("fabric of a plain border", "navy").optional(),
      block: word(
        "blocks that make a pieced border, as in the rows, tops to the outside",
        "geese bar",
      ).optional(),
      colourway: word("colours of the block", "night").optional(),
      corners: choice(
        ["sides first", "tops first", "mitred"],
        "how the corners are sewn",
        "sides first",
      ).optional(),
      cornerstones: plainOrBlock("squares in the corners").optional(),
      "over-long": length(unit, {
        description: "extra length on each strip, trimmed after sewing",
        example: "2",
      }).optional(),
      cut: choice(
        ["strips", "lengthwise", "either"],
        "from strips, or along the selvage in one piece",
        "lengthwise",
      ).optional(),
      join: choice(["no", "straight", "diagonal"], "how long strips are joined", "straight").optional(),
      prints: borderPrints().optional(),
    })
    .meta({ description: "one border, from the inside out", examples: ["{ fabric: navy, width: 4 }"] });
}

/** What a quilt file says beyond its head and fabrics. */
export function quiltFields(unit: LengthUnit) {
  const inches = unit === "in" || unit === "yd";
  const seam = inches ? "1/4 in" : "0.75 cm";
  return {
    seam: length(unit, { description: "seam allowance", example: seam }, true).optional(),
    rounding: choice(
      ["exact", "trade"],
      "true geometry rounded up to the ruler's marks, or the constants makers know",
      "exact",
    ).optional(),
    oversize: length(unit, {
      description: "added to squares of units that are trimmed after sewing",
      example: inches ? "1/8 in" : "0.25 cm",
    }).optional(),
    "straighten-sets": length(unit, {
      description: "what squaring one end of a sewn strip set takes, before its first segment",
      example: inches ? "1/2 in" : "1 cm",
    }).optional(),
    prints: prints().optional(),
    methods: z
      .record(z.string(), word("a method", "four at a time"))
      .meta({ description: "how units are made, by unit", examples: ["{ flying geese: four at a time }"] })
      .optional(),
    blocks: z
      .record(z.string(), blockSchema(unit))
      .meta({ description: "block designs by the word used in the rows", examples: ["{ star: ... }"] }),
    colourways: z
      .record(z.string(), roles("fabric of each role; `like` names another colourway it starts from"))
      .meta({
        description: "sets of colours for any block",
        examples: ["{ night: { sky: navy, star: gold } }"],
      })
      .optional(),
    setting: setting(unit),
    quilting: quiltingSchema(unit).optional(),
    "most-layers": mostLayersSchema().optional(),
    borders: z.array(border(unit)).meta({ description: "borders from the inside out" }).optional(),
    binding: binding(unit).optional(),
    backing: backing(unit).optional(),
    wadding: wadding(unit).optional(),
    foundation: foundationSchema(unit).optional(),
    minutes: minutesSchema().optional(),
    pattern: patternSchema().optional(),
  };
}

/** A quilt design. */
export function quiltSchema(unit: LengthUnit) {
  return z
    .strictObject({
      ...fileFields(unit),
      fabrics: z
        .array(fabricSchema(unit, false))
        .min(1)
        .meta({ description: "the fabrics", examples: ["- name: Night sea"] }),
      ...quiltFields(unit),
    })
    .meta({
      title: "Crossgrain quilt",
      description: "a quilt design: blocks, setting, borders and finishing",
    });
}

export type WrittenQuilt = z.output<ReturnType<typeof quiltSchema>>;
export type WrittenCell = z.output<ReturnType<typeof cellSchema>>;
export type WrittenBlock = z.output<ReturnType<typeof blockSchema>>;
