import type { Arrangements, Wanted } from "../../choices/arranging/arrange-blocks.ts";
import type { Outcome } from "../../diagnostics/types.ts";
import type { Spec } from "../../spec/index.ts";
import type { Words } from "../../words/index.ts";
import { defineCommand, EXIT } from "../command.ts";
import { readInput } from "../files/read.ts";
import type { Files } from "../files/write.ts";
import type { Io } from "../io.ts";
import type { Option, Read } from "../option.ts";
import { inWords, takes } from "../option.ts";
import { json, out, replace } from "../options.ts";
import { optionsOf, poolOf } from "../planning.ts";
import { failWith, report } from "../report.ts";
import { writeInto } from "../results/write-into.ts";
import { startProgress } from "../threads/progress.ts";

const seed = (words: Words): Option<number> => ({
  flags: takes("--seed", words.commandLine.values.number),
  help: words.commandLine.arrange.anotherArrangementByChance,
  standard: "1",
  absent: 1,
  read: (typed): Read<number> =>
    /^\d{1,6}$/.test(typed.trim())
      ? { value: Number(typed) }
      : { problem: words.commandLine.arrange.useAWholeNumber },
});

const only = (words: Words): Option<string | null> => ({
  flags: takes("--only", words.commandLine.values.names),
  help: words.commandLine.arrange.onlyTheseTurningsOf,
  standard: "all",
  absent: null,
  read: (value) => ({ value }),
});

const motifs = (words: Words): Option<string | null> => ({
  flags: takes("--motifs", words.commandLine.values.names),
  help: words.commandLine.arrange.onlyTheseTurningsOf2,
  standard: "all",
  absent: null,
  read: (value) => ({ value }),
});

/** What was typed, where something was. */
const read = <Known, Found>(
  typed: string | null,
  known: Known,
  by: (typed: string, known: Known) => Found,
): Found | null => (typed === null ? null : by(typed, known));

/** Turnings with the names by which they may be typed as well. */
const byName = <Key extends string>(all: readonly { key: Key }[], names: Readonly<Record<Key, string>>) =>
  all.map(({ key }) => ({ key, name: names[key] }));

export const arrange = (words: Words) =>
  defineCommand({
    name: "arrange",
    summary: words.commandLine.arrange.turningsOfBlocksAnd,
    about: words.commandLine.arrange.turnsTheBlocksOf,
    arguments: [{ name: "<file>", help: words.commandLine.arrange.theQuiltFileYaml }],
    options: inWords(words, {
      out,
      replace,
      json,
      seed,
      only,
      motifs,
    }),
    examples: words.commandLine.arrange.examples,
    async run([file = ""], values, io) {
      const asked = await turningsAsked(values, words);
      if (asked.value === null) {
        report(asked.diagnostics, undefined, io);
        return EXIT.usage;
      }
      const input = await readInput(file, io);
      if (input.value === null) return failWith(input.diagnostics, undefined, values.json, io);
      const { text, name } = input.value;
      const { arrangementsJson, arrangementsTable, readSpecFile } = await import("../../index.ts");
      const spec = readSpecFile(text, name, null, io.words.language);
      if (spec.value === null) return failWith(spec.diagnostics, text, values.json, io);
      const found = await arranged(spec.value, { ...asked.value, seed: values.seed }, io);
      if (found.value === null) return failWith(found.diagnostics, text, values.json, io);
      report(spec.diagnostics, text, io);
      const chosen = asked.value.blocks !== null || asked.value.motifs !== null;
      if (values.json) io.out(arrangementsJson(found.value, spec.value.ruler, spec.diagnostics, io.words));
      else io.out(arrangementsTable(found.value, chosen, io.words));
      if (values.json && values.out === null) return EXIT.done;

      const files = await drawn(found.value, spec.value, words, io);
      const folder = { out: values.out, name: found.value.name, replace: values.replace };
      const written = await writeInto(folder, { by: "arrange", files, read: [file] }, io);
      if (written.value === null) return failWith(written.diagnostics, undefined, values.json, io);
      report(written.diagnostics, undefined, io);
      io.talk(io.words.commandLine.arrange.arrangementsSvgWrittenInto(written.value.named));
      return EXIT.done;
    },
  });

/** The turnings that were typed, by key or by name; null for all. */
async function turningsAsked(
  typed: { only: string | null; motifs: string | null },
  { arrange: names }: Words,
): Promise<Outcome<Wanted>> {
  const { motifTurnings, readArrangements, turnings } = await import("../../index.ts");
  const blocks = read(typed.only, byName(turnings(0), names.blockTurnings), readArrangements);
  const motifs = read(typed.motifs, byName(motifTurnings(0), names.motifTurnings), readArrangements);
  const diagnostics = [blocks, motifs].flatMap((found) => (found?.value === null ? found.diagnostics : []));
  const value = { blocks: blocks?.value ?? null, motifs: motifs?.value ?? null };
  return { value: diagnostics.length > 0 ? null : value, diagnostics };
}

/** Plans every arrangement, with progress on the terminal. */
async function arranged(
  spec: Spec,
  asked: Wanted & { seed: number },
  io: Io,
): Promise<Outcome<Arrangements>> {
  const { arrangeBlocks } = await import("../../index.ts");
  const planning = { style: null, prefer: null, thorough: false, budget: null, json: false };
  const options = await optionsOf(planning, io);
  const progress = startProgress(io);
  const { solve } = await poolOf({ ...io, showsProgress: false }, options);
  const told = (done: number, of: number) =>
    progress.show(io.words.commandLine.arrange.planningEachArrangementOf(done, of));
  const found = await arrangeBlocks(spec, asked, options, solve, told);
  progress.clear();
  return found;
}

/** The arrangements as one drawing. */
async function drawn(found: Arrangements, spec: Spec, words: Words, io: Io): Promise<Files> {
  const { arrangementPictures, loadArrangementDrawing } = await import("../../index.ts");
  const { drawArrangements } = await loadArrangementDrawing();
  const pictures = arrangementPictures(found, io.words);
  return { "arrangements.svg": drawArrangements(found.name, pictures, spec.fabrics, words) };
}
