import type { Words } from "../../../types.ts";

export const plan: Words["commandLine"]["plan"] = {
  buyListCuttingPlan: "Einkaufsliste, Schnittplan, Zeichnungen und Schritte, in einen Ordner geschrieben",
  worksOutWhatTo:
    "Rechnet aus, was zu kaufen ist und wie es mit dem geringsten Verschnitt zugeschnitten wird, gibt die Einkaufsliste, die Schritte und den Verbleib des Stoffes aus und schreibt sie in einen Ordner (eigene Dateien im Weg werden genannt und nicht überschrieben), zusammen mit einem Schnittplan für jeden Stoff (SVG), einem Werkbuch zum Arbeiten (book.html, auch zum Drucken), bei einem Quilt der Anleitung zum Austeilen oder Verkaufen (pattern.html) und dem Nähen (sewing.txt, und Blöcke, Reihen, Bügelplan, Ränder und Fertigstellen als SVG), Tabellen (CSV) und dem ganzen Plan (plan.json). Mit --json wird stattdessen der Plan ausgegeben, und Dateien werden nur geschrieben, wenn --out einen Ordner nennt.",
  sizesOfThePattern:
    "Größen, für die die Anleitung neben der der Datei gilt: Blöcke (3x3,4x5), fertige Größen (60 x 80 in, throw, lap, crib) oder Betten (queen); jede wird ganz geplant",
  sizesInTheFile: "die, die `pattern: sizes` in der Datei nennt",
  theCutListYaml: "die Zuschnittliste, YAML oder JSON",
  filesWrittenInto: (length, named) => `${length} Dateien geschrieben in ${named}\n`,
  examples: [
    "new cut-list > mein-zuschnitt.yaml",
    "plan mein-zuschnitt.yaml",
    "plan mein-zuschnitt.yaml --out ~/quilts/meiner --prefer sparing",
    "plan mein-zuschnitt.yaml --kits 12 --out packungen",
    "plan mein-zuschnitt.yaml --pdf --paper letter --out gedruckt",
    "new blocks > mein-quilt.yaml",
    'plan mein-quilt.yaml --kits "4 of 3x3, 5 of lap" --out kurs',
    "plan mein-quilt.yaml --sizes 3x3,4x5 --out zum-verkauf",
    "plan mein-zuschnitt.yaml --png 1600 --markdown --out bilder",
  ],
};
