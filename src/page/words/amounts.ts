import { counted } from "./counted.ts";

/** What the page says of the amounts. */
export const amountWords = {
  toBuy: "To buy",
  columns: {
    fabric: "Fabric",
    buy: "Buy",
    least: "How sure",
    change: "Change",
    price: "Price",
    uncut: "Uncut",
  },
  states: {
    before: "as before",
    "so-far": "so far",
    proven: "proven",
    found: "best found",
    none: "not counted",
  },
  stateMeans: {
    before: "from before the last change; it is being worked out anew.",
    "so-far": "it is enough; the search for less goes on.",
    proven: "no smaller length the shop sells is enough for these pieces.",
    found: "it is enough; whether less would do is not known.",
    none: "something has to be put right first.",
  },
  nothingYet: "Nothing to buy yet.",
  changeMore: (amount: string) => `${amount} more`,
  changeLess: (amount: string) => `${amount} less`,
  nothingToBuy: "none",
  sum: (amount: string, price: string) => (price === "" ? amount : `${amount} · ${price}`),
  sumLabel: (count: number) => `All ${count}`,
  noChange: "no change in the fabric",
  unchanged: "no change",
  changes: (list: readonly string[]) => list.join(", "),
  why: (amount: string) => `Why ${amount}`,
  whyPiece: (count: number, size: string) => `${count} of ${size}`,
  whyStrips: (count: number, width: string, lengthwise: boolean) =>
    `${counted(count, lengthwise ? "lengthwise strip" : "strip", lengthwise ? "lengthwise strips" : "strips")} ${width} wide`,
  estimates:
    "All of this is for fabric as wide as it says under “The shop”. Measure the usable width of yours before you cut: narrower fabric can take more.",
} as const;
