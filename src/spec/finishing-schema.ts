import * as z from "zod";
import type { LengthUnit } from "../length/types.ts";
import { choice, length, words } from "./written.ts";

/** One word of the maker's: the name of a fabric, a block, a part. */
export const word = (description: string, example: string) => words({ description, example });

export function binding(unit: LengthUnit) {
  const full = z.strictObject({
    fabric: word("fabric of the binding", "navy"),
    width: length(unit, { description: "cut width of the strips", example: "2 1/2" }, true).optional(),
    fold: choice(["double", "single"], "folded double or single", "double").optional(),
    cut: choice(["straight", "bias"], "strips across the fabric, or on the bias", "straight").optional(),
    join: choice(["diagonal", "straight"], "how strips are joined", "diagonal").optional(),
    extra: length(unit, {
      description: "length beyond the edges, for corners and closing",
      example: "10",
    }).optional(),
  });
  return z
    .union([word("fabric of the binding", "navy"), full])
    .meta({ description: "the binding", examples: ["navy"] });
}

export function backing(unit: LengthUnit) {
  const full = z.strictObject({
    fabric: word("fabric of the backing", "ticking"),
    overhang: length(unit, { description: "beyond the quilt on each side", example: "4" }).optional(),
    seams: choice(
      ["vertical", "horizontal", "either"],
      "which way the panels are joined",
      "either",
    ).optional(),
  });
  return z
    .union([word("fabric of the backing", "ticking"), full])
    .meta({ description: "the backing", examples: ["ticking"] });
}

export function wadding(unit: LengthUnit) {
  return z
    .strictObject({
      fabric: word("one of the fabrics, when it is bought by length", "wadding roll").optional(),
      overhang: length(unit, { description: "beyond the quilt on each side", example: "4" }).optional(),
    })
    .meta({ description: "the wadding", examples: ["{ overhang: 4 }"] });
}
