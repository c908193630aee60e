import type { Words } from "../../types.ts";

/** All the words that stand on templates. */
export const templates: Words["drawings"]["templates"] = {
  sheet: (plan, number, count) => `Schablonen, Blatt ${number} von ${count}: ${plan || "Ein Quilt"}`,
  alone: (plan, name) => `Schablone ${name}: ${plan || "Ein Quilt"}`,
  inch: "1 Zoll",
  centimetres: "2 cm",
  print: "Mit 100 % drucken, nicht an die Seite angepasst; vor dem Schneiden das Quadrat nachmessen.",
  lines:
    "Durchgezogen: hier schneiden. Gestrichelt: hier nähen. Punkte: Ecken der Naht. Ringe: Hierher kommt die Ecke eines Nachbarn.",
  grain: "Dünner Pfeil: der Fadenlauf, entlang der Webkante.",
  grainFree: "Dünner Pfeil: der Fadenlauf, entlang der Webkante oder quer dazu.",
  up: "Dicker Pfeil: die Oberseite des Drucks.",
  caution: "Die Klinge nach jedem Schnitt schließen und die Finger von der Linealkante fernhalten.",
  cut: (count) => `${count} schneiden`,
  cutReversed: (count) => `${count} gespiegelt schneiden`,
  cutBoth: (asDrawn, reversed) => `${asDrawn} wie gezeichnet und ${reversed} gespiegelt schneiden`,
  part: (name, number, count) => `${name}, Teil ${number} von ${count}`,
  join: "Die Teile so übereinanderlegen, dass Kreuze mit demselben Buchstaben sich decken, und zusammenkleben.",
  from: (fabric, letter, size) => `${fabric} [${letter}] ${size}`,
  fromStrips: (width) => `aus Streifen ${width} breit`,
  fromSquares: (side) => `aus Quadraten ${side}`,
  fromRectangles: (size) => `aus Rechtecken ${size}`,
};
