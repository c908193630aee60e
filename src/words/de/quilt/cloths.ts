import { clothFacts } from "../../../stock/index.ts";

/** Sizes of the trade that have German names of their own; the others are called as in English. */
const TRADE: Readonly<Record<string, string>> = {
  "fat quarter": "Fat Quarter",
  "metric fat quarter": "metrisches Fat Quarter",
  "fat eighth": "Fat Eighth",
  "long quarter": "Long Quarter",
};

const KINDS = { bolt: "Ballen", rest: "Rest", square: "Quadrat", strip: "Streifen", piece: "Stück" } as const;
const FROM = { shop: "gekauft", stash: "aus dem Vorrat" } as const;

/** A size that was printed before the language was known. */
const inGerman = (size: string): string => size.replace(/ in(?=$| x )/g, " Zoll");

/** A kind of cloth in a fixed size by itself, whether bought or in hand. */
export function bareCloth(name: string): string {
  const { is, size, number } = clothFacts(name);
  const again = number === 1 ? "" : ` (${number})`;
  if (is === "length") return `Rest des Ballens${again}`;
  if (is === "shorter-length") return `kürzere Länge${again}`;
  if (is === "trade") return `${TRADE[size] ?? size}${again}`;
  return `${KINDS[is]}${size === "" ? "" : ` ${inGerman(size)}`}${again}`;
}

/** The same, with where it comes from. */
export function clothName(name: string): string {
  const { from } = clothFacts(name);
  return from === null ? bareCloth(name) : `${bareCloth(name)} (${FROM[from]})`;
}
