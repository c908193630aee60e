import { nearest } from "../../../diagnostics/nearest.ts";
import type { ClassFacts, KitFault } from "../../../diagnostics/quilts/class.ts";
import { quote } from "../../../diagnostics/quote.ts";
import type { WordsOf } from "../../diagnostics.ts";

const HELP =
  "Write how many, of which size and in which colourway: `4 of 3x3`, `5 of lap in evening`, `6 in evening`, `12`.";

/** What follows the kits as typed. */
function kitFault(fault: KitFault): string {
  switch (fault.is) {
    case "no-count":
      return "does not begin with how many kits";
    case "count":
      return `asks for ${fault.found} kits; there are from 1 to ${fault.most}`;
    case "no-size":
      return "has no size after `of`";
    case "sizes":
      return "is more than one size";
    case "colourway":
      return `names the colourway ${quote(fault.found)}, which the class of the file has not`;
  }
}

export const classes: WordsOf<ClassFacts> = {
  kitUnreadable: ({ found, fault }) => {
    const near = fault.is === "colourway" ? nearest(fault.found, fault.known) : null;
    const known =
      fault.is !== "colourway"
        ? ""
        : fault.known.length === 0
          ? "Give it under `class: colourways:`. "
          : `There are: ${fault.known.join(", ")}. `;
    return {
      message: `${quote(found)} ${kitFault(fault)}.`,
      hint: `${near === null ? "" : `Did you mean \`${near}\`? `}${known}${HELP}`,
    };
  },

  kitsMissing: () => ({
    message: "The file tells no kits.",
    hint: 'Name them in it, `class: { kits: ["4 of 3x3", "5 of lap in evening"] }`, or on the command line: `--kits "4 of 3x3, 5 of lap"`.',
  }),

  kitsNeedQuilt: () => ({
    message: "A cut list has one size and its own fabrics: all kits of it are alike.",
    hint: "Say how many, for example `--kits 12`, or give a quilt file.",
  }),

  kitsTooMany: ({ found, most }) => ({
    message: `These are ${found} kits; at most ${most} are cut together.`,
    hint: "Plan them in several classes.",
  }),

  kitsInFile: ({ kits }) => ({
    message: `This is the plan of one quilt; the file has ${kits} kits of a class.`,
    hint: "`--kits file` plans those together.",
  }),

  swapDoesNothing: ({ fabric, colourway }) => ({
    message: `Colourway ${quote(colourway)} puts ${quote(fabric)} in its own place.`,
    hint: "Name another fabric of the file, or leave this one out.",
  }),
};
