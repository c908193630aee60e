import type { FoundationFacts } from "../../../diagnostics/foundation.ts";
import type { WordsOf } from "../../diagnostics.ts";
import { either } from "../language.ts";
import { suggest } from "./suggest.ts";

export const foundation: WordsOf<FoundationFacts> = {
  foundationAllowance: ({ squares, seam, needed }) => ({
    message: `Die Unterlage reicht ${squares} über die äußerste Nahtlinie hinaus; die Nahtzugabe beträgt ${seam}.`,
    hint: `Dazu \`allowance: ${needed}\` schreiben, in gedruckten Kästchen gezählt.`,
  }),

  foundationBlock: ({ message, hint }) => ({ message, hint }),

  foundationChoice: ({ message, hint }) => ({ message, hint }),

  foundationGrid: ({ found, why }) => ({
    message: `Für die gedruckten Kästchen steht \`${found}\`; ${why}.`,
    hint: "Zum Beispiel `grid: 1 in`, `grid: 1/4 in` oder `grid: 2 cm`.",
  }),

  foundationMarks: ({ block, size, mark }) => ({
    message: `In Block ${block} misst eine Einheit, die nicht auf der Unterlage genäht wird, mit Nahtzugabe ${size}: Dort ist kein Strich eines Lineals mit ${mark}, und gedruckte Linien geben nicht nach.`,
    hint: "Ein Lineal in der Maßeinheit der gedruckten Kästchen nehmen (`ruler: 1/8 in`, `ruler: 1 mm`), oder Kästchen in der Maßeinheit des Lineals.",
  }),

  foundationMethod: ({ unit, method }) => ({
    message: `${unit}: auf der Rasterunterlage genäht, nicht ${method}.`,
    hint: "Um die Methode zu behalten, die Blöcke nennen, die auf der Unterlage genäht werden: `blocks: [...]`.",
  }),

  foundationOffGrid: ({ what, squares, nearest, halves }) => ({
    message: `${what} misst ${squares}: Die Nähte lägen nicht auf den gedruckten Linien.`,
    hint: `Die nächsten passenden Maße: ${either(nearest.sizes)}${
      nearest.blocks.length === 0 ? "" : `; für den ganzen Block ${either(nearest.blocks)}`
    }.${halves ? "" : " Darf eine Naht in der Mitte zwischen zwei Linien liegen, `half-lines: true` schreiben."}`,
  }),

  foundationSeam: ({ seam, squares, fits }) => ({
    message: `Auf einer Linie gefaltet, liegt die Naht eine Nahtzugabe vom Falz: ${seam} sind ${squares}, sie läge also neben den gedruckten Linien.`,
    hint: `Kästchen von ${either(fits)} nehmen, oder Patch für Patch nähen: \`way: pieced\`.`,
  }),

  foundationUnit: ({ unit, reason, hint }) => ({
    message: `${unit} lässt sich nicht auf einer Unterlage nähen: ${reason}`,
    hint,
  }),

  foundationUnknown: ({ what, word, known }) => ({
    message: `Unbekannt (${what}): \`${word}\`.`,
    hint: suggest(word, known),
  }),
};
