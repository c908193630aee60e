import { CommanderError, InvalidArgumentError, Command as Parser, Option as ParserOption } from "commander";
import { ABOUT } from "./about.ts";
import type { Command, ExitCode } from "./command.ts";
import { EXIT } from "./command.ts";
import { commands } from "./commands/index.ts";
import type { Io } from "./io.ts";
import type { Option } from "./option.ts";

const CLOSING = `
To begin: crossgrain new blocks > my-quilt.yaml, then crossgrain plan my-quilt.yaml

A FILE of - reads standard input. Amounts are estimates: check before you cut.
Ends with 0 when done, 1 when the file has errors, 2 for a wrong command line,
3 when no plan is possible (proved), 4 when none was found, 70 for a fault of this program.`;

function toParserOption(option: Option<unknown>): ParserOption {
  const help = option.standard === "" ? option.help : `${option.help} (without it: ${option.standard})`;
  const made = new ParserOption(option.flags, help);
  const { read } = option;
  if (read === null) return made;
  return made.argParser((typed: string) => {
    const result = read(typed);
    if ("problem" in result) throw new InvalidArgumentError(result.problem);
    return result.value;
  });
}

function addCommand(program: Parser, command: Command, io: Io, finish: (code: ExitCode) => void): void {
  const parser = program.command(command.name).summary(command.summary);
  parser.description(command.about === "" ? command.summary : command.about);
  for (const argument of command.arguments) parser.argument(argument.name, argument.help);
  const keys: [key: string, name: string, option: Option<unknown>][] = [];
  for (const [key, option] of Object.entries(command.options)) {
    const made = toParserOption(option);
    parser.addOption(made);
    keys.push([key, made.attributeName(), option]);
  }
  const examples = command.examples.map((example) => `  crossgrain ${example}\n`).join("");
  if (examples !== "") parser.addHelpText("after", `\nFor example:\n${examples}`);
  parser.action(async () => {
    const typed: Record<string, unknown> = parser.opts();
    const values = Object.fromEntries(keys.map(([key, name, { absent }]) => [key, typed[name] ?? absent]));
    finish(await command.run(parser.args, values, io));
  });
}

/** The whole command line as a commander program. `finish` is told each command's exit code. */
export function buildProgram(version: string, io: Io, finish: (code: ExitCode) => void): Parser {
  const program = new Parser("crossgrain");
  program.description(ABOUT).version(version, "-V, --version", "print the version");
  program.helpOption("-h, --help", "print this help").helpCommand("help [command]", "help for a command");
  program.configureOutput({ writeOut: io.out, writeErr: io.talk });
  program.exitOverride().addHelpText("after", CLOSING);
  for (const command of commands) addCommand(program, command, io, finish);
  for (const parser of program.commands) {
    parser.helpOption("-h, --help", "print this help").exitOverride();
    parser
      .configureOutput(program.configureOutput())
      .showHelpAfterError(`See: crossgrain ${parser.name()} --help`);
  }
  program.showHelpAfterError("See: crossgrain --help");
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
