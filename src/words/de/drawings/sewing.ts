import type { Words } from "../../types.ts";
import { counted } from "../language.ts";

/** The words of the drawings of sewing: blocks, rows, pressing, borders, finishing. */
export const sewing: Words["drawings"]["sewing"] = {
  finishedSize: "Fertige Größe",
  blocks: {
    over: "Blöcke, auseinandergerückt",
    count: "Blöcke",
    order:
      "Eng beieinander: zuerst genäht. Weit auseinander: zuletzt genäht. Die Nummern sind die des Textes; bei vier Einheiten um eine die Reihenfolge.",
    block: (name, count, size) => `${name}: ${count} nähen, ${size}`,
    described: (blocks) => `${counted(blocks, "Block", "Blöcke")}, auseinandergerückt, wie genäht wird.`,
    pressedSo: "so gebügelt",
    oneDescribed: (name) =>
      `${name}, auseinandergerückt, wie genäht wird, und wie die Nähte gebügelt werden.`,
  },
  assembly: {
    over: "Reihen",
    rows: "Die Reihen, auseinandergerückt: die Blöcke jeder Reihe nähen, dann Reihe an Reihe",
    columns: "Die Spalten, auseinandergerückt: die Blöcke jeder Spalte nähen, dann Spalte an Spalte",
    diagonalRows:
      "Die diagonalen Reihen, auseinandergerückt: die Blöcke jeder Reihe nähen, dann Reihe an Reihe; die Ecken kommen zuletzt",
    pins: "Zahlen an den langen Nähten: Stellen mit 1 zuerst stecken, dann 2, und so weiter nach außen.",
    rowCount: "Reihen",
    columnCount: "Spalten",
    described: (lines, columns) =>
      `${columns ? counted(lines, "Spalte", "Spalten") : counted(lines, "Reihe", "Reihen")}.`,
  },
  pressing: {
    over: "Bügelplan",
    places: "Stellen, an denen Nähte zusammentreffen",
    notNested: "Nicht ineinandergreifend",
    arrows:
      "Jeder Pfeil kreuzt eine Naht und zeigt, wohin ihre Zugaben gebügelt werden, rechte Seite oben. Die Stoffe sind blass gezeichnet.",
    dots: "Ein Punkt markiert eine Stelle mit mehr Lagen als gewünscht: dort die zuletzt genähte Naht ein Stück weit nach beiden Seiten auseinanderbügeln oder die Spitzen innerhalb der Nahtzugaben abschneiden.",
    rings:
      "Ein Ring markiert eine Stelle, an der zwei Nähte nicht ineinandergreifen: dort eine davon auseinanderbügeln.",
    numbers:
      "Die Zahl in einem Block sagt, welche seiner Arten er ist: gebügelt wie unten gezeigt, genäht wie die Schritte es sagen.",
    block: (name, count) => `${name}: ${count} nähen`,
    described: (places, open) =>
      `${counted(places, "Stelle", "Stellen")}, an denen Nähte zusammentreffen, ${open} nicht ineinandergreifend.`,
  },
  borders: {
    over: "Ränder, in der Reihenfolge des Nähens",
    count: "Ränder",
    apart: "Die Ränder, auseinandergerückt. Streifen mit derselben Zahl werden zusammen angenäht, 1 zuerst.",
    strips: (name, sides, long, extra) => `${name}, ${sides}: ${long} lang${extra}`,
    extra: (extra) => `, ${extra} länger geschnitten und gekürzt`,
    mitre: (name, seam) =>
      `${name}: von ${seam} innerhalb einer Ecke bis ${seam} innerhalb der nächsten genäht; dann die vier Gehrungen, im Winkel von 45 Grad`,
    mitred: {
      title: (name: string) => `Die Briefecken von ${name}`,
      described:
        "Eine Ecke in drei Bildern: bis zur Nahtzugabe genäht, gefaltet und im Winkel von 45 Grad genäht, geöffnet.",
      sew: (seam: string) =>
        `Beide Streifen annähen; ${seam} vor der Ecke des Tops aufhören, bei den Punkten.`,
      fold: "Das Top auf der Diagonalen falten, Streifen aufeinander; vom Punkt nach außen im Winkel von 45 Grad nähen.",
      open: (seam: string) => `Öffnen, auf ${seam} zurückschneiden, die Naht auseinanderbügeln.`,
    },
    sides: {
      left: "links und rechts",
      right: "links und rechts",
      top: "oben und unten",
      bottom: "oben und unten",
    },
    described: (rounds) => `${counted(rounds, "Rand", "Ränder")} in der Reihenfolge des Nähens.`,
  },
  finish: {
    over: "Rückseite und Einfassung",
    backingCaption: "Rückseite",
    backing: "Rückseite: Bahnen und ihre Nähte; die gestrichelte Linie ist der Quilt",
    panel: (number) => `Bahn ${number}`,
    piece: "ein Stück",
    backingMade: (panels, size, overhang) =>
      `Rückseite: ${panels === 1 ? "ein Stück" : `${counted(panels, "Bahn", "Bahnen")}, je`} ${size}; gestrichelt: der Quilt, ringsum ${overhang} innerhalb.`,
    sleeve: (size) => `Tunnel auf der Rückseite: ${size}, an beiden Enden gesäumt, zum Schlauch genäht.`,
    overhang: (length) => `${length} über den Quilt hinaus`,
    up: "Druck oben",
    binding: "Einfassung",
    join: (loss) =>
      `Verbinden: Enden im rechten Winkel, von Ecke zu Ecke genäht, zurückgeschnitten; braucht ${loss}.`,
    straight: (loss) => `Verbinden: Ende an Ende; braucht ${loss}.`,
    stop: (seam) => `Ecke: ${seam} vor der Kante anhalten.`,
    fold: "Den Streifen im Winkel von 45 Grad nach oben falten ...",
    down: "... und wieder nach unten; von der Kante an weiternähen.",
    square: "Schrägband: das Quadrat auf einer Diagonale schneiden,",
    tube: "um einen Streifen versetzt zum Schlauch nähen, rundherum schneiden.",
    described: (panels, cut) =>
      `${counted(panels, "Bahn", "Bahnen")} für die Rückseite; ${{ bias: "Einfassung aus Schrägband", straight: "gerade Einfassung", none: "keine Einfassung" }[cut]}.`,
  },
};
