import type { Words } from "../types.ts";

/** What the columns of the cut list say of a bag besides its size. The diagonal lies as the cloth does. */
export const cutsTable: Words["tables"]["cuts"] = {
  headings: (unit) => [
    "Stoff",
    "Buchstabe",
    "Bezeichnung",
    "Anzahl",
    `quer (${unit})`,
    `längs (${unit})`,
    "Drehung",
    "Druck",
    "Zuschnitt",
    "weiter geschnitten",
    "Diagonale",
    "Notiz",
  ],

  print: {
    none: () => "keine Richtung",
    "one-way": (axis) => (axis === "along" ? "Motiv nach oben" : "Motiv nach rechts"),
    "two-way": (axis) => (axis === "along" ? "verläuft längs" : "verläuft quer"),
  },
  cut: { strips: "in Streifen", lengthwise: "längs", either: "beides möglich" },
  subcut: {
    none: "",
    "once-diagonal": "diagonal halbiert",
    "twice-diagonal": "auf beiden Diagonalen geviertelt",
    template: "nach der Schablone",
  },
  aslant: (angle, by, step, height) => {
    const from = `schräg aus Streifen ${height}`;
    const at = angle === null ? from : `${from}, ${angle} Grad`;
    return {
      points: `${at}, von Spitze zu Spitze`,
      edge: `${at}, alle ${step} an der längeren Kante`,
      square: `${at}, alle ${step} rechtwinklig zum Schnitt`,
      marks: `${at}, Markierungen alle ${step}`,
      rectangles: `${at}, Rechtecke ${step} lang, von Ecke zu Ecke geschnitten`,
      template: `${at}, nach der Schablone`,
    }[by];
  },
  diagonal: ({ subcut, diagonal }) =>
    subcut !== "once-diagonal" || diagonal === "any"
      ? ""
      : diagonal === "rising"
        ? "links unten nach rechts oben"
        : "links oben nach rechts unten",
};

/** How the cells of the table say what the record holds. */
export const unitsTable: Words["tables"]["units"] = {
  header: (unit) => [
    ...[
      "Einheit",
      "was",
      "Methode",
      "nähen",
      "Sätze",
      "übrig",
      `genäht quer (${unit})`,
      `genäht hoch (${unit})`,
    ],
    ...["Stapel", "im Stapel", "Platz", "Stoff", "Beutel", "geschnitten als", "Teile", "Motiv"],
  ],
  part: {
    whole: "ganz",
    template: "nach der Schablone",
    "top-left": "Hälfte, rechter Winkel oben links",
    "top-right": "Hälfte, rechter Winkel oben rechts",
    "bottom-left": "Hälfte, rechter Winkel unten links",
    "bottom-right": "Hälfte, rechter Winkel unten rechts",
    top: "Viertel, lange Seite oben",
    right: "Viertel, lange Seite rechts",
    bottom: "Viertel, lange Seite unten",
    left: "Viertel, lange Seite links",
  },
  heads: ["oben", "rechts oben", "rechts", "rechts unten", "unten", "links unten", "links", "links oben"],
  faceDown: (heads) => `${heads}, von links gesehen`,
  inSet: (role) => `Set: ${role}`,
  strip: (set, number) => `Streifenset ${set}, Streifen ${number}`,
  segments: (count, width, high) => `${count} Abschnitte ${width}, ${high} hoch`,
};

/** The shopping list. */
export const buyTable: Words["tables"]["buy"] = {
  headings: (unit, readyCut, bolts) => [
    "Stoff",
    "kaufen",
    ...(bolts ? ["von jedem Ballen"] : []),
    ...(readyCut ? ["fertig zugeschnitten"] : []),
    `gebrauchte Länge (${unit})`,
    `nutzbare Breite (${unit})`,
    "Preis",
    "Währung",
    "bewiesen",
  ],
  yes: "ja",
  no: "nein",
};
