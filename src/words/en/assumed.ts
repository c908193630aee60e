import { formatLength, formatMeasure } from "../../length/index.ts";
import type { Ruler, Ticks } from "../../length/types.ts";
import type { Assumed, Assumption } from "../../spec/assumption-types.ts";
import { counted } from "./language.ts";

/** What was assumed: about what, and which value. */
export interface AssumptionSaid {
  subject: string;
  value: string;
}

type Said = [subject: string, value: string];

function said(of: Assumed, say: (ticks: Ticks) => string): Said {
  switch (of.is) {
    case "bare-numbers":
      return ["bare numbers", of.inches ? "inches" : "centimetres"];
    case "ruler-marks":
      return ["ruler marks", `every ${say(of.mark)}`];
    case "ruler-length":
      return ["ruler length", say(of.length)];
    case "mat-length":
      return ["mat length", say(of.length)];
    case "fold":
      return ["fold", "folded once, selvage to selvage"];
    case "cutting":
      return ["cutting", "strips, subcut and trimmed"];
    case "leftovers-kept":
      return ["leftovers kept", `from ${say(of.length)} both ways`];
    case "joined-from":
      return ["strips joined end to end", `no piece shorter than ${say(of.length)}`];
    case "usable-width":
      return [
        "usable width",
        `${say(of.usable)} (${say(of.width)} less ${say(of.selvage)} of selvage on each side)`,
      ];
    case "usable-width-tried":
      return ["usable width tried", say(of.usable)];
    case "selvage":
      return ["selvage", `${say(of.length)} on each side`];
    case "straightening":
      return ["straightening", say(of.length)];
    case "straightening-to-line":
      return ["straightening", `${say(of.length)}, to a printed line`];
    case "sold-in":
      return ["sold in", `steps of ${formatMeasure(of.step, of.unit)}`];
    case "bolt":
      return ["a bolt", `${formatMeasure(of.length, of.unit)} long`];
    case "shrinkage":
      return ["shrinkage", "none: cut without washing first"];
    case "print":
      return ["print", "none: pieces may be turned"];
    case "squaring":
      return ["squaring cloth of a fixed size", `${say(of.off)} off one edge each way`];
    case "seam-of-shapes":
      return ["seam allowance of shapes", say(of.length)];
    case "restated":
      return ["restated", `for a ruler with marks every ${say(of.mark)}`];
    default:
      return saidOfQuilt(of, say);
  }
}

type OfQuilt = Extract<
  Assumed,
  { moves: true } | { is: `foundation-${string}` | "directional-prints" | "set-squaring" }
>;

function saidOfQuilt(
  of: Exclude<OfQuilt, { is: "straightening-to-line" }>,
  say: (ticks: Ticks) => string,
): Said {
  switch (of.is) {
    case "seam":
      return ["seam allowance", say(of.length)];
    case "directional-prints":
      return ["directional prints", "upright in the quilt"];
    case "mitred-over-long":
      return ["mitred strips over-long by", say(of.length)];
    case "binding-width":
      return ["binding strips", say(of.length)];
    case "binding-extra":
      return ["binding, beyond the edges", say(of.length)];
    case "backing-overhang":
      return ["backing, beyond the quilt on each side", say(of.length)];
    case "wadding-overhang":
      return ["wadding, beyond the quilt on each side", say(of.length)];
    case "foundation-way":
      return ["foundation", "pieced patch by patch"];
    case "foundation-per":
      return ["one piece of foundation for each", of.per];
    case "foundation-allowance":
      return ["foundation beyond the outermost seam line", counted(of.squares, "square")];
    case "foundation-ease":
      return ["patches for the foundation larger by", say(of.length)];
    case "foundation-kept":
      return ["foundation", `${of.hold}, ${of.after}`];
    case "set-squaring":
      return ["squaring one end of each strip set", say(of.off)];
  }
}

/** A default that was filled in, with its lengths as the ruler reads. */
export function assumed({ of, elsewhere }: Assumption, ruler: Ruler): AssumptionSaid {
  const [subject, value] = said(of, (ticks) => formatLength(ticks, ruler));
  return { subject, value: elsewhere === true ? `${value} (where not said)` : value };
}
