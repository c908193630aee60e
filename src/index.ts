/**
 * The public door. A file's text goes into `planQuilt`; out comes a `Plan`, plain data that holds
 * everything the lists and drawings show.
 *
 *     const { value: plan, diagnostics } = await planQuilt(text, "quilt.yaml", USUAL_OPTIONS, solveHere);
 *     if (plan !== null) console.log(buyList(plan), cuttingSteps(plan, true));
 */

export { auditPlan } from "./audit/index.ts";
export { type Arrangements, arrangeBlocks } from "./choices/arranging/arrange-blocks.ts";
export { motifTurnings } from "./choices/arranging/motif-turnings.ts";
export { readArrangements, turnings } from "./choices/arranging/turnings.ts";
export { compareKits, compareSorts, type Kits } from "./choices/kits/kits.ts";
export { type ClassPlanned, planClass } from "./choices/kits/plan-class.ts";
export { planClassWith } from "./choices/kits/plan-class-with.ts";
export { readKits } from "./choices/kits/read-kits.ts";
export { compareMethods } from "./choices/methods/compare-methods.ts";
export type { Comparison } from "./choices/methods/comparison.ts";
export { compareWidths, type WidthTried } from "./choices/other-width.ts";
export { planWith } from "./choices/plan-with.ts";
export { readSizes } from "./choices/sizes/read-sizes.ts";
export { type SeveralSizes, severalSizes, sizesBeside, wholeSizes } from "./choices/sizes/several-sizes.ts";
export { suitsOf } from "./choices/suits.ts";
export type { PatternSize } from "./content/book/pattern.ts";
export { kitsList } from "./content/buying/kits.ts";
export { savingsList } from "./content/buying/savings.ts";
export { sizesTable } from "./content/buying/several-sizes.ts";
export { fatQuarterList, stashUse, suitsList } from "./content/buying/sources.ts";
export { clothLines, stashList } from "./content/buying/stash.ts";
export { widthsList } from "./content/buying/widths.ts";
export { arrangementPictures, arrangementsTable } from "./content/choosing/arrange.ts";
export { comparisonTable } from "./content/choosing/compare.ts";
export { goneOnList } from "./content/choosing/go-on.ts";
export { buyList, cuttingSteps, makingSteps, wasteTable } from "./content/index.ts";
export { kitSteps } from "./content/sewing/making.ts";
export { diagnosticsJson } from "./diagnostics/answer.ts";
export { nothingToRepeat, nothingToRestate, sizeRestated } from "./diagnostics/choices.ts";
export { type Diagnostic, NO_PLAN_CODES, type Outcome } from "./diagnostics/index.ts";
export { kitsInFile, kitsNeedQuilt } from "./diagnostics/quilts/class.ts";
export { type EngineJob, runJob } from "./engine/index.ts";
export {
  EIGHTH_INCH_RULER,
  floor,
  type Language,
  languageWritten,
  parseLength,
  QUARTER_CENTIMETRE_RULER,
  spokenLanguage,
} from "./length/index.ts";
export { checkQuilt, heldToLimit, type PlanOptions, planQuilt, planSpec, USUAL_OPTIONS } from "./pipeline.ts";
export type { FabricPlan, Part, Plan } from "./plan/types.ts";
export { buyCsv, cutsCsv } from "./print/csv/index.ts";
export { sizesCsv } from "./print/csv/sizes.ts";
export { unitsCsv } from "./print/csv/units.ts";
export { fileNamePart } from "./print/files/file-name.ts";
export type { PatternSource } from "./print/files/plan-files.ts";
export type * from "./print/json/index.ts";
export {
  arrangementsJson,
  buyJson,
  buySizesJson,
  comparisonJson,
  planJson,
  planPortions,
  savingsJson,
  stashJson,
  undoneJson,
  unitSizesJson,
  unitsJson,
} from "./print/json/index.ts";
export { restate, unitList, unitSizes, unitTurns } from "./quilt/index.ts";
export { findSavings } from "./savings/index.ts";
export {
  beginWork,
  METRES_IN_A_YARD,
  type Planned as PlannedWork,
  readSpecFile,
  readWorkFile,
  USUAL_MINUTES,
  USUALLY_PLANNED,
  WORK_NAME,
  withoutLastEntry,
} from "./spec/index.ts";
export {
  addCloth,
  clothToHand,
  emptyStash,
  printStash,
  readCloth,
  readPlan,
  readStash,
  type Stash,
  type StashCloth,
  takePlan,
} from "./stash/index.ts";
export { type Change, goOn } from "./state/index.ts";

/** Files to start from. */
export const STARTERS = english.starters;

/** The JSON Schema of the files this program reads, with what every key means in a language. */
export function publishedSchema(words: Words = english): object {
  return schemaOfFiles(sayKey(words.fileKeys));
}

/** The JSON Schema of a cut list and of a quilt, side by side. */
export function jsonSchema(words: Words = english): object {
  return schemasByKind(sayKey(words.fileKeys));
}

/** The JSON Schema of the file that keeps what is cut of a quilt. */
export function workJsonSchema(words: Words = english): object {
  return schemaOfWork(sayKey(words.fileKeys));
}

export {
  english,
  formatDiagnostic,
  languages,
  type Words,
  wordAll,
  wordDiagnostic,
  wordsFor,
} from "./words/index.ts";

import type { Solve } from "./plan/index.ts";
import {
  publishedSchema as schemaOfFiles,
  workJsonSchema as schemaOfWork,
  jsonSchema as schemasByKind,
} from "./spec/index.ts";
import { english, sayKey, type Words } from "./words/index.ts";

/** Does the engine's jobs one after another in this thread. */
export const solveHere: Solve = async (jobs) => {
  const { runJob } = await import("./engine/index.ts");
  const results = [];
  for (const job of jobs) results.push(await runJob(job));
  return results;
};

/** The drawings, loaded when they are first wanted: they bring a document model with them. */
export function loadDrawings() {
  return import("./draw/index.ts");
}

/** All files of a plan, which holds both. */
export function loadFiles() {
  return import("./print/files/index.ts");
}

/** The cutting book as a web page, loaded late for the same reason. */
export function loadBook() {
  return import("./print/index.ts");
}

/** The cutting book as a PDF, loaded when it is asked for. */
export function loadPdf() {
  return import("./print/pdf/index.ts");
}

/** What fonts can draw, loaded with the pictures and the PDF. */
export function loadFonts() {
  return import("./draw/fonts/index.ts");
}

/** Drawings as PNG pictures, loaded when they are asked for. */
export function loadPng() {
  return import("./draw/png/index.ts");
}

/** The picture of ways of making side by side, loaded when it is first wanted. */
export function loadComparisonDrawing() {
  return import("./draw/quilt/draw-comparison.ts");
}

/** The picture of arrangements side by side, loaded when it is first wanted. */
export function loadArrangementDrawing() {
  return import("./draw/quilt/draw-arrangements.ts");
}
export { quickSolve, withoutEasing } from "./choices/quick-solve.ts";
