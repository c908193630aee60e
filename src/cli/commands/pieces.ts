import type { Diagnostic } from "../../diagnostics/types.ts";
import type { Words } from "../../words/index.ts";

import { defineCommand, EXIT } from "../command.ts";
import { choice, inWords, takes, text, toggle } from "../option.ts";
import { json, style } from "../options.ts";
import { planText } from "../planning.ts";

const width = (words: Words) =>
  text(
    takes("--width", words.commandLine.values.length),
    words.commandLine.pieces.usableWidthOfThe,
    words.commandLine.pieces.inOrCmIn,
  );

const unit = (words: Words) =>
  choice(
    takes("--unit", words.commandLine.values.unit),
    words.commandLine.pieces.measureOfNumbersWritten,
    "in",
    ["in", "cm", "mm"],
    words,
  );

const fixed = (words: Words) => toggle("--fixed", words.commandLine.pieces.keepEveryPieceThe);

interface Wanted {
  size: string;
  count: string;
}

/**
 * `2 1/2 x 4 1/2:24`, or with the comma of a cut list `2 1/2 x 4 1/2, 24`, as size and count; null when it is neither.
 * A single number is a square. A comma needs a space behind it, as `6,5` is a number.
 */
function readWanted(word: string, words: Words): Wanted | null {
  const [, size, count] = /^(.*?)(?::\s*|[,;]\s+)(\d+)\s*$/.exec(word) ?? [];
  if (size === undefined || count === undefined || size.trim() === "") return null;
  const isSize = /[x×*]|by|sq|wof/i.test(size);
  return { size: isSize ? size.trim() : words.commandLine.pieces.square(size.trim()), count };
}

/** The text of a file that says the same as the command line. */
function asFile(
  wanted: readonly Wanted[],
  values: { unit: string; width: string; fixed: boolean },
  words: Words,
): string {
  const pieces = wanted.map(({ size, count }) => ({
    size,
    count: Number(count),
    turn: values.fixed ? "fixed" : "free",
  }));
  const fabric = { name: "Fabric", width: values.width, selvage: `0 ${values.unit}`, pieces };
  return JSON.stringify({ name: words.commandLine.pieces.yourPieces, units: values.unit, fabrics: [fabric] });
}

/** Speaks of the word on the command line instead of the field of a file the maker has never seen. */
function onCommandLine(diagnostic: Diagnostic, typed: readonly string[]): Diagnostic {
  const [, index] = /pieces\[(\d+)\]/.exec(diagnostic.path) ?? [];
  const word = index === undefined ? undefined : typed[Number(index)];
  const path = word !== undefined ? word : diagnostic.path.includes("width") ? "--width" : "";
  return { ...diagnostic, path, at: null };
}

export const pieces = (words: Words) =>
  defineCommand({
    name: "pieces",
    summary: words.commandLine.pieces.aQuickAnswerWith,
    about: words.commandLine.pieces.worksOutHowMuch,
    arguments: [{ name: "<sizes...>", help: words.commandLine.pieces.eachAsSizeCount }],
    options: inWords(words, {
      width,
      unit,
      fixed,
      style,
      json,
    }),
    examples: words.commandLine.pieces.examples,
    async run(typed, values, io) {
      const wanted = typed.map((one) => readWanted(one, io.words));
      const wrong = typed.filter((_, index) => wanted[index] === null);
      if (wrong.length > 0) {
        for (const word of wrong) {
          io.talk(io.words.commandLine.pieces.errorIsNotSize(word));
        }
        return EXIT.usage;
      }
      const unitName = values.unit ?? "in";
      const usable =
        values.width ??
        (unitName === "in" ? io.words.commandLine.pieces.inText : io.words.commandLine.pieces.cm);
      const file = asFile(
        wanted.filter((one) => one !== null),
        { unit: unitName, width: usable, fixed: values.fixed },
        io.words,
      );
      const planning = { ...values, prefer: null, thorough: false, budget: null };
      const reworded = (diagnostic: Diagnostic) => onCommandLine(diagnostic, typed);
      const source = { text: file, name: io.words.commandLine.pieces.commandLine, reworded };
      const made = await planText(source, planning, io);
      if ("code" in made) return made.code === EXIT.fileErrors ? EXIT.usage : made.code;
      const { buyList, cuttingSteps, planJson } = await import("../../index.ts");
      io.out(
        values.json
          ? planJson(made.plan, io.words)
          : `${buyList(made.plan, io.words)}\n${cuttingSteps(made.plan, false, io.words)}`,
      );
      return EXIT.done;
    },
  });
