import type { ClothFacts } from "../../../diagnostics/cloth.ts";
import { quote } from "../../../diagnostics/quote.ts";
import type { WordsOf } from "../../diagnostics.ts";

export const cloth: WordsOf<ClothFacts> = {
  clothUnreadable: ({ key, written, why, parted }) => {
    const example =
      key === "have"
        ? "For example `fat quarter, 3`, `10 in squares, 12`, `2 1/2 in strips, 4` or `21 x 18 in, 2, trim 1/4 in`."
        : "For example `fat quarter, $3.50`, `10 in squares, $0.90, at most 42` or `2 1/2 in strips, $1.20`.";
    const hint = parted
      ? `Between [ ] a comma parts two entries: put quotes about each line, \`["${key === "have" ? "fat quarter, 3" : "fat quarter, $3.50"}"]\`, or write each on a line of its own after a \`-\`.`
      : example;
    return { message: `${quote(written)} is no piece of fabric: ${why}.`, hint };
  },

  mixUnpriced: ({ fabric, why }) => ({
    message: `${quote(fabric)}: what is sold ready cut cannot be weighed against the rest: ${why}.`,
    hint: "Give each line of `ready-cut` a price and the fabric its `price`, all in one currency; or say `yardage: no`.",
  }),
};
