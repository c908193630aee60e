import type { Comparison } from "../../choices/methods/comparison.ts";
import type { Outcome } from "../../diagnostics/types.ts";
import type { Spec } from "../../spec/index.ts";
import type { Words } from "../../words/index.ts";

import { defineCommand, EXIT } from "../command.ts";
import { readInput } from "../files/read.ts";
import type { Io } from "../io.ts";
import type { Option, Read } from "../option.ts";
import { inWords, takes } from "../option.ts";
import * as usual from "../options.ts";
import { optionsOf, type PlanningValues, poolOf } from "../planning.ts";
import { failWith, report } from "../report.ts";
import { writeInto } from "../results/write-into.ts";
import { startProgress } from "../threads/progress.ts";

const STEPS = ["strip", "subcut", "mark", "seam", "metre", "yard", "press", "trim"] as const;

type Step = (typeof STEPS)[number];

/** Minutes for steps, by name, as typed. */
type TypedMinutes = Partial<Record<Step, number>>;

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
      const { comparisonJson, comparisonTable, loadComparisonDrawing, readSpecFile } = await import(
        "../../index.ts"
      );
      const { text, name } = input.value;
      const spec = readSpecFile(text, name, null, io.words.language);
      if (spec.value === null) return failWith(spec.diagnostics, text, values.json, io);
      const { json } = values;
      const found = await compared(spec.value, values, io);
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

      const { drawComparison } = await loadComparisonDrawing();
      const files = { "compare.svg": drawComparison(found.value, ruler.unit === "in", io.words) };
      const folder = { out: values.out, name: found.value.name, replace: values.replace };
      const written = await writeInto(folder, { by: "compare", files, read: [file] }, io);
      if (written.value === null) return failWith(written.diagnostics, undefined, json, io);
      report(written.diagnostics, undefined, io);
      io.talk(io.words.commandLine.compare.compareSvgWrittenInto(written.value.named));
      return EXIT.done;
    },
  });

/** Plans every way of making the units, with the minutes typed, and progress on the terminal. */
async function compared(
  spec: Spec,
  { style, budget, minutes: typed }: Pick<PlanningValues, "style" | "budget"> & { minutes: TypedMinutes },
  io: Io,
): Promise<Outcome<Comparison>> {
  const { compareMethods, METRES_IN_A_YARD, USUAL_MINUTES } = await import("../../index.ts");
  const options = await optionsOf({ style, prefer: null, thorough: false, budget, json: false }, io);
  const progress = startProgress(io);
  const { solve } = await poolOf({ ...io, showsProgress: false }, options);
  const own = spec.kind === "quilt" ? spec.minutes : USUAL_MINUTES;
  const { yard, ...others } = typed;
  const steps = { ...own, ...others, ...(yard === undefined ? {} : { metre: yard / METRES_IN_A_YARD }) };
  const found = await compareMethods(spec, options, steps, solve, (done, of) =>
    progress.show(io.words.commandLine.compare.planningEachWayOf(done, of)),
  );
  progress.clear();
  return found;
}
