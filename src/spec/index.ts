export { jsonSchema } from "./json-schema.ts";
export { onBoltsOf } from "./on-bolts-of.ts";
export { readPieceLine } from "./piece-line.ts";
export type * from "./quilt-types.ts";
export { MOST_CHARACTERS, readSpecFile } from "./read-spec-file.ts";
export type { Spec } from "./spec.ts";
export { STARTERS, type Starter } from "./starters.ts";
export { METRES_IN_A_YARD, type StepMinutes, USUAL_MINUTES } from "./step-minutes.ts";
export type * from "./types.ts";
