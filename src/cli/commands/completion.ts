import type { Words } from "../../words/index.ts";
import { aboutText, VERSION } from "../about.ts";

import { type Command, defineCommand, EXIT } from "../command.ts";

const SHELLS = ["bash", "zsh", "fish", "man"] as const;

/** Made for the list that it stands in itself. */
export const completionOf = (all: () => readonly Command[], words: Words) =>
  defineCommand({
    name: "completion",
    summary: words.commandLine.completion.completionForAShell,
    about: words.commandLine.completion.printsWhatMakesA,
    arguments: [{ name: "<shell>", help: SHELLS.join(", "), words: SHELLS }],
    options: {},
    examples: words.commandLine.completion.examples,
    async run([shell = ""], _values, io) {
      const kind = SHELLS.find((each) => each === shell);
      if (kind === undefined) {
        io.talk(io.words.commandLine.completion.thereIsNoCompletion(shell, SHELLS.join(", ")));
        return EXIT.usage;
      }
      const commands = all();
      const { verbsOf } = await import("../shell/table.ts");
      const verbs = verbsOf(commands, io.words);
      if (kind === "bash") io.out((await import("../shell/bash.ts")).bashCompletion(verbs));
      else if (kind === "zsh") io.out((await import("../shell/zsh.ts")).zshCompletion(verbs));
      else if (kind === "fish") io.out((await import("../shell/fish.ts")).fishCompletion(verbs));
      else
        io.out((await import("../shell/man.ts")).manPage(commands, aboutText(io.words), VERSION, io.words));
      return EXIT.done;
    },
  });
