import type { Wide } from "../../../words/index.ts";
import type { clothWords as english } from "../cloth.ts";

const pieces = (count: number): string => (count === 1 ? "ein Stück" : `${count} Stücke`);

/** What the page says of a fabric's picture, its print and the drawer, in German. */
export const clothWords: Wide<typeof english> = {
  // A picture of the fabric
  photo: "Ein Foto davon",
  takePhoto: "Ein Foto machen oder auswählen",
  otherPhoto: "Ein anderes Foto",
  dropPhoto: "Das Foto entfernen",
  photoTaken: (name, from, to) =>
    `${name} sieht jetzt aus wie auf dem Foto: aus ${from} wurden ${to}. Die Farbe ist daraus genommen.`,
  photoCoarse: "Das Bild ist klein, der Druck wird also grob aussehen.",
  photoGone: (name) => `${name} hat kein Foto mehr; Rückgängig holt es zurück.`,
  photoRefused: {
    drawing:
      "Das ist eine Zeichnung aus Code, kein Foto. Zuerst als JPEG oder PNG speichern: Nichts davon wurde ausgeführt.",
    heic: "Dieser Browser kann keine HEIC-Fotos öffnen. Das Foto als JPEG speichern, oder die Kamera auf „maximale Kompatibilität“ stellen.",
    large: "Diese Datei ist größer als 80 MB. Ein Foto, wie die Kamera es macht, genügt.",
    none: "Diese Datei ist kein Foto, das ein Browser öffnen kann. JPEG, PNG und WebP lassen sich öffnen.",
    tiny: "Dieses Bild ist zu klein, um einen Stoff zu zeigen: mindestens 8 Punkte in jeder Richtung.",
  },
  photoNotKept:
    "Das Foto ist da, solange die Seite offen ist: Dieser Browser hat keinen Platz, um es aufzuheben.",
  kiloBytes: (count) => `${count} kB`,
  megaBytes: (count) => `${count.replace(".", ",")} MB`,
  photoWidth: "Was das Foto zeigt, ist",
  photoWidthAfter: "breit",
  photoWidthGuess: (size) => `Bis zur Angabe gilt ${size}: einmal ein Lineal darüberlegen.`,
  photoWide: (name, size) => `${name}: Das Foto zeigt quer ${size}.`,
  turnPhoto: "Das Foto drehen",
  photoTurned: (name) => `${name}: das Foto gedreht. Seine Webkante steht aufrecht.`,
  photoHelp:
    "Einen Kasten über das ziehen, was sich wiederholt, oder zwei Ecken antippen. Pfeiltasten schieben den Kasten; mit Umschalt machen sie ihn größer oder kleiner.",
  photoBox: (name, size) => `Der Teil des Fotos von ${name}, der aneinandergelegt wird: ${size}`,
  boxSaid: (size) => `Aneinandergelegt: ${size}.`,
  boxCorner: "Jetzt die gegenüberliegende Ecke antippen.",
  wholePhoto: "Das ganze Foto",
  boxAcross: "Kasten quer",
  boxDown: "Kasten hoch",
  repeatIs: "Das ist der Rapport",
  repeatField: "Rapport",
  repeatExample: "15 x 20 cm",
  repeatWrong: (wish) => `„${wish}“ ist kein Rapport. Zum Beispiel: 15 x 20 cm, quer und längs.`,
  repeatSaid: (name, size) => `${name} wiederholt sich alle ${size}.`,
  repeatNone: (name) => `${name}: kein Rapport angegeben.`,
  arrow: (way) => `Die Oberseite zeigt ${way}. Den Pfeil drehen`,
  arrowTurn: "Den Pfeil drehen",
  arrowWays: { 0: "nach oben", 90: "nach rechts", 180: "nach unten", 270: "nach links" },
  arrowTurned: (name, way, along) =>
    `${name}: die Oberseite zeigt ${way}, ${along ? "entlang der Webkante" : "quer zum Stoff"}.`,
  axes: { along: "entlang der Webkante", across: "quer zum Stoff" },
  axisLabel: "Wohin die Oberseite zeigt",
  axisSaid: (name, axis) => `${name}: die Oberseite liegt ${axis}.`,

  // The drawer
  drawer: "Der Vorrat",
  drawerEmpty: "Stoff, der schon da ist, als Liste: eine Tabelle mit Stoff, Breite, Länge, Anzahl.",
  openDrawer: "Die Vorratsdatei öffnen",
  saveDrawer: "Die Vorratsdatei speichern",
  drawerOpened: (name, count) => `${name}: ${pieces(count)} Stoff im Vorrat.`,
  drawerRefused: (name, why) => `${name} ist keine Stoffliste. ${why}`,
  drawerWarned: (count) =>
    count === 1
      ? "Eine Zeile konnte nicht gelesen werden; sie bleibt, wie sie ist."
      : `${count} Zeilen konnten nicht gelesen werden; sie bleiben, wie sie sind.`,
  drawerHeap: (fabric, count) => `${fabric}, ${pieces(count)}`,
  drawerPiece: (size, count) => (count === 1 ? size : `${count} Stück ${size}`),
  drawerOther: "Von anderen Stoffen",
  drawerAdd: "Hineinlegen",
  drawerFabric: "Stoff",
  drawerSize: "Maß",
  drawerCount: "Anzahl",
  drawerSizeExample: "50 x 55 cm",
  drawerAdded: (fabric, size) => `Im Vorrat: ${fabric}, ${size}.`,
  drawerTake: (fabric, size) => `eines herausnehmen: ${fabric}, ${size}`,
  drawerTakeOne: "eines herausnehmen",
  drawerTook: (fabric, size) => `Herausgenommen: ${fabric}, ${size}.`,
  drawerBack: "Zurücklegen",
  drawerAsk: "Was deckt der Vorrat?",
  drawerAsking: "Wird mit dem Vorrat geplant …",
  drawerCovers: {
    all: (fabric) => `${fabric}: alles; nichts zu kaufen.`,
    part: (fabric, buy, before) => `${fabric}: ${buy} kaufen statt ${before}.`,
    none: (fabric, buy) => `${fabric}: nichts gespart; ${buy} wie bisher.`,
    absent: (fabric) => `${fabric}: nichts im Vorrat.`,
  },
  drawerUsed: (list) => `Geschnitten aus ${list}.`,
  drawerCannot: "Mit dem Vorrat lässt es sich gerade nicht planen.",
  drawerHow: "Dasselbe als Befehl, mit der gespeicherten Liste:",
};
