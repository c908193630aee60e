import type { Words } from "../../../types.ts";

export const goOn: Words["commandLine"]["goOn"] = {
  takeBackWhatWas: "zurücknehmen, was zuletzt gesagt wurde",
  whatIsSaidIs: "das Gesagte ist dasselbe wie letztes Mal und ist noch einmal geschehen",
  thePlanOfWhat: "der Plan für das Übrige: aus dem, was geschnitten, gemessen und verdorben ist",
  sayWhatHasHappened: (factExamples) =>
    `Sagen, was an der Matte geschehen ist, mit den Streifennummern des Schnittplans und den Buchstaben der Beutel. Was übrig ist, wird neu geplant, aus dem, was wirklich da ist: zuerst geschnittene Teile, dann Reste und vorhandener Stoff, und nur was sie nicht hergeben, wird gekauft. Die Beutel behalten ihre Buchstaben. Alles Gesagte wird in work.yaml neben dem Plan aufgehoben; die anderen Dateien des Ordners sind die des neuen Plans. ${factExamples} Hat ein Quilt mehrere Stoffe, mit dem Stoff und einem Doppelpunkt beginnen.`,
  theQuiltOrCut: "der Quilt oder die Zuschnittliste, die geplant wurde",
  whatHasHappenedIvory: 'was geschehen ist: "ivory: cut to strip 6" "40 in wide"',
  kits: (name, quilts) => `${name}, ${quilts} Packungen`,
  errorUndoTakesBack: "Fehler: --undo nimmt zurück, was zuletzt gesagt wurde: daneben nichts Neues sagen.\n",
  errorNothingHasBeen: (factExamples) => `Fehler: Von der Arbeit wurde noch nichts gesagt.
${factExamples}\n`,
  filesWrittenIntoWhat: (length, named, workNamed) =>
    `${length} Dateien geschrieben in ${named}; was gesagt wurde, steht in ${workNamed}\n`,
  examples: [
    "new cut-list > mein-zuschnitt.yaml",
    "plan mein-zuschnitt.yaml --out meiner",
    'go-on mein-zuschnitt.yaml "nacht: cut to strip 1" --out meiner',
    'go-on mein-zuschnitt.yaml "möwen: strip 1 spoiled" --out meiner',
    "go-on mein-zuschnitt.yaml --undo --out meiner",
  ],
};
