import { resolve } from "node:path";
import type { Words } from "../../words/index.ts";

import { defineCommand, EXIT } from "../command.ts";
import { readInput } from "../files/read.ts";
import type { Option, Read } from "../option.ts";
import { inWords, takes } from "../option.ts";
import * as usual from "../options.ts";
import { optionsOf, poolOf } from "../planning.ts";
import { failWith, report } from "../report.ts";
import { startProgress } from "../threads/progress.ts";

const STEPS = ["strip", "subcut", "mark", "seam", "metre", "yard", "press", "trim"] as const;

type Step = (typeof STEPS)[number];

const minutes = (words: Words): Option<Partial<Record<Step, number>>> => ({
  flags: takes("--minutes", words.commandLine.values.steps),
  help: words.commandLine.compare.yourOwnMinutesFor(STEPS.join(", ")),
  standard: words.commandLine.compare.theFileSElse,
  absent: {},
  read: (typed): Read<Partial<Record<Step, number>>> => {
    const value: Partial<Record<Step, number>> = {};
    for (const part of typed.split(/[,;]/)) {
      const [, name = "", number = ""] = /^\s*([a-z]+)\s*=\s*(\d{1,3}(?:\.\d{1,4})?)\s*$/.exec(part) ?? [];
      const step = STEPS.find((each) => each === name);
      if (step === undefined)
        return { problem: words.commandLine.compare.writeForExampleStrip(STEPS.join(", ")) };
      value[step] = Number(number);
    }
    return { value };
  },
});

export const compare = (words: Words) =>
  defineCommand({
    name: "compare",
    summary: words.commandLine.compare.waysOfMakingThe,
    about: words.commandLine.compare.plansTheWholeQuilt,
    arguments: [{ name: "<file>", help: words.commandLine.compare.theQuiltFileYaml }],
    options: inWords(words, {
      out: usual.out,
      replace: usual.replace,
      json: usual.json,
      style: usual.style,
      budget: usual.budget,
      minutes,
    }),
    examples: words.commandLine.compare.examples,
    async run([file = ""], values, io) {
      const input = await readInput(file, io);
      if (input.value === null) return failWith(input.diagnostics, undefined, values.json, io);
      const {
        compareMethods,
        comparisonJson,
        comparisonTable,
        loadComparisonDrawing,
        METRES_IN_A_YARD,
        readSpecFile,
        USUAL_MINUTES,
      } = await import("../../index.ts");
      const { text, name } = input.value;
      const spec = readSpecFile(text, name, null, io.words.language);
      if (spec.value === null) return failWith(spec.diagnostics, text, values.json, io);
      const { style, budget, json } = values;
      const options = await optionsOf({ style, prefer: null, thorough: false, budget, json }, io);
      const progress = startProgress(io);
      const { solve } = await poolOf({ ...io, showsProgress: false }, options);
      const own = spec.value.kind === "quilt" ? spec.value.minutes : USUAL_MINUTES;
      const { yard, ...typed } = values.minutes;
      const steps = { ...own, ...typed, ...(yard === undefined ? {} : { metre: yard / METRES_IN_A_YARD }) };
      const found = await compareMethods(spec.value, options, steps, solve, (done, of) =>
        progress.show(io.words.commandLine.compare.planningEachWayOf(done, of)),
      );
      progress.clear();
      if (found.value === null) return failWith(found.diagnostics, text, json, io);
      const told = [...spec.diagnostics, ...found.diagnostics];
      report(told, text, io);
      const { ruler } = spec.value;
      io.out(
        json
          ? comparisonJson(found.value, ruler, told, io.words)
          : comparisonTable(found.value, ruler, io.words),
      );
      if (json && values.out === null) return EXIT.done;

      const [{ drawComparison }, { usualFolder }, { writeFiles }] = await Promise.all([
        loadComparisonDrawing(),
        import("../files/file-names.ts"),
        import("../files/write.ts"),
      ]);
      const drawing = drawComparison(found.value, ruler.unit === "in", io.words);
      const named = values.out ?? usualFolder(found.value.name);
      const folder = resolve(io.folder, named);
      const inputs = file === "-" ? [] : [resolve(io.folder, file)];
      const { replace } = values;
      const written = await writeFiles({
        folder,
        named,
        by: "compare",
        files: { "compare.svg": drawing },
        inputs,
        replace,
      });
      if (written.value === null) return failWith(written.diagnostics, undefined, json, io);
      report(written.diagnostics, undefined, io);
      io.talk(io.words.commandLine.compare.compareSvgWrittenInto(named));
      return EXIT.done;
    },
  });
