import type { ClothFacts } from "../../../diagnostics/cloth.ts";
import { quote } from "../../../diagnostics/quote.ts";
import type { WordsOf } from "../../diagnostics.ts";

export const cloth: WordsOf<ClothFacts> = {
  clothUnreadable: ({ key, written, why, parted }) => {
    const example =
      key === "have"
        ? "Zum Beispiel `fat quarter, 3`, `10 in squares, 12`, `2 1/2 in strips, 4` oder `21 x 18 in, 2, trim 1/4 in`."
        : "Zum Beispiel `fat quarter, 3,50 EUR`, `10 in squares, 0,90 EUR, at most 42` oder `2 1/2 in strips, 1,20 EUR`.";
    const hint = parted
      ? `Zwischen [ ] trennt ein Komma zwei Einträge: jede Zeile in Anführungszeichen setzen, \`["${key === "have" ? "fat quarter, 3" : "fat quarter, 3,50 EUR"}"]\`, oder jede in eine eigene Zeile nach einem \`-\` schreiben.`
      : example;
    return { message: `${quote(written)} ist kein Stück Stoff: ${why}.`, hint };
  },

  mixUnpriced: ({ fabric, why }) => ({
    message: `${quote(fabric)}: Was fertig zugeschnitten verkauft wird, lässt sich nicht gegen das Übrige abwägen: ${why}.`,
    hint: "Jeder Zeile von `ready-cut` einen Preis geben und dem Stoff seinen `price`, alle in einer Währung; oder `yardage: no` schreiben.",
  }),
};
