import { quote } from "../../../diagnostics/quote.ts";
import type { ReadingFacts } from "../../../diagnostics/reading.ts";
import type { WordsOf } from "../../diagnostics.ts";

/** Syntax faults a maker is likely to make, by the YAML reader's own code. */
const FAULTS: Readonly<Record<string, [message: string, hint: string]>> = {
  BAD_INDENT: [
    "The indentation or a bracket does not match what comes before it.",
    "Keys of one level start in the same column; every `[` and `{` needs its partner.",
  ],
  BAD_SCALAR_START: [
    "This value starts with a sign that has a meaning of its own.",
    "Put the value in quotes.",
  ],
  BLOCK_AS_IMPLICIT_KEY: [
    "There is a second colon in this line, or the line before it has no end.",
    "Put a text that has a colon in it in quotes.",
  ],
  MISSING_CHAR: [
    "A quote, colon or bracket is missing.",
    "Check that every quote and bracket has its partner.",
  ],
  MULTILINE_IMPLICIT_KEY: [
    "This line has no colon after its key.",
    "Write `key: value`, with a space after the colon.",
  ],
  MULTIPLE_DOCS: ["A second document starts here.", "Keep one cut list to a file, and drop the line `---`."],
  UNEXPECTED_TOKEN: [
    "Something here does not belong to the value before it.",
    "If a text has quotes in it, put the whole text in single quotes: '2 1/2\" x 4'.",
  ],
};

export const reading: WordsOf<ReadingFacts> = {
  aliasUsed: ({ found }) => ({
    message: `${quote(found)} is shorthand (an anchor, alias or tag) that is not read here.`,
    hint: "Write the values out; what holds for every fabric goes under `all-fabrics`.",
  }),

  fileEmpty: () => ({
    message: "There is nothing in this file.",
    hint: "A cut list starts with `fabrics:` and a list of them, each with `name` and `pieces`.",
  }),

  fileNotMapping: ({ found }) => ({
    message: `The file is ${found === "list" ? "a list" : "one text or number"}; it should be keys with values.`,
    hint: "Start with lines such as `name: Harbour lights` and `fabrics:`.",
  }),

  keyRepeated: ({ key }) => ({
    message: `${quote(key)} is written twice here.`,
    hint: "Keep one of the two.",
  }),

  moreProblems: ({ count }) => ({
    message: `${count} more ${count === 1 ? "problem is" : "problems are"} not listed.`,
    hint: "Mend those above first.",
  }),

  nestedTooDeep: () => ({
    message: "Brackets or lists lie too deep inside one another here.",
    hint: "A cut list needs four levels: file, fabrics, pieces, and the fields of a piece.",
  }),

  tabIndent: () => ({
    message: "This line is indented with a tab.",
    hint: "Indent with spaces, two for each level; most editors can turn tabs into spaces.",
  }),

  yamlSyntax: ({ fault, said }) => {
    const [message, hint] = FAULTS[fault] ?? [
      `This cannot be read as YAML: ${said}.`,
      "Compare the lines around it with an example file.",
    ];
    return { message, hint };
  },
};
