import { basename, dirname, resolve } from "node:path";
import { defineCommand, EXIT } from "../command.ts";
import type { Option, Read } from "../option.ts";
import * as usual from "../options.ts";
import { optionsOf, poolOf } from "../planning.ts";
import { startProgress } from "../progress.ts";
import { readInput } from "../read.ts";
import { failWith, report } from "../report.ts";

const take: Option<number | null> = {
  flags: "--take <number>",
  help: "write the file with this change of the list made, to the file that --out names",
  standard: "none",
  absent: null,
  read: (typed): Read<number> =>
    /^[1-9]\d{0,2}$/.test(typed.trim())
      ? { value: Number(typed) }
      : { problem: "Use a number of the list, for example 1." },
};

const changedFile: Option<string | null> = {
  flags: "--out <file>",
  help: "where to write the changed file",
  standard: "",
  absent: null,
  read: (value) => ({ value }),
};

export const savings = defineCommand({
  name: "savings",
  summary: "what would save: changes to a quilt that buy less fabric, each really planned",
  about:
    "Plans the file with one change at a time and lists those that buy less, the greatest saving first: strips cut once " +
    "more, another method for a unit, a print that may be turned, blocks all one way, a border cut along the selvage " +
    "or joined, the nearest narrower border, sashing or block that buys less. The drawing page offers the same list. " +
    "With --take a change is made: the file is copied with it, comments and order kept. Your file is not changed.",
  arguments: [{ name: "<file>", help: "the quilt file, YAML or JSON" }],
  options: { take, out: changedFile, replace: usual.replace, json: usual.json },
  examples: [
    "new blocks > my-quilt.yaml",
    "savings my-quilt.yaml",
    "savings my-quilt.yaml --take 1 --out my-quilt-less.yaml",
  ],
  async run([file = ""], values, io) {
    if ((values.take === null) !== (values.out === null)) {
      io.talk("error: --take and --out go together. For example: --take 1 --out my-quilt-less.yaml\n");
      return EXIT.usage;
    }
    const input = await readInput(file, io);
    if (input.value === null) return failWith(input.diagnostics, undefined, values.json, io);
    const { findSavings, savingsJson, savingsList } = await import("../../index.ts");
    const { text, name } = input.value;
    const progress = startProgress(io);
    const planning = { style: null, prefer: null, thorough: false, budget: null, json: values.json };
    const options = await optionsOf(planning);
    const { solve } = await poolOf({ ...io, showsProgress: false }, options);
    const found = await findSavings(text, name, options, solve, (done, of) =>
      progress.show(`Planning each change: ${done} of at most ${of}`),
    );
    progress.clear();
    if (found.value === null) return failWith(found.diagnostics, text, values.json, io);
    io.out(values.json ? savingsJson(found.value, io.words) : savingsList(found.value, file, io.words));
    if (values.take === null || values.out === null) return EXIT.done;

    const taken = found.value.savings[values.take - 1];
    if (taken === undefined) {
      io.talk(
        `error: there is no change ${values.take} in the list; it has ${found.value.savings.length}.\n`,
      );
      return EXIT.usage;
    }
    const path = resolve(io.folder, values.out);
    const { writeFiles } = await import("../write.ts");
    const written = await writeFiles({
      folder: dirname(path),
      named: dirname(values.out),
      by: "savings",
      files: { [basename(path)]: taken.idea.text },
      inputs: file === "-" ? [] : [resolve(io.folder, file)],
      replace: values.replace,
    });
    if (written.value === null) return failWith(written.diagnostics, undefined, values.json, io);
    report(written.diagnostics, undefined, io);
    io.talk(`${values.out} written: ${io.words.changeSaid(taken.idea.change)}\n`);
    return EXIT.done;
  },
});
