import type { Words } from "../../types.ts";
import { counted, plural } from "../language.ts";

function kitRange(first: number, last: number): string {
  if (first === last) return String(first);
  return `${first} ${last === first + 1 ? "und" : "bis"} ${last}`;
}

/** The words of the tables that set choices side by side. */
export const choices: Words["choices"] = {
  fullWidth: "Stoffbreite",
  kits: {
    inBag: (letter, count, size, label) =>
      `[${letter}] ${count} Stück ${size}${label === "" ? "" : `, ${label}`}`,
    title: (name, kits) => `${kits} Materialpackungen ${name}`,
    columns: {
      fabric: "Stoff",
      together: "Einkauf, zusammen zugeschnitten",
      one: "Eine Packung allein",
      costTogether: "Preis zusammen",
      costSeparate: "Preis einzeln",
    },
    separate: (kits) => `${kits} einzeln gekauft`,
    saved: (amount) => `Zusammen zuzuschneiden spart ${amount}.`,
    shares:
      "Ganze Streifen für ganze Packungen, ohne mehr Stoff: Diese Streifen zuschneiden, sie füllen diese Beutel.",
    filled: (first, last, ranges, strips) =>
      `${plural(last - first + 1, "Packung", "Packungen")} ${kitRange(first, last)}: ${plural(strips, "Streifen", "Streifen")} ${ranges.join(", ")}`,
    filledFrom: (first, last, bolts) =>
      `${plural(last - first + 1, "Packung", "Packungen")} ${kitRange(first, last)}: ${bolts
        .map(({ bolt, ranges }) => `Streifen ${ranges.join(", ")} von Ballen ${bolt}`)
        .join("; ")}`,
    dealt: (fabrics) => `Nach Anzahl verteilt, wenn alles zugeschnitten ist: ${fabrics.join(", ")}.`,
    inYours:
      "Steht in der Packung; zuerst nachzählen. Quadrate, die diagonal geschnitten werden, können als Hälften oder Viertel im Beutel liegen.",
    bag: (kits) => `In jede der ${kits} Packungen:`,
    sort: (number, { heading, finished, colourway }) =>
      `Packung ${number}: ${heading === "" || heading === finished ? finished : `${heading}, ${finished}`}${colourway === "" ? "" : `, ${colourway}`}`,
    oneOf: (number) => `Packung ${number} allein`,
    bagOf: (sort, kits) =>
      kits === 1 ? `${sort}. In ihre Beutel:` : `${sort}. In die Beutel jeder der ${kits}:`,
    sortColumns: { kit: "Packung", count: "Anzahl", share: "Stoff für eine", alone: "Eine allein gekauft" },
    shareRule: "Der Preis eines Stoffes verteilt sich nach dem, was jede Packung davon bekommt.",
    each: (kits) => kits.map(({ number, each }) => `${each} in jede Packung ${number}`).join(", "),
    none: "nichts",
  },
  sources: {
    of: (count) => `${count} Stück`,
    stash: "Aus dem Vorrat",
    fatQuarters: "Fat Quarters einkaufen",
    total: "zusammen",
    pieces: (count) => counted(count, "Stück", "Stücke"),
    take: (stash) => `Wenn es zugeschnitten ist: crossgrain stash take PLAN.json --stash ${stash}`,
  },
  widths: {
    title: (name) => `${name} bei einer anderen Stoffbreite`,
    columns: ["Stoff", "Breite laut Datei", "Einkauf", "Probierte Breite", "Einkauf", "Unterschied"],
    same: "keiner",
    changed: (amount, more, price) => {
      const way = more ? "mehr" : "weniger";
      if (amount === "") return `${price} ${way}`;
      return `${amount} ${way}${price === "" ? "" : ` (${price})`}`;
    },
  },
  drawer: {
    leftFrom: (plan) => `übrig von ${plan}`,
    columns: { fabric: "Stoff", count: "Anzahl", size: "Breite x Länge", note: "Notiz" },
    empty: "Der Vorrat ist leer.",
    area: { in: "Quadratyard", cm: "Quadratmeter" },
    holds: (count, area) => `${counted(count, "Stück", "Stücke")} Stoff, ${area}.`,
  },
  suits: {
    columns: ["Stoff", "Der Vorrat deckt", "Stücke genommen", "Noch zu kaufen", "Ohne Vorrat"],
    title: (name) => `Was der Vorrat von ${name} deckt`,
    covers: { all: "alles", partly: "einen Teil", nothing: "nichts" },
  },
};
