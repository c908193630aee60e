import { quote } from "../../../diagnostics/quote.ts";
import type { SizeTaken, StashFacts, StashFault } from "../../../diagnostics/stash.ts";
import type { WordsOf } from "../../diagnostics.ts";
import { lengthWhy } from "../length-faults.ts";

const TABLE = "For example: fabric,width,length,how many,note";

const WHY: Readonly<Record<string, string>> = {
  EACCES: "you have no permission to write in its folder",
  EPERM: "you have no permission to write in its folder",
  EROFS: "it lies on a disk that is read-only",
  ENOSPC: "the disk is full",
  EDQUOT: "your share of the disk is full",
  EFBIG: "the disk takes no file of that size",
  ENOENT: "its folder does not exist",
  EISDIR: "it is a folder",
};

function why(fault: StashFault): string {
  switch (fault.is) {
    case "no-fabric":
      return "it names no fabric";
    case "no-name":
      return "the fabric has no name that can be kept in a table";
    case "count": {
      const range = fault.least === 0 ? `up to ${fault.most}` : `from ${fault.least} to ${fault.most}`;
      return `how many is ${fault.found}; a whole number ${range} is expected`;
    }
    case "strips-no-length":
      return fault.example
        ? `"${fault.size}" says how wide the strips are; how long is wanted too, as 42 x 2 1/2 in`
        : "it says how wide its strips are, not how long";
    case "no-width":
      return "it has no width";
    case "no-length-given":
      return "it has no length";
    case "length":
      return `"${fault.text}" is not a length: ${lengthWhy(fault.fault)}`;
    case "size":
      return `"${fault.text}" is not a size: ${lengthWhy(fault.fault)}`;
    case "no-cloth":
      return `"${fault.text}" is no size of a cloth`;
  }
}

/** How it was taken, and how to say it otherwise. */
function taken(size: SizeTaken): string {
  const { across, along } = size;
  return size.as === "whole-width"
    ? `the whole usable width, ${across}, by ${along}. For another width write both: "40 x ${along}".`
    : `${across} across the fabric and ${along} along the selvage. A ${size.name} lies the other way: "${size.name}", or "${along} x ${across}".`;
}

export const stash: WordsOf<StashFacts> = {
  stashRowUnreadable: ({ problem }) => ({
    message: `This row is left out, and kept as it is: ${why(problem)}.`,
    hint: "A row has a fabric, its usable width and length with their measure, and how many: sky,21 in,18 in,3",
  }),

  stashNoHeadings: ({ found }) => {
    const seen = found.filter((cell) => cell.trim() !== "");
    const what = seen.length === 0 ? "nothing" : seen.slice(0, 6).map(quote).join(", ");
    return {
      message: `The first row should name the columns fabric, width and length; it has ${what}.`,
      hint: TABLE,
    };
  },

  stashUnclosed: () => ({
    message: "A quote that is opened in or before this line is never closed. Nothing was read or changed.",
    hint: 'A cell that starts with a quote ends with one; an inch mark inside it is written twice: "2 1/2"" wide"',
  }),

  stashMeasureTaken: ({ file, measure }) => ({
    message: `${file}: numbers without a measure are read as ${measure}. A heading such as \`width (${measure})\` settles it.`,
    hint: "",
  }),

  stashLacks: ({ file, lacking }) => ({
    message: `${file} does not hold what this plan uses: ${lacking.map(({ count, fabric, size }) => `${count} of ${fabric} ${size}`).join("; ")}. Nothing was changed.`,
    hint: "Has it been taken already? Look with `crossgrain stash show`, or plan again with --stash.",
  }),

  stashNearName: ({ fabric, inStash }) => ({
    message: `The stash has no ${quote(fabric)}, but it has ${quote(inStash)}. Fabric is used where the names are the same.`,
    hint: "",
  }),

  stashClothUnreadable: ({ problem }) => ({
    message: `This cannot be added to the stash: ${why(problem)}.`,
    hint: 'For example: crossgrain stash add "sky" "21 x 18 in" --count 3',
  }),

  stashBusy: ({ file, lock }) => ({
    message: `${file} is being changed by another run of this program. Nothing was changed.`,
    hint: `Try again in a moment. If no other run is going on, remove ${lock}.`,
  }),

  stashEdited: ({ file }) => ({
    message: `${file} is being saved by another program again and again. Nothing was changed.`,
    hint: "Close it in the spreadsheet, or wait until it is saved, and run the command again.",
  }),

  stashNothingToUndo: ({ file }) => ({
    message: `No change of ${file} is kept that could be taken back.`,
    hint: "`crossgrain stash add` and `stash take` keep the table before them; a table edited by hand is not kept.",
  }),

  stashSizeTaken: ({ size, taken: as }) => ({
    message: `${quote(size)} is taken as ${taken(as)}`,
    hint: "",
  }),

  stashNotWritten: ({ file, systemCode }) => ({
    message: `${file} was not changed: ${WHY[systemCode] ?? `the system says ${systemCode}`}. It stands as it was.`,
    hint: "Copy it to a folder you can write in, or make room, and run the command again.",
  }),

  planUnreadable: ({ file, found }) => ({
    message: `${file} is not a plan written by this program: ${
      found === "no-json" ? "it is not JSON" : "its first lines say something else"
    }.`,
    hint: "Name the plan.json that `crossgrain plan FILE --stash STASH.csv` writes into its folder.",
  }),

  stashFileMissing: ({ file }) => ({
    message: `There is no stash file ${file}.`,
    hint: 'Name it with --stash, or start one: crossgrain stash add "sky" "21 x 18 in" --count 3',
  }),
};
