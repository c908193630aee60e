import type { Words } from "../../types.ts";
import { counted } from "../language.ts";

/** The words of the bench book that the text lists and the drawings do not have. */
export const bench: Words["book"]["bench"] = {
  language: "de",
  title: (plan) => plan || "Ein Quilt",
  documentTitle: (plan, kind) => `${plan || "Ein Quilt"}: ${kind}`,
  subtitle: "Das Werkbuch",
  contents: "In diesem Buch",
  skip: "Zum Buch springen",
  clear: "Alle Haken entfernen",
  clearSure: "Alle Haken in diesem Buch entfernen?",
  progress: "{done} von {all} erledigt",
  print: "Drucken",
  toolbar: "Diese Seite",
  diagramArea: "Schnittplan; seitlich verschiebbar",
  drawingArea: "Zeichnung; seitlich verschiebbar",
  page: "Seite",
  bought: (fabric) => `Eingekauft: ${fabric}`,
  coverFabrics: "Die Stoffe dieses Plans",
  coverPicture: (names) =>
    `Ein gefalteter Stapel der Stoffe: ${names.join(", ")}. Je dicker eine Lage, desto mehr wird davon gekauft.`,
  coverTop: "Bild des Quilttops",

  facts: {
    finished: "Fertige Größe",
    fabrics: "Stoffe",
    pieces: "Teile zuzuschneiden",
    sizes: "Maße",
    strips: "Streifen zu schneiden",
    buy: "Insgesamt zu kaufen",
    ruler: "Lineal",
    blocks: "Blöcke",
    cost: "Kosten",
  },
  rulerLong: (length, mark) => `${length} lang, Striche alle ${mark}`,

  reading: {
    title: "So werden die Schnittpläne gelesen",
    lead: "Zu jedem Stoff gehört ein Schnittplan. Er zeigt den Stoff maßstäblich, wie er auf der Matte liegt, Webkanten links und rechts, die Schnittkante oben.",
    items: [
      "Die Lineale oben und links zeigen, wie weit man quer über den Stoff und seine Länge hinunter ist.",
      "Eine Zahl im Kreis ist ein Streifen, in der Reihenfolge des Zuschneidens. Die Schritte neben dem Plan haben dieselben Zahlen.",
      "Ein Buchstabe ist ein Maß. Alles mit demselben Buchstaben kommt in einen Beutel, und das Beuteletikett trägt ihn auch.",
      "Schraffierter Stoff steckt in keinem Teil. Jede Schraffur hat einen Grund, der oben genannt ist, und ist auch in Schwarzweiß zu lesen.",
      "Der lange Pfeil ist der Fadenlauf längs, entlang der Webkante. Ein zweiter Pfeil zeigt, wie ein Druck verläuft.",
      "Werden viele Streifen genau gleich geschnitten, ist einer gezeichnet, und eine Lücke in der Zeichnung sagt, wie viele es noch sind.",
    ],
    sizes: (size, across, along) =>
      `Alle Maße sind Zuschnittmaße, Nahtzugabe inbegriffen, quer zum Stoff zuerst: ${size} sind ${across} von Webkante zu Webkante und ${along} entlang der Webkante.`,
  },

  cautions: {
    title: "Sicherheit zuerst",
    lead: "Der Rat der Kursleitung und die Regeln des Raums, in dem gearbeitet wird, gehen allem vor, was hier steht.",
    blade: "Klinge und Lineal",
    iron: "Bügeleisen",
    ironRules: [
      "Das Eisen aufrecht oder auf seiner Ablage abstellen, nie mit der Sohle nach unten, und den Stecker ziehen, wenn niemand im Raum ist.",
      "Dampf verbrennt eher als die Sohle: Finger aus seinem Weg halten und eine gebügelte Naht abkühlen lassen, bevor sie angehoben wird.",
      "Das Kabel so legen, dass niemand darüber stolpert oder daran zieht.",
    ],
    needle: "Nadel und Stecknadeln",
    needleRules: [
      "Die Finger seitlich vom Nähfuß halten, und den Fuß vom Pedal nehmen, bevor die Hand in die Nähe der Nadel kommt.",
      "Jede Stecknadel herausziehen, bevor die Nadel sie erreicht: Eine getroffene kann brechen und wegfliegen. Eine Schutzbrille ist eine gute Gewohnheit.",
      "Zum Wechseln der Nadel die Maschine ausschalten; alte Nadeln und Klingen in einer geschlossenen Dose sammeln.",
    ],
  },

  buy: {
    title: "Einkauf",
    spare: "bleibt übrig",
    narrowest: "reicht bis hinab zu",
    have: "aus vorhandenem Stoff",
    spoiledTaken: (width) => `der Überschuss deckt einen verschnittenen Streifen von ${width}`,
    spoiledMore: (width, more) => `ein verschnittener Streifen von ${width}: ${more} mehr`,
    none: "–",
    narrowestNote:
      "„Reicht bis hinab zu“ nennt die schmalste nutzbare Breite, bei der dieselbe Menge noch genügt.",
  },

  cutting: {
    over: (number, count) => (count === 1 ? "Zuschneiden" : `Zuschneiden, Stoff ${number} von ${count}`),
    bag: (letter, count, size) => `${letter}: ${count} × ${size}`,
    bags: (bags) => `Beutel: ${bags.join(" · ")}`,
    strips: (ranges) => `Streifen ${ranges.join(", ")} im Schnittplan`,
  },

  labels: {
    title: "Beuteletiketten",
    lead: "Entlang der gestrichelten Linien schneiden und in jeden Beutel eines legen, oder gefaltet in eine Klammer stecken.",
    count: (count) => counted(count, "Teil", "Teile"),
    leadKits: (kits) =>
      `Dieses Blatt ${kits} Mal drucken, einmal für jede Packung. Entlang der gestrichelten Linien schneiden und in jeden Beutel ein Etikett legen.`,
  },

  waste: {
    title: "Verschnitt und Reste",
    both: (bought, sewn) => `${bought}; letzte Spalten: ${sewn}`,
  },

  assumed: {
    title: "Annahmen und Hinweise",
    lead: "Wo die Datei etwas offen lässt, wurde dies angenommen. Passt etwas nicht, in die Datei schreiben und neu planen.",
    notes: "Bitte beachten",
  },

  glossary: {
    title: "Wörter in diesem Buch",
    terms: [
      ["Stoffbreite", /Stoffbreite/, "Von Webkante zu Webkante, so wie der Stoff vom Ballen kommt."],
      [
        "Webkante",
        /webkante/i,
        "Die gewebte Kante an beiden Seiten des Stoffes. Sie wird abgeschnitten und nie mit in den Quilt genäht.",
      ],
      [
        "Nutzbare Breite",
        /nutzbare[rn]? Breite/i,
        "Was von der Breite zwischen den Webkanten bleibt, nach dem Waschen, falls vorher gewaschen wird. Am eigenen Stoff nachmessen.",
      ],
      [
        "Begradigen",
        /begradig/i,
        "Die Schnittkante so abschneiden, dass sie genau rechtwinklig zum Falz oder zur Webkante verläuft.",
      ],
      [
        "Streifen",
        /\bStreifen\b/,
        "Ein Stück, das in einem Zug über die ganze nutzbare Breite geschnitten wird.",
      ],
      [
        "Längsstreifen",
        /Längsstreifen|Streifen .* längs/,
        "Ein Streifen entlang der Webkante. Er dehnt sich am wenigsten, was langen Rändern guttut.",
      ],
      ["Unterteilen", /unterteilen/i, "Einen Streifen quer in Quadrate und Rechtecke schneiden."],
      [
        "Abschnitt",
        /\bAbschnitte?\b/,
        "Ein kurzes Stück von einem Streifen, das noch einmal geschnitten wird.",
      ],
      ["Beschneiden", /beschneid/i, "Einen Streifen oder ein Teil auf ein kleineres Maß schneiden."],
      [
        "Fadenlauf",
        /Fadenlauf/,
        "Die Richtung der Fäden: längs entlang der Webkante, quer von Webkante zu Webkante.",
      ],
      [
        "Noch einmal falten",
        /noch einmal falten/i,
        "Den Falz auf die Webkanten legen, sodass der Stoff in vier Lagen und halb so breit liegt.",
      ],
      [
        "Druck mit einer Richtung",
        /Druck mit einer Richtung|eine Richtung, (?:längs|quer)/,
        "Ein Druck mit oben und unten. Seine Teile dürfen nicht gedreht werden, damit nichts auf dem Kopf steht.",
      ],
      [
        "Druck mit zwei Richtungen",
        /Druck mit zwei Richtungen|zwei Richtungen, (?:längs|quer)/,
        "Ein Druck, der auf dem Kopf genauso aussieht.",
      ],
      [
        "Halbquadrat-Dreieck",
        /Halbquadrat-Dreieck/,
        "Eine quadratische Einheit aus zwei Dreiecken, deren Naht von Ecke zu Ecke läuft.",
      ],
      [
        "Fliegende Gänse",
        /Fliegende Gänse/i,
        "Ein Rechteck aus einem großen Dreieck, der Gans, und zwei kleinen, dem Himmel.",
      ],
      ["Einheit", /\bEinheit(?:en)?\b/, "Ein kleines genähtes Teil; mehrere ergeben einen Block."],
      ["Block", /\bBl[oö]cke?\b/, "Der Teil, der sich wiederholt und das Quilttop ergibt."],
      [
        "In Kette nähen",
        /in Kette nähen/i,
        "Ein Paar nach dem anderen nähen, ohne den Faden dazwischen abzuschneiden, und danach trennen.",
      ],
      [
        "Ineinandergreifen",
        /ineinandergreif|greifen/i,
        "Nähte greifen ineinander, wenn ihre Zugaben am Treffpunkt nach entgegengesetzten Seiten liegen: Sie rasten ein und liegen flach.",
      ],
      ["Bügeln", /bügeln/i, "Das Eisen aufsetzen und abheben, ohne zu schieben, damit sich nichts verzieht."],
      ["Zwischenstreifen", /Zwischenstreifen/, "Streifen zwischen den Blöcken."],
      ["Eckquadrat", /Eckquadrat/, "Das Quadrat, an dem Zwischenstreifen oder Ränder zusammentreffen."],
      ["Rand", /\bR[aä]nd(?:er)?\b/, "Ein Rahmen aus Stoff um die Mitte des Quilts."],
      [
        "Einfassung",
        /Einfassung/,
        "Der schmale Streifen, oft doppelt gelegt, der ringsum die offenen Kanten deckt; auch Binding genannt.",
      ],
      ["Rückseite", /Rückseite/, "Der Stoff auf der Rückseite des Quilts."],
      ["Vlies", /\bVlies\b/, "Die weiche Lage zwischen Top und Rückseite."],
      [
        "Unzerschnittenes Ende",
        /unzerschnittenes Ende/i,
        "Was nach dem letzten Schnitt von der Länge übrig ist.",
      ],
      [
        "Streifenenden",
        /Streifenende/,
        "Was am Ende eines Streifens übrig ist, wenn seine Teile geschnitten sind.",
      ],
      [
        "Bewiesen",
        /\bbewiesen\b/i,
        "Der Plan wurde mit allen Plänen seiner Art verglichen, und keiner braucht weniger. Wo ein Abstand genannt ist, könnte es einen so viel kürzeren Plan geben.",
      ],
    ],
  },

  making: {
    bags: "Beutel",
    titles: { blocks: "Blöcke", setting: "Reihen und Top" },
  },
  pictureOf: "Bilder zu diesem Schritt",
};
