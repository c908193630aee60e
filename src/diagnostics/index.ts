export { formatDiagnostic } from "./frame.ts";
export { nearest } from "./nearest.ts";
export { quote, visible } from "./quote.ts";
export type { Diagnostic, Outcome, Place, Severity } from "./types.ts";
