import type { Words } from "../../../types.ts";

export const savings: Words["commandLine"]["savings"] = {
  writeTheFileWith: "die Datei mit dieser Änderung der Liste schreiben, in die Datei, die --out nennt",
  useANumberOf: "Eine Nummer der Liste angeben, zum Beispiel 1.",
  whereToWriteThe: "wohin die geänderte Datei geschrieben wird",
  whatWouldSaveChanges:
    "was sparen würde: Änderungen an einem Quilt, die weniger Stoff kaufen, jede wirklich geplant",
  plansTheFileWith:
    "Plant die Datei mit je einer Änderung und nennt die, die weniger kaufen, die größte Ersparnis zuerst: Streifen noch einmal geschnitten, eine andere Methode für eine Einheit, ein Druck, der gedreht werden darf, Blöcke alle gleich herum, ein Rand entlang der Webkante oder zusammengenäht, der nächste schmalere Rand, Zwischenstreifen oder Block, der weniger kauft. Die Zeichenseite bietet dieselbe Liste. Mit --take wird eine Änderung gemacht: Die Datei wird mit ihr kopiert, Kommentare und Reihenfolge bleiben. Die eigene Datei wird nicht geändert.",
  theQuiltFileYaml: "die Quiltdatei, YAML oder JSON",
  errorTakeAndOut:
    "Fehler: --take und --out gehören zusammen. Zum Beispiel: --take 1 --out mein-quilt-weniger.yaml\n",
  planningEachChangeOf: (done, of) => `Jede Änderung wird geplant: ${done} von höchstens ${of}`,
  errorThereIsNo: (take, length) =>
    `Fehler: Änderung ${take} gibt es in der Liste nicht; sie hat ${length}.\n`,
  written: (out, value) => `${out} geschrieben: ${value}\n`,
  examples: [
    "new blocks > mein-quilt.yaml",
    "savings mein-quilt.yaml",
    "savings mein-quilt.yaml --take 1 --out mein-quilt-weniger.yaml",
  ],
};
