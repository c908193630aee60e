import type { Words } from "../../types.ts";

export const asking: Words["commandLine"]["asking"] = {
  cutSoManyQuilts: "so viele Quilts zusammen zuschneiden, als Materialpackungen für einen Kurs",
  cutKitsOfSorts:
    "Materialpackungen für einen Kurs zusammen zuschneiden: wie viele (12), solche in mehreren Größen und Farbstellungen (4 of 3x3, 5 of lap in evening) oder file für die der Datei",
  kitsOrSorts: (most) =>
    `Die Zahl der Packungen ist ganz, von 1 bis ${most}, zum Beispiel 12; verschiedene heißen zum Beispiel "4 of 3x3, 5 of lap in evening", die der Datei file.`,
  notWithSorts: (option) => `Fehler: ${option} passt nicht zu verschiedenen Materialpackungen.\n`,
  oneQuilt: "ein Quilt",
  kitsAreAWhole: (most) => `Die Zahl der Packungen ist ganz, von 1 bis ${most}, zum Beispiel 12.`,
  tryAnotherUsableWidth: "eine andere nutzbare Stoffbreite probieren, anstelle jeder bis 60 in",
  takeEveryBoltTo: "jeden Ballen nach dieser Länge enden lassen: kein Streifen liegt über seinem Ende",
  boltAsTheFileSays: "wie in der Datei, sonst 15 yd oder 15 m",
  boltIsNotA: (typed, message) => `--bolt "${typed}" ist keine Länge: ${message}`,
  boltIsNoLength: (typed) => `--bolt ${typed} ist keine Ballenlänge; zum Beispiel --bolt 12yd`,
  asTheFileSays: "wie in der Datei",
  useTheClothOf: "zuerst den Stoff dieser Tabelle verwenden (CSV)",
  allIsBought: "alles wird gekauft",
  takeEveryColourFrom:
    "jede Farbe aus Fat Quarters nehmen (18 x 21 in, oder 50 x 55 cm), wo ihre Teile auf eines passen",
  widthIsNotA: (typed, message) => `--width "${typed}" ist keine Länge: ${message}`,
  widthIsNoWidth: (typed) => `--width ${typed} ist keine Stoffbreite`,
};
