import { type Command, defineCommand, EXIT } from "../command.ts";

const SHELLS = ["bash", "zsh", "fish", "man"] as const;

/** Made for the list that it stands in itself. */
export const completionOf = (all: () => readonly Command[]) =>
  defineCommand({
    name: "completion",
    summary: "completion for a shell (bash, zsh, fish), or the manual page (man)",
    about:
      "Prints what makes a shell complete commands, options and their words: `source <(crossgrain completion bash)`; for " +
      "zsh a file `_crossgrain` in a folder of $fpath; for fish ~/.config/fish/completions/crossgrain.fish. With `man` " +
      "the manual page: `crossgrain completion man > crossgrain.1`, then `man ./crossgrain.1`.",
    arguments: [{ name: "<shell>", help: SHELLS.join(", "), words: SHELLS }],
    options: {},
    examples: ["completion bash > crossgrain.bash", "completion man > crossgrain.1"],
    async run([shell = ""], _values, io) {
      const kind = SHELLS.find((each) => each === shell);
      if (kind === undefined) {
        io.talk(`There is no completion for \`${shell}\`. Use one of: ${SHELLS.join(", ")}.\n`);
        return EXIT.usage;
      }
      const commands = all();
      const [{ ABOUT, VERSION }, { verbsOf }] = await Promise.all([
        import("../about.ts"),
        import("../shell/table.ts"),
      ]);
      const verbs = verbsOf(commands);
      if (kind === "bash") io.out((await import("../shell/bash.ts")).bashCompletion(verbs));
      else if (kind === "zsh") io.out((await import("../shell/zsh.ts")).zshCompletion(verbs));
      else if (kind === "fish") io.out((await import("../shell/fish.ts")).fishCompletion(verbs));
      else io.out((await import("../shell/man.ts")).manPage(commands, ABOUT, VERSION));
      return EXIT.done;
    },
  });
