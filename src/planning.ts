/**
 * The light door: from a text to lists, plan, drawings, text and book, with nothing that needs files, fonts or a
 * machine of its own. What runs in a browser comes in here; `index.ts` is the door for programs on a computer.
 */

export { arrangeBlocks } from "./choices/arranging/arrange-blocks.ts";
export { type MotifWays, motifTurned, motifWays } from "./choices/arranging/motif-ways.ts";
export { compareSorts } from "./choices/kits/kits.ts";
export { planClassWith } from "./choices/kits/plan-class-with.ts";
export { KITS_OF_FILE, readKits } from "./choices/kits/read-kits.ts";
export { compareMethods } from "./choices/methods/compare-methods.ts";
export { planWith } from "./choices/plan-with.ts";
export { quickSolve, withoutEasing } from "./choices/quick-solve.ts";
export { readSizes } from "./choices/sizes/read-sizes.ts";
export { sizesBeside, wholeSizes } from "./choices/sizes/several-sizes.ts";
export { sewingParts } from "./content/book/parts/sewing-parts.ts";
export type { PatternSize } from "./content/book/pattern.ts";
export { typeset } from "./content/book/typeset.ts";
export { goneOnList } from "./content/choosing/go-on.ts";
export {
  buyList,
  cuttingSteps,
  FROM_BAGS,
  instructionsFor,
  makingSteps,
  pieceFacts,
  priceOf,
  totalPrice,
  wasteTable,
} from "./content/index.ts";
export { forMakers } from "./content/sewing/for-makers.ts";
export type { Diagnostic, Outcome, WordedDiagnostic } from "./diagnostics/index.ts";
export { type Mending, mendingOf } from "./diagnostics/mending.ts";
export { runOutlines } from "./draw/cutting/run-outlines.ts";
export {
  blockApart,
  drawBlocks,
  drawFabric,
  drawFoundation,
  drawSewing,
  drawTemplate,
  drawTop,
  drawUnitSteps,
  lettersIn,
} from "./draw/index.ts";
export { fabricTiles } from "./draw/scene/textures.ts";
export { unitStepPictures } from "./draw/steps/unit-step-pictures.ts";
export { type EngineJob, runJob } from "./engine/index.ts";
export {
  EIGHTH_INCH_RULER,
  formatLength,
  formatMeasure,
  fromInteger,
  type Language,
  languageWritten,
  nearestMark,
  parseLength,
  parseSize,
  QUARTER_CENTIMETRE_RULER,
  spokenLanguage,
  TICKS_PER,
  writingOf,
} from "./length/index.ts";
export {
  type Cutting,
  listCutting,
  type PlanOptions,
  planCutting,
  planListed,
  planSpec,
  USUAL_OPTIONS,
} from "./pipeline.ts";
export { leastBought } from "./plan/proved/index.ts";
export type { FabricPlan, Plan } from "./plan/types.ts";
export { buyCsv, cutsCsv } from "./print/csv/index.ts";
export { unitsCsv } from "./print/csv/units.ts";
export { type PatternSource, planFiles } from "./print/files/plan-files.ts";
export { bookPage, classPapers, pageOf, patternOf } from "./print/index.ts";
export { planJson } from "./print/json/index.ts";
export { findUnitKind, layOutQuilt, plainDesign, UNIT_KINDS, unitList } from "./quilt/index.ts";
export {
  addEntry,
  beforeEntry,
  beginWork,
  colourFor,
  keysAt,
  nodeAt,
  PATTERN_PARTS,
  type PatternPart,
  type PatternSpec,
  readColour,
  readDrawing,
  readSpecFile,
  readWorkFile,
  type Spec,
  USUAL_MINUTES,
  USUALLY_PLANNED,
  WORK_FORMAT,
  WORK_NAME,
} from "./spec/index.ts";
export {
  addCloth,
  clothToHand,
  emptyStash,
  printStash,
  readCloth,
  readStash,
  removeCloth,
  type Stash,
  type StashCloth,
} from "./stash/index.ts";
export {
  type Change,
  clothsOf,
  fingerprint,
  goOn,
  numberedParts,
  openFrom,
  type SpokenCloth,
  type StripPlace,
  spoiledFact,
  stopFacts,
  tickFacts,
  toldStrips,
  workFacts,
} from "./state/index.ts";
export { clothName, fabricKey, MATTRESS_SIZES } from "./stock/index.ts";
export { english, languages, type Words, wordAll, wordDiagnostic, wordsFor } from "./words/index.ts";
