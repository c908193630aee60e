import { basename, dirname, resolve } from "node:path";
import type { Words } from "../../words/index.ts";

import { defineCommand, EXIT } from "../command.ts";
import { readInput } from "../files/read.ts";
import type { Option, Read } from "../option.ts";
import { inWords, takes } from "../option.ts";
import * as usual from "../options.ts";
import { optionsOf, poolOf } from "../planning.ts";
import { failWith, report } from "../report.ts";
import { startProgress } from "../threads/progress.ts";

const take = (words: Words): Option<number | null> => ({
  flags: takes("--take", words.commandLine.values.number),
  help: words.commandLine.savings.writeTheFileWith,
  standard: words.commandLine.options.none,
  absent: null,
  read: (typed): Read<number> =>
    /^[1-9]\d{0,2}$/.test(typed.trim())
      ? { value: Number(typed) }
      : { problem: words.commandLine.savings.useANumberOf },
});

const changedFile = (words: Words): Option<string | null> => ({
  flags: takes("--out", words.commandLine.values.file),
  help: words.commandLine.savings.whereToWriteThe,
  standard: "",
  absent: null,
  read: (value) => ({ value }),
});

export const savings = (words: Words) =>
  defineCommand({
    name: "savings",
    summary: words.commandLine.savings.whatWouldSaveChanges,
    about: words.commandLine.savings.plansTheFileWith,
    arguments: [{ name: "<file>", help: words.commandLine.savings.theQuiltFileYaml }],
    options: inWords(words, {
      take,
      out: changedFile,
      replace: usual.replace,
      json: usual.json,
    }),
    examples: words.commandLine.savings.examples,
    async run([file = ""], values, io) {
      if ((values.take === null) !== (values.out === null)) {
        io.talk(io.words.commandLine.savings.errorTakeAndOut);
        return EXIT.usage;
      }
      const input = await readInput(file, io);
      if (input.value === null) return failWith(input.diagnostics, undefined, values.json, io);
      const { findSavings, savingsJson, savingsList } = await import("../../index.ts");
      const { text, name } = input.value;
      const progress = startProgress(io);
      const planning = { style: null, prefer: null, thorough: false, budget: null, json: values.json };
      const options = await optionsOf(planning, io);
      const { solve } = await poolOf({ ...io, showsProgress: false }, options);
      const found = await findSavings(text, name, options, solve, (done, of) =>
        progress.show(io.words.commandLine.savings.planningEachChangeOf(done, of)),
      );
      progress.clear();
      if (found.value === null) return failWith(found.diagnostics, text, values.json, io);
      io.out(values.json ? savingsJson(found.value, io.words) : savingsList(found.value, file, io.words));
      if (values.take === null || values.out === null) return EXIT.done;

      const taken = found.value.savings[values.take - 1];
      if (taken === undefined) {
        io.talk(io.words.commandLine.savings.errorThereIsNo(values.take, found.value.savings.length));
        return EXIT.usage;
      }
      const path = resolve(io.folder, values.out);
      const { writeFiles } = await import("../files/write.ts");
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
      io.talk(io.words.commandLine.savings.written(values.out, io.words.changeSaid(taken.idea.change)));
      return EXIT.done;
    },
  });
