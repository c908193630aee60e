import type { Words } from "../../types.ts";

/** The words of the book's pages with templates. */
export const templates: Words["book"]["templates"] = {
  title: "Schablonen in Originalgröße",
  lead: "Diese Seiten mit 100 % drucken, nicht an die Seite angepasst, und vor dem Schneiden die Quadrate nachmessen: Stimmen sie nicht, stimmt kein einziges Teil.",
  use: [
    "Zuerst die Rechtecke oder Streifen zuschneiden, wie es beim Stoff steht. Dann jedes Teil nach seiner Schablone, auf der durchgezogenen Linie. Auf der gestrichelten wird genäht.",
    "Den dünnen Pfeil in den Fadenlauf legen.",
    "Das Papier auf Karton kleben oder auf Schablonenfolie durchzeichnen. Die Punkte auf der linken Stoffseite markieren und beim Nähen durch sie stecken.",
  ],
  up: "Den dicken Pfeil so legen, dass er zur Oberseite des Drucks zeigt.",
  reversed:
    "Gespiegelt heißt: die Schablone mit der Schrift nach unten auf die rechte Stoffseite legen. In einer Lage schneiden, rechte Seite oben: Von zwei gefalteten Lagen wird eine gespiegelt.",
  caution:
    "Entlang eines Lineals an der Schablonenkante schneiden, oder mit der Schere. Die Klinge nie an Papier oder Karton führen: Sie springt über die Kante.",
  caption: "Schablonen und was danach geschnitten wird",
  columns: { name: "Schablone", from: "aus", count: "Anzahl", use: "für", where: "wo" },
  sheet: (first, last) => (first === last ? `Blatt ${first}` : `Blatt ${first} bis ${last}`),
  drawn: "selbst zeichnen",
  drawTitle: "Diese selbst zeichnen",
  drawLead: (fine) =>
    `Diese sind groß und haben wenige Ecken. Die Ecken auf dem Stoff auf ${fine} genau markieren und am Lineal von einer zur nächsten schneiden. Bei jeder Ecke steht, wie weit sie von der linken und von der oberen Kante des Teils liegt; im Streifen jede weitere an die vorige anlegen.`,
  draw: (name, from, corners) => `${name}, ${from}: ${corners.join("; ")}`,
  corner: (left, top) => `${left} und ${top}`,
  area: "Schablonen in Originalgröße; seitlich verschiebbar",
};
