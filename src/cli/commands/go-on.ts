import { join, resolve } from "node:path";
import type { Outcome } from "../../diagnostics/types.ts";
import { workLeftOut, workNoPlan, workNothingToUndo } from "../../diagnostics/work.ts";
import type { Plan } from "../../plan/types.ts";
import type { Words } from "../../words/index.ts";

import { bolt, fatQuarters, kits, stash, usable } from "../asking.ts";
import { defineCommand, EXIT, type ExitCode } from "../command.ts";
import { realDisk } from "../files/disk.ts";
import { readInput } from "../files/read.ts";
import { keepWork, plannedAs, recordedAs } from "../files/work-file.ts";
import { inWords, toggle } from "../option.ts";
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

export const goOn = (words: Words) =>
  defineCommand({
    name: "go-on",
    summary: words.commandLine.goOn.thePlanOfWhat,
    about: words.commandLine.goOn.sayWhatHasHappened(words.factExamples),
    arguments: [
      { name: "<file>", help: words.commandLine.goOn.theQuiltOrCut },
      { name: "[facts...]", help: words.commandLine.goOn.whatHasHappenedIvory },
    ],
    options: inWords(words, {
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
    }),
    examples: words.commandLine.goOn.examples,
    async run([file = "", ...typed], values, io): Promise<ExitCode> {
      const input = await readInput(file, io);
      if (input.value === null) return failWith(input.diagnostics, undefined, values.json, io);
      const front = await import("../../index.ts");
      const { text, name } = input.value;
      const read = front.readSpecFile(text, name, null, io.words.language);
      if (read.value === null) return failWith(read.diagnostics, text, values.json, io);
      const { usualFolder } = await import("../files/file-names.ts");
      const quilts = values.kits ?? 1;
      const named =
        values.out ??
        usualFolder(quilts === 1 ? read.value.name : io.words.commandLine.goOn.kits(read.value.name, quilts));
      const folder = resolve(io.folder, named);
      const path = join(folder, front.WORK_NAME);
      const workNamed = join(named, front.WORK_NAME);
      const there = (await realDisk.kind(path)) === "file";
      const old = there ? await readInput(path, io) : null;
      if (old !== null && old.value === null) return failWith(old.diagnostics, undefined, values.json, io);
      if (typed.length > 0 && values.undo) {
        io.talk(io.words.commandLine.goOn.errorUndoTakesBack);
        return EXIT.usage;
      }
      if (typed.length === 0 && !values.undo && old === null) {
        io.talk(io.words.commandLine.goOn.errorNothingHasBeen(io.words.factExamples));
        return EXIT.usage;
      }
      const before = old?.value?.text ?? null;
      if (before === null && values.undo)
        return failWith([workNothingToUndo(workNamed)], undefined, values.json, io);
      let begun = before;
      let made: { plan: Plan; folder: string } | null = null;
      let begunText = before === null ? null : await begunIn(folder);
      if (begun === null) {
        const plan = await planIn(folder, named);
        if (plan.value === null) return failWith(plan.diagnostics, undefined, values.json, io);
        made = { plan: plan.value, folder: named };
        if ((values.budget ?? plan.value.asked?.budget ?? null) !== null)
          begunText = new TextDecoder().decode(await realDisk.read(join(folder, "plan.json")));
        const asked = plan.value.asked ?? front.USUALLY_PLANNED;
        const planned = await plannedAs(values, asked, read.value, io);
        if (planned.value === null) return failWith(planned.diagnostics, undefined, values.json, io);
        begun = front.beginWork(planned.value, io.words.workFile.about);
      } else {
        const fixed = await recordedAs(values, begun, workNamed, read.value, io.words);
        if (fixed.length > 0) return failWith(fixed, begun, values.json, io);
        const less = values.undo ? front.withoutLastEntry(begun) : begun;
        if (less === null) return failWith([workNothingToUndo(workNamed)], undefined, values.json, io);
        begun = less;
      }
      const pool = await poolOf(io, { budget: null, effort: null, thorough: true });
      const quilt = { text, name, language: io.words.language };
      const work = { text: begun, name: workNamed };
      const first = begunText === null ? null : front.readPlan(begunText, join(named, BEGUN_NAME));
      if (first !== null && first.value === null)
        return failWith(first.diagnostics, undefined, values.json, io);
      const request = { quilt, work, words: typed, again: values.again, made };
      const from = first === null ? null : { plan: first.value!, folder: named };
      const gone = await front.goOn({ ...request, first: from }, pool.solve);
      pool.clear();
      await (await import("../threads/pool.ts")).endThreads();
      if (gone.value === null) {
        const ofWork = gone.diagnostics.some(({ at }) => at?.file === workNamed);
        return failWith(gone.diagnostics, ofWork ? begun : text, values.json, io);
      }
      report(gone.diagnostics, text, io);
      const { plan, changes, workText } = gone.value;
      const [{ resultFiles }, { printedFiles }, { writeFiles }] = await Promise.all([
        import("../results/result-files.ts"),
        import("../results/printed-files.ts"),
        import("../files/write.ts"),
      ]);
      const results = await resultFiles(plan, io.words);
      const printed = await printedFiles(plan, results, values, null, null, io);
      const list = front.goneOnList(plan, changes, io.words);
      const begunFile = begunText === null ? {} : { [BEGUN_NAME]: begunText };
      const files = { ...results, ...printed, ...begunFile, "gone-on.txt": list };
      const kept = await keepWork({ path, named: workNamed }, before, workText);
      if (kept.value === null) return failWith(kept.diagnostics, undefined, values.json, io);
      const inputs = [file, values.font].flatMap((each) =>
        each === null || each === "-" ? [] : [resolve(io.folder, each)],
      );
      const written = await writeFiles({
        ...{ folder, named, by: "plan", files, replace: values.replace },
        inputs: [...inputs, path],
      });
      if (written.value === null)
        return failWith([...written.diagnostics, workLeftOut(workNamed)], undefined, values.json, io);
      report(written.diagnostics, undefined, io);
      if (values.json) io.out(front.planJson(plan, io.words));
      else io.out([list, front.buyList(plan, io.words), front.cuttingSteps(plan, true, io.words)].join("\n"));
      io.talk(io.words.commandLine.goOn.filesWrittenIntoWhat(written.value.length, named, workNamed));
      return EXIT.done;
    },
  });
