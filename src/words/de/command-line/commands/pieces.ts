import type { Words } from "../../../types.ts";

export const pieces: Words["commandLine"]["pieces"] = {
  usableWidthOfThe: "nutzbare Breite des Stoffes",
  inOrCmIn: "42 in, oder 107 cm bei Zentimetern",
  measureOfNumbersWritten: "Maßeinheit von Zahlen, die ohne eine geschrieben sind",
  keepEveryPieceThe: "jedes Teil so lassen, wie es geschrieben ist, wie bei einem Druck mit Richtung",
  square: (value) => `${value} square`,
  yourPieces: "Eigene Teile",
  aQuickAnswerWith: "eine schnelle Antwort ohne Datei: Maße und Anzahlen als Argumente",
  worksOutHowMuch:
    'Rechnet aus, wie viel von einem Stoff die genannten Teile hergibt und wie er zugeschnitten wird. Jedes Teil ist MASS:ANZAHL in Anführungszeichen, Zuschnittmaß mit Nahtzugabe: "2 1/2 x 4 1/2:24", oder "4 1/2:20" für Quadrate.',
  eachAsSizeCount: 'jedes als MASS:ANZAHL, zum Beispiel "2 1/2 x 4 1/2:24"',
  errorIsNotSize: (word) =>
    `Fehler: "${word}" ist nicht MASS:ANZAHL. Zum Beispiel "2 1/2 x 4 1/2:24" oder "4 1/2:20" schreiben.\n`,
  inText: "42 in",
  cm: "107 cm",
  commandLine: "Befehlszeile",
  examples: [
    'pieces "2 1/2 x 4 1/2:24" "4 1/2:20" --width 42in',
    'pieces "6,5 x 11,5:40" --unit cm --width 107cm --fixed',
  ],
};
