import type { Diagnostic, Outcome } from "../../diagnostics/types.ts";
import { workChangedMeanwhile, workMeasureWrong, workPlannedFixed } from "../../diagnostics/work.ts";
import type { PlannedWork } from "../../index.ts";
import type { Spec } from "../../spec/index.ts";
import type { Words } from "../../words/index.ts";
import { readBolt, readWidth } from "../asking.ts";
import type { Io } from "../io.ts";
import type { Planned } from "../planning.ts";
import { report } from "../report.ts";
import { changeSafely } from "./safe-file.ts";
import { openStash } from "./stash-file.ts";

const NOWHERE = { path: "", at: null };

/** What a plan can be asked for besides its file, as typed. */
export interface AskedOfPlan {
  kits: number | null;
  style: PlannedWork["style"];
  prefer: PlannedWork["prefer"];
  thorough: boolean;
  budget: number | null;
  fatQuarters: boolean;
  usable: string | null;
  bolt: string | null;
  ruler: PlannedWork["ruler"];
  stash: string | null;
}

/** How a plan was made, to be kept with it; null where nothing was asked for besides the file. */
export async function askedWith(made: Planned, asked: AskedOfPlan): Promise<PlannedWork | null> {
  const { clothToHand, USUALLY_PLANNED } = await import("../../index.ts");
  const { spec, options, sources } = made;
  const { kits, style, prefer, thorough, budget, ruler } = asked;
  const names = spec.fabrics.map(({ name }) => name);
  const toHand = sources.stash === null ? [] : clothToHand(sources.stash, names, spec.ruler).toHand;
  const planned: PlannedWork = {
    ...{ kits: kits ?? 1, style, prefer, thorough, fatQuarters: sources.fatQuarters },
    ...{ width: options.usable, bolt: options.bolt ?? null, ruler, budget },
    cloth: toHand.flatMap(({ fabric, pieces }) =>
      pieces.map(({ name, across, along, available }) => ({ fabric, name, across, along, count: available })),
    ),
  };
  return JSON.stringify(planned) === JSON.stringify(USUALLY_PLANNED) ? null : planned;
}

/**
 * How the plan was made that the cutting begins with.
 * @param before as the plan itself tells it; what is typed now takes its place
 */
export async function plannedAs(
  asked: AskedOfPlan,
  before: PlannedWork,
  spec: Spec,
  io: Io,
): Promise<Outcome<PlannedWork>> {
  const { clothToHand } = await import("../../index.ts");
  const { usable, bolt, stash } = asked;
  const width = usable === null ? null : await readWidth(usable, spec.defaultUnit, io.words);
  const ends = bolt === null ? null : await readBolt(bolt, spec.defaultUnit, io.words);
  for (const read of [width, ends])
    if (read !== null && "problem" in read)
      return { value: null, diagnostics: [workMeasureWrong(NOWHERE, read.problem)] };
  const cloth: PlannedWork["cloth"] = [];
  if (stash !== null) {
    const opened = await openStash(stash, spec.defaultUnit, io);
    if (opened.value === null) return { value: null, diagnostics: opened.diagnostics };
    report(opened.diagnostics, opened.value.text, io);
    const names = spec.fabrics.map(({ name }) => name);
    for (const { fabric, pieces } of clothToHand(opened.value.stash, names, spec.ruler).toHand)
      for (const { name, across, along, available } of pieces)
        cloth.push({ fabric, name, across, along, count: available });
  }
  const planned: PlannedWork = {
    kits: asked.kits ?? before.kits,
    style: asked.style ?? before.style,
    prefer: asked.prefer ?? before.prefer,
    thorough: asked.thorough || before.thorough,
    fatQuarters: asked.fatQuarters || before.fatQuarters,
    width: measureIn(width) ?? before.width,
    bolt: measureIn(ends) ?? before.bolt,
    ruler: asked.ruler ?? before.ruler,
    budget: asked.budget ?? before.budget,
    cloth: stash === null ? before.cloth : cloth,
  };
  return { value: planned, diagnostics: [] };
}

function measureIn(read: { value: number } | { problem: string } | null): number | null {
  return read !== null && "value" in read ? read.value : null;
}

/** Options that are asked for and are not those that the cutting began with. */
export async function recordedAs(
  asked: AskedOfPlan,
  text: string,
  named: string,
  spec: Spec,
  words: Words,
): Promise<Diagnostic[]> {
  const { readWorkFile } = await import("../../index.ts");
  const read = readWorkFile(text, named, spec.defaultUnit);
  if (read.value === null) return read.diagnostics;
  const { planned } = read.value;
  const width = asked.usable === null ? null : await readWidth(asked.usable, spec.defaultUnit, words);
  const ends = asked.bolt === null ? null : await readBolt(asked.bolt, spec.defaultUnit, words);
  const changed: [string, boolean][] = [
    ["--kits", asked.kits !== null && asked.kits !== planned.kits],
    ["--style", asked.style !== null && asked.style !== planned.style],
    ["--prefer", asked.prefer !== null && asked.prefer !== planned.prefer],
    ["--thorough", asked.thorough && !planned.thorough],
    ["--fat-quarters", asked.fatQuarters && !planned.fatQuarters],
    ["--width", width !== null && measureIn(width) !== planned.width],
    ["--bolt", ends !== null && measureIn(ends) !== planned.bolt],
    ["--ruler", asked.ruler !== null && asked.ruler !== planned.ruler],
    ["--budget", asked.budget !== null && asked.budget !== planned.budget],
    ["--stash", asked.stash !== null && planned.cloth.length === 0],
  ];
  return changed.flatMap(([option, differs]) => (differs ? [workPlannedFixed(option)] : []));
}

/**
 * Writes the file of the work, whole or not at all, the one before kept as .bak. Refused where it has been changed since it
 * was read.
 * @param before the text as it was read; null where there was no file
 */
export async function keepWork(
  file: { path: string; named: string },
  before: string | null,
  text: string,
): Promise<Outcome<true>> {
  if (text === before) return { value: true, diagnostics: [] };
  return changeSafely(file, (old): Outcome<{ bytes: Uint8Array; told: true }> => {
    const now = old === null ? null : new TextDecoder().decode(old);
    if (now !== before) return { value: null, diagnostics: [workChangedMeanwhile(file.named)] };
    return { value: { bytes: new TextEncoder().encode(text), told: true }, diagnostics: [] };
  });
}
