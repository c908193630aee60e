import type { Missing, PlanningFacts, Wanting } from "../../../diagnostics/planning.ts";
import { formatLength } from "../../../length/format.ts";
import type { WordsOf } from "../../diagnostics.ts";
import { counted, list } from "../language.ts";
import { purposes } from "../quilt/purposes.ts";

const WAYS = { whole: "in one piece", joined: "joined", mixed: "partly joined" };

const missingSaid = (missing: readonly Missing[]): string =>
  missing.map(({ count, size, letter }) => `${count} of ${size} [${letter}]`).join(", ");

export const planning: WordsOf<PlanningFacts> = {
  pieceTooWide: ({ piece, ruler, fabric, found }) => {
    const help = [
      found.turnHelps ? "let it turn, so that its long side lies along the selvage (`turn: free`)" : "",
      found.lengthwiseHelps ? "cut it along the selvage (`cut: lengthwise`)" : "",
      "join it from strips (`join: straight`)",
      "or use a wider fabric",
    ].filter((text) => text !== "");
    return {
      message: `${purposes.piece(piece, ruler)} (${found.size}) does not fit ${fabric}: the usable width is ${found.usable}, ${found.over} too narrow.`,
      hint: `What would help: ${help.join(", ")}.`,
    };
  },

  pieceLongerThanBolt: ({ piece, ruler, fabric, found }) => ({
    message: `${purposes.piece(piece, ruler)} takes ${found.size} along the selvage of ${fabric}, more than a bolt of ${found.bolt} gives once its end is straightened.`,
    hint: "Say how long a bolt is where you buy it, for example `bolt: 15 yd`, or `bolt: endless`; or join the piece from strips (`join: straight`).",
  }),

  pieceJoined: ({ piece, ruler, fabric, lengths }) => {
    const [first, ...rest] = lengths.map(({ count, length }, i) =>
      i > 0
        ? `${count} of ${formatLength(length, ruler)}`
        : `${counted(count, "length", "lengths")} of ${formatLength(length, ruler)}`,
    );
    const one = lengths.length === 1 && lengths[0]?.count === 1;
    return {
      message: `${purposes.piece(piece, ruler)} in ${fabric} is longer than the fabric is wide: ${list([first ?? "", ...rest])} ${one ? "is" : "are"} cut from strips joined end to end.`,
      hint: "",
    };
  },

  joinCompared: ({ fabric, chosen, costs }) => {
    const ways = costs.map(({ way, buy, used }) => `${WAYS[way]}: buy ${buy} (${used} used)`).join("; ");
    const taken = { joined: "joined from strips", whole: "cut in one piece", mixed: "partly joined" }[chosen];
    return { message: `${fabric}: the long pieces are ${taken}. ${ways}.`, hint: "" };
  },

  noneFound: ({ fabric, missing, wanting }) => {
    const left = missing.length === 0 ? "" : ` The fullest attempt leaves ${missingSaid(missing)}.`;
    const enough =
      wanting === null
        ? ""
        : ` With ${wanting.more} more ${wanting.cloth}${wanting.more === 1 ? "" : "s"} it can be done.`;
    return {
      message: `${fabric}: no way was found to cut everything from this fabric, and it is not proved that there is none.${left}${enough}`,
      hint: "Search longer (`--thorough`), let more pieces turn, add fabric, or let the rest be bought from the bolt.",
    };
  },

  stockShort: ({ fabric, missing, wanting, stacked }) => {
    const plural = ({ cloth, more }: Wanting) => `${more} more ${cloth}${more === 1 ? "" : "s"}`;
    const short =
      wanting === null
        ? "the fabric to hand does not hold everything"
        : `${wanting.proven ? "" : "at most "}${plural(wanting)} ${
            wanting.more === 1 ? "is" : "are"
          } needed: ${wanting.toHand} to hand, ${wanting.toHand + wanting.more} hold everything`;
    return {
      message: `${fabric}: ${short}. Still to cut: ${missingSaid(missing)}.`,
      hint: stacked
        ? "With stacked subcuts (`--style strips-3`) all of it comes from this fabric. Or add fabric, or let the rest be bought from the bolt."
        : "Add fabric, or let the rest be bought from the bolt.",
    };
  },

  searchCutShort: ({ fabrics }) => ({
    message: `The search for ${fabrics.join(", ")} was ended by the clock: on another machine, or a less busy one, this plan may come out otherwise.`,
    hint: "Plan it again without --budget: the search is then counted instead of timed, and gives the same plan everywhere.",
  }),

  notProven: ({ fabric, used, least }) => ({
    message: `${fabric}: the plan uses ${used}; it is proved only that nothing under ${least} can do.`,
    hint: "Allow more time to look further.",
  }),
};
