import type { Words } from "../../types.ts";
import { hours } from "../language.ts";

const COLUMNS = {
  way: "Art",
  cost: "Preis",
  strips: "Streifen",
  subcuts: "Unterteilungen",
  apart: "Trennschnitte",
  seams: "Nähte",
  length: "Genäht",
  bias: "Schrägkanten",
  trims: "Beschnitten",
  corners: "Ecken",
  print: "Druck",
  time: "Zeit",
} as const;

/** The words of the comparison of ways of making. */
export const compare: Words["compare"] = {
  title: (name) => `Nähweisen für ${name}`,
  bookTitle: "Nähweisen im Vergleich",
  about:
    "Jede Zeile ist ein Plan des ganzen Quilts, in dem eine Art Einheit so genäht wird, alles andere wie in der Datei.\n" +
    "Ein Stern steht bei der Nähweise der Datei.",
  toBuy: "Stoffbedarf",
  work: "Arbeit",
  filed: "wie in der Datei",
  mark: "*",
  unit: (unit, count) => `${unit} (${count})`,
  unproven: "~",
  notProven:
    "~ das Wenigste, was in der Zeit gefunden wurde; weniger ist nicht ausgeschlossen (--budget gibt mehr Zeit)",
  alike: (said) => `Bei jeder Nähweise gleich: ${said}`,
  allAlike: (said) => `Der Stoffbedarf ist bei jeder Nähweise gleich: ${said}.`,
  columns: COLUMNS,
  explained: {
    [COLUMNS.subcuts]:
      "Unterteilungen: Schnitte nach den Streifen, Abschnitte von Streifensets und Dreiecke inbegriffen.",
    [COLUMNS.apart]:
      "Trennschnitte: Schnitte nach dem Nähen, mit denen Einheiten getrennt oder Ecken abgeschnitten werden.",
    [COLUMNS.bias]:
      "Schrägkanten: Schnittkanten schräg zum Fadenlauf, die sich dehnen, bis sie vernäht sind.",
    [COLUMNS.trims]: "Beschnitten: Einheiten, die nach dem Nähen auf Maß geschnitten werden.",
    [COLUMNS.corners]: "Ecken: Stoff, der nach dem Nähen oder neben einer Schablone abgeschnitten wird.",
    [COLUMNS.print]:
      "Druck: ob jeder Druck mit oben und unten richtig steht; „Überzahl“: weil mehr Einheiten genäht werden als nötig.",
  },
  direction: { none: "", kept: "richtig", spares: "Überzahl" },
  bonusTitle:
    "Aus den abgeschnittenen Ecken lässt sich noch etwas nähen, mit einer zweiten Naht vor dem Schneiden (Maße vor dem Einnähen):",
  bonusOf: (count, kind, size) => `${count} ${kind}, ${size}`,
  bonus: (way, said) => `  ${way}: ${said}`,
  notThisWay: "So nicht:",
  impossible: (way, why) => `  ${way}: ${why}`,
  best: "Das Beste zusammen; um es zu planen, in die Datei schreiben:",
  bestAsFiled: "Das Beste zusammen ist, wie die Datei es hat.",
  buys: (said) => `Stoff: ${said}`,
  instead: (fabric, now, before) => `${fabric} ${now} statt ${before}`,
  saves: (amount) => `${amount} weniger`,
  against: (said) => `Gegenüber der Datei: ${said}.`,
  proved: (of, measure) =>
    measure === "cost"
      ? `Bewiesen: Keine der ${of} Verbindungen kostet weniger.`
      : `Bewiesen: Keine der ${of} Verbindungen braucht weniger Stoff.`,
  notProved: (tried, of, bound) =>
    `Die beste von ${tried} durchgerechneten Verbindungen, von ${of}; eine bessere ist nicht ausgeschlossen${bound}.`,
  atLeast: (amount) => ` (keine kostet weniger als ${amount})`,
  hours,
  figures:
    "Der Zuschnitt gilt für den ganzen Quilt, das Nähen für seine Einheiten; sie zusammenzunähen ist bei jeder Nähweise gleich.",
  minutes: (said) => `Die Zeit ist eine Schätzung aus diesen Minuten für jeden Schritt: ${said}.`,
  change:
    "Die eigenen sind andere? In die Datei schreiben (`minutes: { seam: 0.5, trim: 1 }`) oder --minutes seam=0.5,trim=1 angeben",
};
