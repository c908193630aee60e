import type {
  BlockSizesFault,
  BorderFault,
  CellPlace,
  DivideTold,
  OnPointFault,
  RowsFault,
  SumFault,
} from "../../../diagnostics/quilts/design-faults.ts";
import type { SpokenLength } from "../../../length/spoken.ts";
import type { Said } from "../../diagnostics.ts";
import { counted, either } from "../language.ts";
import { borderName } from "../quilt/border-name.ts";
import { spoken } from "../quilt/spoken.ts";
import { partName, unitName } from "../quilt/unit-names.ts";

const { length } = spoken;

/** Columns of a block are columns, its rows are lines. */
export const AXES = { across: "Spalten", down: "Zeilen" } as const;

const PAIRS = { sides: "Seiten", ends: "Enden" } as const;
const EDGES = { left: "linken", upper: "oberen" } as const;
const PLACES = { sash: "Der Zwischenstreifen", cornerstone: "Das Eckquadrat" } as const;

const by = ({ across, down }: { across: SpokenLength; down: SpokenLength }): string =>
  `${length(across)} mal ${length(down)}`;

const blocks = (count: number): string => counted(count, "Block", "Blöcke");

/** A cell of a drawing. */
export function cellPlace({ line, cell }: CellPlace): string {
  return `Zeile ${line}, Zelle ${cell}`;
}

/** Where to divide a unit of a block. */
export function divideTold({ unit, column, line, at, from }: DivideTold): string {
  return `„${unitName(unit)}“ in Spalte ${column}, Zeile ${line}, ${length(at)} von der ${EDGES[from]} Kante`;
}

/** Blocks that do not have the size of their neighbours. */
export function blockSizesFault(fault: BlockSizesFault): string {
  switch (fault.why) {
    case "row-heights":
      return `Block ${fault.block} ist hier ${length(fault.high)} hoch, aber diese Reihe beginnt mit einem Block von ${length(fault.begun)} Höhe.`;
    case "column-widths":
      return `Block ${fault.block} ist in Spalte ${fault.column} ${length(fault.wide)} breit, aber in der ersten Reihe sind es dort ${length(fault.first)}.`;
  }
}

/** Rows that differ. */
export function rowsFault(fault: RowsFault): string {
  switch (fault.why) {
    case "cells":
      return `Diese Zeile von Block ${fault.block} hat ${counted(fault.cells, "Zelle", "Zellen")}, aber seine erste hat ${fault.first}.`;
    case "lengths":
      return `Diese Reihe ist ${length(fault.long)} lang (${blocks(fault.blocks)}), aber die erste ist es ${length(fault.begun)} (${blocks(fault.first)}).`;
    case "counts":
      return `Diese Reihe hat ${blocks(fault.blocks)}, aber die erste hat ${fault.first}.`;
  }
}

/** Widths of a plain border that makes a pieced one come out. */
function coping({ side, end }: { side: SpokenLength; end: SpokenLength | null }): string {
  return end === null
    ? `${length(side)} breit`
    : `an den Seiten ${length(side)}, oben und unten ${length(end)} breit`;
}

function notFilled(fault: Extract<BorderFault, { why: "not-filled" }>): Said {
  const [one, many, dative] =
    fault.of === "block"
      ? (["Block", "Blöcke", "Blöcken"] as const)
      : (["Runde", "Runden", "Runden von Blöcken"] as const);
  const fits = fault.fits.map(({ count, long }) => `${counted(count, one, many)}, je ${length(long)} lang`);
  const plain =
    fault.coping === null
      ? ""
      : `; oder vorher einen einfachen Rand annähen, ${coping(fault.coping)}, was \`- { fabric: ..., width: fit }\` ausrechnet`;
  return {
    message: `${borderName(fault.border)}: Die ${PAIRS[fault.pair]} sind ${length(fault.long)} lang und werden von ${dative} zu ${length(fault.round)} nicht gefüllt.`,
    hint: `Es passen: ${either(fits)}${plain}.`,
  };
}

/** A border that cannot be sewn on as it is written. */
export function borderFault(fault: BorderFault): Said {
  const border = borderName(fault.border);
  switch (fault.why) {
    case "nothing-to-fit":
      return {
        message: `${border} hat \`width: fit\`, aber außerhalb davon keinen genähten Rand, an den er sich anpassen ließe.`,
        hint: "`fit` steht an einem einfachen Rand, dem weiter außen ein genähter (`block: ...`) folgt; sonst seine Breite schreiben, zum Beispiel `width: 2`.",
      };
    case "block-height":
      return {
        message: `${border} ist ${length(fault.width)} breit, aber Block ${fault.block} ist ${length(fault.high)} hoch.`,
        hint: "Beides gleich machen.",
      };
    case "beside-on-point":
      return {
        message: `${border}: An einer Mitte auf der Spitze geht keine Zahl von Blöcken genau auf.`,
        hint: "Vorher einen einfachen Rand annähen, mit dem die Summe aufgeht, `- { fabric: ..., width: fit }`, oder den Rand einfach lassen.",
      };
    case "not-filled":
      return notFilled(fault);
    case "mitre":
      return {
        message: `${border} lässt sich nicht auf Gehrung nähen.`,
        hint: "Eine Gehrung braucht einen einfachen Rand mit einer Breite rundum; einem genähten `cornerstones` geben.",
      };
    case "corners-no-square":
      return {
        message: `${border} ist so breit, wie kein Lineal zeigt, sodass kein Quadrat in seine Ecken passt.`,
        hint: "Seine `cornerstones` weglassen; die Ecken werden dann stumpf gestoßen.",
      };
    case "corner-block":
      return {
        message: `Die Ecken von ${border} sind ${by(fault.corners)} groß, aber Block ${fault.block} ist dort ${by(fault.is)} groß.`,
        hint: "Einen quadratischen Block nehmen, der so breit ist wie der Rand.",
      };
  }
}

/** Sizes of the file that contradict each other. */
export function sumFault(fault: SumFault): Said {
  switch (fault.why) {
    case "sizes-count":
      return {
        message: `Block ${fault.block} nennt ${counted(fault.sizes, "Größe", "Größen")} für ${fault.count} ${AXES[fault.axis]}.`,
        hint: "Für jede eine fertige Größe schreiben.",
      };
    case "sum":
      return {
        message: `Die ${AXES[fault.axis]} von Block ${fault.block} ergeben zusammen ${length(fault.together)}, aber seine Größe ist ${length(fault.size)}.`,
        hint: "Eine Größe ändern, oder `size` weglassen.",
      };
    case "filling":
      return {
        message: `${PLACES[fault.place]} braucht ${by(fault.needs)}, aber Block ${fault.block} ist dort ${by(fault.is)} groß.`,
        hint:
          fault.place === "sash"
            ? "Den Block des Zwischenstreifens aufrecht zeichnen: so breit wie der Zwischenstreifen und so hoch wie ein Block."
            : "Dem Block in beiden Richtungen die Breite der Zwischenstreifen geben.",
      };
    case "sashes-without-cornerstones":
      return {
        message: "Zwischenstreifen aus einem Block brauchen Eckquadrate, wo sie sich kreuzen.",
        hint: "`cornerstones:` mit einem Stoff oder einem Block hinzufügen.",
      };
  }
}

/** Blocks that cannot be set on point as they are drawn. */
export function onPointFault(fault: OnPointFault): Said {
  switch (fault.why) {
    case "block-size":
      return {
        message: `Block ${fault.block} misst ${spoken.size(fault.is)}; auf der Spitze ist jeder Block ein Quadrat von einer Größe (hier ${length(fault.side)}).`,
        hint: "Allen Blöcken der Anordnung eine Größe geben.",
      };
    case "rows-even":
      return {
        message: `Auf der Spitze sind ${fault.rows} Reihen gezeichnet; die letzte muss wieder eine volle sein.`,
        hint: "Reihen von 3, 2, 3 Blöcken zeichnen, oder 4, 3, 4, 3, 4.",
      };
    case "row-count":
      return {
        message: `Reihe ${fault.row} hat ${blocks(fault.blocks)}, aber auf der Spitze braucht sie ${fault.expected}.`,
        hint: "Jede zweite Reihe hat einen Block weniger; Dreiecke füllen ihre Enden.",
      };
    case "sashing":
      return {
        message: "Zwischenstreifen zwischen Blöcken auf der Spitze werden nicht ausgerechnet.",
        hint: "Den Streifen stattdessen an zwei Seiten jedes Blocks nähen (als Spalten und Zeilen seines Rasters), oder die Blöcke gerade setzen.",
      };
  }
}

/** Cuts through patches of one part. */
export function cutsThrough({ role, count }: { role: string; count: number }): string {
  return `${counted(count, "Schnitt", "Schnitten")} durch ${partName(role)}`;
}
