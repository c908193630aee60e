import * as z from "zod";
import type { LengthUnit } from "../../length/types.ts";
import { readPieceLine, type WrittenSize } from "../written/piece-line.ts";
import {
  checkSize,
  choice,
  count,
  describes,
  leaf,
  readCount,
  readWords,
  refuseProblem,
  size,
  words,
} from "../written/written.ts";
import { type ReadShape, shapeFields, shapeOf } from "./shape-schema.ts";

/** A piece as written, every field looked at, before defaults. */
export interface ReadPiece {
  label: string;
  size: WrittenSize;
  count: number;
  turn: "free" | "fixed" | null;
  cut: "strips" | "lengthwise" | "either" | null;
  join: "no" | "straight" | "diagonal" | null;
  /** Of a shape: the rectangle of `size` then says about how large it is. */
  shape: ReadShape | null;
  note: string;
}

/** A piece on one line: `sky 2 1/2 x 4 1/2, 24`. */
function line(unit: LengthUnit) {
  return leaf({ about: "piece.line" }, (written, context): ReadPiece => {
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
      shape: null,
      note: readWords(value.note, "note", context),
    };
  });
}

function mapping(unit: LengthUnit) {
  return z
    .strictObject({
      label: words("piece.label").optional(),
      size: size(unit, "piece.size"),
      count: count("piece.count"),
      turn: choice(["free", "fixed"], "piece.turn").optional(),
      cut: choice(["strips", "lengthwise", "either"], "piece.cut").optional(),
      join: choice(["no", "straight", "diagonal"], "piece.join").optional(),
      note: words("piece.note", "note").optional(),
    })
    .transform(
      (written): ReadPiece => ({
        label: written.label ?? "",
        size: written.size,
        count: written.count,
        turn: written.turn ?? null,
        cut: written.cut ?? null,
        join: written.join ?? null,
        shape: null,
        note: written.note ?? "",
      }),
    );
}

/** A shape cut aslant from strips: `shape: triangle`, `side: 4`. */
function shaped(unit: LengthUnit) {
  return z
    .strictObject({
      label: words("shape.label").optional(),
      ...shapeFields(unit),
      count: count("shape.count"),
      turn: choice(["free", "fixed"], "shape.turn").optional(),
      note: words("shape.note", "note").optional(),
    })
    .transform((written, context): ReadPiece => {
      const shape = shapeOf(written, context);
      if (shape === null) return z.NEVER;
      const { side, high } = shape;
      const size = { text: written.shape, across: side, along: high, fullWidth: false };
      return {
        label: written.label ?? "",
        size,
        count: written.count,
        turn: written.turn ?? null,
        cut: null,
        join: null,
        shape,
        note: written.note ?? "",
      };
    });
}

/** The sizes to cut from one fabric. */
export function pieces(unit: LengthUnit) {
  return z
    .array(z.union([line(unit), mapping(unit), shaped(unit)]))
    .min(1)
    .meta(describes("fabric.pieces", { written: {} }));
}
