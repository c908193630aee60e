export type * from "./class-types.ts";
export { onBoltsOf } from "./fill/on-bolts-of.ts";
export { type Layout, ON_POINT, PRINTS_FOLLOW, WORK_FORMAT } from "./key-words.ts";
export { PATTERN_PARTS, type PatternPart, type PatternSpec } from "./pattern-types.ts";
export type * from "./quilt-types.ts";
export { readFact } from "./read/read-fact.ts";
export { readSpecFile } from "./read/read-spec-file.ts";
export { readWorkFile } from "./read/read-work.ts";
export { addEntry, beforeEntry, beginWork, withoutLastEntry } from "./read/write-work.ts";
export {
  jsonSchema,
  keysAt,
  nodeAt,
  type SayKey,
  type SchemaNode,
  workJsonSchema,
} from "./schema/json-schema.ts";
export { publishedSchema } from "./schema/published-schema.ts";
export { WORK_NAME } from "./schema/work-schema.ts";
export type { Spec } from "./spec.ts";
export { METRES_IN_A_YARD, type StepMinutes, USUAL_MINUTES } from "./step-minutes.ts";
export type * from "./types.ts";
export type * from "./work-types.ts";
export { USUALLY_PLANNED } from "./work-types.ts";
export { colourFor, readColour } from "./written/colours.ts";
export { type KitRead, MOST_KITS, readKitLine } from "./written/kit-line.ts";

export { readDrawing } from "./written/quilt-drawing.ts";
