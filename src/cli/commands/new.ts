import type { Words } from "../../words/index.ts";

import { defineCommand, EXIT } from "../command.ts";

/** Begins every file: editors that know YAML look for the first line. */
const forEditors = (words: Words) => words.commandLine.newFile.yamlLanguageServerSchema;

const KINDS = ["blocks", "on-point", "sampler", "metric", "cut-list"];

export const newFile = (words: Words) =>
  defineCommand({
    name: "new",
    summary: words.commandLine.newFile.aStarterFileWith,
    about: words.commandLine.newFile.printsTheFileSo,
    arguments: [{ name: "[kind]", help: words.commandLine.newFile.blocksOnPointSampler, words: KINDS }],
    options: {},
    examples: words.commandLine.newFile.examples,
    async run([kind], _values, io) {
      const { starters } = io.words;
      if (kind === undefined) {
        const width = Math.max(...starters.map(({ name }) => name.length));
        for (const { name, summary } of starters) io.out(`${name.padEnd(width)}  ${summary}\n`);
        return EXIT.done;
      }
      const starter = starters.find(({ name }) => name === kind);
      if (starter === undefined) {
        const names = starters.map(({ name }) => name).join(", ");
        io.talk(io.words.commandLine.newFile.thereIsNoStarter(kind, names));
        return EXIT.usage;
      }
      io.out(`${forEditors(io.words)}${starter.text}`);
      return EXIT.done;
    },
  });
