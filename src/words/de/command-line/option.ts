import type { Words } from "../../types.ts";
import { either } from "../language.ts";

export const option: Words["commandLine"]["option"] = {
  either: (allowed) => either(allowed),
  useOneOf: (value) => `Möglich: ${value}.`,
  useANumberAbove: "Eine Zahl größer als null angeben, zum Beispiel 2 oder 0,5.",
};

/** What stands for the value of an option: `--out <Ordner>`. */
export const values = {
  aim: "Ziel",
  file: "Datei",
  folder: "Ordner",
  kits: "Packungen",
  language: "Sprache",
  length: "Länge",
  mark: "Zeichen",
  names: "Namen",
  number: "Zahl",
  pixels: "Pixel",
  seconds: "Sekunden",
  size: "Größe",
  sizes: "Größen",
  steps: "Schritte",
  style: "Art",
  text: "Text",
  unit: "Einheit",
  way: "Weg",
  width: "Breite",
};
