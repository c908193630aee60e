import * as z from "zod";
import { NOT_ABOVE_ZERO, sizeUnreadable } from "../../diagnostics/fields.ts";
import type { FileKey } from "../../diagnostics/file-keys.ts";
import { gridsizeUnreadable, turnNotQuarter } from "../../diagnostics/quilts/quilt-file.ts";
import { parseLength } from "../../length/parse.ts";
import type { Rational } from "../../length/rational.ts";
import { parseSize } from "../../length/size.ts";
import type { LengthUnit } from "../../length/types.ts";
import { CORNER_WORDS, LAYOUTS, PRINTS_FOLLOW } from "../key-words.ts";
import type { QuarterTurn } from "../quilt-types.ts";
import { QUARTER_TURNS } from "../quilt-types.ts";
import { choice, describes, leaf, length, refuse, text } from "../written/written.ts";
import { classSchema } from "./class-schema.ts";
import { fileFields } from "./cut-list-schema.ts";
import { fabricSchema } from "./fabric-schema.ts";
import { backing, binding, wadding, word } from "./finishing-schema.ts";
import { foundationSchema } from "./foundation-schema.ts";
import { minutesSchema } from "./minutes-schema.ts";
import { patternSchema } from "./pattern-schema.ts";
import { mostLayersSchema, quiltingSchema } from "./quilting-schema.ts";

/** More cells than this across or down are no block and no quilt. */
const MOST_CELLS = 500;

/** Width and height of something finished. */
interface WrittenFinished {
  across: Rational;
  down: Rational;
}

/** One length for a square, or two: `8` or `6 x 3`. */
function finishedSize(unit: LengthUnit, about: FileKey) {
  return leaf({ about }, (written, context) => readFinished(written, context, unit, about));
}

function readFinished(
  written: string,
  context: z.RefinementCtx,
  unit: LengthUnit,
  about: FileKey,
): WrittenFinished {
  const one = parseLength(written, unit);
  if (one.ok && one.value.n > 0n) return { across: one.value, down: one.value };
  const two = parseSize(written, unit);
  if (two.ok && two.across.n > 0n && two.along.n > 0n) return { across: two.across, down: two.along };
  const fault = one.ok || two.ok ? NOT_ABOVE_ZERO : two.problem.fault;
  return refuse(context, (where) => sizeUnreadable(where, written, fault, { like: about }));
}

/** Finished width of a border; `fit`: worked out so that the pieced border outside it comes out. */
function borderWidth(unit: LengthUnit) {
  return leaf({ about: "border.width" }, (written, context): WrittenFinished | "fit" =>
    written.toLowerCase() === "fit" ? "fit" : readFinished(written, context, unit, "border.width"),
  );
}

/** How many across and down. */
function cells(field: string, about: FileKey) {
  return leaf({ about }, (written, context): { columns: number; rows: number } => {
    const match = /^([1-9]\d{0,3})\s*(?:x|×|by)\s*([1-9]\d{0,3})$/iu.exec(written);
    const [columns, rows] = [Number(match?.[1]), Number(match?.[2])];
    if (match === null || columns > MOST_CELLS || rows > MOST_CELLS) {
      return refuse(context, (where) => gridsizeUnreadable(where, field, written, MOST_CELLS));
    }
    return { columns, rows };
  });
}

function turn(about: FileKey) {
  return leaf({ about }, (written, context): QuarterTurn => {
    const degrees = Number(/^(\d{1,4})\s*(?:°|deg|degrees)?$/.exec(written)?.[1] ?? Number.NaN);
    const quarters = QUARTER_TURNS.find((each) => each === degrees % 360);
    return quarters ?? refuse(context, (where) => turnNotQuarter(where, written));
  });
}

function prints() {
  return choice(PRINTS_FOLLOW, "prints");
}

function borderPrints() {
  return choice(["upright", "round", "outwards"], "border.prints");
}

/** A drawing: one text of several lines, or a list of lines. */
function drawing(about: FileKey) {
  return z.union([text(), z.array(text()).min(1)]).meta(describes(about));
}

/** Fabrics of a unit: one for all parts, a list in the usual order, or by part. */
function fabricsOfUnit() {
  const name = word("unit.fabric");
  return z.union([name, z.array(name).min(1), z.record(z.string(), name)]).meta(describes("unit"));
}

const CORNERS = ["top-left", "top-right", "bottom-right", "bottom-left"] as const;

function point(unit: LengthUnit) {
  const at = length(unit, "cell.point");
  return z.array(at).min(2).max(2);
}

/** What the cells of one code hold: a unit with its fabrics, and how it lies. */
function cellSchema(unit: LengthUnit) {
  const size = (about: FileKey) => length(unit, about, true);
  return z
    .object({
      turn: turn("cell.turn").optional(),
      span: cells("span", "cell.span").optional(),
      method: word("cell.method").optional(),
      prints: prints().optional(),
      corner: size("cell.corner").optional(),
      corners: z.array(choice(CORNERS, "cell.corners")).min(1).optional(),
      strips: z.array(size("cell.strips")).min(1).optional(),
      count: leaf({ about: "cell.count" }, (written, context): number => {
        const count = Number(written);
        if (Number.isInteger(count) && count >= 1 && count <= 100) return count;
        return refuse(context, (where) => gridsizeUnreadable(where, "count", written, 100));
      }).optional(),
      centre: size("cell.centre").optional(),
      leaning: choice(["rising", "falling"], "cell.leaning").optional(),
      patches: z
        .array(z.strictObject({ part: word("cell.part"), corners: z.array(point(unit)).min(3) }))
        .min(1)
        .optional(),
      "drawn-on": cells("drawn-on", "cell.drawn-on").optional(),
    })
    .catchall(fabricsOfUnit())
    .meta(describes("cell"));
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

function roles(about: FileKey) {
  return z.record(z.string(), word("role")).meta(describes(about));
}

/** Parts of a block that are turned by themselves: how many across and down, or codes of its grid. */
function motifs() {
  return leaf({ about: "block.motifs" }, (written) => {
    const match = /^([1-9]\d{0,2})\s*(?:x|×|by)\s*([1-9]\d{0,2})$/iu.exec(written);
    if (match === null)
      return { columns: 0, rows: 0, codes: written.split(/[\s,]+/).filter((code) => code !== "") };
    return { columns: Number(match[1]), rows: Number(match[2]), codes: [] };
  });
}

function blockSchema(unit: LengthUnit) {
  const sizes = (about: "block.columns" | "block.lines") =>
    z
      .array(length(unit, `${about}.one`, true))
      .min(1)
      .meta(describes(about));
  return z
    .strictObject({
      name: word("block.name").optional(),
      size: finishedSize(unit, "block.size").optional(),
      columns: sizes("block.columns").optional(),
      lines: sizes("block.lines").optional(),
      grid: drawing("block.grid").optional(),
      cells: z.record(z.string(), cellSchema(unit)).meta(describes("block.cells")).optional(),
      cell: cellSchema(unit).optional(),
      roles: roles("block.roles").optional(),
      motifs: motifs().optional(),
    })
    .meta(describes("block"));
}

/** A fabric by name, or a block. */
function plainOrBlock(about: FileKey) {
  const fields = {
    block: word("plain-or-block.block"),
    turn: turn("plain-or-block.turn").optional(),
    colourway: word("plain-or-block.colourway").optional(),
  };
  return z.union([word("plain-or-block.fabric"), z.strictObject(fields)]).meta(describes(about));
}

function sashing(unit: LengthUnit) {
  return z
    .strictObject({
      width: length(unit, "sashing.width", true),
      fabric: word("sashing.fabric").optional(),
      block: word("sashing.block").optional(),
      colourway: word("sashing.colourway").optional(),
      cornerstones: plainOrBlock("sashing.cornerstones").optional(),
      ring: z.boolean().meta(describes("sashing.ring")).optional(),
    })
    .meta(describes("sashing"));
}

function setting(unit: LengthUnit) {
  const triangles = z.union([
    word("setting.triangles.fabric"),
    z.strictObject({
      sides: word("setting.triangles.sides"),
      corners: word("setting.triangles.corners"),
    }),
  ]);
  return z
    .strictObject({
      layout: choice(LAYOUTS, "setting.layout").optional(),
      rows: drawing("setting.rows"),
      fill: cells("fill", "setting.fill").optional(),
      turn: turn("setting.turn").optional(),
      sashing: sashing(unit).optional(),
      triangles: triangles.meta(describes("setting.triangles")).optional(),
    })
    .meta(describes("setting"));
}

function border(unit: LengthUnit) {
  return z
    .strictObject({
      name: word("border.name").optional(),
      width: borderWidth(unit),
      fabric: word("border.fabric").optional(),
      block: word("border.block").optional(),
      colourway: word("border.colourway").optional(),
      corners: choice(CORNER_WORDS, "border.corners").optional(),
      cornerstones: plainOrBlock("border.cornerstones").optional(),
      "over-long": length(unit, "border.over-long").optional(),
      cut: choice(["strips", "lengthwise", "either"], "border.cut").optional(),
      join: choice(["no", "straight", "diagonal"], "border.join").optional(),
      prints: borderPrints().optional(),
    })
    .meta(describes("border"));
}

/** What a quilt file says beyond its head and fabrics. */
export function quiltFields(unit: LengthUnit) {
  return {
    seam: length(unit, "quilt.seam", true).optional(),
    rounding: choice(["exact", "trade"], "quilt.rounding").optional(),
    oversize: length(unit, "quilt.oversize").optional(),
    "straighten-sets": length(unit, "quilt.straighten-sets").optional(),
    prints: prints().optional(),
    methods: z.record(z.string(), word("quilt.method")).meta(describes("quilt.methods")).optional(),
    blocks: z.record(z.string(), blockSchema(unit)).meta(describes("quilt.blocks")),
    colourways: z.record(z.string(), roles("quilt.colourway")).meta(describes("quilt.colourways")).optional(),
    setting: setting(unit),
    quilting: quiltingSchema(unit).optional(),
    "most-layers": mostLayersSchema().optional(),
    borders: z.array(border(unit)).meta(describes("quilt.borders")).optional(),
    binding: binding(unit).optional(),
    backing: backing(unit).optional(),
    wadding: wadding(unit).optional(),
    foundation: foundationSchema(unit).optional(),
    minutes: minutesSchema().optional(),
    pattern: patternSchema().optional(),
    class: classSchema().optional(),
  };
}

/** A quilt design. */
export function quiltSchema(unit: LengthUnit) {
  return z
    .strictObject({
      ...fileFields(unit),
      fabrics: z.array(fabricSchema(unit, false)).min(1).meta(describes("quilt.fabrics")),
      ...quiltFields(unit),
    })
    .meta(describes("quilt"));
}

export type WrittenQuilt = z.output<ReturnType<typeof quiltSchema>>;
export type WrittenCell = z.output<ReturnType<typeof cellSchema>>;
export type WrittenBlock = z.output<ReturnType<typeof blockSchema>>;
