import { join, resolve } from "node:path";
import type { Diagnostic } from "../../diagnostics/types.ts";
import { workLeftAside } from "../../diagnostics/work.ts";
import type { Words } from "../../words/index.ts";

import { besideSorts, bolt, fatQuarters, kitsAsked, kitsOrSorts, stash, usable } from "../asking.ts";
import { defineCommand, EXIT } from "../command.ts";
import { comparisonOf } from "../comparing.ts";
import { realDisk } from "../files/disk.ts";
import { askedWith } from "../files/work-file.ts";
import { inWords, takes, text } from "../option.ts";
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
import { planFile } from "../planning.ts";
import { failWith, report } from "../report.ts";
import { besideFiles, listsIn } from "../results/beside-files.ts";
import { patternFor } from "../results/pattern.ts";

const sizes = (words: Words) =>
  text(
    takes("--sizes", words.commandLine.values.sizes),
    words.commandLine.plan.sizesOfThePattern,
    words.commandLine.plan.sizesInTheFile,
  );

export const plan = (words: Words) =>
  defineCommand({
    name: "plan",
    summary: words.commandLine.plan.buyListCuttingPlan,
    about: words.commandLine.plan.worksOutWhatTo,
    arguments: [{ name: "<file>", help: words.commandLine.plan.theCutListYaml }],
    options: inWords(words, {
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
    }),
    examples: words.commandLine.plan.examples,
    async run([file = ""], values, io) {
      const { kits, sorts } = kitsAsked(values.kits);
      const other = { "--sizes": values.sizes, "--fat-quarters": values.fatQuarters };
      const unfit =
        sorts === null
          ? null
          : besideSorts({ ...other, "--width": values.usable, "--compare": values.compare });
      if (unfit !== null) {
        io.talk(io.words.commandLine.asking.notWithSorts(unfit));
        return EXIT.usage;
      }
      const beside = { ...values, kits, sorts };
      const planned = await planFile(file, values, io, beside);
      if ("code" in planned) return planned.code;
      const asked =
        sorts === null
          ? await askedWith(planned, { ...values, kits: values.kits === null ? null : kits })
          : null;
      const made = asked === null ? planned : { ...planned, plan: { ...planned.plan, asked } };
      const { files: besides, books } = await besideFiles(made, beside, io);
      const inFile = planned.spec.kind === "quilt" ? planned.spec.class.kits : [];
      if (values.kits === null && inFile.length > 0) {
        const { kitsInFile } = await import("../../index.ts");
        report([kitsInFile(inFile.reduce((sum, { count }) => sum + count, 0))], undefined, io);
      }
      const comparison = values.compare ? await comparisonOf(made, io) : null;
      // The plan is made all the same: that there is nothing to compare it with is only said.
      if (comparison?.value === null)
        report(
          comparison.diagnostics.map((found): Diagnostic => ({ ...found, severity: "info" }) as Diagnostic),
          undefined,
          io,
        );
      const pattern = await patternFor(made, values.sizes, values, io);
      if ("code" in pattern) return pattern.code;
      await (await import("../threads/pool.ts")).endThreads();
      const { buyList, cuttingSteps, makingSteps, planJson, wasteTable } = await import("../../index.ts");
      if (values.json && values.out === null) {
        io.out(planJson(made.plan, io.words));
        return EXIT.done;
      }
      const [{ usualFolder }, { resultFiles }, { printedFiles }, { writeFiles }] = await Promise.all([
        import("../files/file-names.ts"),
        import("../results/result-files.ts"),
        import("../results/printed-files.ts"),
        import("../files/write.ts"),
      ]);
      const named = values.out ?? usualFolder(made.plan.name);
      const results = await resultFiles(made.plan, io.words, pattern.value);
      const printed = await printedFiles(
        made.plan,
        results,
        values,
        comparison?.value ?? null,
        pattern.value,
        io,
        books,
      );
      const files = { ...results, ...printed, ...besides };
      const folder = resolve(io.folder, named);
      const inputs = [file, values.stash, values.font].flatMap((name) =>
        name === null || name === "-" ? [] : [resolve(io.folder, name)],
      );
      const written = await writeFiles({ folder, named, by: "plan", files, inputs, replace: values.replace });
      if (written.value === null) return failWith(written.diagnostics, undefined, values.json, io);
      report(written.diagnostics, undefined, io);
      const { WORK_NAME } = await import("../../index.ts");
      if ((await realDisk.kind(join(folder, WORK_NAME))) !== null)
        report([workLeftAside(join(named, WORK_NAME))], undefined, io);
      if (values.json) io.out(planJson(made.plan, io.words));
      else {
        const all = [
          buyList(made.plan, io.words),
          ...listsIn(besides),
          cuttingSteps(made.plan, true, io.words),
        ];
        if (made.plan.making !== undefined) all.push(makingSteps(made.plan, io.words));
        io.out([...all, wasteTable(made.plan, io.words)].join("\n"));
      }
      io.talk(io.words.commandLine.plan.filesWrittenInto(written.value.length, named));
      return EXIT.done;
    },
  });
