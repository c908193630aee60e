import type { Words } from "../../words/index.ts";

import { besideSorts, bolt, fatQuarters, kitsAsked, kitsOrSorts, stash, usable } from "../asking.ts";
import { defineCommand, EXIT, type ExitCode } from "../command.ts";
import { readInput } from "../files/read.ts";
import type { Io } from "../io.ts";
import { inWords, takes, text, toggle } from "../option.ts";
import { budget, json, prefer, ruler, style, thorough } from "../options.ts";
import { type Beside, optionsOf, type PlanningValues, planFile, poolOf, type Wanted } from "../planning.ts";
import { failWith, report } from "../report.ts";
import { besideFiles, listsIn } from "../results/beside-files.ts";
import { startProgress } from "../threads/progress.ts";

const sizes = (words: Words) =>
  text(
    takes("--sizes", words.commandLine.values.sizes),
    words.commandLine.buy.oneTableForSeveral,
    words.commandLine.buy.theSizeOfThe,
  );

const csv = (words: Words) => toggle("--csv", words.commandLine.buy.printTheListOr);

/** One table for all sizes. */
async function buySizes(
  file: string,
  typed: string,
  values: PlanningValues & { csv: boolean },
  io: Io,
): Promise<ExitCode> {
  const input = await readInput(file, io);
  if (input.value === null) return failWith(input.diagnostics, undefined, values.json, io);
  const { buySizesJson, readSizes, readSpecFile, severalSizes, sizesCsv, sizesTable } = await import(
    "../../index.ts"
  );
  const { text: source, name } = input.value;
  const spec = readSpecFile(source, name, null, io.words.language);
  if (spec.value === null) return failWith(spec.diagnostics, source, values.json, io);
  const asked = readSizes(typed, spec.value.ruler);
  if (asked.value === null) {
    failWith(asked.diagnostics, undefined, values.json, io);
    return EXIT.usage;
  }
  const options = await optionsOf(values, io);
  const progress = startProgress(io);
  const { solve } = await poolOf({ ...io, showsProgress: false }, options);
  const found = await severalSizes(spec.value, asked.value, options, solve, (done, of) =>
    progress.show(io.words.commandLine.buy.planningEachSizeOf(done, of)),
  );
  progress.clear();
  if (found.value === null) return failWith(found.diagnostics, source, values.json, io);
  const told = [...spec.diagnostics, ...found.diagnostics];
  report(told, source, io);
  const { value } = found;
  if (values.json) io.out(buySizesJson(value, spec.value.ruler, told, io.words));
  else io.out(values.csv ? sizesCsv(value, io.words) : sizesTable(value, io.words));
  return EXIT.done;
}

/** The option that a table for several sizes does not go with; null where there is none. */
function besideSizes(
  typed: Pick<Beside, "stash" | "fatQuarters" | "usable" | "ruler"> & {
    kits: string | number | null;
    bolt: string | null;
  },
): string | null {
  const other = {
    "--stash": typed.stash,
    "--fat-quarters": typed.fatQuarters || null,
    "--kits": typed.kits,
    "--width": typed.usable,
    "--bolt": typed.bolt,
    "--ruler": typed.ruler,
  };
  return Object.entries(other).find(([, value]) => value !== null)?.[0] ?? null;
}

/** The JSON tells how narrow the fabric may be, and the list of kits names strips of the plan that is cut. */
function wantedOf({ json: asJson, csv: asCsv }: { json: boolean; csv: boolean }, quilts: number): Wanted {
  if (asCsv) return "amounts";
  if (asJson) return "room";
  return quilts > 1 ? "strips" : "amounts";
}

export const buy = (words: Words) =>
  defineCommand({
    name: "buy",
    summary: words.commandLine.buy.theShoppingListHow,
    about: "",
    arguments: [{ name: "<file>", help: words.commandLine.buy.theCutListYaml }],
    options: inWords(words, {
      json,
      style,
      prefer,
      thorough,
      budget,
      stash,
      fatQuarters,
      kits: kitsOrSorts,
      usable,
      bolt,
      ruler,
      sizes,
      csv,
    }),
    examples: words.commandLine.buy.examples,
    async run([file = ""], values, io) {
      if (values.sizes !== null) {
        const unfit = besideSizes(values);
        if (unfit === null) return buySizes(file, values.sizes, values, io);
        io.talk(io.words.commandLine.buy.errorSizesDoesNot(unfit));
        return EXIT.usage;
      }
      const { kits, sorts } = kitsAsked(values.kits);
      const unfit =
        sorts === null
          ? null
          : besideSorts({ "--fat-quarters": values.fatQuarters, "--width": values.usable });
      if (unfit !== null) {
        io.talk(io.words.commandLine.asking.notWithSorts(unfit));
        return EXIT.usage;
      }
      const beside = { ...values, kits, sorts };
      const made = await planFile(file, values, io, beside, wantedOf(values, beside.kits));
      if ("code" in made) return made.code;
      const { buyCsv, buyJson, buyList } = await import("../../index.ts");
      if (values.csv) {
        io.out(buyCsv(made.plan, io.words));
        return EXIT.done;
      }
      if (values.json) {
        io.out(buyJson(made.plan, io.words));
        return EXIT.done;
      }
      const lists = [buyList(made.plan, io.words), ...listsIn((await besideFiles(made, beside, io)).files)];
      io.out(lists.join("\n"));
      return EXIT.done;
    },
  });
