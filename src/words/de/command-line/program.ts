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
};
