import { resolve } from "node:path";
import type { Diagnostic } from "../../diagnostics/types.ts";
import type { Words } from "../../words/index.ts";

import { defineCommand, EXIT, type ExitCode } from "../command.ts";
import { readInput } from "../files/read.ts";
import { changeStash, openStash } from "../files/stash-file.ts";
import type { Io } from "../io.ts";
import { aboveZero, choice, inWords, takes, text } from "../option.ts";
import { json } from "../options.ts";
import { optionsOf, poolOf } from "../planning.ts";
import { exitCodeOf, failWith, report } from "../report.ts";

const stashOption = (words: Words) =>
  text(takes("--stash", words.commandLine.values.file), words.commandLine.stash.theTableOfYour, "stash.csv");
const count = (words: Words) =>
  aboveZero(
    takes("--count", words.commandLine.values.number),
    words.commandLine.stash.howManyToAdd,
    "1",
    words,
  );
const note = (words: Words) =>
  text(
    takes("--note", words.commandLine.values.text),
    words.commandLine.stash.aNoteKeptWith,
    words.commandLine.options.none,
  );
const steps = (words: Words) =>
  aboveZero(
    takes("--steps", words.commandLine.values.number),
    words.commandLine.stash.howManyChangesTo,
    "1",
    words,
  );
const unit = (words: Words) =>
  choice(
    takes("--unit", words.commandLine.values.unit),
    words.commandLine.stash.measureOfNumbersWritten,
    "in",
    ["in", "cm", "mm"],
    words,
  );

interface Values {
  steps: number | null;
  stash: string | null;
  count: number | null;
  note: string | null;
  unit: "in" | "cm" | "mm" | null;
  json: boolean;
}

const spokenIn = (values: Values) => (values.unit === null || values.unit === "in" ? "in" : "cm");

/** Rows that cannot be read do not stop the rest. */
function ended(diagnostics: readonly Diagnostic[], text: string | undefined, io: Io): ExitCode {
  report(diagnostics, text, io);
  return exitCodeOf(diagnostics);
}

async function show(file: string, values: Values, io: Io): Promise<ExitCode> {
  const read = await openStash(file, values.unit ?? "in", io);
  if (read.value === null) return failWith(read.diagnostics, undefined, values.json, io);
  const { stashJson, stashList } = await import("../../index.ts");
  const { stash, text } = read.value;
  const cloths = stash.rows.flatMap(({ cloth, line }) => (cloth === null ? [] : [{ line, ...cloth }]));
  if (values.json) {
    const told = { action: "show" as const, cloths, diagnostics: read.diagnostics };
    io.out(stashJson(told, spokenIn(values), io.words));
  } else io.out(stashList(stash, spokenIn(values), io.words));
  return ended(read.diagnostics, text, io);
}

async function add(typed: readonly string[], file: string, values: Values, io: Io): Promise<ExitCode> {
  const [fabric = "", size = ""] = typed;
  const { addCloth, clothLines, readCloth, stashJson } = await import("../../index.ts");
  const spoken = spokenIn(values);
  const cloth = readCloth(fabric, size, values.count ?? 1, values.note ?? "", values.unit ?? "in");
  if (cloth.value === null) {
    failWith(cloth.diagnostics, undefined, values.json, io);
    return EXIT.usage;
  }
  const added = cloth.value;
  const table = { path: resolve(io.folder, file), named: file, bare: values.unit ?? "in", mayMake: true };
  const done = await changeStash(table, (stash) => ({
    value: { stash: addCloth(stash, added, spoken), told: added },
    diagnostics: [],
  }));
  if (done.value === null) return failWith(done.diagnostics, undefined, values.json, io);
  const lines = clothLines([added], spoken, io.words);
  const { diagnostics } = done;
  const told = [...cloth.diagnostics, ...diagnostics];
  if (values.json) io.out(stashJson({ action: "add", added, diagnostics: told }, spoken, io.words));
  else io.out(io.words.commandLine.stash.addedTo(file, lines.join("\n")));
  return ended(told, undefined, io);
}

async function take(planFile: string, file: string, values: Values, io: Io): Promise<ExitCode> {
  const input = await readInput(planFile, io);
  if (input.value === null) return failWith(input.diagnostics, undefined, values.json, io);
  const { clothLines, readPlan, stashJson, takePlan } = await import("../../index.ts");
  const plan = readPlan(input.value.text, input.value.name);
  if (plan.value === null) return failWith(plan.diagnostics, undefined, values.json, io);
  const { value } = plan;
  const bare = values.unit ?? value.ruler.unit;
  const spoken = bare === "in" ? "in" : "cm";
  const table = { path: resolve(io.folder, file), named: file, bare, mayMake: false };
  const done = await changeStash(table, (stash) => {
    const taken = takePlan(stash, value, file, io.words.choices.drawer.leftFrom(value.name));
    if (taken.value === null) return { value: null, diagnostics: taken.diagnostics };
    const { used, kept } = taken.value;
    return { value: { stash: taken.value.stash, told: { used, kept } }, diagnostics: [] };
  });
  if (done.value === null) return failWith(done.diagnostics, undefined, values.json, io);
  const { used, kept } = done.value;
  if (values.json)
    io.out(stashJson({ action: "take", used, kept, diagnostics: done.diagnostics }, spoken, io.words));
  else {
    const part = (title: string, cloths: typeof used) =>
      cloths.length === 0
        ? [io.words.commandLine.stash.nothing(title)]
        : [`${title}:`, ...clothLines(cloths, spoken, io.words)];
    const lines = [
      ...part(io.words.commandLine.stash.takenOutOf(file), used),
      "",
      ...part(io.words.commandLine.stash.offcutsPutIn, kept),
    ];
    io.out(`${lines.join("\n")}\n`);
  }
  io.talk(io.words.commandLine.stash.theTableAsIt(file));
  return ended(done.diagnostics, undefined, io);
}

async function suits(quilt: string, file: string, values: Values, io: Io): Promise<ExitCode> {
  const input = await readInput(quilt, io);
  if (input.value === null) return failWith(input.diagnostics, undefined, values.json, io);
  const { readSpecFile, stashJson, suitsList, suitsOf } = await import("../../index.ts");
  const { text, name } = input.value;
  const spec = readSpecFile(text, name, null, io.words.language);
  if (spec.value === null) return failWith(spec.diagnostics, text, values.json, io);
  const opened = await openStash(file, values.unit ?? spec.value.defaultUnit, io);
  if (opened.value === null) return failWith(opened.diagnostics, undefined, values.json, io);
  const planning = { style: null, prefer: null, thorough: false, budget: null, json: values.json };
  const options = await optionsOf(planning, io);
  const pool = await poolOf(io, options);
  const found = await suitsOf(spec.value, opened.value.stash, options, pool.solve);
  pool.clear();
  report(opened.diagnostics, opened.value.text, io);
  if (found.value === null) return failWith(found.diagnostics, text, values.json, io);
  const { plan, fabrics } = found.value;
  const diagnostics = [...spec.diagnostics, ...found.diagnostics];
  const told = { action: "suits" as const, fabrics, diagnostics };
  io.out(values.json ? stashJson(told, plan.ruler.unit, io.words) : suitsList(plan.name, fabrics, io.words));
  return ended(diagnostics, text, io);
}

async function undo(file: string, values: Values, io: Io): Promise<ExitCode> {
  const wanted = values.steps ?? 1;
  if (!Number.isInteger(wanted)) {
    io.talk(io.words.commandLine.stash.errorStepsIsA(wanted));
    return EXIT.usage;
  }
  const [{ undoSafely }, { undoneJson }] = await Promise.all([
    import("../files/safe-file.ts"),
    import("../../index.ts"),
  ]);
  const done = await undoSafely({ path: resolve(io.folder, file), named: file }, wanted);
  if (done.value === null) return failWith(done.diagnostics, undefined, values.json, io);
  const { steps, left } = done.value;
  const changes = (count: number) => io.words.commandLine.stash.change(count, count === 1 ? "" : "s");
  if (values.json)
    io.out(undoneJson({ action: "undo", steps, left, diagnostics: done.diagnostics }, io.words));
  else io.out(io.words.commandLine.stash.ofTakenBackBefore(changes(steps), file, changes(left)));
  io.talk(io.words.commandLine.stash.theTableAsIt2(file));
  return EXIT.done;
}

/** What each action is given after its name. */
const TAKES: Readonly<Record<string, readonly string[]>> = {
  show: [],
  add: ["FABRIC", "SIZE"],
  take: ["PLAN.json"],
  suits: ["FILE"],
  undo: [],
};

export const stash = (words: Words) =>
  defineCommand({
    name: "stash",
    summary: words.commandLine.stash.theClothInYour,
    about: words.commandLine.stash.keepsATableThat,
    arguments: [
      { name: "<action>", help: `${Object.keys(TAKES).join(", ")}`, words: Object.keys(TAKES) },
      {
        name: "[words...]",
        help: words.commandLine.stash.forAddFabricAnd,
      },
    ],
    options: inWords(words, {
      stash: stashOption,
      count,
      note,
      steps,
      unit,
      json,
    }),
    examples: words.commandLine.stash.examples,
    async run([action = "", ...typed], values, io) {
      const takes = Object.hasOwn(TAKES, action) ? TAKES[action] : undefined;
      if (takes === undefined) {
        io.talk(io.words.commandLine.stash.errorStashHasNo(action, Object.keys(TAKES).join(", ")));
        return EXIT.usage;
      }
      if (typed.length !== takes.length) {
        const wanted = takes.length === 0 ? io.words.commandLine.stash.noMoreWords : takes.join(" ");
        io.talk(io.words.commandLine.stash.errorStashTakesSee(action, wanted));
        return EXIT.usage;
      }
      const file = values.stash ?? "stash.csv";
      if (action === "add") return add(typed, file, values, io);
      if (action === "take") return take(typed[0] ?? "", file, values, io);
      if (action === "undo") return undo(file, values, io);
      if (action === "suits") return suits(typed[0] ?? "", file, values, io);
      return show(file, values, io);
    },
  });
