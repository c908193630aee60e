import * as z from "zod";
import { countNotWhole } from "../diagnostics/fields.ts";
import type { LengthUnit } from "../length/types.ts";
import { choice, leaf, length, refuse, words } from "./written.ts";

/** More squares than this beyond a seam line are no allowance. */
const MOST_SQUARES = 20;

function squares() {
  const type = { type: "integer", minimum: 1, maximum: MOST_SQUARES };
  const help = { description: "printed squares beyond the outermost seam line", example: 1, type };
  return leaf(help, (written, context): number => {
    const found = Number(written);
    if (Number.isInteger(found) && found >= 1 && found <= MOST_SQUARES) return found;
    return refuse(context, (where) => countNotWhole(where, written, MOST_SQUARES));
  });
}

/** Piecing on a foundation printed with squares. */
export function foundationSchema(unit: LengthUnit) {
  const inches = unit === "in" || unit === "yd";
  return z
    .strictObject({
      fabric: words({
        description: "the foundation: one of the fabrics, so that it is bought and cut like them",
        example: "gridded web",
      }),
      grid: length(
        unit,
        { description: "side of one printed square", example: inches ? "1 in" : "2 cm" },
        true,
      ),
      "half-lines": z
        .boolean()
        .meta({ description: "seams may also lie half-way between two lines", examples: [false] })
        .optional(),
      way: choice(
        ["pieced", "folded"],
        "pieced: patch by patch on flat foundation, seams on the lines; folded: finished parts laid edge to " +
          "edge, lines folded and sewn",
        "pieced",
      ).optional(),
      per: choice(
        ["unit", "motif", "block", "row"],
        "what one piece of foundation carries; motif: the largest part of a block that can be pieced patch by patch",
        "motif",
      ).optional(),
      allowance: squares().optional(),
      ease: length(unit, {
        description: "patches are cut larger by this both ways; 0 for exact",
        example: inches ? "1/4 in" : "0.5 cm",
      }).optional(),
      hold: choice(["fusible", "sew-in"], "how patches are held while they are sewn", "fusible").optional(),
      after: choice(
        ["left in", "torn away"],
        "what becomes of it once the top is sewn",
        "left in",
      ).optional(),
      blocks: z
        .array(words({ description: "a block design", example: "geese" }))
        .min(1)
        .meta({ description: "the blocks made on it; without it, all of more than one patch" })
        .optional(),
    })
    .meta({
      description: "a gridded foundation: its printed lines are the seams",
      examples: [inches ? "{ fabric: gridded web, grid: 1 in }" : "{ fabric: gridded web, grid: 2 cm }"],
    });
}
