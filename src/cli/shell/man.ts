import type { Words } from "../../words/index.ts";

import type { Command } from "../command.ts";

/** A text between macros: no line begins with a control character, and a hyphen stays one that can be typed. */
const plain = (text: string) =>
  text
    .replaceAll("\\", "\\e")
    .replaceAll("-", "\\-")
    .replace(/^([.'])/gm, "\\&$1");

/** The manual page, in the macros of man(7). */
export function manPage(commands: readonly Command[], about: string, version: string, words: Words): string {
  const parts = commands.map((command) => {
    const typed = command.arguments.map(({ name }) => ` ${name}`).join("");
    const options = Object.values(command.options).flatMap(({ flags, help, standard }) => {
      const without = standard === "" ? "" : words.commandLine.man.withoutIt(standard);
      return [".TP", `.B ${plain(flags)}`, plain(`${help}.${without}`)];
    });
    const examples = command.examples.flatMap((example) => [".EX", plain(`crossgrain ${example}`), ".EE"]);
    return [
      `.SS ${plain(`crossgrain ${command.name}${typed}`)}`,
      plain(command.about === "" ? `${command.summary}.` : command.about),
      ...options,
      ...(examples.length === 0 ? [] : [".PP", words.commandLine.man.forExample, ...examples]),
    ].join("\n");
  });
  const codes = [
    ["0", "done"],
    ["1", words.commandLine.man.theFileHasErrors],
    ["2", words.commandLine.man.theCommandLineIs],
    ["3", words.commandLine.man.noPlanIsPossible],
    ["4", words.commandLine.man.noPlanWasFound],
    ["70", words.commandLine.man.aFaultOfThis],
    ["130", words.commandLine.man.stoppedByASecond],
  ].flatMap(([code, what]) => [".TP", `.B ${code}`, plain(what ?? "")]);
  return [
    words.commandLine.man.thCrossgrainCrossgrainUser(version),
    words.commandLine.man.shName,
    words.commandLine.man.crossgrainFabricToBuy,
    words.commandLine.man.shSynopsis,
    words.commandLine.man.bCrossgrain,
    words.commandLine.man.iCommand,
    "[options]",
    words.commandLine.man.shDescription,
    plain(about),
    words.commandLine.man.aFileOfReads,
    words.commandLine.man.shCommands,
    ...parts,
    words.commandLine.man.shExitStatus,
    ...codes,
    "",
  ].join("\n");
}
