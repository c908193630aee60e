import type { Words } from "../../../types.ts";

export const newFile: Words["commandLine"]["newFile"] = {
  yamlLanguageServerSchema: `# yaml-language-server: $schema=crossgrain.schema.json
# (Editoren prüfen diese Datei, wenn in ihrem Ordner \`crossgrain schema > crossgrain.schema.json\` aufgerufen wurde.)\n`,
  aStarterFileWith: "eine Anfangsdatei mit Notizen, zum Bearbeiten; ohne Art die Liste der Arten",
  printsTheFileSo:
    "Gibt die Datei aus, sodass sie dorthin geht, wohin man sie schickt: `crossgrain new blocks > mein-quilt.yaml`.",
  blocksOnPointSampler: "blocks, on-point, sampler, metric oder cut-list",
  thereIsNoStarter: (kind, names) => `Es gibt keine Anfangsdatei \`${kind}\`. Bekannt sind hier: ${names}.\n`,
  examples: ["new", "new blocks > mein-quilt.yaml", "schema > crossgrain.schema.json"],
};
