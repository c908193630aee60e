import type { Words } from "../../types.ts";
import { making } from "../making.ts";

/** Sentences of a pattern that elsewhere speak of the file, or of how far something is proved. */
export const forMakers: Words["forMakers"] = {
  cutting: { bindingToo: (edge) => `Binding for ${edge} of edge and its corners.` },
  finishing: {
    anyBacking: (size, overhang) => `Backing: ${size} or larger, ${overhang} beyond the quilt on each side.`,
    anyWadding: (size, packaged, roll) =>
      `Wadding: ${size} or larger (${packaged === null ? roll : `${packaged}, or ${roll}`}).`,
    noBinding: (edge) => `The edge to be bound measures ${edge} once round.`,
  },
  making: {
    nestSome: (junctions, open) => making.nestSome(junctions, open, false),
    bulk: (most, atMost, places) => making.bulk(most, atMost, places, false),
    thinEnough: (limit) => `That is within ${limit}, the most wanted.`,
    tooThick: (limit, inches) =>
      `More than ${limit} layers, the most wanted. Where it says so below, press the seam sewn last open, for ${
        inches ? "an inch or two" : "a few centimetres"
      } to both sides; anywhere you can cut off the points within the seam allowances:`,
    quilting: (by, lines, spacing) => making.quilting(by, lines, spacing, true),
  },
  units: { allOwn: (bags) => `Sewn by no step here: ${bags.join("; ")}.` },
};
