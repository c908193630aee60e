import { resolve } from "node:path";
import { defineCommand, EXIT } from "../command.ts";
import type { Option, Read } from "../option.ts";
import * as usual from "../options.ts";
import { optionsOf, poolOf } from "../planning.ts";
import { startProgress } from "../progress.ts";
import { readInput } from "../read.ts";
import { failWith, report } from "../report.ts";

const STEPS = ["strip", "subcut", "mark", "seam", "metre", "yard", "press", "trim"] as const;

type Step = (typeof STEPS)[number];

const minutes: Option<Partial<Record<Step, number>>> = {
  flags: "--minutes <steps>",
  help: `your own minutes for a step, as seam=0.5,trim=1; steps are ${STEPS.join(", ")}`,
  standard: "the file's, else usual ones; printed with the table",
  absent: {},
  read: (typed): Read<Partial<Record<Step, number>>> => {
    const value: Partial<Record<Step, number>> = {};
    for (const part of typed.split(/[,;]/)) {
      const [, name = "", number = ""] = /^\s*([a-z]+)\s*=\s*(\d{1,3}(?:\.\d{1,4})?)\s*$/.exec(part) ?? [];
      const step = STEPS.find((each) => each === name);
      if (step === undefined)
        return { problem: `Write for example strip=1,seam=0.5; steps are ${STEPS.join(", ")}.` };
      value[step] = Number(number);
    }
    return { value };
  },
};

export const compare = defineCommand({
  name: "compare",
  summary: "ways of making the units of a quilt side by side, each really planned",
  about:
    "Plans the whole quilt with every method of each kind of unit in turn, strip-pieced and single, and tells what " +
    "each takes: fabric and price, strips, subcuts, seams, bias edges, trims, corners cut off, whether prints keep " +
    "their direction, and an estimate of time; then the best combination and whether it is proved. Writes a picture " +
    "of the choices (compare.svg). With --json the comparison is printed as JSON, and the picture is written only " +
    "when --out names a folder.",
  arguments: [{ name: "<file>", help: "the quilt file, YAML or JSON" }],
  options: {
    out: usual.out,
    replace: usual.replace,
    json: usual.json,
    style: usual.style,
    budget: usual.budget,
    minutes,
  },
  examples: [
    "new blocks > my-quilt.yaml",
    "compare my-quilt.yaml",
    "compare my-quilt.yaml --minutes seam=0.5,trim=1 --out ~/quilts/ways",
  ],
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
    const spec = readSpecFile(text, name);
    if (spec.value === null) return failWith(spec.diagnostics, text, values.json, io);
    const { style, budget, json } = values;
    const options = await optionsOf({ style, prefer: null, thorough: false, budget, json });
    const progress = startProgress(io);
    const { solve } = await poolOf({ ...io, showsProgress: false }, options);
    const own = spec.value.kind === "quilt" ? spec.value.minutes : USUAL_MINUTES;
    const { yard, ...typed } = values.minutes;
    const steps = { ...own, ...typed, ...(yard === undefined ? {} : { metre: yard / METRES_IN_A_YARD }) };
    const found = await compareMethods(spec.value, options, steps, solve, (done, of) =>
      progress.show(`Planning each way: ${done} of at most ${of}`),
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
      import("../file-names.ts"),
      import("../write.ts"),
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
    io.talk(`compare.svg written into ${named}\n`);
    return EXIT.done;
  },
});
