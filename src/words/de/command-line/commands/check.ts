import type { Words } from "../../../types.ts";

export const check: Words["commandLine"]["check"] = {
  whatIsWrongWith: "was an einer Datei falsch ist, alles auf einmal, ohne zu planen",
  theCutListYaml: "die Zuschnittliste, YAML oder JSON",
  noErrors: (name) => `${name}: keine Fehler\n`,
  examples: ["new blocks > mein-quilt.yaml", "check mein-quilt.yaml"],
};
