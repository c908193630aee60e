export { nearest } from "./nearest.ts";
export { NO_PLAN_CODES } from "./planning.ts";
export { quote } from "./quote.ts";
export type { Diagnostic, Outcome, WordedDiagnostic } from "./types.ts";
