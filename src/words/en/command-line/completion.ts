export const completion = {
  completionForAShell: "completion for a shell (bash, zsh, fish), or the manual page (man)",
  printsWhatMakesA:
    "Prints what makes a shell complete commands, options and their words: `source <(crossgrain completion bash)`; for zsh a file `_crossgrain` in a folder of $fpath; for fish ~/.config/fish/completions/crossgrain.fish. With `man` the manual page: `crossgrain completion man > crossgrain.1`, then `man ./crossgrain.1`.",
  thereIsNoCompletion: (shell: string, value: string) =>
    `There is no completion for \`${shell}\`. Use one of: ${value}.\n`,
  /** Command lines to copy, without the program's name. */
  examples: ["completion bash > crossgrain.bash", "completion man > crossgrain.1"],
};
