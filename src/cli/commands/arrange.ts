import { resolve } from "node:path";
import type { Words } from "../../words/index.ts";
import { defineCommand, EXIT } from "../command.ts";
import { readInput } from "../files/read.ts";
import type { Option, Read } from "../option.ts";
import { inWords, takes } from "../option.ts";
import { json, out, replace } from "../options.ts";
import { optionsOf, poolOf } from "../planning.ts";
import { failWith, report } from "../report.ts";
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
      const front = await import("../../index.ts");
      const { arrangeBlocks, arrangementPictures, arrangementsJson, arrangementsTable, readSpecFile } = front;
      const { motifTurnings, readArrangements, turnings } = front;
      const { arrange: names } = words;
      const keys = read(values.only, byName(turnings(0), names.blockTurnings), readArrangements);
      const ofMotifs = read(values.motifs, byName(motifTurnings(0), names.motifTurnings), readArrangements);
      const misread = [keys, ofMotifs].flatMap((found) => (found?.value === null ? found.diagnostics : []));
      if (misread.length > 0) {
        report(misread, undefined, io);
        return EXIT.usage;
      }
      const input = await readInput(file, io);
      if (input.value === null) return failWith(input.diagnostics, undefined, values.json, io);
      const { text, name } = input.value;
      const spec = readSpecFile(text, name, null, io.words.language);
      if (spec.value === null) return failWith(spec.diagnostics, text, values.json, io);
      const planning = { style: null, prefer: null, thorough: false, budget: null, json: values.json };
      const options = await optionsOf(planning, io);
      const progress = startProgress(io);
      const { solve } = await poolOf({ ...io, showsProgress: false }, options);
      const wanted = { blocks: keys?.value ?? null, motifs: ofMotifs?.value ?? null };
      const chosen = wanted.blocks !== null || wanted.motifs !== null;
      const told = (done: number, of: number) =>
        progress.show(io.words.commandLine.arrange.planningEachArrangementOf(done, of));
      const asked = { seed: values.seed, ...wanted };
      const found = await arrangeBlocks(spec.value, asked, options, solve, told);
      progress.clear();
      if (found.value === null) return failWith(found.diagnostics, text, values.json, io);
      report(spec.diagnostics, text, io);
      if (values.json) io.out(arrangementsJson(found.value, spec.value.ruler, spec.diagnostics, io.words));
      else io.out(arrangementsTable(found.value, chosen, io.words));
      if (values.json && values.out === null) return EXIT.done;

      const [{ drawArrangements }, { usualFolder }, { writeFiles }] = await Promise.all([
        front.loadArrangementDrawing(),
        import("../files/file-names.ts"),
        import("../files/write.ts"),
      ]);
      const pictures = arrangementPictures(found.value, io.words);
      const drawing = drawArrangements(found.value.name, pictures, spec.value.fabrics, words);
      const named = values.out ?? usualFolder(found.value.name);
      const folder = resolve(io.folder, named);
      const inputs = file === "-" ? [] : [resolve(io.folder, file)];
      const files = { "arrangements.svg": drawing };
      const written = await writeFiles({
        folder,
        named,
        by: "arrange",
        files,
        inputs,
        replace: values.replace,
      });
      if (written.value === null) return failWith(written.diagnostics, undefined, values.json, io);
      report(written.diagnostics, undefined, io);
      io.talk(io.words.commandLine.arrange.arrangementsSvgWrittenInto(named));
      return EXIT.done;
    },
  });
