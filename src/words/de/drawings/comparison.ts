import type { Words } from "../../types.ts";
import { hours } from "../language.ts";

/** All the words that stand in the picture of ways of making side by side. */
export const comparison: Words["drawings"]["comparison"] = {
  title: (name) => `Nähweisen für ${name}`,
  legend:
    "Die Linie über den Balken ist der Quilt, wie die Datei ihn hat; ein dunkler Balken mit fetten Zahlen ist weniger. Balken " +
    "einer Art haben in allen Feldern einen Maßstab. Jedes Feld ist ein Plan des ganzen Quilts, in dem eine Art Einheit so " +
    "genäht wird.",
  description: (panels) => `${panels} Felder mit Balken nebeneinander, eines für jede Wahl.`,
  whole: "ganzer Quilt",
  filed: "wie in der Datei",
  best: "das Beste zusammen",
  unit: (unit, filed) => `${unit} (Datei: ${filed.join(", ")})`,
  not: "So nicht.",
  price: "Preis",
  cloth: "Stoff",
  time: "Zeit",
  cuts: "Schnitte",
  seams: "Nähte",
  bias: "Schrägkanten",
  area: (amount, inches) => `${amount.replace(".", ",")} ${inches ? "Quadratyard" : "m²"}`,
  hours,
};
