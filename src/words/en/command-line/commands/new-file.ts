export const newFile = {
  yamlLanguageServerSchema: `# yaml-language-server: $schema=crossgrain.schema.json
# (Editors check this file when \`crossgrain schema > crossgrain.schema.json\` has been run in its folder.)\n`,
  aStarterFileWith: "a starter file with notes, to edit; without a kind, the list of kinds",
  printsTheFileSo:
    "Prints the file, so that it goes where you send it: `crossgrain new blocks > my-quilt.yaml`.",
  blocksOnPointSampler: "blocks, on-point, sampler, metric or cut-list",
  thereIsNoStarter: (kind: string, names: string) =>
    `There is no starter \`${kind}\`. Known here: ${names}.\n`,
  /** Command lines to copy, without the program's name. */
  examples: ["new", "new blocks > my-quilt.yaml", "schema > crossgrain.schema.json"],
};
