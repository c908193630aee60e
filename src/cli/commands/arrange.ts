import { join, resolve } from "node:path";
import { defineCommand, EXIT } from "../command.ts";
import type { Option, Read } from "../option.ts";
import { json, out } from "../options.ts";
import { optionsOf, poolOf } from "../planning.ts";
import { startProgress } from "../progress.ts";
import { readInput } from "../read.ts";
import { failWith, report } from "../report.ts";

const seed: Option<number> = {
  flags: "--seed <number>",
  help: "another arrangement by chance; the same number gives the same one",
  standard: "1",
  absent: 1,
  read: (typed): Read<number> =>
    /^\d{1,6}$/.test(typed.trim())
      ? { value: Number(typed) }
      : { problem: "Use a whole number, for example 7." },
};

export const arrange = defineCommand({
  name: "arrange",
  summary: "turnings of the blocks side by side: pictures, and what each takes",
  about:
    "Turns the blocks of a quilt by quarters: all one way, left and right by turns, about the centre, in facing pairs, " +
    "by chance, and as the file has it. Each is planned; where a print has an up, the fabric to buy may change. Writes " +
    "a picture of all of them (arrangements.svg).",
  arguments: [{ name: "<file>", help: "the quilt file, YAML or JSON" }],
  options: { out, json, seed },
  examples: [
    "arrange fixtures/quilts/nine-stars.yaml",
    "arrange my-quilt.yaml --seed 7 --out ~/quilts/turned",
  ],
  async run([file = ""], values, io) {
    const input = await readInput(file, io);
    if (input.value === null) return failWith(input.diagnostics, undefined, values.json, io);
    const { arrangeBlocks, arrangementsTable, loadArrangementDrawing, readSpecFile } = await import(
      "../../index.ts"
    );
    const { text, name } = input.value;
    const spec = readSpecFile(text, name);
    if (spec.value === null) return failWith(spec.diagnostics, text, values.json, io);
    const planning = { style: null, prefer: null, thorough: false, budget: null, json: values.json };
    const options = await optionsOf(planning);
    const progress = startProgress(io);
    const { solve } = await poolOf({ ...io, showsProgress: false });
    const found = await arrangeBlocks(spec.value, values.seed, options, solve, (done, of) =>
      progress.show(`Planning each arrangement: ${done} of ${of}`),
    );
    progress.clear();
    if (found.value === null) return failWith(found.diagnostics, text, values.json, io);
    report(spec.diagnostics, text, io);
    const currency = spec.value.fabrics.find(({ price }) => price !== null)?.price?.currency ?? "";
    const { arrangements } = found.value;
    if (values.json) io.out(`${JSON.stringify(found.value, null, 2)}\n`);
    else io.out(arrangementsTable(found.value, currency));
    if (values.json && values.out === null) return EXIT.done;

    const [{ drawArrangements }, { fileNamePart }, { writeFiles }] = await Promise.all([
      loadArrangementDrawing(),
      import("../result-files.ts"),
      import("../write.ts"),
    ]);
    const pictures = arrangements.flatMap(({ name: way, planned }) =>
      planned === null ? [] : [{ name: way, said: "", top: planned.top }],
    );
    const drawing = drawArrangements(found.value.name, pictures, spec.value.fabrics);
    const folder = values.out ?? join("out", fileNamePart(found.value.name) || "plan");
    const written = await writeFiles(
      resolve(io.folder, folder),
      { "arrangements.svg": drawing },
      () => false,
    );
    if (written.value === null) return failWith(written.diagnostics, undefined, values.json, io);
    io.talk(`arrangements.svg written into ${folder}\n`);
    return EXIT.done;
  },
});
