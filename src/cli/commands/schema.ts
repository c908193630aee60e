import { defineCommand, EXIT } from "../command.ts";

export const schema = defineCommand({
  name: "schema",
  summary: "the JSON Schema of the files this program reads, for editors",
  about: "",
  arguments: [],
  options: {},
  examples: ["schema > crossgrain.schema.json"],
  async run(_words, _values, io) {
    const { publishedSchema } = await import("../../index.ts");
    io.out(`${JSON.stringify(publishedSchema(), null, 2)}\n`);
    return EXIT.done;
  },
});
