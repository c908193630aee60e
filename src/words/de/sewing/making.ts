import type { Words } from "../../types.ts";
import { bladeCautions, sewingCautions } from "../cautions.ts";
import { counted, figure, list, plural, rangeOrList } from "../language.ts";

/** Every word the making instructions use besides those of the cutting. */

const BY = { hand: "von Hand", machine: "mit der Maschine", "long-arm": "im Rahmen" } as const;

/** A side as an adjective: of the unit that lies there. */
const SIDES: Readonly<Record<string, string>> = {
  left: "linke",
  right: "rechte",
  upper: "obere",
  lower: "untere",
  top: "obere",
  bottom: "untere",
};

const CORNERS: Readonly<Record<string, string>> = {
  "upper left": "linken oberen",
  "upper right": "rechten oberen",
  "lower left": "linken unteren",
  "lower right": "rechten unteren",
};

const seams = (count: number): string => counted(count, "Naht", "Nähte");
const places = (count: number): string => counted(count, "Stelle", "Stellen");

export const making: Words["making"] = {
  title: (name, kits) => (kits > 1 ? `${name}: Nähen, für einen von ${kits}` : `${name}: Nähen`),
  cautions: Object.values(sewingCautions),
  cautionsTitle: "Mit Nadel und Bügeleisen",
  estimates:
    "Längen und Mengen sind Schätzungen: von allem eins nähen, messen und erst weitermachen, wenn es stimmt.",
  seam: (seam) => `Nahtzugabe ${seam}. Alle Maße sind genäht, Nahtzugabe inbegriffen.`,
  total: (length, count) => `Insgesamt etwa ${length} Naht, ${seams(count)}.`,
  times: (thousandths) => `etwa ${figure(Math.round(thousandths / 100) / 10)}`,
  thread: (length, perSeam, percent) =>
    `Etwa ${length} Garn zum Nähen, Ober- und Unterfaden zusammen: ${perSeam} mal die Nahtlänge (zwei Lagen ` +
    `Patchworkbaumwolle, Stichlänge 2 mm) und ${percent} Prozent mehr für Enden und gerissene Fäden.`,
  unitsTitle: "Einheiten",
  unitsAbout:
    "Zuerst eine nähen und messen, dann die übrigen, jeden Schritt bei allen vor dem nächsten. In Kette nähen: eine nach der anderen " +
    "unter der Nadel durchführen und danach trennen.",
  heads:
    "„Motiv nach oben“ heißt: Die Figuren des Drucks stehen mit dem Kopf nach oben. Gemeint ist es so, wie die Arbeit vor einem liegt, rechte Seite oben, wenn " +
    "nichts anderes dabeisteht.",
  beforeTrimming: (seam, trimmed) =>
    `Messen, bevor etwas abgeschnitten wird. Nie näher als ${seam} an eine Spitze schneiden: Die nächste Naht braucht das. ` +
    `${trimmed ? "Wo nichts vom Beschneiden steht, nur" : "Nur"} die Kanten säubern: Fäden und Nahtspitzen.`,
  cutSewn: `Auch Genähtes wird auseinandergeschnitten. ${[bladeCautions.pins, bladeCautions.fingers, bladeCautions.shut].join(" ")}`,
  cutSewnToo: "Auch Genähtes wird auseinandergeschnitten: Die Regeln für Klinge und Lineal gelten auch dort.",
  block: (name, count) => `${name} (${count} nähen)`,
  join: (makes, parts, count, size, trim) =>
    `${makes}: ${parts}; ${seams(count)}; misst ${size}${
      trim === null ? "" : `; auf ${trim} beschneiden, an allen Seiten gleich viel`
    }.`,
  pressTitle: "Bügeln, im Ganzen gesehen",
  nestAll: (junctions) =>
    junctions === 1
      ? "Die eine Stelle, an der Nähte zusammentreffen, greift ineinander."
      : `Alle ${figure(junctions)} Stellen, an denen Nähte zusammentreffen, greifen ineinander.`,
  noJunctions: "An keiner Verbindungsnaht treffen Nähte zusammen.",
  nestSome: (junctions, open, proven) =>
    `Von ${plural(junctions, "einer Stelle", `${figure(junctions)} Stellen`)}, an denen Nähte zusammentreffen, ${plural(open, "greift", "greifen")} ${open} nicht ineinander${
      proven ? "; weniger ist mit so gebügelten Blöcken nicht möglich (bewiesen)" : ""
    }. Dort eine der beiden Nähte auseinanderbügeln:`,
  openAt: (x, y) => `${x} von links, ${y} von oben`,
  more: (count) => `und ${count} weitere, im Bügelplan eingekreist`,
  pressOverview: "Bei jedem Schritt steht, wie seine Nähte gebügelt werden; der Bügelplan zeigt alle.",
  variants: (alike) =>
    `Blöcke, die auf zwei Arten gebügelt werden, tragen Nummern. Alle gleich gebügelt, ${plural(alike, "griffe", "griffen")} ${places(alike)} nicht ineinander.`,
  bulk: (most, atMost, count, proven) =>
    `Wo Nähte zusammentreffen, liegen höchstens ${most} Lagen Stoff aufeinander (an ${atMost} von ${plural(count, "einer Stelle", `${figure(count)} Stellen`)}, schräge Nähte ` +
    `nach ihrer dickeren Seite gezählt); ${
      proven
        ? "kein Bügeln, bei dem ebenso viele ineinandergreifen, ist im Ganzen dünner (bewiesen)."
        : "das dünnste gefundene Bügeln, bei dem ebenso viele ineinandergreifen."
    }`,
  thinEnough: (limit) => `Das liegt innerhalb der gewünschten ${limit} (\`most-layers\` in der Datei).`,
  tooThick: (limit, inches) =>
    `Mehr als ${limit} Lagen, die höchstens gewünscht sind (\`most-layers\` in der Datei). Wo es unten steht, die zuletzt genähte Naht nach beiden Seiten ${
      inches ? "ein, zwei Zoll" : "einige Zentimeter"
    } weit auseinanderbügeln; überall dürfen die Spitzen innerhalb der Nahtzugaben abgeschnitten werden:`,
  thickAt: (at, layers, opened) =>
    `${layers} Lagen (${
      opened === null
        ? "die Spitzen abschneiden, eine offene Naht hilft nicht"
        : `${opened} mit auseinandergebügelter Naht`
    }), von links und von oben: ${at.map(({ x, y }) => `${x} und ${y}`).join("; ")}`,
  moreThick: (count) =>
    `und ${counted(count, "weitere Stelle", "weitere Stellen")}, im Bügelplan mit einem Punkt`,
  pinTitle: (lines) =>
    `Lange Nähte: zuerst die Stellen stecken oder heften, an denen Nähte zusammentreffen, von der Mitte nach außen, dann dazwischen; Stellen werden ${
      lines === "rows" ? "von links" : "von oben"
    } gezählt.`,
  pinSeam: (rows, count, order, onwards, lines) =>
    `${lines === "rows" ? "Unter" : "Rechts von"} ${
      lines === "rows" ? plural(rows.length, "Reihe", "Reihe") : plural(rows.length, "Spalte", "Spalte")
    } ${rangeOrList(rows)}: ${places(count)}; zuerst ${order
      .map((round) => list(round))
      .join(", dann ")}${onwards ? ", dann nach außen, abwechselnd links und rechts" : ""}.`,
  partial: (name, divides) =>
    `Block ${name} lässt sich nicht allein mit geraden Nähten nähen.${
      divides.length === 0 ? "" : ` Für lauter gerade Nähte teilen: ${divides.join(", und ")}.`
    }`,
  partialGeneric:
    "Die erste Naht nur zur Hälfte nähen, ringsum weiternähen und die erste Naht zuletzt schließen.",
  partialFirst: (side, from) =>
    `Die ${SIDES[side] ?? side} Einheit an die mittlere nähen, von der ${CORNERS[from] ?? from} Ecke nur bis zur Hälfte; von der Mitte weg bügeln`,
  partialNext: (side) =>
    `Die ${SIDES[side] ?? side} Einheit an der ganzen Seite annähen; von der Mitte weg bügeln`,
  partialClose: (side) => `Die erste Naht schließen: den Rest der ${SIDES[side] ?? side}n Einheit annähen`,
  divide: (unit, column, row, at, upright) =>
    `${unit} in Spalte ${column}, Zeile ${row}, in zwei, ${at} von der ${upright ? "linken" : "oberen"} Kante`,
  whorlParts: (name, count, units) =>
    `${name} (${count} nähen), die Einheiten Zeile für Zeile von oben links: ${units.join(", ")}.`,
  towardTriangles: (plain) => `Alle Nähte zu den ${plain ? "einfarbigen Blöcken und " : ""}Dreiecken bügeln.`,
  diagonalTitle: "Diagonale Reihen und Top",
  diagonalAbout: (high) =>
    `Die Reihen verlaufen von oben links nach unten rechts; Reihe 1 liegt an der oberen rechten Ecke. Die Teile sind von links genannt. Jede Reihe ist ${high} hoch, und so lang sind ihre Nähte.`,
  triangles:
    "Seitendreiecke: Die lange Kante gehört an den Rand des Quilts. Die rechtwinklige Ecke auf die Ecke des Blocks legen; die Spitze " +
    "steht darüber hinaus und wird abgeschnitten, wenn die Naht gebügelt ist.",
  sideTriangle: "Seitendreieck",
  corner: "(Ecke zuletzt)",
  diagonalJoin: (rows) => {
    const half = Math.floor(rows / 2);
    const order =
      rows < 4
        ? `Die Reihen 1 bis ${rows} eine an die andere nähen`
        : `Die Reihen 1 bis ${half} eine an die andere nähen, ebenso die Reihen ${half + 1} bis ${rows}; dann die zwei Hälften, sodass die längste Naht zuletzt kommt`;
    return `${order}. Nähte auf Nähte treffen lassen, die Spitzen der Dreiecke stehen über.`;
  },
  diagonalCorners:
    "Zuletzt die vier Eckdreiecke: die lange Kante zur Hälfte falten und den Bruch auf die Mitte der Blockkante legen. Zu den Dreiecken bügeln.",
  diagonalSquare: (size, seam) =>
    `Das Top begradigen: nur abschneiden, was mehr als ${seam} außerhalb der Blockspitzen liegt; es misst ${size}.`,
  quilting: (by, lines, spacing, told) =>
    `Quilten ${BY[by]}, Linien im Abstand von ${spacing} ${lines === "crossed" ? "in beiden Richtungen" : "in einer Richtung"}${
      told ? "" : " (angenommen; `quilting:` in der Datei sagt, wie gequiltet wird)"
    }`,
  quiltingThread: (line, stitched, length, rule) =>
    `${line}: etwa ${stitched} Linien und ${length} Garn, ${rule}.`,
  quiltingRule: (by, perLine, percent) =>
    `${by === "hand" ? "" : "Ober- und Unterfaden zusammen, "}${perLine} mal die Linien (Top, dünnes Vlies und Rückseite, ${
      by === "hand" ? "8 Stiche auf 1 Zoll" : "Stichlänge 2,5 mm"
    }) und ${percent} Prozent mehr`,
};
