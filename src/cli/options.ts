import { languages, type Words } from "../words/index.ts";

import { aboveZero, choice, type Option, type Read, takes, text, toggle } from "./option.ts";

/** Options that more than one command takes. One that a single command takes stands with that command. */

export const json = (words: Words) => toggle("--json", words.commandLine.options.printTheResultAs);

export const style = (words: Words) =>
  choice(
    takes("--style", words.commandLine.values.style),
    words.commandLine.options.howStripsMayBe,
    words.commandLine.options.asTheFileSays,
    ["strips-2", "strips-3"],
    words,
  );

export const prefer = (words: Words) =>
  choice(
    takes("--prefer", words.commandLine.values.aim),
    words.commandLine.options.leastClothFirstOr,
    words.commandLine.options.asTheFileSays2,
    ["sparing", "simple"],
    words,
  );

export const thorough = (words: Words) => toggle("--thorough", words.commandLine.options.searchLongerForThe);

export const budget = (words: Words) =>
  aboveZero(
    takes("--budget", words.commandLine.values.seconds),
    words.commandLine.options.searchEachFabricThis,
    words.commandLine.options.aboutForAllFabrics,
    words,
  );

export const out = (words: Words) =>
  text(
    takes("--out", words.commandLine.values.folder),
    words.commandLine.options.folderToWriteInto,
    words.commandLine.options.outNameAfterThe,
  );

export const replace = (words: Words) => toggle("--replace", words.commandLine.options.writeOverFilesThat);

export const pageFile = (words: Words) =>
  text(
    takes("--out", words.commandLine.values.file),
    words.commandLine.options.htmlFileToWrite,
    "out/crossgrain.html",
  );

export const pdf = (words: Words) => toggle("--pdf", words.commandLine.options.writeTheCuttingBook);

export const paper = (words: Words) =>
  choice(
    takes("--paper", words.commandLine.values.size),
    words.commandLine.options.paperOfThePdf,
    words.commandLine.options.letterWhereFabricIs,
    ["a4", "letter"],
    words,
  );

/** Widths a picture may have, in pixels. */
const PNG_WIDTH = { least: 16, most: 10_000 } as const;

export function pixels(flags: string, help: string, standard: string, words: Words): Option<number | null> {
  const read = (typed: string): Read<number | null> => {
    const value = Number(typed.trim().replace(/ ?px$/, ""));
    return Number.isInteger(value) && value >= PNG_WIDTH.least && value <= PNG_WIDTH.most
      ? { value }
      : { problem: words.commandLine.options.useWholePixelsFrom(PNG_WIDTH.least, PNG_WIDTH.most) };
  };
  return { flags, help, standard, absent: null, read };
}

export const png = (words: Words) =>
  pixels(
    takes("--png", words.commandLine.values.width),
    words.commandLine.options.writeEveryDrawingAs,
    "",
    words,
  );

export const font = (words: Words) =>
  text(
    takes("--font", words.commandLine.values.file),
    words.commandLine.options.fontForNamesIn,
    words.commandLine.options.oneOfTheSystem,
  );

export const markdown = (words: Words) => toggle("--markdown", words.commandLine.options.writeTheBookWithout);

export const compared = (words: Words) => toggle("--compare", words.commandLine.options.setTheWaysOf);

export const decimal = (words: Words) =>
  choice(
    takes("--decimal", words.commandLine.values.mark),
    words.commandLine.options.markBeforeTenthsIn,
    words.commandLine.options.asTheFileWrites,
    ["comma", "point"],
    words,
  );

export const ruler = (words: Words) =>
  choice(
    takes("--ruler", words.commandLine.values.unit),
    words.commandLine.options.restateAQuiltFor,
    words.commandLine.options.theRulerOfThe,
    ["in", "cm"],
    words,
  );

/** Taken by every command. */
export const language = (words: Words) =>
  choice(
    takes("--language", words.commandLine.values.language),
    words.commandLine.options.languageOfAll,
    words.commandLine.options.languageOfTheFile,
    Object.keys(languages),
    words,
  );
