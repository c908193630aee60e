import { tell } from "./tell.ts";

import type { Diagnostic, InFile, Nothing } from "./types.ts";

export type { InFile } from "./types.ts";

/** What is told of each, to be put in words. */
export interface ReadingFacts {
  aliasUsed: { found: string };
  fileEmpty: Nothing;
  fileNotMapping: { found: "list" | "value" };
  keyRepeated: { key: string };
  moreProblems: { file: string; count: number };
  nestedTooDeep: Nothing;
  tabIndent: Nothing;
  yamlSyntax: { fault: string; said: string };
}

/** Anchors, aliases and tags can make a small file mean an endless one. */
export function aliasUsed(where: InFile, found: string): Diagnostic {
  return tell("ALIAS-USED", "error", where, "aliasUsed", { found });
}

export function fileEmpty(where: InFile): Diagnostic {
  return tell("FILE-EMPTY", "error", where, "fileEmpty", {});
}

export function fileNotMapping(where: InFile, found: "list" | "value"): Diagnostic {
  return tell("FILE-NOT-MAPPING", "error", where, "fileNotMapping", { found });
}

export function keyRepeated(where: InFile, key: string): Diagnostic {
  return tell("KEY-REPEATED", "error", where, "keyRepeated", { key });
}

/** The rest of the problems of a file that has very many. */
export function moreProblems(file: string, count: number): Diagnostic {
  return tell("MORE-PROBLEMS", "error", { path: "", at: { file, line: 1, column: 1 } }, "moreProblems", {
    file,
    count,
  });
}

export function nestedTooDeep(where: InFile): Diagnostic {
  return tell("NESTED-TOO-DEEP", "error", where, "nestedTooDeep", {});
}

export function tabIndent(where: InFile): Diagnostic {
  return tell("TAB-INDENT", "error", where, "tabIndent", {});
}

/** The text is not YAML. `fault` is the reader's code, `said` its own words, used for what we have no words for. */
export function yamlSyntax(where: InFile, fault: string, said: string): Diagnostic {
  return tell("YAML-SYNTAX", "error", where, "yamlSyntax", { fault, said });
}
