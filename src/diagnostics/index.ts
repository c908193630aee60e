export { nearest } from "./nearest.ts";
export { NO_PLAN_CODES } from "./planning.ts";
export { quote, visible } from "./quote.ts";
export type { Diagnostic, Outcome, Place, Severity, WordedDiagnostic } from "./types.ts";
