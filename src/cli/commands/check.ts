import { diagnosticsJson } from "../../diagnostics/answer.ts";
import type { Words } from "../../words/index.ts";

import { wordAll } from "../../words/index.ts";
import { defineCommand } from "../command.ts";
import { readInput } from "../files/read.ts";
import { inWords } from "../option.ts";
import { json } from "../options.ts";
import { exitCodeOf, failWith, report } from "../report.ts";

export const check = (words: Words) =>
  defineCommand({
    name: "check",
    summary: words.commandLine.check.whatIsWrongWith,
    about: "",
    arguments: [{ name: "<file>", help: words.commandLine.check.theCutListYaml }],
    options: inWords(words, { json }),
    examples: words.commandLine.check.examples,
    async run([file = ""], values, io) {
      const input = await readInput(file, io);
      if (input.value === null) return failWith(input.diagnostics, undefined, values.json, io);
      const { checkQuilt } = await import("../../index.ts");
      const { diagnostics } = checkQuilt(input.value.text, input.value.name, io.words.language);
      report(diagnostics, input.value.text, io);
      const code = exitCodeOf(diagnostics);
      if (values.json) io.out(diagnosticsJson(wordAll(diagnostics, io.words)));
      else if (code === 0) io.out(io.words.commandLine.check.noErrors(input.value.name));
      return code;
    },
  });
