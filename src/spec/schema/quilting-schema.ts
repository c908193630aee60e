import * as z from "zod";
import { countNotWhole } from "../../diagnostics/fields.ts";
import { TICKS_PER } from "../../length/measures.ts";
import { ceil } from "../../length/rational.ts";
import type { LengthUnit, Ticks } from "../../length/types.ts";
import type { QuiltingSpec } from "../quilt-types.ts";
import { choice, describes, leaf, length, refuse, type WrittenLength } from "../written/written.ts";

/** Thicker than this nothing is sewn. */
const MOST_LAYERS = 99;

/** Most layers of cloth that should lie on one another in the finished top. */
export function mostLayersSchema() {
  const type = { type: "integer", minimum: 1, maximum: MOST_LAYERS };
  return leaf({ about: "quilt.most-layers", type }, (written, context): number => {
    const found = Number(written);
    if (Number.isInteger(found) && found >= 1 && found <= MOST_LAYERS) return found;
    return refuse(context, (where) => countNotWhole(where, written, MOST_LAYERS));
  });
}

/** How the layers are quilted. */
export function quiltingSchema(unit: LengthUnit) {
  return z
    .strictObject({
      by: choice(["hand", "machine", "long-arm"], "quilting.by").optional(),
      lines: choice(["parallel", "crossed"], "quilting.lines").optional(),
      spacing: length(unit, "quilting.spacing", true).optional(),
    })
    .meta(describes("quilting"));
}

/** Four patches come to nine layers at most; where more than six points meet it gets hard to quilt. Common practice. */
export const USUAL_LAYERS = 12;

interface WrittenQuilting {
  by?: QuiltingSpec["by"] | undefined;
  lines?: QuiltingSpec["lines"] | undefined;
  spacing?: WrittenLength | undefined;
}

/** Lines 2 in or 5 cm apart unless the file says otherwise. Common practice, no source. */
export function fillQuilting(written: WrittenQuilting | undefined, inches: boolean): QuiltingSpec {
  const usual = inches ? 2 * TICKS_PER.in : 5 * TICKS_PER.cm;
  return {
    by: written?.by ?? "machine",
    lines: written?.lines ?? "parallel",
    spacing: written?.spacing === undefined ? usual : Number(ceil(written.spacing.value)),
    told: written !== undefined,
  };
}

/**
 * Backing and wadding beyond the quilt on each side, in inches and centimetres. Published: 2 to 3 in for hand or
 * hoop (Quilt backing, stcroixquilters.com), 4 to 5 in on the whole (Quilt Backings, BellaOnline), 5 in for a
 * long-arm frame (Quilt top and backing preparation, Quilt Your Quilt).
 */
export const OVERHANG: Record<QuiltingSpec["by"], { inches: number; centimetres: Ticks }> = {
  hand: { inches: 3, centimetres: 7.5 },
  machine: { inches: 4, centimetres: 10 },
  "long-arm": { inches: 5, centimetres: 12.5 },
};
