import { quote } from "../../../diagnostics/quote.ts";
import type { ReadingFacts } from "../../../diagnostics/reading.ts";
import type { WordsOf } from "../../diagnostics.ts";
import { plural } from "../language.ts";

/** Syntax faults a maker is likely to make, by the YAML reader's own code. */
const FAULTS: Readonly<Record<string, [message: string, hint: string]>> = {
  BAD_INDENT: [
    "Die Einrückung oder eine Klammer passt nicht zu dem, was davor steht.",
    "Schlüssel einer Ebene beginnen in derselben Spalte; jedes `[` und `{` braucht sein Gegenstück.",
  ],
  BAD_SCALAR_START: [
    "Dieser Wert beginnt mit einem Zeichen, das eine eigene Bedeutung hat.",
    "Den Wert in Anführungszeichen setzen.",
  ],
  BLOCK_AS_IMPLICIT_KEY: [
    "In dieser Zeile steht ein zweiter Doppelpunkt, oder die Zeile davor ist nicht zu Ende.",
    "Einen Text, in dem ein Doppelpunkt steht, in Anführungszeichen setzen.",
  ],
  MISSING_CHAR: [
    "Ein Anführungszeichen, ein Doppelpunkt oder eine Klammer fehlt.",
    "Prüfen, ob jedes Anführungszeichen und jede Klammer ihr Gegenstück hat.",
  ],
  MULTILINE_IMPLICIT_KEY: [
    "In dieser Zeile steht kein Doppelpunkt nach dem Schlüssel.",
    "`Schlüssel: Wert` schreiben, mit einem Leerzeichen nach dem Doppelpunkt.",
  ],
  MULTIPLE_DOCS: [
    "Hier beginnt ein zweites Dokument.",
    "Nur eine Zuschnittliste in einer Datei, und die Zeile `---` weglassen.",
  ],
  UNEXPECTED_TOKEN: [
    "Etwas hier gehört nicht zum Wert davor.",
    "Stehen in einem Text Anführungszeichen, den ganzen Text in einfache setzen: '2 1/2\" x 4'.",
  ],
};

export const reading: WordsOf<ReadingFacts> = {
  aliasUsed: ({ found }) => ({
    message: `${quote(found)} ist eine Abkürzung (Anker, Alias oder Tag), die hier nicht gelesen wird.`,
    hint: "Die Werte ausschreiben; was für jeden Stoff gilt, steht unter `all-fabrics`.",
  }),

  fileEmpty: () => ({
    message: "In dieser Datei steht nichts.",
    hint: "Eine Zuschnittliste beginnt mit `fabrics:` und einer Liste davon, jeder mit `name` und `pieces`.",
  }),

  fileNotMapping: ({ found }) => ({
    message: `Die Datei ist ${found === "list" ? "eine Liste" : "ein einzelner Text oder eine Zahl"}; sie sollte aus Schlüsseln mit Werten bestehen.`,
    hint: "Mit Zeilen wie `name: Hafenlichter` und `fabrics:` beginnen.",
  }),

  keyRepeated: ({ key }) => ({
    message: `${quote(key)} steht hier zweimal.`,
    hint: "Eins von beiden behalten.",
  }),

  moreProblems: ({ count }) => ({
    message: `${plural(count, "Ein weiterer Fehler ist", `${count} weitere Fehler sind`)} nicht aufgeführt.`,
    hint: "Zuerst die oben genannten beheben.",
  }),

  nestedTooDeep: () => ({
    message: "Klammern oder Listen stecken hier zu tief ineinander.",
    hint: "Eine Zuschnittliste braucht vier Ebenen: Datei, Stoffe, Teile und die Felder eines Teils.",
  }),

  tabIndent: () => ({
    message: "Diese Zeile ist mit einem Tabulator eingerückt.",
    hint: "Mit Leerzeichen einrücken, zwei für jede Ebene; die meisten Editoren können Tabulatoren umwandeln.",
  }),

  yamlSyntax: ({ fault, said }) => {
    const [message, hint] = FAULTS[fault] ?? [
      `Das lässt sich nicht als YAML lesen: ${said}.`,
      "Die Zeilen ringsum mit einer Beispieldatei vergleichen.",
    ];
    return { message, hint };
  },
};
