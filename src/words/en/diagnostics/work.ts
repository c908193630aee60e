import { nearest } from "../../../diagnostics/nearest.ts";
import { quote } from "../../../diagnostics/quote.ts";
import type { FactFault, WorkFacts } from "../../../diagnostics/work.ts";
import type { WordsOf } from "../../diagnostics.ts";
import { FACT_EXAMPLES } from "../fact-examples.ts";
import { lengthWhy } from "../length-faults.ts";

function factWhy(fault: FactFault): string {
  switch (fault.is) {
    case "no-strip-range":
      return `\`${fault.text}\` is no number of a strip, nor a range such as 3 to 7`;
    case "no-strip-number":
      return `\`${fault.text}\` is no number of a strip`;
    case "no-strips":
      return "it does not say which strips";
    case "no-piece-count":
      return `\`${fault.text}\` is no number of pieces`;
    case "no-cloth-length":
      return `\`${fault.text}\` is no length of cloth`;
    case "no-cloth-size":
      return `\`${fault.text}\` is no size of cloth`;
    case "nothing":
      return "it says nothing";
    case "too-long":
      return "it is too long";
    case "no-happening":
      return "it does not say what happened (cut, cut off, spoiled, wide, left, in hand)";
    case "bag-unlettered":
      return "a bag is told by its letter, as in `20 of A in the bag`";
    case "pieces-cut-off":
      return "pieces are cut, and strips are cut off";
    default:
      return lengthWhy(fault);
  }
}

const MEASURE_HINT = "Measure between the selvages; a length from its straight end.";

export const work: WordsOf<WorkFacts> = {
  factUnreadable: ({ written, fault }) => ({
    message: `${quote(written)} is not read: ${factWhy(fault)}.`,
    hint: FACT_EXAMPLES,
  }),

  workFabricUnknown: ({ found, fabrics }) => {
    const near = nearest(found, fabrics);
    const hint = near === null ? `Known here: ${fabrics.map(quote).join(", ")}.` : `Is ${quote(near)} meant?`;
    return { message: `No fabric of this plan is called ${quote(found)}.`, hint };
  },

  workFabricUnsaid: ({ said, fabrics }) => {
    const first = fabrics[0] ?? "ivory";
    return {
      message: `${quote(said)} does not say which fabric is meant. This plan has ${fabrics.map(quote).join(", ")}.`,
      hint: `Write the fabric and a colon before it: "${first}: ${said}".`,
    };
  },

  workLetterUnknown: ({ letter, letters }) => ({
    message: `There is no bag [${letter}] of this fabric; it has ${letters.map((each) => `[${each}]`).join(", ")}.`,
    hint: "The letters are those of the cutting diagram and of the bag labels.",
  }),

  workStripUnknown: ({ strip, cloth: name, fabric, last, begun }) => {
    const cloth = name === null ? fabric : `${name} of ${fabric}`;
    const there =
      last === 0
        ? "no strip of it is left to cut"
        : last === 1
          ? "it has strip 1 only"
          : `its strips are 1 to ${last}`;
    return {
      message: `There is no strip ${strip} of ${cloth}: ${there}.`,
      hint: begun
        ? "Numbers are those of the newest diagram. What was cut before is told by its bag: `2 of A spoiled`."
        : "Numbers are those of the cutting diagram.",
    };
  },

  workClothUnknown: ({ cloth, known }) => ({
    message:
      cloth === ""
        ? "This fabric is cut from several pieces, and none is named."
        : `${quote(cloth)} is no piece that this fabric is cut from.`,
    hint:
      known.length === 0
        ? "Nothing of it is left to cut."
        : `Name one of: ${known.map(quote).join(", ")}; for example \`strip 1 of ${known[0]} cut\`.`,
  }),

  workTooMany: ({ letter, count, most }) => ({
    message: `${count} of [${letter}] are said to be cut; the plan cuts ${most} in all.`,
    hint: "Say how many lie in the bag in all, those cut before included.",
  }),

  workTooFew: ({ letter, count, cut }) => ({
    message: `${count} of [${letter}] are said to be cut, but ${cut} are cut already by what is said before.`,
    hint: `Say how many there are in all. If some are lost: \`${cut - count} of ${letter} spoiled\`, or \`${count} of ${letter} in the bag\`.`,
  }),

  workNoneToSpoil: ({ letter, count, cut }) => ({
    message: `${count} of [${letter}] are said to be spoiled, but ${cut === 0 ? "none is" : cut === 1 ? "only 1 is" : `only ${cut} are`} cut.`,
    hint: "Say first what is cut: `cut to strip 3`. Of a strip with everything in it: `strip 4 spoiled`.",
  }),

  workMeasureWrong: ({ why }) => ({
    message: `${why}.`,
    hint: MEASURE_HINT,
  }),

  workWidthTooWide: () => ({
    message: "The usable width cannot be more than the width of the fabric with its selvages.",
    hint: MEASURE_HINT,
  }),

  workOtherPlan: ({ fabric, first }) => ({
    message: first
      ? `What is said here of ${quote(fabric)} was said of another plan: the quilt's file, or how it is planned, has changed since.`
      : `What is said here of ${quote(fabric)} was said of a plan that no longer is: something said before it has changed.`,
    hint: first
      ? "Take the quilt's file as it was when the cutting began, or plan the changed one into a folder of its own with what is cut under `have:`."
      : "Put back what was taken out before it, or take this entry out too and say it again of the newest diagram.",
  }),

  workNotOurs: ({ file, found }) => ({
    message: `${file} is no file of work that this program keeps: ${
      found.is === "no-group"
        ? "it is no group of keys"
        : `it does not begin with \`format: ${found.format}\``
    }. It is left as it is.`,
    hint: "Move or rename it, or name another folder with --out.",
  }),

  workNoPlan: ({ folder }) => ({
    message: `There is no plan.json in ${folder}: nothing tells which plan the cutting began with.`,
    hint: "Plan first (crossgrain plan FILE), or name the folder of the plan with --out.",
  }),

  workChangedMeanwhile: ({ file }) => ({
    message: `${file} was changed while this was worked out. Nothing was written.`,
    hint: "Say it again: the strip numbers may be others now.",
  }),

  workPlannedOtherwise: ({ folder, fabrics }) => ({
    message: `The plan in ${folder} is not the one that this command starts from: ${
      fabrics.length === 0
        ? "its fabrics are others"
        : `${fabrics.map(quote).join(", ")} ${fabrics.length === 1 ? "is" : "are"} cut otherwise there`
    }.`,
    hint: "Name the same quilt and the same options it was planned with, such as --kits 12 or --stash stash.csv; or plan again first.",
  }),

  workPlannedFixed: ({ option }) => ({
    message: `${option} is settled by the plan that the cutting began with, and cannot change in the middle.`,
    hint: "Leave the option out.",
  }),

  workLeftOut: ({ file }) => ({
    message: `What you said is kept in ${file}; the files of the plan are still those from before it.`,
    hint: "Once nothing is in the way, run crossgrain go-on FILE with nothing new said.",
  }),

  workSaidAgain: ({ fabric }) => ({
    message: `The same was said of ${quote(fabric)} last: it is taken as said once.`,
    hint: "If it has happened once more, to the newest diagram, say it with --again.",
  }),

  workNothingToUndo: ({ file }) => ({ message: `${file} says nothing that could be taken back.`, hint: "" }),

  workLeftAside: ({ file }) => ({
    message: `${file} says what is cut already. This plan is from the beginning and takes nothing of it into account.`,
    hint: "To go on from what is cut: crossgrain go-on FILE",
  }),
};
