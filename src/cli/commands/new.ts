import { defineCommand, EXIT } from "../command.ts";

export const newFile = defineCommand({
  name: "new",
  summary: "a starter file with notes, to edit; without a kind, the list of kinds",
  about: "Prints the file, so that it goes where you send it: `crossgrain new blocks > my-quilt.yaml`.",
  arguments: [{ name: "[kind]", help: "blocks, on-point, sampler, metric or cut-list" }],
  options: {},
  examples: ["new", "new blocks > my-quilt.yaml"],
  async run([kind], _values, io) {
    const { STARTERS: starters } = await import("../../index.ts");
    if (kind === undefined) {
      const width = Math.max(...starters.map(({ name }) => name.length));
      for (const { name, summary } of starters) io.out(`${name.padEnd(width)}  ${summary}\n`);
      return EXIT.done;
    }
    const starter = starters.find(({ name }) => name === kind);
    if (starter === undefined) {
      const names = starters.map(({ name }) => name).join(", ");
      io.talk(`There is no starter \`${kind}\`. Known here: ${names}.\n`);
      return EXIT.usage;
    }
    io.out(starter.text);
    return EXIT.done;
  },
});
