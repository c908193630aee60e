/**
 * The light door: from a text to lists, plan, drawings, text and book, with nothing that needs files, fonts or a
 * machine of its own. What runs in a browser comes in here; `index.ts` is the door for programs on a computer.
 */
export { type MotifWays, motifTurned, motifWays } from "./choices/motif-ways.ts";
export { quickSolve, withoutEasing } from "./choices/quick-solve.ts";
export type { Diagnostic, Outcome, WordedDiagnostic } from "./diagnostics/index.ts";
export { type EngineJob, runJob } from "./engine/index.ts";
export {
  EIGHTH_INCH_RULER,
  floor,
  formatLength,
  formatMeasure,
  fromInteger,
  parseLength,
  parseSize,
  QUARTER_CENTIMETRE_RULER,
  type Rational,
  surdToNumber,
  TICKS_PER,
  toNumber,
} from "./length/index.ts";
export {
  type Cutting,
  type Listed,
  listAll,
  listCutting,
  type PlanOptions,
  planCutting,
  planListed,
  planSpec,
  USUAL_OPTIONS,
} from "./pipeline.ts";
export type { FabricPlan, Plan } from "./plan/types.ts";
export { findUnitKind, layOutQuilt, plainDesign, UNIT_KINDS, unitList } from "./quilt/index.ts";
export { bookPage } from "./render/book/index.ts";
export { planJson } from "./render/json/index.ts";
export { drawBlock, drawFabric, drawSewing, drawTop } from "./render/svg/index.ts";
export { fabricPatterns } from "./render/svg/textures.ts";
export {
  buyList,
  cuttingSteps,
  makingSteps,
  pieceFacts,
  priceOf,
  totalPrice,
} from "./render/text/index.ts";
export {
  colourFor,
  jsonSchema,
  keysAt,
  nodeAt,
  readColour,
  readDrawing,
  readSpecFile,
  type SchemaNode,
  type Spec,
} from "./spec/index.ts";
export { fabricKey, MATTRESS_SIZES } from "./stock/index.ts";
export { english, formatDiagnostic, type Words, wordAll, wordDiagnostic } from "./words/index.ts";
