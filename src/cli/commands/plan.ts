import { join } from "node:path";
import type { Comparison } from "../../choices/methods/comparison.ts";
import { onlySaid } from "../../diagnostics/tell.ts";
import { workLeftAside } from "../../diagnostics/work.ts";
import type { Plan } from "../../plan/types.ts";
import type { Spec } from "../../spec/index.ts";
import type { Words } from "../../words/index.ts";

import { besideSorts, bolt, fatQuarters, kitsAsked, kitsOrSorts, stash, usable } from "../asking.ts";
import { defineCommand, EXIT, type ExitCode } from "../command.ts";
import { comparisonOf } from "../comparing.ts";
import { realDisk } from "../files/disk.ts";
import { askedWith } from "../files/work-file.ts";
import type { Files } from "../files/write.ts";
import type { Io } from "../io.ts";
import { inWords, takes, text, type Values } from "../option.ts";
import {
  budget,
  compared,
  decimal,
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
import { type Planned, planFile } from "../planning.ts";
import { failWith, report } from "../report.ts";
import { besideFiles, listsIn } from "../results/beside-files.ts";
import { patternFor } from "../results/pattern.ts";
import { writeInto } from "../results/write-into.ts";

const sizes = (words: Words) =>
  text(
    takes("--sizes", words.commandLine.values.sizes),
    words.commandLine.plan.sizesOfThePattern,
    words.commandLine.plan.sizesInTheFile,
  );

const options = (words: Words) =>
  inWords(words, {
    out,
    replace,
    json,
    style,
    prefer,
    thorough,
    budget,
    stash,
    fatQuarters,
    kits: kitsOrSorts,
    sizes,
    usable,
    bolt,
    ruler,
    pdf,
    paper,
    png,
    font,
    markdown,
    compare: compared,
    decimal,
  });

type Typed = Values<ReturnType<typeof options>>;

export const plan = (words: Words) =>
  defineCommand({
    name: "plan",
    summary: words.commandLine.plan.buyListCuttingPlan,
    about: words.commandLine.plan.worksOutWhatTo,
    arguments: [{ name: "<file>", help: words.commandLine.plan.theCutListYaml }],
    options: options(words),
    examples: words.commandLine.plan.examples,
    run: ([file = ""], values, io) => planned(file, values, io),
  });

/** Plans the file, and writes and prints what follows from it. */
async function planned(file: string, values: Typed, io: Io): Promise<ExitCode> {
  const { kits, sorts } = kitsAsked(values.kits);
  const other = { "--sizes": values.sizes, "--fat-quarters": values.fatQuarters };
  const unfit =
    sorts === null ? null : besideSorts({ ...other, "--width": values.usable, "--compare": values.compare });
  if (unfit !== null) {
    io.talk(io.words.commandLine.asking.notWithSorts(unfit));
    return EXIT.usage;
  }
  const beside = { ...values, kits, sorts };
  const planned = await planFile(file, values, io, beside);
  if ("code" in planned) return planned.code;
  const asked =
    sorts === null ? await askedWith(planned, { ...values, kits: values.kits === null ? null : kits }) : null;
  const made = asked === null ? planned : { ...planned, plan: { ...planned.plan, asked } };
  const { files: besides, books } = await besideFiles(made, beside, io);
  if (values.kits === null) await tellKitsInFile(planned.spec, io);
  const comparison = values.compare ? await comparisonTold(made, io) : null;
  const pattern = await patternFor(made, values.sizes, values, io);
  if ("code" in pattern) return pattern.code;
  await (await import("../threads/pool.ts")).endThreads();
  const { planJson } = await import("../../index.ts");
  if (values.json && values.out === null) {
    io.out(planJson(made.plan, io.words));
    return EXIT.done;
  }
  const [{ resultFiles }, { printedFiles }] = await Promise.all([
    import("../results/result-files.ts"),
    import("../results/printed-files.ts"),
  ]);
  const results = await resultFiles(made.plan, io.words, pattern.value);
  const too = { comparison, pattern: pattern.value, books };
  const printed = await printedFiles(made.plan, results, values, too, io);
  const files = { ...results, ...printed, ...besides };
  const place = { out: values.out, name: made.plan.name, replace: values.replace };
  const read = [file, values.stash, values.font];
  const written = await writeInto(place, { by: "plan", files, read }, io);
  if (written.value === null) return failWith(written.diagnostics, undefined, values.json, io);
  report(written.diagnostics, undefined, io);
  const { folder, named, names } = written.value;
  await tellWorkLeft(folder, named, io);
  io.out(values.json ? planJson(made.plan, io.words) : await listed(made.plan, besides, io.words));
  io.talk(io.words.commandLine.plan.filesWrittenInto(names.length, named));
  return EXIT.done;
}

/** Kits that the file asks for are not cut unasked, and that is said. */
async function tellKitsInFile(spec: Spec, io: Io): Promise<void> {
  const kits = spec.kind === "quilt" ? spec.class.kits : [];
  if (kits.length === 0) return;
  const { kitsInFile } = await import("../../index.ts");
  report([kitsInFile(kits.reduce((sum, { count }) => sum + count, 0))], undefined, io);
}

/** The ways of making the quilt side by side; that there is nothing to compare it with is only said. */
async function comparisonTold(made: Planned, io: Io): Promise<Comparison | null> {
  const { value, diagnostics } = await comparisonOf(made, io);
  if (value === null) report(diagnostics.map(onlySaid), undefined, io);
  return value;
}

/** Work begun in the folder goes on with the plan before, which is said. */
async function tellWorkLeft(folder: string, named: string, io: Io): Promise<void> {
  const { WORK_NAME } = await import("../../index.ts");
  if ((await realDisk.kind(join(folder, WORK_NAME))) !== null)
    report([workLeftAside(join(named, WORK_NAME))], undefined, io);
}

/** What is read on the terminal: what to buy, how to cut and to sew it, and where the cloth goes. */
async function listed(made: Plan, besides: Files, words: Words): Promise<string> {
  const { buyList, cuttingSteps, makingSteps, wasteTable } = await import("../../index.ts");
  const all = [buyList(made, words), ...listsIn(besides), cuttingSteps(made, true, words)];
  if (made.making !== undefined) all.push(makingSteps(made, words));
  return [...all, wasteTable(made, words)].join("\n");
}
