import type { Words } from "../../words/index.ts";

import type { Command } from "../command.ts";

/** One option as a shell sees it. */
export interface Flag {
  /** `--out`. */
  name: string;
  /** It is followed by a value. */
  takes: boolean;
  /** Values to offer; empty for any, where a file may be meant. */
  words: readonly string[];
  help: string;
}

export interface Verb {
  name: string;
  summary: string;
  flags: Flag[];
  /** Words its first argument may be; empty where it is a file or free. */
  words: readonly string[];
}

/** Options every command has besides its own. */
const HELP = (words: Words): Flag => ({
  name: "--help",
  takes: false,
  words: [],
  help: words.commandLine.table.printThisHelp,
});

/** What the command line's own table says, as completions and the manual want it. */
export function verbsOf(commands: readonly Command[], words: Words): Verb[] {
  return commands.map(({ name, summary, options, arguments: given }) => ({
    name,
    summary,
    words: given[0]?.words ?? [],
    flags: [
      ...Object.values(options).map(({ flags, help, words: allowed }) => {
        const [flag = "", value] = flags.split(" ");
        return { name: flag, takes: value !== undefined, words: allowed ?? [], help };
      }),
      HELP(words),
    ],
  }));
}
