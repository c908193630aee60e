import type { Diagnostic } from "../../diagnostics/types.ts";
import { defineCommand, EXIT } from "../command.ts";
import { choice, text, toggle } from "../option.ts";
import { json, style } from "../options.ts";
import { planText } from "../planning.ts";

const width = text("--width <length>", "usable width of the fabric", "42 in, or 107 cm in centimetres");

const unit = choice("--unit <unit>", "measure of numbers written without one", "in", ["in", "cm", "mm"]);

const fixed = toggle("--fixed", "keep every piece the way it is written, as for a print with an up");

interface Wanted {
  size: string;
  count: string;
}

/**
 * `2 1/2 x 4 1/2:24`, or with the comma of a cut list `2 1/2 x 4 1/2, 24`, as size and count; null when it is neither.
 * A single number is a square. A comma needs a space behind it, as `6,5` is a number.
 */
function readWanted(word: string): Wanted | null {
  const [, size, count] = /^(.*?)(?::\s*|[,;]\s+)(\d+)\s*$/.exec(word) ?? [];
  if (size === undefined || count === undefined || size.trim() === "") return null;
  const isSize = /[x×*]|by|sq|wof/i.test(size);
  return { size: isSize ? size.trim() : `${size.trim()} square`, count };
}

/** The text of a file that says the same as the command line. */
function asFile(wanted: readonly Wanted[], values: { unit: string; width: string; fixed: boolean }): string {
  const pieces = wanted.map(({ size, count }) => ({
    size,
    count: Number(count),
    turn: values.fixed ? "fixed" : "free",
  }));
  const fabric = { name: "Fabric", width: values.width, selvage: `0 ${values.unit}`, pieces };
  return JSON.stringify({ name: "your pieces", units: values.unit, fabrics: [fabric] });
}

/** Speaks of the word on the command line instead of the field of a file the maker has never seen. */
function onCommandLine(diagnostic: Diagnostic, words: readonly string[]): Diagnostic {
  const [, index] = /pieces\[(\d+)\]/.exec(diagnostic.path) ?? [];
  const word = index === undefined ? undefined : words[Number(index)];
  const path = word !== undefined ? word : diagnostic.path.includes("width") ? "--width" : "";
  return { ...diagnostic, path, at: null };
}

export const pieces = defineCommand({
  name: "pieces",
  summary: "a quick answer with no file: sizes and counts as arguments",
  about:
    "Works out how much of one fabric holds the pieces given, and how to cut it. Each piece is SIZE:COUNT in " +
    'quotes, cut size, seam allowance included: "2 1/2 x 4 1/2:24", or "4 1/2:20" for squares.',
  arguments: [{ name: "<sizes...>", help: 'each as SIZE:COUNT, for example "2 1/2 x 4 1/2:24"' }],
  options: { width, unit, fixed, style, json },
  examples: [
    'pieces "2 1/2 x 4 1/2:24" "4 1/2:20" --width 42in',
    'pieces "6,5 x 11,5:40" --unit cm --width 107cm --fixed',
  ],
  async run(words, values, io) {
    const wanted = words.map(readWanted);
    const wrong = words.filter((_, index) => wanted[index] === null);
    if (wrong.length > 0) {
      for (const word of wrong) {
        io.talk(`error: "${word}" is not SIZE:COUNT. Write for example "2 1/2 x 4 1/2:24" or "4 1/2:20".\n`);
      }
      return EXIT.usage;
    }
    const unitName = values.unit ?? "in";
    const usable = values.width ?? (unitName === "in" ? "42 in" : "107 cm");
    const file = asFile(
      wanted.filter((one) => one !== null),
      { unit: unitName, width: usable, fixed: values.fixed },
    );
    const planning = { ...values, prefer: null, thorough: false, budget: null };
    const reworded = (diagnostic: Diagnostic) => onCommandLine(diagnostic, words);
    const made = await planText(file, "command line", planning, io, reworded);
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
