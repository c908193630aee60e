import type { Words } from "../../types.ts";

export const completion: Words["commandLine"]["completion"] = {
  completionForAShell: "Vervollständigung für eine Shell (bash, zsh, fish), oder die Handbuchseite (man)",
  printsWhatMakesA:
    "Gibt aus, womit eine Shell Befehle, Optionen und ihre Wörter vervollständigt: `source <(crossgrain completion bash)`; für zsh eine Datei `_crossgrain` in einem Ordner von $fpath; für fish ~/.config/fish/completions/crossgrain.fish. Mit `man` die Handbuchseite: `crossgrain completion man > crossgrain.1`, dann `man ./crossgrain.1`.",
  thereIsNoCompletion: (shell, value) =>
    `Es gibt keine Vervollständigung für \`${shell}\`. Möglich: ${value}.\n`,
  examples: ["completion bash > crossgrain.bash", "completion man > crossgrain.1"],
};
