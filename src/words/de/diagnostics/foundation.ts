import type { FoundationClash, FoundationFacts } from "../../../diagnostics/foundation.ts";
import type { WordsOf } from "../../diagnostics.ts";
import { counted, either } from "../language.ts";
import { suggest } from "./suggest.ts";

const PER: Readonly<Record<string, string>> = {
  unit: "keine Einheit",
  motif: "kein Motiv",
  block: "kein Block",
  row: "keine Reihe",
};

/** Counted in printed squares: `3 Kästchen`, `3/4 eines Kästchens`. */
function squaresSaid(count: string): string {
  return count.includes("/") && !count.includes(" ") ? `${count} eines Kästchens` : `${count} Kästchen`;
}

function clash(fault: FoundationClash): { message: string; hint: string } {
  if (fault.is === "fusible-torn")
    return {
      message: "Eine aufbügelbare Unterlage klebt an den Patches und lässt sich nicht abreißen.",
      hint: "`after: left in` schreiben, oder `hold: sew-in`.",
    };
  if (fault.is === "folded-allowance")
    return {
      message:
        "Gefaltet liegen die Teile Kante an Kante bis zum Rand der Unterlage: Darüber hinaus liegt nichts.",
      hint: "`allowance` weglassen.",
    };
  const pieced = fault.way === "pieced";
  const meant = pieced
    ? "Patch für Patch genäht, kommt auf ein Stück Unterlage eine Einheit, ein Motiv oder ein Block"
    : "Gefaltet kommt auf ein Stück Unterlage ein Block oder eine Reihe von Blöcken";
  return {
    message: `${meant}, ${PER[fault.per] ?? fault.per}.`,
    hint: `${either(fault.allowed.map((per) => `\`per: ${per}\``))} schreiben, oder \`way: ${pieced ? "folded" : "pieced"}\`.`,
  };
}

export const foundation: WordsOf<FoundationFacts> = {
  foundationAllowance: ({ squares, side, seam, needed }) => ({
    message: `Die Unterlage reicht ${counted(squares, "Kästchen", "Kästchen")} von ${side} über die äußerste Nahtlinie hinaus; die Nahtzugabe beträgt ${seam}.`,
    hint: `Dazu \`allowance: ${needed}\` schreiben, in gedruckten Kästchen gezählt.`,
  }),

  foundationBlock: ({ message, hint }) => ({ message, hint }),

  foundationChoice: clash,

  foundationGrid: ({ found }) => ({
    message: `Für die gedruckten Kästchen steht \`${found}\`; kein Lineal hat einen Strich für ihre Linien.`,
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
    message: `Auf einer Linie gefaltet, liegt die Naht eine Nahtzugabe vom Falz: ${seam} sind ${squaresSaid(squares)}, sie läge also neben den gedruckten Linien.`,
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
