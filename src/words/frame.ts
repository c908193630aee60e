import { visible } from "../diagnostics/quote.ts";
import type { Place, WordedDiagnostic } from "../diagnostics/types.ts";

const WIDEST = 100;

/** The line spoken of with a caret under the place; empty when the text has no such line. */
function frame(source: string, at: Place): string {
  const line = source.split(/\r\n|\n|\r/, at.line)[at.line - 1];
  if (line === undefined) return "";
  const column = Math.min(at.column, line.length + 1);
  const start = column > WIDEST - 10 ? column - WIDEST / 2 : 0;
  const shown = line.slice(start, start + WIDEST);
  // A tab counts as one column, as editors count characters; unseen characters are shown as dots.
  const clean = shown.replace(/[\p{Cc}\p{Cf}]/gu, (character) => (character === "\t" ? " " : "."));
  const number = String(at.line);
  const margin = " ".repeat(number.length);
  const caret = `${" ".repeat(column - 1 - start)}^`;
  return `  ${number} | ${clean}\n  ${margin} | ${caret}`;
}

/**
 * A diagnostic as it is printed: where, what, the line with a caret when the text is at hand, what would help. No
 * trailing newline.
 */
export function formatDiagnostic(diagnostic: WordedDiagnostic, sourceText?: string): string {
  const { at, code, severity, message, hint, path } = diagnostic;
  const where = at === null ? "" : `${visible(at.file)}:${at.line}:${at.column}: `;
  const field = path === "" ? "" : ` (${visible(path)})`;
  const lines = [`${where}${severity} ${code}${field}`, `  ${message}`];
  if (at !== null && sourceText !== undefined) {
    const framed = frame(sourceText, at);
    if (framed !== "") lines.push(framed);
  }
  if (hint !== "") lines.push(`  ${hint}`);
  return lines.join("\n");
}
