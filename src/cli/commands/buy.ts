import { fatQuarters, kits, stash, usable } from "../asking.ts";
import { besideFiles } from "../beside-files.ts";
import { defineCommand, EXIT, type ExitCode } from "../command.ts";
import type { Io } from "../io.ts";
import { text } from "../option.ts";
import { budget, json, prefer, ruler, style, thorough } from "../options.ts";
import { optionsOf, type PlanningValues, planFile, poolOf } from "../planning.ts";
import { readInput } from "../read.ts";
import { failWith, report } from "../report.ts";

const sizes = text(
  "--sizes <sizes>",
  "a quilt in several sizes, in blocks across and down: 3x3,4x5,6x7",
  "the size of the file",
);

/** One table for all sizes. */
async function buySizes(file: string, typed: string, values: PlanningValues, io: Io): Promise<ExitCode> {
  const input = await readInput(file, io);
  if (input.value === null) return failWith(input.diagnostics, undefined, values.json, io);
  const { readSizes, readSpecFile, severalSizes, sizesTable } = await import("../../index.ts");
  const asked = readSizes(typed);
  if (asked.value === null) {
    failWith(asked.diagnostics, undefined, values.json, io);
    return EXIT.usage;
  }
  const { text: source, name } = input.value;
  const spec = readSpecFile(source, name);
  if (spec.value === null) return failWith(spec.diagnostics, source, values.json, io);
  const [options, pool] = await Promise.all([optionsOf(values), poolOf(io)]);
  const found = await severalSizes(spec.value, asked.value, options, pool.solve);
  pool.clear();
  if (found.value === null) return failWith(found.diagnostics, source, values.json, io);
  report(spec.diagnostics, source, io);
  const { value } = found;
  io.out(values.json ? `${JSON.stringify(value, null, 2)}\n` : sizesTable(value.name, value.sizes));
  return EXIT.done;
}

export const buy = defineCommand({
  name: "buy",
  summary: "the shopping list: how much of each fabric to ask for",
  about: "",
  arguments: [{ name: "<file>", help: "the cut list, YAML or JSON" }],
  options: { json, style, prefer, thorough, budget, stash, fatQuarters, kits, usable, ruler, sizes },
  examples: ["buy fixtures/cutlists/harbour-lights.yaml"],
  async run([file = ""], values, io) {
    if (values.sizes !== null) return buySizes(file, values.sizes, values, io);
    const beside = { ...values, kits: values.kits ?? 1 };
    const made = await planFile(file, values, io, beside);
    if ("code" in made) return made.code;
    const { buyJson, buyList } = await import("../../index.ts");
    const lists = [buyList(made.plan), ...Object.values(await besideFiles(made, beside, io))];
    io.out(values.json ? buyJson(made.plan) : lists.join("\n"));
    return EXIT.done;
  },
});
