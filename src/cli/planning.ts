import type { KitsAsked } from "../choices/kits/read-kits.ts";
import type { Diagnostic, Outcome } from "../diagnostics/types.ts";
import type { ClassPlanned, EngineJob, PlanOptions } from "../index.ts";
import type { Solve } from "../plan/index.ts";
import type { Plan } from "../plan/types.ts";
import type { Spec } from "../spec/index.ts";
import type { Stash } from "../stash/index.ts";
import type { Words } from "../words/index.ts";

import { readBolt, readWidth } from "./asking.ts";
import { EXIT, type ExitCode } from "./command.ts";
import { readInput } from "./files/read.ts";
import { openStash } from "./files/stash-file.ts";
import type { Io } from "./io.ts";
import { failWith, report } from "./report.ts";
import { startProgress } from "./threads/progress.ts";

/** What the planning commands ask for; null where the file decides. */
export interface PlanningValues {
  style: "strips-2" | "strips-3" | null;
  prefer: "sparing" | "simple" | null;
  thorough: boolean;
  budget: number | null;
  json: boolean;
}

/** What may be asked besides, by the commands that offer it. */
export interface Beside {
  /** How many times everything is cut together. */
  kits: number;
  /** Kits of several sorts to be cut together, as typed; `file` for those of the file. */
  sorts?: string | null;
  /** Usable width to try, as typed. */
  usable: string | null;
  /** Where every bolt ends, as typed. */
  bolt?: string | null;
  /** File with cloth to use first. */
  stash: string | null;
  fatQuarters: boolean;
  /** Ruler to restate a quilt for. */
  ruler: "in" | "cm" | null;
  /** Mark before tenths; null for the one the file is written with. */
  decimal?: "comma" | "point" | null;
}

const NOTHING_BESIDE: Beside = { kits: 1, usable: null, stash: null, fatQuarters: false, ruler: null };

/**
 * What of a plan is asked for; none of it changes an amount. `strips`: no narrower width is tried; `room`: the first cutting
 * found is left as it is; `amounts`: both.
 */
export type Wanted = "plan" | "strips" | "room" | "amounts";

/** A plan, and what the answers to what was asked besides need. */
export interface Planned {
  plan: Plan;
  spec: Spec;
  options: PlanOptions;
  /** Cloth it started from besides the bolt. */
  sources: { stash: Stash | null; fatQuarters: boolean };
  fromFatQuarters: string[];
  /** The class of several sorts of kits that `plan` is the cutting of; null elsewhere. */
  planned: ClassPlanned | null;
}

/** Milliseconds of search for a fabric from which it is told how to end it. */
const WORTH_TELLING = 10_000;

/** What a batch of searches is for, to be told while it runs. */
function doing(jobs: readonly EngineJob[], words: Words): string {
  const [job] = jobs;
  if (job?.kind === "lessen-work" || job?.kind === "lessen-joins")
    return words.commandLine.planning.makingTheCuttingSimpler;
  return job?.limits.target === undefined
    ? words.commandLine.planning.lookingForTheLeast
    : words.commandLine.planning.tryingOtherWidthsAnd;
}

/**
 * Engine jobs on the machine's threads, with progress on the terminal. All of them together are held to the usual work
 * of one command, unless a time or a thorough search is asked for.
 */
export async function poolOf(
  io: Io,
  options: Pick<PlanOptions, "budget" | "effort" | "thorough">,
  tellOfStopping = false,
): Promise<{ solve: Solve; clear(): void }> {
  const [{ solveInPool }, { heldToLimit }] = await Promise.all([
    import("./threads/pool.ts"),
    import("../index.ts"),
  ]);
  const progress = startProgress(io);
  const long = tellOfStopping && (options.thorough || (options.budget ?? 0) >= WORTH_TELLING);
  let told = !long;
  const tell = () => {
    if (!told) io.talk(io.words.commandLine.planning.searchingForLongCtrl);
    told = true;
  };
  const solve: Solve = (jobs) =>
    solveInPool(
      jobs,
      io.words,
      (done, of) => progress.show(io.words.commandLine.planning.of(doing(jobs, io.words), done, of)),
      tell,
    );
  return { solve: heldToLimit(solve, options), clear: () => progress.clear() };
}

/** What the options of a planning command ask of a plan. */
export async function optionsOf(values: PlanningValues, { words }: Io): Promise<PlanOptions> {
  const { USUAL_OPTIONS } = await import("../index.ts");
  const { style, prefer, thorough, budget } = values;
  const milliseconds = budget === null ? null : budget * 1000;
  return { ...USUAL_OPTIONS, style, prefer, thorough, budget: milliseconds, language: words.language };
}

/** A text to plan. */
export interface Source {
  text: string;
  /** The file it is from, for what is said of it. */
  name: string;
  /** For a text the maker has not written: what is said of it, in terms of what was typed. Its places are not shown. */
  reworded?: (diagnostic: Diagnostic) => Diagnostic;
}

/** What a command ends with where there is nothing to go on with. */
type Ended = { code: ExitCode };

/** Plans a text, with the machine's threads and progress on the terminal, and tells all there is to tell. */
export async function planText(
  { text, name, reworded }: Source,
  values: PlanningValues,
  io: Io,
  beside: Beside = NOTHING_BESIDE,
  wanted: Wanted = "plan",
): Promise<Planned | Ended> {
  const { planClassWith, quickSolve, readSpecFile, withoutEasing } = await import("../index.ts");
  const source = reworded === undefined ? text : undefined;
  const said = (all: readonly Diagnostic[]) => (reworded === undefined ? all : all.map(reworded));
  const read = readSpecFile(text, name, beside.decimal ?? null, io.words.language);
  if (read.value === null) return { code: failWith(said(read.diagnostics), source, values.json, io) };
  const restated = beside.ruler === null ? null : await restateFor(beside.ruler, read.value);
  if (restated !== null && restated.value === null)
    return { code: failWith(restated.diagnostics, undefined, values.json, io) };
  const spec = restated?.value ?? read.value;
  const { sorts = null } = beside;
  const kits = await kitsIn(spec, sorts);
  if (sorts !== null && kits.value === null) {
    const code = failWith(kits.diagnostics, source, values.json, io);
    return { code: kits.diagnostics.some(({ at }) => at !== null) ? code : EXIT.usage };
  }
  const cloth = await clothBeside(beside, spec, values.json, io);
  if ("code" in cloth) return cloth;
  const { sources, bolts } = cloth;
  const usual = await optionsOf(values, io);
  const options = { ...usual, kits: beside.kits, ...bolts, suggestStacks: true };
  const pool = await poolOf(io, options, true);
  const once = wanted === "strips" || wanted === "amounts" ? quickSolve(pool.solve) : pool.solve;
  const solve = wanted === "room" || wanted === "amounts" ? withoutEasing(once) : once;
  const outcome = await planClassWith(spec, kits.value, { options, sources }, solve);
  pool.clear();
  const diagnostics = [...read.diagnostics, ...(restated?.diagnostics ?? []), ...outcome.diagnostics];
  if (outcome.value === null) return { code: failWith(said(diagnostics), source, values.json, io) };
  report(said(diagnostics), source, io);
  const { plan, ...found } = outcome.value;
  return { plan: { ...plan, diagnostics }, spec, options, sources, ...found };
}

/** The sorts of kits asked for, as the file understands them; null where none are. */
async function kitsIn(spec: Spec, sorts: string | null): Promise<Outcome<KitsAsked[]>> {
  const { kitsNeedQuilt, readKits } = await import("../index.ts");
  if (sorts === null) return { value: null, diagnostics: [] };
  if (spec.kind !== "quilt") return { value: null, diagnostics: [kitsNeedQuilt()] };
  return readKits(sorts, spec);
}

/** Cloth to start from and the bolts to try, read in the unit of the file. */
async function clothBeside(
  beside: Beside,
  { defaultUnit }: Spec,
  asJson: boolean,
  io: Io,
): Promise<(Pick<Planned, "sources"> & { bolts: Pick<PlanOptions, "usable" | "bolt"> }) | Ended> {
  let stash: Stash | null = null;
  if (beside.stash !== null) {
    const opened = await openStash(beside.stash, defaultUnit, io);
    if (opened.value === null) return { code: failWith(opened.diagnostics, undefined, asJson, io) };
    report(opened.diagnostics, opened.value.text, io);
    stash = opened.value.stash;
  }
  const width = beside.usable === null ? null : await readWidth(beside.usable, defaultUnit, io.words);
  const misread = (problem: string): Ended => {
    io.talk(`error: ${problem}\n`);
    return { code: EXIT.usage };
  };
  if (width !== null && "problem" in width) return misread(width.problem);
  const ends = beside.bolt == null ? null : await readBolt(beside.bolt, defaultUnit, io.words);
  if (ends !== null && "problem" in ends) return misread(ends.problem);
  const bolts = { usable: width?.value ?? null, bolt: ends?.value ?? null };
  return { sources: { stash, fatQuarters: beside.fatQuarters }, bolts };
}

/** A quilt for another ruler, and what changed; a cut list cannot be restated. */
async function restateFor(unit: "in" | "cm", spec: Spec): Promise<Outcome<Spec>> {
  const { EIGHTH_INCH_RULER, nothingToRestate, QUARTER_CENTIMETRE_RULER, restate, sizeRestated } =
    await import("../index.ts");
  if (spec.kind !== "quilt") return { value: null, diagnostics: [nothingToRestate()] };
  const { mark: _, unit: _unit, between: _between, ...written } = spec.ruler;
  const marks = unit === "in" ? EIGHTH_INCH_RULER : QUARTER_CENTIMETRE_RULER;
  const made = restate(spec, { ...marks, ...written });
  return {
    value: made.spec,
    diagnostics: made.changes.map(({ what, before, after, path }) => sizeRestated(what, before, after, path)),
  };
}

/** Reads and plans the file named on the command line. */
export async function planFile(
  file: string,
  values: PlanningValues,
  io: Io,
  beside: Beside = NOTHING_BESIDE,
  wanted: Wanted = "plan",
): Promise<Planned | { code: ExitCode }> {
  const input = await readInput(file, io);
  if (input.value === null) return { code: failWith(input.diagnostics, undefined, values.json, io) };
  return planText(input.value, values, io, beside, wanted);
}
