import type { Words } from "../../types.ts";

export const man: Words["commandLine"]["man"] = {
  withoutIt: (standard) => ` Ohne diese Option: ${standard}.`,
  forExample: "Zum Beispiel:",
  theFileHasErrors: "die Datei hat Fehler, oder eine Datei konnte nicht gelesen oder geschrieben werden",
  theCommandLineIs: "die Befehlszeile ist falsch",
  noPlanIsPossible: "kein Plan ist möglich, und das ist bewiesen",
  noPlanWasFound: "kein Plan wurde gefunden; es kann einen geben",
  aFaultOfThis: "ein Fehler dieses Programms, oder die Ausgabe konnte nicht geschrieben werden",
  stoppedByASecond: "durch ein zweites Strg-C beendet",
  thCrossgrainCrossgrainUser: (version) => `.TH CROSSGRAIN 1 "" "crossgrain ${version}" "Benutzerbefehle"`,
  shName: ".SH BEZEICHNUNG",
  crossgrainFabricToBuy: "crossgrain \\- Stoffbedarf und Schnittplan für Patchworkquilts",
  shSynopsis: ".SH ÜBERSICHT",
  bCrossgrain: ".B crossgrain",
  iCommand: ".I Befehl",
  shDescription: ".SH BESCHREIBUNG",
  aFileOfReads:
    "Heißt die DATEI \\-, wird die Standardeingabe gelesen. Die Mengen sind Schätzungen: vor dem Zuschneiden nachprüfen.",
  shCommands: ".SH BEFEHLE",
  shExitStatus: ".SH RÜCKGABEWERT",
};
