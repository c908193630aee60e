import * as z from "zod";
import type { LengthUnit } from "../length/types.ts";
import { readPieceLine, type WrittenSize } from "./piece-line.ts";
import {
  checkSize,
  choice,
  count,
  leaf,
  readCount,
  readWords,
  refuseProblem,
  size,
  words,
} from "./written.ts";

/** A piece as written, every field looked at, before defaults. */
export interface ReadPiece {
  label: string;
  size: WrittenSize;
  count: number;
  turn: "free" | "fixed" | null;
  cut: "strips" | "lengthwise" | "either" | null;
  join: "no" | "straight" | "diagonal" | null;
  note: string;
}

/** A piece on one line: `sky 2 1/2 x 4 1/2, 24`. */
function line(unit: LengthUnit) {
  const help = {
    description: "a piece on one line: label, size, a comma, count",
    example: "sky 2 1/2 x 4 1/2, 24",
  };
  return leaf(help, (written, context): ReadPiece => {
    const read = readPieceLine(written, unit);
    if (!read.ok) return refuseProblem(context, written, read.problem);
    const { value } = read;
    return {
      label: value.label === "" ? "" : readWords(value.label, "name", context),
      size: checkSize(value.size, value.size.text, context, written.indexOf(value.size.text) + 1),
      count: readCount(
        value.count,
        context,
        written.indexOf(value.count, value.label.length + value.size.text.length) + 1,
      ),
      turn: value.turn ?? null,
      cut: value.cut ?? null,
      join: value.join ?? null,
      note: readWords(value.note, "note", context),
    };
  });
}

function mapping(unit: LengthUnit) {
  const example = unit === "in" || unit === "yd" ? "2 1/2 x 4 1/2" : "6.5 x 11.5";
  return z
    .strictObject({
      label: words({ description: "a short name for the bag label", example: "sky" }).optional(),
      size: size(unit, {
        description: "size as cut, across the fabric first; `WOF` for its whole width",
        example,
      }),
      count: count("how many to cut"),
      turn: choice(["free", "fixed"], "whether it may lie turned a quarter", "fixed").optional(),
      cut: choice(
        ["strips", "lengthwise", "either"],
        "from strips, or along the selvage",
        "lengthwise",
      ).optional(),
      join: choice(
        ["no", "straight", "diagonal"],
        "whether it may be joined from strips",
        "diagonal",
      ).optional(),
      note: words(
        { description: "anything to print with the piece", example: "outer border" },
        "note",
      ).optional(),
    })
    .transform(
      (written): ReadPiece => ({
        label: written.label ?? "",
        size: written.size,
        count: written.count,
        turn: written.turn ?? null,
        cut: written.cut ?? null,
        join: written.join ?? null,
        note: written.note ?? "",
      }),
    );
}

/** The sizes to cut from one fabric. */
export function pieces(unit: LengthUnit) {
  const description = "the sizes to cut, one to a line";
  return z
    .array(z.union([line(unit), mapping(unit)]))
    .min(1)
    .meta({ description, example: "- sky 2 1/2 x 4 1/2, 24", written: {} });
}
