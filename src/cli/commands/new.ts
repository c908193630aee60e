import { defineCommand, EXIT } from "../command.ts";

/** Begins every file: editors that know YAML look for the first line. */
const FOR_EDITORS = `# yaml-language-server: $schema=crossgrain.schema.json
# (Editors check this file when \`crossgrain schema > crossgrain.schema.json\` has been run in its folder.)
`;

const KINDS = ["blocks", "on-point", "sampler", "metric", "cut-list"];

export const newFile = defineCommand({
  name: "new",
  summary: "a starter file with notes, to edit; without a kind, the list of kinds",
  about: "Prints the file, so that it goes where you send it: `crossgrain new blocks > my-quilt.yaml`.",
  arguments: [{ name: "[kind]", help: "blocks, on-point, sampler, metric or cut-list", words: KINDS }],
  options: {},
  examples: ["new", "new blocks > my-quilt.yaml", "schema > crossgrain.schema.json"],
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
    io.out(`${FOR_EDITORS}${starter.text}`);
    return EXIT.done;
  },
});
