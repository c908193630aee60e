import type { Words } from "../../../types.ts";

export const buy: Words["commandLine"]["buy"] = {
  oneTableForSeveral:
    "eine Tabelle für mehrere Größen: Blöcke (3x3,4x5), fertige Größen (60 x 80 in, throw, lap, crib) oder Betten (queen drop 12 in at sides and foot)",
  theSizeOfThe: "die Größe der Datei",
  printTheListOr:
    "die Liste, oder die Tabelle mehrerer Größen, als CSV für Tabellenkalkulation und Satz ausgeben",
  planningEachSizeOf: (done, of) => `Jede Größe wird geplant: ${done} von ${of}`,
  theShoppingListHow: "die Einkaufsliste: wie viel von jedem Stoff zu verlangen ist",
  theCutListYaml: "die Zuschnittliste, YAML oder JSON",
  errorSizesDoesNot: (value) =>
    `Fehler: --sizes verträgt sich nicht mit ${value}: immer nur eins davon verlangen.\n`,
  examples: [
    "new blocks > mein-quilt.yaml",
    "buy mein-quilt.yaml",
    'buy mein-quilt.yaml --sizes "3x3, 48 x 60 in, twin drop 12 in"',
  ],
};
