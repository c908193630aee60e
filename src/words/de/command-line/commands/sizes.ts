import type { Words } from "../../../types.ts";

export const sizes: Words["commandLine"]["sizes"] = {
  measureOfNumbersWritten: "Maßeinheit von Zahlen, die ohne eine geschrieben sind",
  seamAllowance: "Nahtzugabe",
  inOrCm: "1/4 in, oder 0,75 cm",
  distanceBetweenTheMarks: "Abstand der Striche auf dem Lineal",
  inCmOrMm: "1/8 in, 0,25 cm oder 1 mm",
  trueGeometryRoundedUp: "genaue Geometrie, auf die Striche aufgerundet, oder die üblichen Zugaben",
  printAnSvgDrawing:
    "stattdessen eine SVG-Zeichnung ausgeben: die Einheit, oder alle, ungedreht und in ihren Drehungen",
  theOtherRounding: (other) => ` (die andere Rundung: ${other})`,
  x: (value, value2, size, further, other) => `  ${value} x ${value2}  ${size}${further}${other}`,
  makesUnit: "ergibt 1 Einheit",
  makesUnits: (makes) => `ergibt ${makes} Einheiten`,
  trimTheSewnUnit: (trim) => `      die genähte Einheit auf ${trim} beschneiden`,
  finishingSeam: (unit, finished, seamText) => `${unit}, fertig ${finished}, Nahtzugabe ${seamText}`,
  asItsFileNames: "wie ihre Datei sie nennt",
  cutSizesOfA: "Zuschnittmaße einer genähten Einheit für jede Nähweise; ohne Einheit die Liste der Einheiten",
  theSizeIsThe: "Die Größe ist die fertige: `4`, oder `4 x 2` quer und hoch.",
  forExampleFlyingGeese: 'zum Beispiel "flying geese" oder "half-square triangle"',
  finishedSizeX: 'fertige Größe: "4 x 2"',
  thereIsNoUnit: (kind, value) => `Es gibt keine Einheit \`${kind}\`. Bekannt sind hier: ${value}.\n`,
  errorSizesNeedsThe: (kind) =>
    `Fehler: sizes braucht auch die fertige Größe, zum Beispiel: sizes "${kind}" "4 x 2"\n`,
  examples: [
    "sizes",
    'sizes "flying geese" "4 x 2"',
    'sizes "half-square triangle" 10 --unit cm --rounding trade',
    "sizes --picture > einheiten.svg",
  ],
};
