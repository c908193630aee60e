import type { Command } from "../command.ts";

/** A text between macros: no line begins with a control character, and a hyphen stays one that can be typed. */
const plain = (text: string) =>
  text
    .replaceAll("\\", "\\e")
    .replaceAll("-", "\\-")
    .replace(/^([.'])/gm, "\\&$1");

/** The manual page, in the macros of man(7). */
export function manPage(commands: readonly Command[], about: string, version: string): string {
  const parts = commands.map((command) => {
    const words = command.arguments.map(({ name }) => ` ${name}`).join("");
    const options = Object.values(command.options).flatMap(({ flags, help, standard }) => {
      const without = standard === "" ? "" : ` Without it: ${standard}.`;
      return [".TP", `.B ${plain(flags)}`, plain(`${help}.${without}`)];
    });
    const examples = command.examples.flatMap((example) => [".EX", plain(`crossgrain ${example}`), ".EE"]);
    return [
      `.SS ${plain(`crossgrain ${command.name}${words}`)}`,
      plain(command.about === "" ? `${command.summary}.` : command.about),
      ...options,
      ...(examples.length === 0 ? [] : [".PP", "For example:", ...examples]),
    ].join("\n");
  });
  const codes = [
    ["0", "done"],
    ["1", "the file has errors, or a file could not be read or written"],
    ["2", "the command line is wrong"],
    ["3", "no plan is possible, and that is proved"],
    ["4", "no plan was found; there may be one"],
    ["70", "a fault of this program, or its output could not be written"],
    ["130", "stopped by a second Ctrl\u002dC"],
  ].flatMap(([code, what]) => [".TP", `.B ${code}`, plain(what ?? "")]);
  return [
    `.TH CROSSGRAIN 1 "" "crossgrain ${version}" "User commands"`,
    ".SH NAME",
    "crossgrain \\- fabric to buy and a cutting plan for patchwork quilts",
    ".SH SYNOPSIS",
    ".B crossgrain",
    ".I command",
    "[options]",
    ".SH DESCRIPTION",
    plain(about),
    "A FILE of \\- reads standard input. Amounts are estimates: check before you cut.",
    ".SH COMMANDS",
    ...parts,
    ".SH EXIT STATUS",
    ...codes,
    "",
  ].join("\n");
}
