import type { Words } from "../../../types.ts";

export const page: Words["commandLine"]["page"] = {
  theDrawingPageDraw: "die Zeichenseite: einen Quilt im Browser zeichnen und sehen, was er braucht",
  writesOneHtmlFile:
    "Schreibt eine HTML-Datei, die sich mit Doppelklick öffnet, aus einem Ordner oder von einem Stick, und kein Netz braucht: kariertes Papier, Einheiten und Stoffe, um einen Quilt zu zeichnen, und daneben der Einkauf. Mit einer Datei öffnet sich die Seite mit diesem Quilt, zum Austeilen in einem Kurs. Die Datei selbst wird nicht geändert.",
  theQuiltToOpen:
    "der Quilt, mit dem sie sich öffnet, YAML oder JSON; keiner: mit einem Bild oder einem leeren Blatt beginnen",
  writtenOpenItWith: (out) => `${out} geschrieben: mit Doppelklick oder im Browser öffnen\n`,
  examples: ["page", "new blocks > mein-quilt.yaml", "page mein-quilt.yaml --out mein-quilt.html"],
};
