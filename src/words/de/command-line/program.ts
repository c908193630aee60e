import type { Words } from "../../types.ts";

export const program: Words["commandLine"]["program"] = {
  toBeginCrossgrainNew: `
Zum Anfangen: crossgrain new blocks > mein-quilt.yaml, dann crossgrain plan mein-quilt.yaml

Heißt die DATEI -, wird die Standardeingabe gelesen. Die Mengen sind Schätzungen: vor dem Zuschneiden nachprüfen.
Endet mit 0, wenn alles getan ist, 1, wenn die Datei Fehler hat, 2 bei einer falschen Befehlszeile,
3, wenn kein Plan möglich ist (bewiesen), 4, wenn keiner gefunden wurde, 70 bei einem Fehler dieses Programms.`,
  withoutIt: (help, standard) => `${help} (ohne diese Option: ${standard})`,
  forExample: (examples) => `
Zum Beispiel:
${examples}`,
  printTheVersion: "die Version ausgeben",
  printThisHelp: "diese Hilfe ausgeben",
  helpCommand: "help [Befehl]",
  helpForACommand: "Hilfe zu einem Befehl",
  seeCrossgrainHelp: (value) => `Siehe: crossgrain ${value} --help`,
  seeCrossgrainHelp2: "Siehe: crossgrain --help",
  headings: {
    "Usage:": "Aufruf:",
    "Arguments:": "Angaben:",
    "Options:": "Optionen:",
    "Commands:": "Befehle:",
  },
  usage: (names) => ["[Optionen]", ...names].join(" "),
  usageOfAll: "[Optionen] [Befehl]",
  argumentNames: {
    action: "Tun",
    drawings: "Zeichnungen",
    facts: "Tatsachen",
    file: "Datei",
    kind: "Art",
    size: "Maß",
    sizes: "Maße",
    unit: "Einheit",
    words: "Wörter",
  },
  unknownOption: (flag, meant) =>
    `Fehler: unbekannte Option '${flag}'${meant === null ? "" : `\n(Ist ${meant} gemeint?)`}`,
  unknownCommand: (name, meant) =>
    `Fehler: unbekannter Befehl '${name}'${meant === null ? "" : `\n(Ist ${meant} gemeint?)`}`,
  missingArgument: (name) => `Fehler: die Angabe '${name}' fehlt`,
  optionWithoutArgument: (flags) => `Fehler: zu Option '${flags}' fehlt die Angabe`,
  tooManyArguments: (command, expected, got) =>
    `Fehler: zu viele Angaben für '${command}': erwartet ${expected === 0 ? "keine" : expected}, gefunden ${got}.`,
  argumentInvalid: (flags, typed, why) => `Fehler: '${typed}' ist keine Angabe für Option '${flags}'. ${why}`,
};

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
