import { counted } from "../language.ts";

export const program = {
  toBeginCrossgrainNew: `
To begin: crossgrain new blocks > my-quilt.yaml, then crossgrain plan my-quilt.yaml

A FILE of - reads standard input. Amounts are estimates: check before you cut.
Ends with 0 when done, 1 when the file has errors, 2 for a wrong command line,
3 when no plan is possible (proved), 4 when none was found, 70 for a fault of this program.`,
  withoutIt: (help: string, standard: string) => `${help} (without it: ${standard})`,
  forExample: (examples: string) => `
For example:
${examples}`,
  printTheVersion: "print the version",
  printThisHelp: "print this help",
  helpCommand: "help [command]",
  helpForACommand: "help for a command",
  seeCrossgrainHelp: (value: string) => `See: crossgrain ${value} --help`,
  seeCrossgrainHelp2: "See: crossgrain --help",
  /** Headings of the help, by the parser's own. */
  headings: {
    "Usage:": "Usage:",
    "Arguments:": "Arguments:",
    "Options:": "Options:",
    "Commands:": "Commands:",
  } as Readonly<Record<string, string>>,
  usage: (names: readonly string[]) => ["[options]", ...names].join(" "),
  usageOfAll: "[options] [command]",
  /** Arguments by the name they have in the code. */
  argumentNames: {
    action: "action",
    drawings: "drawings",
    facts: "facts",
    file: "file",
    kind: "kind",
    size: "size",
    sizes: "sizes",
    unit: "unit",
    words: "words",
  } as Readonly<Record<string, string>>,
  unknownOption: (flag: string, meant: string | null) =>
    `error: unknown option '${flag}'${meant === null ? "" : `\n(Did you mean ${meant}?)`}`,
  unknownCommand: (name: string, meant: string | null) =>
    `error: unknown command '${name}'${meant === null ? "" : `\n(Did you mean ${meant}?)`}`,
  missingArgument: (name: string) => `error: missing required argument '${name}'`,
  optionWithoutArgument: (flags: string) => `error: option '${flags}' argument missing`,
  tooManyArguments: (command: string, expected: number, got: number) =>
    `error: too many arguments for '${command}'. Expected ${counted(expected, "argument")} but got ${got}.`,
  argumentInvalid: (flags: string, typed: string, why: string) =>
    `error: option '${flags}' argument '${typed}' is invalid. ${why}`,
};

const WHY: Readonly<Record<string, string>> = {
  ENOSPC: "the disk is full",
  EIO: "the disk does not answer",
  EDQUOT: "your share of the disk is full",
};

/** What is told where nothing could be done: the output was not taken, or the program itself went wrong. */
export const unwritten = {
  output: (systemCode: string) =>
    `error: the output could not be written: ${WHY[systemCode] ?? "the system says"} (${systemCode}). What is there of it is not whole.\n`,
  fault: "fault",
  ourFault: (what: string) => `Crossgrain itself went wrong, not your file: ${what}\n`,
  report: "Nothing was written. Please report this line together with the file and the command.\n",
};
