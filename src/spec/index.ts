export type * from "./class-types.ts";
export { colourFor, readColour } from "./colours.ts";
export {
  jsonSchema,
  type KeySaid,
  keysAt,
  nodeAt,
  type SayKey,
  type SchemaNode,
  workJsonSchema,
} from "./json-schema.ts";
export { type Layout, ON_POINT, PRINTS_FOLLOW, WORK_FORMAT } from "./key-words.ts";
export { MOST_KITS, readKitLine } from "./kit-line.ts";
export { onBoltsOf } from "./on-bolts-of.ts";
export { PATTERN_PARTS, type PatternPart, type PatternSpec } from "./pattern-types.ts";
export { readPieceLine } from "./piece-line.ts";
export { publishedSchema } from "./published-schema.ts";
export { readDrawing } from "./quilt-drawing.ts";
export type * from "./quilt-types.ts";
export { readFact } from "./read-fact.ts";
export { readSpecFile } from "./read-spec-file.ts";
export { readWorkFile } from "./read-work.ts";
export type { Spec } from "./spec.ts";
export { METRES_IN_A_YARD, type StepMinutes, USUAL_MINUTES } from "./step-minutes.ts";
export type * from "./types.ts";
export { WORK_NAME } from "./work-schema.ts";
export type * from "./work-types.ts";
export { USUALLY_PLANNED } from "./work-types.ts";
export { addEntry, beforeEntry, beginWork, withoutLastEntry } from "./write-work.ts";
