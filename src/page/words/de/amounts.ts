import type { Wide } from "../../../words/index.ts";
import type { amountWords as english } from "../amounts.ts";

/** What the page says of the amounts, in German. */
export const amountWords: Wide<typeof english> = {
  toBuy: "Einkauf",
  columns: {
    fabric: "Stoff",
    buy: "Kaufen",
    least: "Wie sicher",
    change: "Änderung",
    price: "Preis",
    uncut: "Ungeschnitten",
  },
  states: {
    before: "wie vorher",
    "so-far": "bis jetzt",
    proven: "bewiesen",
    found: "bester gefundener",
    none: "nicht gerechnet",
  },
  stateMeans: {
    before: "von vor der letzten Änderung; wird gerade neu gerechnet.",
    "so-far": "reicht; nach weniger wird noch gesucht.",
    proven: "keine kleinere Länge, die der Laden verkauft, reicht für diese Teile.",
    found: "reicht; ob weniger reichen würde, ist nicht bekannt.",
    none: "zuerst ist etwas richtigzustellen.",
  },
  nothingYet: "Noch ist nichts zu kaufen.",
  changeMore: (amount) => `${amount} mehr`,
  changeLess: (amount) => `${amount} weniger`,
  nothingToBuy: "nichts",
  sum: (amount, price) => (price === "" ? amount : `${amount} · ${price}`),
  sumLabel: (count) => `Alle ${count}`,
  noChange: "keine Änderung beim Stoff",
  unchanged: "unverändert",
  changes: (list) => list.join(", "),
  why: (amount) => `Warum ${amount}`,
  whyPiece: (count, size) => `${count} Stück ${size}`,
  whyStrips: (count, width, lengthwise) =>
    `${count} ${lengthwise ? "Längsstreifen" : "Streifen"} ${width} breit`,
  estimates:
    "All das gilt für Stoff, der so breit ist, wie unter „Der Laden“ steht. Vor dem Schneiden die nutzbare Breite des eigenen Stoffes messen: Von schmalerem kann mehr nötig sein.",
};
