export { wordAll, wordDiagnostic } from "./diagnostics.ts";
export { english } from "./en/index.ts";
export { sayKey } from "./file-keys.ts";
export { formatDiagnostic } from "./frame.ts";
export type { Words } from "./types.ts";
