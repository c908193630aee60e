import type { Diagnostic, WordedDiagnostic } from "../../src/diagnostics/types.ts";
import type { Ruler } from "../../src/length/types.ts";
import type { Assumption } from "../../src/spec/types.ts";
import { english, wordAll, wordDiagnostic } from "../../src/words/index.ts";

/** A diagnostic as English tells it. */
export function said(diagnostic: Diagnostic | undefined): WordedDiagnostic | undefined {
  return diagnostic === undefined ? undefined : wordDiagnostic(diagnostic, english);
}

/** Several of them. */
export const allSaid = (diagnostics: readonly Diagnostic[]): WordedDiagnostic[] =>
  wordAll(diagnostics, english);

/** What was assumed, in English. */
export function assumedIn({ assumptions, ruler }: { assumptions: readonly Assumption[]; ruler: Ruler }) {
  return assumptions.map((one) => ({ fabric: one.fabric, ...english.assumed(one, ruler) }));
}
