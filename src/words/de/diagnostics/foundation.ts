import type { FoundationArea, FoundationBlockFault } from "../../../diagnostics/quilts/design-faults.ts";
import type { FoundationClash, FoundationFacts, OffGrid } from "../../../diagnostics/quilts/foundation.ts";
import type { Said, WordsOf } from "../../diagnostics.ts";
import { counted, either } from "../language.ts";
import { spoken } from "../quilt/spoken.ts";
import { methodName, unitName, unitTold } from "../quilt/unit-names.ts";
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

const areaName = (area: FoundationArea): string =>
  "block" in area ? `Block ${area.block}` : `Reihe ${area.row}`;

const LINES = { column: "Spalte", row: "Reihe" } as const;

/** Counted in printed squares, as it is written. */
const squares = (count: string): string => `${count} Kästchen`;

function offGrid(off: OffGrid): string {
  if (off.of === "unit") {
    const seam = off.seam === null ? "" : `, mit einer Naht bei ${squares(off.seam)}`;
    return `${unitTold(off)}, misst ${off.across} x ${squares(off.down)}${seam}`;
  }
  return `${areaName(off.area)}: ${LINES[off.of]} ${off.number} der Teile, fertig ${spoken.length(off.finished)}, misst ${squares(off.squares)}`;
}

const FOLDED = "`way: pieced` verwenden, oder die Blöcke nennen, die darauf genäht werden: `blocks: [...]`.";

function foundationBlockFault(fault: FoundationBlockFault): Said {
  switch (fault.why) {
    case "nothing":
      return {
        message: "Auf der Unterlage wird nichts genäht.",
        hint:
          fault.way === "pieced"
            ? "Die Blöcke sind einzelne Patches: `foundation` weglassen, oder Blöcke mit mehr als einem Patch nennen."
            : "Durch keinen Block läuft eine Naht ganz hindurch, also lässt sich keine Linie falten: `way: pieced` verwenden.",
      };
    case "row-setting":
      return {
        message:
          "Eine Reihe von Blöcken passt nur bei gerader Anordnung auf ein Stück Unterlage, nicht gedreht und ohne Zwischenstreifen.",
        hint: "`per: block` schreiben.",
      };
    case "row-with-other":
      return {
        message: `In Reihe ${fault.row} steht Block ${fault.block}, der nicht auf der Unterlage genäht wird.`,
        hint: "`per: block` schreiben, oder auch diesen Block nennen.",
      };
    case "off-squares":
      return {
        message: `${areaName(fault.area)}: Die Teile ergeben keine ganzen gedruckten Kästchen.`,
        hint: FOLDED,
      };
    case "no-line":
      return {
        message: `${areaName(fault.area)}: Keine Naht läuft ganz hindurch, also lässt sich keine Linie falten.`,
        hint: FOLDED,
      };
    case "not-one-piece":
      return {
        message: `Block ${fault.block} lässt sich nicht auf einem Stück Unterlage nähen: Seine Patches lassen sich nicht mit geraden Nähten einer nach dem anderen annähen.`,
        hint: "`per: motif` schreiben, für die größten Teile, bei denen das geht, oder `way: folded` für fertige Teile, Kante an Kante gelegt.",
      };
  }
}

export const foundation: WordsOf<FoundationFacts> = {
  foundationAllowance: ({ squares, side, seam, needed }) => ({
    message: `Die Unterlage reicht ${counted(squares, "Kästchen", "Kästchen")} von ${side} über die äußerste Nahtlinie hinaus; die Nahtzugabe beträgt ${seam}.`,
    hint: `Dazu \`allowance: ${needed}\` schreiben, in gedruckten Kästchen gezählt.`,
  }),

  foundationBlock: ({ fault }) => foundationBlockFault(fault),

  foundationChoice: clash,

  foundationGrid: ({ found }) => ({
    message: `Für die gedruckten Kästchen steht \`${found}\`; kein Lineal hat einen Strich für ihre Linien.`,
    hint: "Zum Beispiel `grid: 1 in`, `grid: 1/4 in` oder `grid: 2 cm`.",
  }),

  foundationMarks: ({ block, size, mark }) => ({
    message: `In Block ${block} misst eine Einheit, die nicht auf der Unterlage genäht wird, mit Nahtzugabe ${spoken.size(size)}: Dort ist kein Strich eines Lineals mit ${mark}, und gedruckte Linien geben nicht nach.`,
    hint: "Ein Lineal in der Maßeinheit der gedruckten Kästchen nehmen (`ruler: 1/8 in`, `ruler: 1 mm`), oder Kästchen in der Maßeinheit des Lineals.",
  }),

  foundationMethod: ({ unit, method }) => ({
    message: `${unitName(unit)}: auf der Rasterunterlage genäht, nicht ${methodName(method)}.`,
    hint: "Um die Methode zu behalten, die Blöcke nennen, die auf der Unterlage genäht werden: `blocks: [...]`.",
  }),

  foundationOffGrid: ({ off, nearest: { sizes, lengths: sides, blocks }, halves }) => ({
    message: `${offGrid(off)}: Die Nähte lägen nicht auf den gedruckten Linien.`,
    hint: `Die nächsten passenden Maße: ${either([...sizes.map(spoken.size), ...sides.map(spoken.length)])}${
      blocks.length === 0 ? "" : `; für den ganzen Block ${either(blocks.map(spoken.size))}`
    }.${halves ? "" : " Darf eine Naht in der Mitte zwischen zwei Linien liegen, `half-lines: true` schreiben."}`,
  }),

  foundationSeam: ({ seam, squares, fits }) => ({
    message: `Auf einer Linie gefaltet, liegt die Naht eine Nahtzugabe vom Falz: ${seam} sind ${squaresSaid(squares)}, sie läge also neben den gedruckten Linien.`,
    hint: `Kästchen von ${either(fits)} nehmen, oder Patch für Patch nähen: \`way: pieced\`.`,
  }),

  foundationUnit: ({ unit, why }) => ({
    message: `${unitName(unit)} lässt sich nicht auf einer Unterlage nähen: ${
      why === "off-corners"
        ? "Die Nähte laufen nicht von Ecke zu Ecke gedruckter Kästchen."
        : "Die Patches lassen sich nicht mit geraden Nähten einer nach dem anderen annähen."
    }`,
    hint:
      why === "off-corners"
        ? "Die Blöcke, die darauf genäht werden, ohne diesen nennen: `blocks: [...]`."
        : "Als kleinere Zellen mit je einer Einheit zeichnen, oder die Blöcke nennen, die darauf genäht werden: `blocks: [...]`.",
  }),

  foundationUnknown: ({ what, word, known }) => ({
    message: `Unbekannt (${what}): \`${word}\`.`,
    hint: suggest(word, known),
  }),
};
