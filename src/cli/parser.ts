import { Command as Parser } from "commander";
import { nearest } from "../diagnostics/nearest.ts";
import type { Words } from "../words/index.ts";

type Told = Words["commandLine"]["program"];

/** The library's parser with its own words, headings and faults in the language chosen. */
export class SpokenParser extends Parser {
  constructor(
    name: string,
    private readonly told: Told,
  ) {
    super(name);
    this.configureHelp({
      styleTitle: (title) => told.headings[title] ?? title,
      subcommandTerm: (command) => `${command.name()} ${command.usage()}`,
    });
  }

  override createCommand(name = ""): SpokenParser {
    return new SpokenParser(name, this.told);
  }

  /** Ends with a fault of an option whose value cannot be read. */
  refuseValue(flags: string, typed: string, why: string): never {
    // Not the library's own code for it: that one it catches and words again.
    return this.error(this.told.argumentInvalid(flags, typed, why), { code: "crossgrain.invalidArgument" });
  }

  // The library calls these by name; its types leave them out.

  missingArgument(name: string): never {
    return this.error(this.told.missingArgument(name), { code: "commander.missingArgument" });
  }

  optionMissingArgument({ flags }: { flags: string }): never {
    return this.error(this.told.optionWithoutArgument(flags), { code: "commander.optionMissingArgument" });
  }

  unknownOption(flag: string): never {
    const known = this.options.flatMap(({ long }) => (long == null ? [] : [long]));
    const meant = nearest(flag, [...known, "--help"]);
    return this.error(this.told.unknownOption(flag, meant), { code: "commander.unknownOption" });
  }

  unknownCommand(): never {
    const [typed = ""] = this.args;
    const meant = nearest(
      typed,
      this.commands.map((command) => command.name()),
    );
    return this.error(this.told.unknownCommand(typed, meant), { code: "commander.unknownCommand" });
  }

  _excessArguments(received: readonly string[]): never {
    const expected = this.registeredArguments.length;
    const said = this.told.tooManyArguments(this.name(), expected, received.length);
    return this.error(said, { code: "commander.excessArguments" });
  }
}
