import { quote } from "../../../diagnostics/quote.ts";
import type { SizeTaken, StashFacts, StashFault } from "../../../diagnostics/stash.ts";
import type { WordsOf } from "../../diagnostics.ts";
import { lengthWhy } from "../length-faults.ts";

const NO_RIGHT = "in ihrem Ordner darf nicht geschrieben werden";

const WHY: Readonly<Record<string, string>> = {
  EACCES: NO_RIGHT,
  EPERM: NO_RIGHT,
  EROFS: "der Datenträger ist schreibgeschützt",
  ENOSPC: "der Datenträger ist voll",
  EDQUOT: "der eigene Anteil am Datenträger ist voll",
  EFBIG: "der Datenträger nimmt keine Datei dieser Größe",
  ENOENT: "ihren Ordner gibt es nicht",
  EISDIR: "es ist ein Ordner",
};

function why(fault: StashFault): string {
  switch (fault.is) {
    case "no-fabric":
      return "sie nennt keinen Stoff";
    case "no-name":
      return "der Stoff hat keinen Namen, der sich in einer Tabelle führen lässt";
    case "count": {
      const range = fault.least === 0 ? `bis ${fault.most}` : `von ${fault.least} bis ${fault.most}`;
      return `die Anzahl ist ${fault.found}; erwartet wird eine ganze Zahl ${range}`;
    }
    case "strips-no-length":
      return fault.example
        ? `"${fault.size}" sagt, wie breit die Streifen sind; gebraucht wird auch, wie lang, etwa 42 x 2 1/2 in`
        : "sie sagt, wie breit ihre Streifen sind, nicht, wie lang";
    case "no-width":
      return "die Breite fehlt";
    case "no-length-given":
      return "die Länge fehlt";
    case "length":
      return `"${fault.text}" ist keine Länge: ${lengthWhy(fault.fault)}`;
    case "size":
      return `"${fault.text}" ist kein Maß: ${lengthWhy(fault.fault)}`;
    case "no-cloth":
      return `"${fault.text}" ist kein Maß eines Stoffes`;
  }
}

/** How it was taken, and how to say it otherwise. */
function takenAs(size: SizeTaken): string {
  const { across, along } = size;
  return size.as === "whole-width"
    ? `die ganze nutzbare Breite, ${across}, mal ${along}. Für eine andere Breite beides schreiben: "40 x ${along}".`
    : `${across} quer zum Stoff und ${along} entlang der Webkante. Andersherum liegt "${size.name}", oder "${along} x ${across}".`;
}

export const stash: WordsOf<StashFacts> = {
  stashRowUnreadable: ({ problem }) => ({
    message: `Diese Zeile wird ausgelassen und bleibt, wie sie ist: ${why(problem)}.`,
    hint: "Eine Zeile hat einen Stoff, seine nutzbare Breite und Länge mit Maßeinheit, und wie viele: sky,21 in,18 in,3",
  }),

  stashNoHeadings: ({ found }) => {
    const seen = found.filter((cell) => cell.trim() !== "");
    const what = seen.length === 0 ? "nichts" : seen.slice(0, 6).map(quote).join(", ");
    return {
      message: `Die erste Zeile sollte die Spalten fabric, width und length nennen; darin steht ${what}.`,
      hint: "Zum Beispiel: fabric,width,length,how many,note",
    };
  },

  stashUnclosed: () => ({
    message:
      "Ein Anführungszeichen, das in oder vor dieser Zeile beginnt, wird nie geschlossen. Nichts wurde gelesen oder geändert.",
    hint: 'Eine Zelle, die mit einem Anführungszeichen beginnt, endet auch mit einem; ein Zollzeichen darin wird doppelt geschrieben: "2 1/2"" wide"',
  }),

  stashMeasureTaken: ({ file, measure }) => ({
    message: `${file}: Zahlen ohne Maßeinheit werden als ${measure} gelesen. Eine Überschrift wie \`width (${measure})\` legt das fest.`,
    hint: "",
  }),

  stashLacks: ({ file, lacking }) => ({
    message: `${file} enthält nicht, was dieser Plan verwendet: ${lacking.map(({ count, fabric, size }) => `${count} × ${fabric} ${size}`).join("; ")}. Nichts wurde geändert.`,
    hint: "Ist es schon herausgenommen? Mit `crossgrain stash show` nachsehen, oder mit --stash neu planen.",
  }),

  stashNearName: ({ fabric, inStash }) => ({
    message: `Im Vorrat gibt es kein ${quote(fabric)}, aber ${quote(inStash)}. Stoff wird verwendet, wo die Namen gleich sind.`,
    hint: "",
  }),

  stashClothUnreadable: ({ problem }) => ({
    message: `Das kann nicht in den Vorrat gelegt werden: ${why(problem)}.`,
    hint: 'Zum Beispiel: crossgrain stash add "sky" "21 x 18 in" --count 3',
  }),

  stashBusy: ({ file, lock }) => ({
    message: `${file} wird gerade von einem anderen Lauf dieses Programms geändert. Nichts wurde geändert.`,
    hint: `Gleich noch einmal versuchen. Läuft kein anderer, ${lock} entfernen.`,
  }),

  stashEdited: ({ file }) => ({
    message: `${file} wird von einem anderen Programm immer wieder gespeichert. Nichts wurde geändert.`,
    hint: "Dort schließen, oder warten, bis gespeichert ist, und den Befehl noch einmal aufrufen.",
  }),

  stashNothingToUndo: ({ file }) => ({
    message: `Es ist keine Änderung von ${file} aufgehoben, die zurückgenommen werden könnte.`,
    hint: "`crossgrain stash add` und `stash take` heben die Tabelle von vorher auf; eine von Hand bearbeitete nicht.",
  }),

  stashSizeTaken: ({ size, taken }) => ({
    message: `${quote(size)} gilt als ${takenAs(taken)}`,
    hint: "",
  }),

  stashNotWritten: ({ file, systemCode }) => ({
    message: `${file} wurde nicht geändert: ${WHY[systemCode] ?? `das System meldet ${systemCode}`}. Sie ist, wie sie war.`,
    hint: "In einen beschreibbaren Ordner kopieren, oder Platz schaffen, und den Befehl noch einmal aufrufen.",
  }),

  planUnreadable: ({ file, found }) => ({
    message: `${file} ist kein Plan dieses Programms: ${
      found === "no-json" ? "es ist kein JSON" : "die ersten Zeilen sagen etwas anderes"
    }.`,
    hint: "Die plan.json nennen, die `crossgrain plan DATEI --stash VORRAT.csv` in ihren Ordner schreibt.",
  }),

  stashFileMissing: ({ file }) => ({
    message: `Es gibt keine Vorratsdatei ${file}.`,
    hint: 'Sie mit --stash nennen, oder eine beginnen: crossgrain stash add "sky" "21 x 18 in" --count 3',
  }),
};
