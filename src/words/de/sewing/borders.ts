import type { Words } from "../../types.ts";
import { counted, list } from "../language.ts";

/** Words for sewing borders on. */

const ALONG = {
  left: "von oben nach unten",
  right: "von oben nach unten",
  top: "von Seite zu Seite",
  bottom: "von Seite zu Seite",
} as const;

const PAIR = {
  left: "links und rechts",
  right: "links und rechts",
  top: "oben und unten",
  bottom: "oben und unten",
} as const;

const MARK = "die gemessene Länge markieren, an beiden Enden gleich viel Überstand, und ihre Mitte";

export const borders: Words["borders"] = {
  title: "Ränder",
  measure:
    "Maßgebend ist die Länge, die durch die Mitte des Tops gemessen wird, nicht an seinen Kanten. Gedruckt ist, was es ungefähr sein sollte; " +
    "weicht sie um mehr als eine Daumenbreite ab, zuerst nach einer falschen Naht suchen.",
  pin: "Streifen und Kante des Tops zur Hälfte falten: zuerst Mitten und Enden stecken, dann die Viertel, dann dazwischen, und was übersteht, einhalten.",
  bag: (count, letters, fabric) =>
    letters === ""
      ? `${counted(count, "Streifen", "Streifen")} aus ${fabric}`
      : `${counted(count, "Streifen", "Streifen")} ${letters} (${fabric})`,
  joined: (bag, joins, how) =>
    `${bag} aneinandernähen, ${counted(joins, how === "straight" ? "gerade Naht" : "schräge Naht", how === "straight" ? "gerade Nähte" : "schräge Nähte")}, und auseinanderbügeln. Diese Bahn noch nicht schneiden.`,
  oneRun: "Seiten und Enden kommen aus dieser einen Bahn.",
  measured: (name, side, about) =>
    `${name}, ${PAIR[side]}: das Top ${ALONG[side]} durch die Mitte messen (etwa ${about}).`,
  cutFromRun: (bag) => `Zwei Längen davon aus der Bahn schneiden: ${bag}.`,
  cutToThat: (bag) => `${bag} auf diese Länge schneiden.`,
  markOnRun: (bag, cut) =>
    `Zwei Längen von etwa ${cut} aus der Bahn schneiden (${bag}): Sie sind zu lang. Auf beiden ${MARK}.`,
  mark: (bag) => `${bag}: mit Absicht zu lang. Auf beiden ${MARK}.`,
  sewPair: (press) => `Mitten und Enden aufeinanderstecken, nähen. ${press}`,
  sewMarked: (press) =>
    `Mitte auf Mitte und die Markierungen auf die Enden des Tops stecken, nähen. ${press} Erst jetzt die Enden bündig mit dem Top abschneiden.`,
  outwards: "Nach außen bügeln.",
  inwards: "Nach innen bügeln, zum Top.",
  asMap: "Bügeln, wie der Bügelplan es zeigt.",
  top: (size) => `Das Top misst etwa ${size}.`,
  cornerstones: (bag) =>
    `Zuerst an beide Enden von jedem ein Eckquadrat nähen${bag === "" ? "" : `: ${bag}`}.`,
  pieced: (name, side, rows, press) =>
    `${name}, ${PAIR[side]}: die Blöcke aneinandernähen: ${rows.map(({ where, blocks }) => `${where}, ${blocks}`).join("; ")}. ${press}`.trim(),
  rowOf: {
    left: "links, von oben",
    right: "rechts, von oben",
    top: "oben, von links",
    bottom: "unten, von links",
  },
  bothRows: (side) =>
    side === "left" || side === "right"
      ? "links und rechts gleich, von oben"
      : "oben und unten gleich, von links",
  piecedFits: (long) =>
    `Jede Reihe misst etwa ${long}: ihre Nähte enger oder weiter nähen, bis sie so lang ist wie das Top.`,
  pressRow: "Ihre Nähte nach einer Seite bügeln.",
  fit: (width, size) =>
    `Dieser Rand, ringsum ${width} breit geschnitten, lässt den genähten Rand außen herum aufgehen: Das Top muss jetzt ${size} messen. ` +
    "Den Rand an gegenüberliegenden Seiten gleich viel beschneiden, bis es stimmt; ist das Top kleiner, die Nähte des Randes auslassen.",
  mitreStrips: (name, sides, ends, extra) =>
    `${name}, auf Gehrung: für links und rechts zwei Streifen von etwa ${sides}, für oben und unten zwei von etwa ${ends}; ${extra} davon sind Zugabe. ` +
    "Das Top in beiden Richtungen durch die Mitte messen. Auf jedem Streifen die Mitte markieren und, gleich weit nach beiden Seiten, die Länge der Kante, an die er kommt; auch die Mitte jeder Kante markieren.",
  mitreSew: (seam) =>
    `Jeden Streifen Mitte auf Mitte und Markierung auf Ecke stecken, rechts auf rechts; ${seam} von den Ecken des Tops beginnen und aufhören, mit einigen ` +
    "Rückstichen, sodass keine Naht eine andere kreuzt; nach außen bügeln.",
  mitreFold: (seam) =>
    "An jeder Ecke das Top diagonal falten, rechts auf rechts, die Streifen liegen aufeinander; vom letzten Stich zur Außenkante eine Linie im Winkel von 45 Grad anzeichnen " +
    `und darauf von innen, ${seam} von der Ecke, nach außen nähen.`,
  mitreTrim: (seam, size) =>
    `Aufklappen: Liegt die Ecke flach und rechtwinklig, auf ${seam} zurückschneiden und die Gehrung auseinanderbügeln; das Top misst etwa ${size}.`,
  list,
};
