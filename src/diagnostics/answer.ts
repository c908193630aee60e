import type { WordedDiagnostic } from "./types.ts";

/** The form of an answer to programs; raised when a reader of older answers would misread a newer one. */
const ANSWER_VERSION = 1;

/** How every answer begins. */
export interface Head<Format extends string> {
  format: Format;
  version: typeof ANSWER_VERSION;
  /** Ticks to the millimetre, so that a reader needs nothing else. */
  ticksPerMillimetre: 640;
}

/** `check --json`, and every command with `--json` that ends without a result. */
export interface DiagnosticsAnswer extends Head<"crossgrain diagnostics"> {
  diagnostics: WordedDiagnostic[];
}

export function head<Format extends string>(format: Format): Head<Format> {
  return { format, version: ANSWER_VERSION, ticksPerMillimetre: 640 };
}

/** Nothing but what there is to tell, as JSON. */
export function diagnosticsJson(diagnostics: readonly WordedDiagnostic[]): string {
  const answer: DiagnosticsAnswer = { ...head("crossgrain diagnostics"), diagnostics: [...diagnostics] };
  return `${JSON.stringify(answer, null, 2)}\n`;
}
