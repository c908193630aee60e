import type { ClothFacts, ClothFault, Unweighed } from "../../../diagnostics/cloth.ts";
import { quote } from "../../../diagnostics/quote.ts";
import type { WordsOf } from "../../diagnostics.ts";
import { lengthWhy } from "../length-faults.ts";

function why(fault: ClothFault): string {
  switch (fault.is) {
    case "no-size-sold":
      return `"${fault.text}" is no size that is sold, and not two lengths`;
    case "no-cloth":
      return `"${fault.text}" is no size of a cloth`;
    case "trim":
      return `"${fault.text}" is not a length to trim off: ${lengthWhy(fault.fault)}`;
    case "count":
      return `how many is a whole number from 1 to ${fault.most}`;
    case "word":
      return `"${fault.word}" is not understood here`;
    default:
      return SHORT[fault.is];
  }
}

const SHORT = {
  "trim-below-nothing": "what is trimmed off cannot be less than nothing",
  "too-long": "it is too long for one line",
  "no-count": "it does not say how many there are",
  torn: "a comma between [ ] parts it in two",
  "all-trimmed": "nothing is left of it when its edges are trimmed",
} as const;

const UNWEIGHED: Readonly<Record<Unweighed, string>> = {
  "no-price": "the fabric has no price",
  "not-every-price": "not every line has a price",
  "two-currencies": "the prices are in two currencies",
};

export const cloth: WordsOf<ClothFacts> = {
  clothUnreadable: ({ key, written, why: fault, parted }) => {
    const example =
      key === "have"
        ? "For example `fat quarter, 3`, `10 in squares, 12`, `2 1/2 in strips, 4` or `21 x 18 in, 2, trim 1/4 in`."
        : "For example `fat quarter, $3.50`, `10 in squares, $0.90, at most 42` or `2 1/2 in strips, $1.20`.";
    const usual = key === "have" ? "fat quarter, 3" : "fat quarter, $3.50";
    const hint = parted
      ? `Between [ ] a comma parts two entries: put quotes about each line, \`["${fault.is === "torn" ? written : usual}"]\`, or write each on a line of its own after a \`-\`.`
      : example;
    return { message: `${quote(written)} is no piece of fabric: ${why(fault)}.`, hint };
  },

  mixUnpriced: ({ fabric, why: unweighed }) => ({
    message: `${quote(fabric)}: what is sold ready cut cannot be weighed against the rest: ${UNWEIGHED[unweighed]}.`,
    hint: "Give each line of `ready-cut` a price and the fabric its `price`, all in one currency; or say `yardage: no`.",
  }),
};
