import type { Words } from "../../types.ts";

const WHY: Readonly<Record<string, string>> = {
  ENOSPC: "der Datenträger ist voll",
  EIO: "der Datenträger antwortet nicht",
  EDQUOT: "der eigene Anteil am Datenträger ist voll",
};

/** What is told where nothing could be done: the output was not taken, or the program itself went wrong. */
export const unwritten: Words["commandLine"]["unwritten"] = {
  output: (systemCode) =>
    `Fehler: Die Ausgabe konnte nicht geschrieben werden: ${WHY[systemCode] ?? "das System meldet"} (${systemCode}). Was davon da ist, ist nicht ganz.\n`,
  fault: "Fehler",
  ourFault: (what) => `In Crossgrain selbst ging etwas schief, nicht in der eigenen Datei: ${what}\n`,
  report: "Nichts wurde geschrieben. Bitte diese Zeile zusammen mit der Datei und dem Befehl melden.\n",
};
