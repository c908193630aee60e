import type { Words } from "../../types.ts";
import { counted, list } from "../language.ts";

/** Words for what is done once the top is sewn. */
export const finishing: Words["finishing"] = {
  title: "Fertigstellen",
  square: (size, diagonal) =>
    `Das Top bügeln: Es misst ${size}, und ${diagonal} von Ecke zu Ecke in beiden Richtungen; nur Fäden abschneiden.`,
  backing: (panels, fabric, panel, size) =>
    panels === 1
      ? `Rückseite: ein Stück ${fabric}, ${size}.`
      : `Rückseite: ${panels} Bahnen ${fabric}, je ${panel}; Webkanten abschneiden, nebeneinander zusammennähen und auf ${size} beschneiden.`,
  backingSeams: (seams, at) =>
    seams === "vertical"
      ? `Die Nähte verlaufen senkrecht, ${list(at)} von der linken Seite der Rückseite; auseinanderbügeln.`
      : `Die Nähte verlaufen waagerecht, ${list(at)} von der oberen Kante der Rückseite; auseinanderbügeln.`,
  halved: (at) =>
    `Damit die Naht der Rückseite nicht in der Mitte liegt, anstelle der nächsten zwei Schritte eine Bahn der Länge nach halbieren, an jede Seite der anderen eine Hälfte nähen und wie dort gesagt zuschneiden; die Nähte liegen dann ${list(at)} vom Rand.`,
  printUp:
    "Der Druck hat eine Richtung: auf jeder Bahn aufrecht halten, mit der Oberseite zur Oberkante des Quilts.",
  printSideways:
    "Der Druck liegt hinter dem Quilt auf der Seite, weil die Nähte gegen ihn laufen. Jede Bahn gleich herum legen, die Oberseite nach rechts, wenn man auf die rechte Stoffseite der Rückseite sieht.",
  reach: (overhang) =>
    `Die Rückseite steht an jeder Seite ${overhang} über den Quilt hinaus; sie wird nach dem Quilten abgeschnitten.`,
  wadding: (size, packaged, roll) =>
    packaged === null
      ? `Vlies: ${size}, größer als jede abgepackte Größe: ${roll}.`
      : `Vlies: ${size}; ${packaged} reicht, oder ${roll}.`,
  roll: (width, widths, length) =>
    widths === 1
      ? `${length} von einer ${width} breiten Rolle`
      : `${length} von einer ${width} breiten Rolle, in ${widths} Längen, Kante an Kante gelegt und von Hand mit weitem Zickzackstich verbunden, nicht überlappt`,
  packaged: (name, size) => `die abgepackte Größe ${name} (${size})`,
  anyBacking: (size, overhang) =>
    `Rückseite: ${size} oder größer, an jeder Seite ${overhang} über den Quilt hinaus. Die Datei nennt keinen Stoff dafür: Sie ist nicht im Plan.`,
  anyWadding: (size, packaged, roll) =>
    `Vlies: ${size} oder größer (${packaged === null ? roll : `${packaged}, oder ${roll}`}). Die Datei nennt es nicht.`,
  layers:
    "Die Rückseite bügeln. Mit der rechten Seite nach unten auslegen, darauf das Vlies, in die Mitte das Top, rechte Seite oben. Jede Lage von der " +
    "Mitte nach außen glatt streichen und etwa alle Handbreit heften oder stecken; keine Stecknadel bleibt der Nadel im Weg.",
  quilt:
    "Von der Mitte nach außen quilten. Dann Rückseite und Vlies bündig mit dem Top abschneiden, die Ecken rechtwinklig.",
  straightBinding: (count, width, length, extra, fabric) =>
    `Einfassung: ${counted(count, "Streifen", "Streifen")} ${fabric}, ${width} breit, für ${length}; davon sind ${extra} für die Ecken und den Schluss.`,
  join: {
    diagonal: (joins, width) =>
      `Die Streifen mit ${counted(joins, "schrägen Naht", "schrägen Nähten")} verbinden: zwei Enden im rechten Winkel übereinanderlegen, rechts auf rechts, von Ecke zu Ecke über das gemeinsame Quadrat nähen, auf die Nahtzugabe zurückschneiden und auseinanderbügeln; jede braucht ${width}.`,
    straight: (joins, width) =>
      `Die Streifen mit ${counted(joins, "geraden Naht", "geraden Nähten")} aneinandernähen, rechts auf rechts, und auseinanderbügeln; jede braucht ${width}.`,
  },
  biasBinding: ({ count, square, width, length, extra, fabric }) =>
    `Einfassung: ${counted(count, "Quadrat", "Quadrate")} ${fabric}, ${square}, für ${length} Schrägband ${width} breit; davon sind ${extra} für die Ecken und den Schluss.`,
  biasTube: (width) =>
    `Das Quadrat auf einer Diagonale durchschneiden; die zwei Dreiecke an zwei geraden Kanten zusammennähen, rechts auf rechts, zu einem schrägen Stück, und auseinanderbügeln. Parallel zu den Schrägkanten Linien im Abstand von ${width} anzeichnen, die anderen geraden Kanten zu einem Schlauch nähen, die Linien dabei um einen Streifen versetzt, und auf der Linie rundherum schneiden.`,
  bindingFold: {
    double: "Die Einfassung der Länge nach zur Hälfte falten, rechte Seite außen, und bügeln.",
    single: "Eine lange Kante der Einfassung um eine Nahtzugabe nach links umbügeln.",
  },
  bindingOn: (fold, seam) =>
    `In der Mitte einer Seite auf der Vorderseite des Quilts beginnen, ein handlanges Ende lose lassen. ${
      fold === "double" ? "Die zwei offenen Kanten" : "Die nicht umgebügelte Kante, rechts auf rechts,"
    } bündig an die Kante des Quilts legen und ${seam} daneben nähen.`,
  bindingCorner: (seam) =>
    `An jeder Ecke ${seam} vor der Kante anhalten, einen Stich zurücknähen und die Arbeit herausnehmen. Den Streifen gerade nach oben falten, sodass der Falz ` +
    "im Winkel von 45 Grad liegt, dann gerade nach unten entlang der nächsten Seite, den Falz bündig mit der eben verlassenen Kante. An dieser Kante weiternähen.",
  bindingEnds: (join) =>
    `Eine Handlänge vor dem Anfang aufhören. Die zwei Enden ${
      join === "diagonal" ? "schräg wie die Streifen" : "gerade"
    } verbinden, genau so lang, dass sie flach liegen, zurückschneiden, auseinanderbügeln und die Lücke schließen.`,
  bindingBack: (fold) =>
    `Die Einfassung auf die Rückseite umlegen, sodass ${
      fold === "double" ? "ihr Falz" : "ihre umgebügelte Kante"
    } die Stiche gerade deckt, und von Hand annähen; jede Ecke entgegengesetzt zur Vorderseite falten.`,
  noBinding: (edge) =>
    `Die Kante, die eingefasst wird, misst ringsum ${edge}. Die Datei nennt keine Einfassung: Sie ist nicht im Plan.`,
  sleeve: (size, hem) =>
    `Zum Aufhängen: ein Tunnel aus ${size}; beide kurzen Enden ${hem} breit säumen, zum Schlauch nähen und unterhalb der Oberkante auf die Rückseite nähen.`,
  bag: (letters, fabric) => (letters === "" ? `aus ${fabric}` : `${letters} (${fabric})`),
  off: "Das Bügeleisen ausschalten.",
  label: "Ein Etikett auf die Rückseite nähen: was es ist, wer es genäht hat, für wen, wo und wann.",
};
