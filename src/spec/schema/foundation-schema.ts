import * as z from "zod";
import { countNotWhole } from "../../diagnostics/fields.ts";
import type { LengthUnit } from "../../length/types.ts";
import { AFTER } from "../key-words.ts";
import { choice, describes, inInches, leaf, length, refuse, words } from "../written/written.ts";

/** More squares than this beyond a seam line are no allowance. */
const MOST_SQUARES = 20;

function squares() {
  const type = { type: "integer", minimum: 1, maximum: MOST_SQUARES };
  return leaf({ about: "foundation.allowance", type }, (written, context): number => {
    const found = Number(written);
    if (Number.isInteger(found) && found >= 1 && found <= MOST_SQUARES) return found;
    return refuse(context, (where) => countNotWhole(where, written, MOST_SQUARES));
  });
}

/** Piecing on a foundation printed with squares. */
export function foundationSchema(unit: LengthUnit) {
  const inches = inInches(unit);
  return z
    .strictObject({
      fabric: words("foundation.fabric"),
      grid: length(unit, "foundation.grid", true),
      "half-lines": z.boolean().meta(describes("foundation.half-lines")).optional(),
      way: choice(["pieced", "folded"], "foundation.way").optional(),
      per: choice(["unit", "motif", "block", "row"], "foundation.per").optional(),
      allowance: squares().optional(),
      ease: length(unit, "foundation.ease").optional(),
      hold: choice(["fusible", "sew-in"], "foundation.hold").optional(),
      after: choice(AFTER, "foundation.after").optional(),
      blocks: z.array(words("foundation.block")).min(1).meta(describes("foundation.blocks")).optional(),
    })
    .meta(describes("foundation", { inches }));
}
