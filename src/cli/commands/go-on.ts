import { join, resolve } from "node:path";
import type { Diagnostic, Outcome } from "../../diagnostics/types.ts";
import { workLeftOut, workNoPlan, workNothingToUndo } from "../../diagnostics/work.ts";
import type { Plan } from "../../plan/types.ts";
import type { Spec } from "../../spec/index.ts";
import type { GoneOn } from "../../state/go-on.ts";
import type { Words } from "../../words/index.ts";

import { bolt, fatQuarters, kits, stash, usable } from "../asking.ts";
import { defineCommand, EXIT, type ExitCode } from "../command.ts";
import { realDisk } from "../files/disk.ts";
import { readInput } from "../files/read.ts";
import { keepWork, plannedAs, recordedAs } from "../files/work-file.ts";
import type { Io } from "../io.ts";
import { inWords, toggle, type Values } from "../option.ts";
import {
  budget,
  font,
  json,
  markdown,
  out,
  paper,
  pdf,
  png,
  prefer,
  replace,
  ruler,
  style,
  thorough,
} from "../options.ts";
import { poolOf } from "../planning.ts";
import { failWith, report } from "../report.ts";
import { pathsOf } from "../results/write-into.ts";

const undo = (words: Words) => toggle("--undo", words.commandLine.goOn.takeBackWhatWas);

const again = (words: Words) => toggle("--again", words.commandLine.goOn.whatIsSaidIs);

/** The plan that lies in the folder. */
async function planIn(folder: string, named: string): Promise<Outcome<Plan>> {
  const path = join(folder, "plan.json");
  if ((await realDisk.kind(path)) !== "file") return { value: null, diagnostics: [workNoPlan(named)] };
  const { readPlan } = await import("../../index.ts");
  return readPlan(new TextDecoder().decode(await realDisk.read(path)), join(named, "plan.json"));
}

/**
 * The plan that the cutting began with, where the clock ended its search: it cannot be made again, so it lies beside the
 * work. Null where there is none.
 */
async function begunIn(folder: string): Promise<string | null> {
  const path = join(folder, BEGUN_NAME);
  if ((await realDisk.kind(path)) !== "file") return null;
  return new TextDecoder().decode(await realDisk.read(path));
}

const BEGUN_NAME = "begun.json";

const options = (words: Words) =>
  inWords(words, {
    out,
    undo,
    again,
    replace,
    json,
    style,
    prefer,
    thorough,
    stash,
    fatQuarters,
    kits,
    usable,
    bolt,
    ruler,
    budget,
    pdf,
    paper,
    png,
    font,
    markdown,
  });

type Typed = Values<ReturnType<typeof options>>;

export const goOn = (words: Words) =>
  defineCommand({
    name: "go-on",
    summary: words.commandLine.goOn.thePlanOfWhat,
    about: words.commandLine.goOn.sayWhatHasHappened(words.factExamples),
    arguments: [
      { name: "<file>", help: words.commandLine.goOn.theQuiltOrCut },
      { name: "[facts...]", help: words.commandLine.goOn.whatHasHappenedIvory },
    ],
    options: options(words),
    examples: words.commandLine.goOn.examples,
    run: ([file = "", ...typed], values, io) => goesOn(file, typed, values, io),
  });

/** Plans what is left from what has happened, and writes and prints what follows from it. */
async function goesOn(file: string, typed: readonly string[], values: Typed, io: Io): Promise<ExitCode> {
  const input = await readInput(file, io);
  if (input.value === null) return failWith(input.diagnostics, undefined, values.json, io);
  const front = await import("../../index.ts");
  const { text, name } = input.value;
  const read = front.readSpecFile(text, name, null, io.words.language);
  if (read.value === null) return failWith(read.diagnostics, text, values.json, io);
  const work = await workIn(values.out ?? (await usualOut(read.value.name, values.kits, io)), io);
  if ("diagnostics" in work) return failWith(work.diagnostics, undefined, values.json, io);
  const misused = misuse(typed, values, work, io.words);
  if (misused !== null) {
    io.talk(misused);
    return EXIT.usage;
  }
  const begun =
    work.before === null
      ? await begin(work, values, read.value, io)
      : await resume(work, work.before, values, read.value, io);
  if ("diagnostics" in begun) return failWith(begun.diagnostics, begun.shown, values.json, io);
  const { begunText } = begun;
  const first = begunText === null ? null : front.readPlan(begunText, join(work.named, BEGUN_NAME));
  if (first !== null && first.value === null) return failWith(first.diagnostics, undefined, values.json, io);
  const pool = await poolOf(io, { budget: null, effort: null, thorough: true });
  const request = {
    quilt: { text, name, language: io.words.language },
    work: { text: begun.text, name: work.workNamed },
    ...{ words: typed, again: values.again, made: begun.made },
    first: first?.value == null ? null : { plan: first.value, folder: work.named },
  };
  const gone = await front.goOn(request, pool.solve);
  pool.clear();
  await (await import("../threads/pool.ts")).endThreads();
  if (gone.value === null) {
    const ofWork = gone.diagnostics.some(({ at }) => at?.file === work.workNamed);
    return failWith(gone.diagnostics, ofWork ? begun.text : text, values.json, io);
  }
  report(gone.diagnostics, text, io);
  return written(gone.value, { work, begunText, file }, values, io);
}

/** The folder a go-on works in, and the work that is kept there. */
interface WorkPlace {
  /** The folder as it was typed or is usual. */
  named: string;
  folder: string;
  /** The file of the work. */
  path: string;
  workNamed: string;
  /** What it holds; null where no work is begun yet. */
  before: string | null;
}

/** The work as it goes on: its text, and the plan it begins with. */
interface Begun {
  text: string;
  /** The plan in the folder, where the work begins with it now. */
  made: { plan: Plan; folder: string } | null;
  /** The plan the cutting began with, as written, where it cannot be made again. */
  begunText: string | null;
}

/** What ends the command, and the text its places are in. */
type Stopped = { diagnostics: readonly Diagnostic[]; shown?: string };

/** The folder that is usual for a quilt, or so many of them. */
async function usualOut(name: string, kits: number | null, io: Io): Promise<string> {
  const { usualFolder } = await import("../files/file-names.ts");
  return usualFolder((kits ?? 1) === 1 ? name : io.words.commandLine.goOn.kits(name, kits ?? 1));
}

async function workIn(named: string, io: Io): Promise<WorkPlace | Stopped> {
  const { WORK_NAME } = await import("../../index.ts");
  const folder = resolve(io.folder, named);
  const place = { named, folder, path: join(folder, WORK_NAME), workNamed: join(named, WORK_NAME) };
  if ((await realDisk.kind(place.path)) !== "file") return { ...place, before: null };
  const old = await readInput(place.path, io);
  return old.value === null ? { diagnostics: old.diagnostics } : { ...place, before: old.value.text };
}

/** What is wrong with the command line; null when nothing is. */
function misuse(
  typed: readonly string[],
  { undo: takesBack }: { undo: boolean },
  { before }: WorkPlace,
  words: Words,
): string | null {
  if (typed.length > 0 && takesBack) return words.commandLine.goOn.errorUndoTakesBack;
  if (typed.length === 0 && !takesBack && before === null)
    return words.commandLine.goOn.errorNothingHasBeen(words.factExamples);
  return null;
}

/** The work begun with the plan that lies in the folder. */
async function begin(
  { folder, named, workNamed }: WorkPlace,
  values: Typed,
  spec: Spec,
  io: Io,
): Promise<Begun | Stopped> {
  if (values.undo) return { diagnostics: [workNothingToUndo(workNamed)] };
  const front = await import("../../index.ts");
  const plan = await planIn(folder, named);
  if (plan.value === null) return { diagnostics: plan.diagnostics };
  const byClock = (values.budget ?? plan.value.asked?.budget ?? null) !== null;
  const begunText = byClock ? new TextDecoder().decode(await realDisk.read(join(folder, "plan.json"))) : null;
  const planned = await plannedAs(values, plan.value.asked ?? front.USUALLY_PLANNED, spec, io);
  if (planned.value === null) return { diagnostics: planned.diagnostics };
  const text = front.beginWork(planned.value, io.words.workFile.about);
  return { text, made: { plan: plan.value, folder: named }, begunText };
}

/** The work that is there, its last entry taken back where that is asked. */
async function resume(
  { folder, workNamed }: WorkPlace,
  before: string,
  values: Typed,
  spec: Spec,
  io: Io,
): Promise<Begun | Stopped> {
  const { withoutLastEntry } = await import("../../index.ts");
  const fixed = await recordedAs(values, before, workNamed, spec, io.words);
  if (fixed.length > 0) return { diagnostics: fixed, shown: before };
  const text = values.undo ? withoutLastEntry(before) : before;
  if (text === null) return { diagnostics: [workNothingToUndo(workNamed)] };
  return { text, made: null, begunText: await begunIn(folder) };
}

/** Keeps the work, writes what follows from it, and prints what is left to do. */
async function written(
  { plan, changes, workText }: GoneOn,
  { work, begunText, file }: { work: WorkPlace; begunText: string | null; file: string },
  values: Typed,
  io: Io,
): Promise<ExitCode> {
  const front = await import("../../index.ts");
  const [{ resultFiles }, { printedFiles }, { writeFiles }] = await Promise.all([
    import("../results/result-files.ts"),
    import("../results/printed-files.ts"),
    import("../files/write.ts"),
  ]);
  const { folder, named, path, workNamed } = work;
  const results = await resultFiles(plan, io.words);
  const printed = await printedFiles(plan, results, values, {}, io);
  const list = front.goneOnList(plan, changes, io.words);
  const begunFile = begunText === null ? {} : { [BEGUN_NAME]: begunText };
  const files = { ...results, ...printed, ...begunFile, "gone-on.txt": list };
  const kept = await keepWork({ path, named: workNamed }, work.before, workText);
  if (kept.value === null) return failWith(kept.diagnostics, undefined, values.json, io);
  const { value, diagnostics } = await writeFiles({
    ...{ folder, named, by: "plan", files, replace: values.replace },
    inputs: [...pathsOf([file, values.font], io), path],
  });
  if (value === null) return failWith([...diagnostics, workLeftOut(workNamed)], undefined, values.json, io);
  report(diagnostics, undefined, io);
  if (values.json) io.out(front.planJson(plan, io.words));
  else io.out([list, front.buyList(plan, io.words), front.cuttingSteps(plan, true, io.words)].join("\n"));
  io.talk(io.words.commandLine.goOn.filesWrittenIntoWhat(value.length, named, workNamed));
  return EXIT.done;
}
