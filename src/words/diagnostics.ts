import type { Diagnostic, DiagnosticFacts, DiagnosticOf, WordedDiagnostic } from "../diagnostics/types.ts";
import type { Words } from "./types.ts";

/** A diagnostic in words: what was found and what is expected, and what would help (empty for nothing). */
export interface Said {
  message: string;
  hint: string;
}

/** A sentence for each kind of fact: one that is forgotten does not compile. */
export type WordsOf<Facts> = { readonly [Told in keyof Facts]: (facts: Facts[Told]) => Said };

export type DiagnosticWords = WordsOf<DiagnosticFacts>;

function saidOf<Told extends keyof DiagnosticFacts>(
  { told, facts }: DiagnosticOf<Told>,
  words: DiagnosticWords,
): Said {
  return words[told](facts);
}

/** Message and hint of a diagnostic. */
export function said(diagnostic: Diagnostic, words: DiagnosticWords): Said {
  return saidOf<keyof DiagnosticFacts>(diagnostic, words);
}

/** Puts a diagnostic in words. */
export function wordDiagnostic(diagnostic: Diagnostic, words: Words): WordedDiagnostic {
  const { code, severity, path, at } = diagnostic;
  const { message, hint } = said(diagnostic, words.diagnostics);
  return { code, severity, message, hint, path, at };
}

/** The same of several. */
export function wordAll(diagnostics: readonly Diagnostic[], words: Words): WordedDiagnostic[] {
  return diagnostics.map((each) => wordDiagnostic(each, words));
}
