/**
 * What the reader of a pattern, or a pupil with a kit, is told in place of sentences that speak of the file: nobody but
 * its author has that.
 */
export const makers = {
  anyBacking: (size: string, overhang: string) =>
    `Backing: ${size} or larger, ${overhang} beyond the quilt on each side.`,
  anyWadding: (size: string, packaged: string | null, roll: string) =>
    `Wadding: ${size} or larger (${packaged === null ? roll : `${packaged}, or ${roll}`}).`,
  noBinding: (edge: string) => `The edge to be bound measures ${edge} once round.`,
  bindingToo: (edge: string) => `Binding for ${edge} of edge and its corners.`,
  thinEnough: (limit: number) => `That is within ${limit}, the most wanted.`,
  tooThick: (limit: number, inches: boolean) =>
    `More than ${limit} layers, the most wanted. Where it says so below, press the seam sewn last open, for ${
      inches ? "an inch or two" : "a few centimetres"
    } to both sides; anywhere you can cut off the points within the seam allowances:`,
  allOwn: (bags: readonly string[]) => `Cut, and sewn by no step here: ${bags.join("; ")}.`,
} as const;
