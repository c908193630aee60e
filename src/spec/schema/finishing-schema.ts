import * as z from "zod";
import type { FileKey } from "../../diagnostics/file-keys.ts";
import type { LengthUnit } from "../../length/types.ts";
import { choice, describes, length, words } from "../written/written.ts";

/** One word of the maker's: the name of a fabric, a block, a part. */
export const word = (about: FileKey) => words(about);

export function binding(unit: LengthUnit) {
  const full = z.strictObject({
    fabric: word("binding.fabric"),
    width: length(unit, "binding.width", true).optional(),
    fold: choice(["double", "single"], "binding.fold").optional(),
    cut: choice(["straight", "bias"], "binding.cut").optional(),
    join: choice(["diagonal", "straight"], "binding.join").optional(),
    extra: length(unit, "binding.extra").optional(),
  });
  return z.union([word("binding.fabric"), full]).meta(describes("binding"));
}

export function backing(unit: LengthUnit) {
  const full = z.strictObject({
    fabric: word("backing.fabric"),
    overhang: length(unit, "backing.overhang").optional(),
    seams: choice(["vertical", "horizontal", "either"], "backing.seams").optional(),
  });
  return z.union([word("backing.fabric"), full]).meta(describes("backing"));
}

export function wadding(unit: LengthUnit) {
  return z
    .strictObject({
      fabric: word("wadding.fabric").optional(),
      overhang: length(unit, "wadding.overhang").optional(),
    })
    .meta(describes("wadding"));
}
