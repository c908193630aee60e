import type { ClothFacts, ClothFault, Unweighed } from "../../../diagnostics/cloth.ts";
import { quote } from "../../../diagnostics/quote.ts";
import type { WordsOf } from "../../diagnostics.ts";
import { lengthWhy } from "../length-faults.ts";

function why(fault: ClothFault): string {
  switch (fault.is) {
    case "no-size-sold":
      return `"${fault.text}" ist kein Maß, das verkauft wird, und keine zwei Längen`;
    case "no-cloth":
      return `"${fault.text}" ist kein Maß eines Stoffes`;
    case "trim":
      return `"${fault.text}" ist keine Länge zum Abschneiden: ${lengthWhy(fault.fault)}`;
    case "count":
      return `die Anzahl ist eine ganze Zahl von 1 bis ${fault.most}`;
    case "word":
      return `"${fault.word}" wird hier nicht verstanden`;
    default:
      return SHORT[fault.is];
  }
}

const SHORT = {
  "trim-below-nothing": "was abgeschnitten wird, kann nicht weniger als nichts sein",
  "too-long": "es ist zu lang für eine Zeile",
  "no-count": "es sagt nicht, wie viele es sind",
  torn: "ein Komma zwischen [ ] teilt es in zwei",
  "all-trimmed": "es bleibt nichts davon, wenn seine Kanten abgeschnitten sind",
} as const;

const UNWEIGHED: Readonly<Record<Unweighed, string>> = {
  "no-price": "der Stoff hat keinen Preis",
  "not-every-price": "nicht jede Zeile hat einen Preis",
  "two-currencies": "die Preise sind in zwei Währungen",
};

export const cloth: WordsOf<ClothFacts> = {
  clothUnreadable: ({ key, written, why: fault, parted }) => {
    const example =
      key === "have"
        ? "Zum Beispiel `fat quarter, 3`, `10 in squares, 12`, `2 1/2 in strips, 4` oder `21 x 18 in, 2, trim 1/4 in`."
        : "Zum Beispiel `fat quarter, 3,50 EUR`, `10 in squares, 0,90 EUR, at most 42` oder `2 1/2 in strips, 1,20 EUR`.";
    const usual = key === "have" ? "fat quarter, 3" : "fat quarter, 3,50 EUR";
    const hint = parted
      ? `Zwischen [ ] trennt ein Komma zwei Einträge: jede Zeile in Anführungszeichen setzen, \`["${fault.is === "torn" ? written : usual}"]\`, oder jede in eine eigene Zeile nach einem \`-\` schreiben.`
      : example;
    return { message: `${quote(written)} ist kein Stück Stoff: ${why(fault)}.`, hint };
  },

  mixUnpriced: ({ fabric, why: unweighed }) => ({
    message: `${quote(fabric)}: Was fertig zugeschnitten verkauft wird, lässt sich nicht gegen das Übrige abwägen: ${UNWEIGHED[unweighed]}.`,
    hint: "Jeder Zeile von `ready-cut` einen Preis geben und dem Stoff seinen `price`, alle in einer Währung; oder `yardage: no` schreiben.",
  }),
};
