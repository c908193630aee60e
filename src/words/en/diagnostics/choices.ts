import type {
  ChoicesFacts,
  InBlocksSaid,
  QuiltSizeFault,
  Restatable,
  WholeQuilt,
} from "../../../diagnostics/choices.ts";
import { nearest } from "../../../diagnostics/nearest.ts";
import { quote } from "../../../diagnostics/quote.ts";
import type { WordsOf } from "../../diagnostics.ts";
import { lengthWhy } from "../length-faults.ts";
import { borderName } from "../quilt/border-name.ts";
import { spoken } from "../quilt/spoken.ts";
import { unitName } from "../quilt/unit-names.ts";

const SIZES_HELP =
  "Write blocks across and down (4x5), a finished size with its measure (60 x 80 in), or a bed " +
  "(queen, queen drop 12 in, single drop 30 cm at sides and foot); several with commas between them, or semicolons.";

const WHOLE: Readonly<Record<WholeQuilt, string>> = {
  "printed-squares": "printed squares",
  seam: "seam allowance",
  oversize: "room for trimming",
  "straighten-sets": "straightening of each strip set",
  sashing: "sashing",
  "binding-width": "binding strips",
  "binding-extra": "binding to spare",
  "backing-overhang": "overhang of the backing",
  "wadding-overhang": "overhang of the wadding",
  "quilting-spacing": "distance between lines of quilting",
  "foundation-ease": "ease of patches on the foundation",
};

/** What a size is of. */
function restatable(what: Restatable): string {
  switch (what.of) {
    case "block":
      return `size of block ${what.block}, ${what.axis}`;
    case "column":
    case "line":
      return `${what.of} of block ${what.block}`;
    case "corner":
    case "centre":
    case "strip":
      return `${what.of} of ${unitName(what.unit)}`;
    case "patch":
      return `patch ${what.role}`;
    case "border":
      return borderName(what.border);
    case "border-ends":
      return `${borderName(what.border)}, top and bottom`;
    case "over-long":
      return `over-long allowance of ${borderName(what.border)}`;
    default:
      return WHOLE[what.of];
  }
}

/** What follows the size as typed. */
function sizeFault(fault: QuiltSizeFault): string {
  switch (fault.is) {
    case "none":
      return "is not a size of a quilt";
    case "blocks":
      return `is not from 1 to ${fault.most} blocks each way`;
    case "size":
      return `is not a size: ${lengthWhy(fault.fault)}`;
    case "not-above-nothing":
      return "is not more than nothing";
    case "no-bed":
      return "is no bed with a standard size";
    case "no-length":
      return `has no length after "${fault.of}": ${lengthWhy(fault.fault)}`;
    case "below-nothing":
      return `has a ${fault.of} below nothing`;
    case "no-side":
      return `drops at "${fault.found}", which is none of sides, left, right, foot, head and all round`;
  }
}

const inBlocks = ({ across, down, size }: InBlocksSaid): string => `${across}x${down} blocks, ${size}`;

export const choices: WordsOf<ChoicesFacts> = {
  sizeRestated: ({ what, before, after }) => ({
    message: `${restatable(what)}: ${spoken.length(before)} is now ${spoken.length(after)}.`,
    hint: "",
  }),

  sizeNotMet: ({ asked, target, taken, below, above }) => {
    const others = [
      below === null ? [] : [`smaller: ${inBlocks(below)}`],
      above === null ? [] : [`larger: ${inBlocks(above)}`],
    ].flat();
    return {
      message: `${quote(asked)} asks for ${target}; the nearest in whole blocks is ${inBlocks(taken)}.`,
      hint:
        `Nearest are ${others.join("; ")}. Ask for one of them in blocks, or give the quilt a plain outer border: ` +
        "one can be made to fit from half as wide to twice as wide as it is drawn.",
    };
  },

  arrangementUnknown: ({ found, known }) => {
    const near = nearest(found, known);
    const likely = near === null ? "" : `Did you mean \`${near}\`? `;
    return {
      message: `There is no arrangement ${quote(found)}.`,
      hint: `${likely}There are: ${known.join(", ")}.`,
    };
  },

  fatQuarterTooSmall: ({ fabric, piece, size }) => ({
    message: `${fabric} is cut from the bolt: ${piece ?? "a strip as long as the fabric is wide"} is more than a fat quarter of ${size} holds.`,
    hint: "",
  }),

  nothingToCompare: ({ found }) => {
    const why =
      found === "cut-list"
        ? "A cut list says what to cut, not how it is sewn"
        : "Every unit of this quilt can be made in one way only";
    return {
      message: `${why}: there is nothing to compare.`,
      hint: "Give a quilt file, with blocks and their units.",
    };
  },

  nothingToRestate: () => ({
    message: "A cut list holds sizes as cut, seams included: they cannot be restated for another ruler.",
    hint: "Give a quilt file, whose finished sizes can move to other marks, or leave `--ruler` out.",
  }),

  nothingToRepeat: () => ({
    message: "A cut list has no blocks to make more or fewer of.",
    hint: "Give a quilt file, with blocks and the rows they are set in, or leave `--sizes` out.",
  }),

  nothingToTurn: () => ({
    message: "A cut list has no blocks to turn.",
    hint: "Give a quilt file, with blocks and the rows they are set in.",
  }),

  noMotifs: () => ({
    message: "No block of this quilt has alike parts that can be turned by themselves.",
    hint: "Name them in the file, in a block: `motifs: 2 x 2` for so many across and down, or `motifs: g` for a code of its grid.",
  }),

  quiltSizeUnreadable: ({ found, fault }) => {
    const near = fault.is === "no-bed" ? fault.near : null;
    const likely = near === null ? "" : `Did you mean \`${near}\`? `;
    return { message: `${quote(found)} ${sizeFault(fault)}.`, hint: `${likely}${SIZES_HELP}` };
  },

  sizeOutOfReach: ({ asked, target, nearest }) => ({
    message: `${quote(asked)} asks for ${target}, which no number of these blocks comes to.`,
    hint: `The nearest is ${nearest === null ? "not to be had: see what `check` says of the file" : inBlocks(nearest)}.`,
  }),
};
