import type { PieceTold, PlaceTold, Purpose } from "../../../diagnostics/purposes.ts";
import { formatLength, formatSize } from "../../../length/format.ts";
import type { Ruler } from "../../../length/types.ts";
import { methodName, unitName, unitTold } from "./unit-names.ts";

function place(at: PlaceTold): string {
  switch (at.in) {
    case "block":
      return `block ${at.block}`;
    case "sashes":
    case "cornerstones":
      return at.block === null ? at.in : `${at.in}, block ${at.block}`;
    case "border":
      return `${at.border}, block ${at.block}`;
    case "corners":
      return `corners of ${at.border}`;
  }
}

/** `rails 1, 3, 5` rather than `rail 1, rail 3, rail 5`. */
function parts(codes: readonly string[]): string {
  const numbers = codes.map((code) => /^rail (\d+)$/.exec(code)?.[1]);
  if (codes.length > 1 && numbers.every((number) => number !== undefined))
    return `rails ${numbers.join(", ")}`;
  return codes.join(", ");
}

/** What a piece is cut for. `trimmed`: with what the sewn unit is trimmed to. */
function purpose(of: Purpose, ruler: Ruler, trimmed = true): string {
  switch (of.for) {
    case "label":
      return of.label;
    case "number":
      return `Piece ${of.number}`;
    case "size":
      return formatSize(of.across, of.along, ruler);
    case "unit": {
      const where = of.places.map(place).join(", ");
      if (of.made === null) return where;
      const { kind, method, parts: codes, trimTo } = of.made;
      const trim =
        trimTo === null || !trimmed ? "" : `, trim to ${formatSize(trimTo.across, trimTo.along, ruler)}`;
      return `${where}: ${unitName(kind)}, ${methodName(method)}, ${parts(codes)}${trim}`;
    }
    case "long-sashes":
      return "long sashes";
    case "border":
      return `${of.border}, ${of.pair === "sides" ? "sides" : "top and bottom"}`;
    case "triangles":
      return `${of.part} setting triangles (${of.used} of ${of.of})`;
    case "binding":
      return `${of.bias ? "bias binding" : "binding"}, ${formatLength(of.length, ruler)} of ${of.fold}-fold binding`;
    case "backing":
      return "backing";
    case "backing-panels":
      return "backing panels";
    case "wadding":
      return "wadding";
    case "foundation":
      return `foundation for ${of.per} ${of.letter}, ${of.across} x ${of.down} printed squares`;
    case "several":
      return of.all.map((each) => purpose(each, ruler, trimmed)).join("; ");
    case "shorter-strip":
      return `${purpose(of.of, ruler, trimmed)} (a shorter strip)`;
  }
}

/** What pieces of cloth are for, and where units go. */
export const purposes = {
  place,
  purpose,
  /** A piece in a sentence. */
  piece: (of: PieceTold, ruler: Ruler): string => ("for" in of ? purpose(of, ruler) : unitTold(of)),
};
