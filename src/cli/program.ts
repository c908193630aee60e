import { CommanderError, Option as ParserOption } from "commander";
import type { Words } from "../words/index.ts";

import { aboutText } from "./about.ts";
import type { Command, ExitCode } from "./command.ts";
import { EXIT } from "./command.ts";
import { commands } from "./commands/index.ts";
import type { Io } from "./io.ts";
import type { Option } from "./option.ts";
import { language } from "./options.ts";
import { SpokenParser } from "./parser.ts";

const closing = (words: Words) => words.commandLine.program.toBeginCrossgrainNew;

function toParserOption(option: Option<unknown>, parser: SpokenParser, words: Words): ParserOption {
  const help =
    option.standard === "" ? option.help : words.commandLine.program.withoutIt(option.help, option.standard);
  const made = new ParserOption(option.flags, help);
  const { read } = option;
  if (read === null) return made;
  return made.argParser((typed: string) => {
    const result = read(typed);
    return "problem" in result ? parser.refuseValue(option.flags, typed, result.problem) : result.value;
  });
}

function addCommand(program: SpokenParser, command: Command, io: Io, finish: (code: ExitCode) => void): void {
  const told = io.words.commandLine.program;
  const parser = program.createCommand(command.name).summary(command.summary);
  program.addCommand(parser);
  parser.description(command.about === "" ? command.summary : command.about);
  const named = command.arguments.map(({ name, help }) => ({
    // The name between brackets, which say whether it may be left out.
    name: name.replace(/[a-z]+/, (own) => told.argumentNames[own] ?? own),
    help,
  }));
  for (const { name, help } of named) parser.argument(name, help);
  parser.usage(told.usage(named.map(({ name }) => name)));
  const keys: [key: string, name: string, option: Option<unknown>][] = [];
  for (const [key, option] of Object.entries(command.options)) {
    const made = toParserOption(option, parser, io.words);
    parser.addOption(made);
    keys.push([key, made.attributeName(), option]);
  }
  const examples = command.examples.map((example) => `  crossgrain ${example}\n`).join("");
  if (examples !== "") parser.addHelpText("after", io.words.commandLine.program.forExample(examples));
  parser.action(async () => {
    const typed: Record<string, unknown> = parser.opts();
    const values = Object.fromEntries(keys.map(([key, name, { absent }]) => [key, typed[name] ?? absent]));
    finish(await command.run(parser.args, values, io));
  });
}

/** The whole command line as a commander program. `finish` is told each command's exit code. */
function buildProgram(version: string, io: Io, finish: (code: ExitCode) => void): SpokenParser {
  const told = io.words.commandLine.program;
  const program = new SpokenParser("crossgrain", told);
  program.usage(told.usageOfAll);
  program
    .description(aboutText(io.words))
    .version(version, "-V, --version", io.words.commandLine.program.printTheVersion);
  program
    .helpOption("-h, --help", io.words.commandLine.program.printThisHelp)
    .helpCommand(io.words.commandLine.program.helpCommand, io.words.commandLine.program.helpForACommand);
  program.addOption(toParserOption(language(io.words), program, io.words));
  program.configureOutput({ writeOut: io.out, writeErr: io.talk });
  program.exitOverride().addHelpText("after", closing(io.words));
  for (const command of commands(io.words)) addCommand(program, command, io, finish);
  for (const parser of program.commands) {
    parser.helpOption("-h, --help", io.words.commandLine.program.printThisHelp).exitOverride();
    parser
      .configureOutput(program.configureOutput())
      .showHelpAfterError(io.words.commandLine.program.seeCrossgrainHelp(parser.name()));
  }
  program.showHelpAfterError(io.words.commandLine.program.seeCrossgrainHelp2);
  return program;
}

/** Reads the command line and runs the command it names. */
export async function runCommandLine(words: readonly string[], version: string, io: Io): Promise<ExitCode> {
  let code: ExitCode = EXIT.done;
  const program = buildProgram(version, io, (ended) => {
    code = ended;
  });
  try {
    await program.parseAsync(words.length === 0 ? ["--help"] : words, { from: "user" });
  } catch (error) {
    if (!(error instanceof CommanderError)) throw error;
    return error.exitCode === 0 ? EXIT.done : EXIT.usage;
  }
  return code;
}
