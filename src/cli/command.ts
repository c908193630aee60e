import type { Io } from "./io.ts";
import type { Option, Values } from "./option.ts";

/** What the program ends with. */
export const EXIT = {
  done: 0,
  /** The file has errors, or files could not be read or written. */
  fileErrors: 1,
  /** The command line itself is wrong. */
  usage: 2,
  /** The file is right but no plan of it is possible: proved. */
  noPlan: 3,
  /** The file is right, and no plan of it was found; there may be one. */
  noneFound: 4,
  /** A fault of this program. */
  ourFault: 70,
} as const;

export type ExitCode = (typeof EXIT)[keyof typeof EXIT];

interface Argument {
  /** As commander reads it: `<file>` or `<sizes...>`. */
  name: string;
  help: string;
  /** The words it takes, where they are few. */
  words?: readonly string[];
}

// biome-ignore lint/suspicious/noExplicitAny: a table of options with values of many types
type Options = Readonly<Record<string, Option<any>>>;

/** One command of the command line, with everything its help says. One file each in `commands/`. */
export interface Command {
  name: string;
  /** One line for the list of commands. */
  summary: string;
  /** More for its own help; empty for none. */
  about: string;
  arguments: readonly Argument[];
  options: Options;
  /** Command lines to copy, without the program's name. */
  examples: readonly string[];
  /** Does the work. `words` are the arguments in order, a variadic one spread out. */
  run(words: readonly string[], values: Readonly<Record<string, unknown>>, io: Io): Promise<ExitCode>;
}

/** Gives `run` the types of the options it declares. */
export function defineCommand<const O extends Options>(
  command: Omit<Command, "options" | "run"> & {
    options: O;
    run(words: readonly string[], values: Values<O>, io: Io): Promise<ExitCode>;
  },
): Command {
  return { ...command, run: (words, values, io) => command.run(words, values as Values<O>, io) };
}
