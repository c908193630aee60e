import { nearest } from "../../../diagnostics/nearest.ts";
import type { ClassFacts, KitFault } from "../../../diagnostics/quilts/class.ts";
import { quote } from "../../../diagnostics/quote.ts";
import type { WordsOf } from "../../diagnostics.ts";

const HELP =
  "Anzahl, nach `of` die Größe und nach `in` die Farbstellung schreiben: `4 of 3x3`, `5 of lap in evening`, `6 in evening`, `12`.";

/** Was auf die Packungen folgt, wie sie geschrieben stehen. */
function kitFault(fault: KitFault): string {
  switch (fault.is) {
    case "no-count":
      return "beginnt nicht mit der Zahl der Packungen";
    case "count":
      return `verlangt ${fault.found} Packungen; möglich sind 1 bis ${fault.most}`;
    case "no-size":
      return "hat nach `of` keine Größe";
    case "sizes":
      return "ist mehr als eine Größe";
    case "colourway":
      return `nennt die Farbstellung ${quote(fault.found)}, die der Kurs der Datei nicht hat`;
  }
}

export const classes: WordsOf<ClassFacts> = {
  kitUnreadable: ({ found, fault }) => {
    const near = fault.is === "colourway" ? nearest(fault.found, fault.known) : null;
    const known =
      fault.is !== "colourway"
        ? ""
        : fault.known.length === 0
          ? "Sie wird unter `class: colourways:` angegeben. "
          : `Es gibt: ${fault.known.join(", ")}. `;
    return {
      message: `${quote(found)} ${kitFault(fault)}.`,
      hint: `${near === null ? "" : `Gemeint ist vielleicht \`${near}\`. `}${known}${HELP}`,
    };
  },

  kitsMissing: () => ({
    message: "Die Datei nennt keine Materialpackungen.",
    hint: 'Sie stehen in der Datei, `class: { kits: ["4 of 3x3", "5 of lap in evening"] }`, oder auf der Befehlszeile: `--kits "4 of 3x3, 5 of lap"`.',
  }),

  kitsNeedQuilt: () => ({
    message: "Eine Zuschnittliste hat eine Größe und ihre eigenen Stoffe: alle ihre Packungen sind gleich.",
    hint: "Ihre Zahl nennen, zum Beispiel `--kits 12`, oder eine Quiltdatei angeben.",
  }),

  kitsTooMany: ({ found, most }) => ({
    message: `Das sind ${found} Packungen; höchstens ${most} werden zusammen zugeschnitten.`,
    hint: "Auf mehrere Kurse verteilen.",
  }),

  kitsInFile: ({ kits }) => ({
    message: `Geplant ist ein Quilt; die Datei hat ${kits} Materialpackungen für einen Kurs.`,
    hint: "`--kits file` plant diese zusammen.",
  }),

  swapDoesNothing: ({ fabric, colourway }) => ({
    message: `Die Farbstellung ${quote(colourway)} setzt ${quote(fabric)} an die eigene Stelle.`,
    hint: "Einen anderen Stoff der Datei nennen oder diesen weglassen.",
  }),
};
