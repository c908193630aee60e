import { commands } from "../../src/cli/commands/index.ts";
import { english } from "../../src/words/index.ts";

/** The README's list of commands and options, from the table the command line itself is made of. */
export function optionList(): string {
  return commands(english)
    .map((command) => {
      const words = [command.name, ...command.arguments.map(({ name }) => name)].join(" ");
      const options = Object.values(command.options).map(({ flags, help, standard }) => {
        const without = standard === "" ? "" : ` Without it: ${standard}.`;
        return `- \`${flags}\` ${help}.${without}`;
      });
      return [`**\`${words}\`** ${command.summary}`, ...(options.length === 0 ? [] : ["", ...options])].join(
        "\n",
      );
    })
    .join("\n\n");
}
