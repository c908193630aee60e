import { quote } from "./quote.ts";
import type { Diagnostic, Place } from "./types.ts";

/** Where in the file a diagnostic speaks of. */
export interface InFile {
  path: string;
  at: Place | null;
}

function error(code: string, where: InFile, message: string, hint: string): Diagnostic {
  return { code, severity: "error", message, hint, path: where.path, at: where.at };
}

/** Anchors, aliases and tags can make a small file mean an endless one. */
export function aliasUsed(where: InFile, found: string): Diagnostic {
  return error(
    "ALIAS-USED",
    where,
    `${quote(found)} is shorthand (an anchor, alias or tag) that is not read here.`,
    "Write the values out; what holds for every fabric goes under `all-fabrics`.",
  );
}

export function fileEmpty(where: InFile): Diagnostic {
  return error(
    "FILE-EMPTY",
    where,
    "There is nothing in this file.",
    "A cut list starts with `fabrics:` and a list of them, each with `name` and `pieces`.",
  );
}

export function fileNotMapping(where: InFile, found: string): Diagnostic {
  return error(
    "FILE-NOT-MAPPING",
    where,
    `The file is ${found}; it should be keys with values.`,
    "Start with lines such as `name: Harbour lights` and `fabrics:`.",
  );
}

export function keyRepeated(where: InFile, key: string): Diagnostic {
  return error("KEY-REPEATED", where, `${quote(key)} is written twice here.`, "Keep one of the two.");
}

/** The rest of the problems of a file that has very many. */
export function moreProblems(file: string, count: number): Diagnostic {
  return {
    code: "MORE-PROBLEMS",
    severity: "error",
    message: `${count} more ${count === 1 ? "problem is" : "problems are"} not listed.`,
    hint: "Mend those above first.",
    path: "",
    at: { file, line: 1, column: 1 },
  };
}

export function nestedTooDeep(where: InFile): Diagnostic {
  return error(
    "NESTED-TOO-DEEP",
    where,
    "Brackets or lists lie too deep inside one another here.",
    "A cut list needs four levels: file, fabrics, pieces, and the fields of a piece.",
  );
}

export function tabIndent(where: InFile): Diagnostic {
  return error(
    "TAB-INDENT",
    where,
    "This line is indented with a tab.",
    "Indent with spaces, two for each level; most editors can turn tabs into spaces.",
  );
}

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

/** The text is not YAML. `fault` is the reader's code, `said` its own words, used for what we have no words for. */
export function yamlSyntax(where: InFile, fault: string, said: string): Diagnostic {
  const [message, hint] = FAULTS[fault] ?? [
    `This cannot be read as YAML: ${said}.`,
    "Compare the lines around it with an example file.",
  ];
  return error("YAML-SYNTAX", where, message, hint);
}
