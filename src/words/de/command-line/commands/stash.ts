import type { Words } from "../../../types.ts";

export const stash: Words["commandLine"]["stash"] = {
  theTableOfYour: "die Tabelle des eigenen Stoffes (CSV)",
  howManyToAdd: "wie viele dazukommen",
  aNoteKeptWith: "eine Notiz dazu",
  howManyChangesTo: "wie viele Änderungen zurückgenommen werden",
  measureOfNumbersWritten: "Maßeinheit von Zahlen, die ohne eine geschrieben sind",
  addedTo: (file, value) => `In ${file} aufgenommen:
${value}\n`,
  nothing: (title) => `${title}: nichts`,
  takenOutOf: (file) => `Aus ${file} herausgenommen`,
  offcutsPutIn: "Reste hineingelegt",
  theTableAsIt: (file) => `Die Tabelle von vorher ist ${file}.bak\n`,
  errorStepsIsA: (wanted) => `Fehler: --steps ist eine ganze Zahl, zum Beispiel 2; es ist ${wanted}\n`,
  change: (count) => `${count} ${count === 1 ? "Änderung" : "Änderungen"}`,
  ofTakenBackBefore: (changes, file, changes2) =>
    `${changes} von ${file} zurückgenommen; davor ${changes2}, die es auch noch sein könnten.\n`,
  theTableAsIt2: (file) => `Die Tabelle, wie sie bis eben war, ist ${file}.undone\n`,
  theClothInYour: "der Stoff im eigenen Vorrat: zeigen, dazulegen, herausnehmen, was ein Plan verwendet",
  keepsATableThat:
    "Führt eine Tabelle, die sich auch in der Tabellenkalkulation öffnet: fabric, width, length, how many, note. Die Maße sind die nutzbaren, Breite quer zum Stoff, Länge entlang der Webkante. `show` zeigt sie; `add STOFF MASS` legt Stoff dazu; `take PLAN` nimmt heraus, was ein mit --stash gemachter Plan verwendet, und legt lohnende Reste hinein; `suits DATEI` sagt, welche Stoffe eines Quilts der Vorrat deckt; `undo` nimmt die letzte Änderung von add oder take zurück, bis zu neun. Die Tabelle wird ganz geändert oder gar nicht, und die von vorher bleibt daneben als .bak.",
  forAddFabricAnd:
    'bei add: Stoff und Maß, "21 x 18 in", "fat quarter", "1/2 yd" oder "WOF x 20 in"; bei take: plan.json',
  errorStashHasNo: (action, value) => `Fehler: stash kennt kein "${action}". Möglich: \`${value}\`.\n`,
  noMoreWords: "keine weiteren Wörter",
  errorStashTakesSee: (action, wanted) =>
    `Fehler: stash ${action} nimmt ${wanted}. Siehe: crossgrain stash --help\n`,
  examples: [
    'stash add "Nachtmeer" "21 x 18 in" --count 3 --note "blaue Schublade"',
    'stash add "Kreide" "1/2 yd"',
    "stash show",
    "new cut-list > mein-zuschnitt.yaml",
    "stash suits mein-zuschnitt.yaml",
    "plan mein-zuschnitt.yaml --stash vorrat.csv --out meiner",
    "stash take meiner/plan.json",
    "stash undo",
  ],
};
