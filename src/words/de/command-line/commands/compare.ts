import type { Words } from "../../../types.ts";

export const compare: Words["commandLine"]["compare"] = {
  yourOwnMinutesFor: (value) =>
    `eigene Minuten für einen Schritt, als seam=0.5,trim=1; Schritte sind \`${value}\``,
  theFileSElse: "die der Datei, sonst übliche; sie stehen bei der Tabelle",
  writeForExampleStrip: (value) => `Zum Beispiel strip=1,seam=0.5 schreiben; Schritte sind \`${value}\`.`,
  waysOfMakingThe: "Nähweisen der Einheiten eines Quilts nebeneinander, jede wirklich geplant",
  plansTheWholeQuilt:
    "Plant den ganzen Quilt mit jeder Methode jeder Art Einheit, mit Streifensets und einzeln, und nennt, was jede braucht: Stoff und Preis, Streifen, Unterteilungen, Nähte, Schrägkanten, Beschneiden, abgeschnittene Ecken, ob Drucke ihre Richtung behalten, und eine Schätzung der Zeit; dann die beste Verbindung, und ob sie bewiesen ist. Schreibt ein Bild der Wahl (compare.svg). Mit --json wird der Vergleich als JSON ausgegeben, und das Bild nur geschrieben, wenn --out einen Ordner nennt.",
  theQuiltFileYaml: "die Quiltdatei, YAML oder JSON",
  planningEachWayOf: (done, of) => `Jede Nähweise wird geplant: ${done} von höchstens ${of}`,
  compareSvgWrittenInto: (named) => `compare.svg geschrieben in ${named}\n`,
  examples: [
    "new blocks > mein-quilt.yaml",
    "compare mein-quilt.yaml",
    "compare mein-quilt.yaml --minutes seam=0.5,trim=1 --out ~/quilts/wege",
  ],
};
