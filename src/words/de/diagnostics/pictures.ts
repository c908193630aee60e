import type { PicturesFacts } from "../../../diagnostics/pictures.ts";
import type { WordsOf } from "../../diagnostics.ts";

/** Letters and names told one by one; the rest are counted. */
const MOST = 3;
const MOST_LETTERS = 12;
const LONGEST = 40;

const shortened = (name: string): string =>
  Array.from(name).length > LONGEST ? `${Array.from(name).slice(0, LONGEST).join("")}…` : name;

const andMore = (count: number): string => (count > 0 ? ` und ${count} weitere` : "");

export const pictures: WordsOf<PicturesFacts> = {
  fontUnreadable: ({ path, exists }) => ({
    message: `Die Schrift ${path} kann nicht verwendet werden: ${
      exists
        ? "es ist keine TrueType- oder OpenType-Schrift"
        : "es gibt keine solche Datei, oder sie darf nicht gelesen werden"
    }.`,
    hint: "Eine Datei nennen, die auf .ttf, .otf oder .ttc endet, zum Beispiel --font ~/fonts/NotoSansJP-Regular.ttf",
  }),

  lettersWithoutFont: ({ names, letters }) => {
    const quoted = names.slice(0, MOST).map((name) => `„${shortened(name)}“`);
    const some = letters.slice(0, MOST_LETTERS).join(" ");
    return {
      message: `Keine vorhandene Schrift hat diese Buchstaben: ${some}${andMore(letters.length - MOST_LETTERS)}. Sie stehen in ${quoted.join(", ")}${andMore(names.length - MOST)}. In den PDF- und PNG-Dateien steht ▯ für jeden davon; die Webseite und die SVG-Zeichnungen haben die Namen, wie sie geschrieben sind.`,
      hint: "Eine Schrift dafür installieren, oder ihre Datei nennen: --font ~/fonts/NotoSansJP-Regular.ttf",
    };
  },

  notADrawing: ({ file }) => ({
    message: `${file} ist keine SVG-Zeichnung.`,
    hint: "Zuerst planen, dann eine Zeichnung des Plans nennen, zum Beispiel crossgrain picture out/tide-pool/cut-1-night-sea.svg --width 1600",
  }),

  noPainter: () => ({
    message:
      "Es wurden keine PNG-Bilder gemacht: Auf diesem Rechner läuft keines der beiden Programme, die sie zeichnen.",
    hint: "Alles andere ist geschrieben; die SVG-Zeichnungen öffnet jeder Browser. Für Bilder noch einmal installieren: npm install @resvg/resvg-wasm",
  }),
};
