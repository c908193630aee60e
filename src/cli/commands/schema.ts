import type { Words } from "../../words/index.ts";

import { defineCommand, EXIT } from "../command.ts";

export const schema = (words: Words) =>
  defineCommand({
    name: "schema",
    summary: words.commandLine.schema.theJsonSchemaOf,
    about: "",
    arguments: [],
    options: {},
    examples: words.commandLine.schema.examples,
    async run(_words, _values, io) {
      const { publishedSchema } = await import("../../index.ts");
      io.out(`${JSON.stringify(publishedSchema(io.words), null, 2)}\n`);
      return EXIT.done;
    },
  });
