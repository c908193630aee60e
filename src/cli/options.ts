import { aboveZero, choice, type Option, type Read, text, toggle } from "./option.ts";

/** Options that more than one command takes. One that a single command takes stands with that command. */

export const json = toggle("--json", "print the result as JSON, for other programs");

export const style = choice("--style <style>", "how strips may be cut", "as the file says, else strips-2", [
  "strips-2",
  "strips-3",
]);

export const prefer = choice(
  "--prefer <aim>",
  "least cloth first, or fewer and simpler cuts for the same purchase",
  "as the file says, else sparing",
  ["sparing", "simple"],
);

export const thorough = toggle(
  "--thorough",
  "search longer for the least cloth and its proof: up to 30 seconds a fabric",
);

export const budget = aboveZero(
  "--budget <seconds>",
  "search each fabric this long at most, then keep the best plan so far",
  "about 3 for all fabrics together",
);

export const out = text("--out <folder>", "folder to write into", "out/NAME, after the plan's name");

export const replace = toggle(
  "--replace",
  "write over files that are in the way, though this program did not write them or you have changed them",
);

export const pageFile = text("--out <file>", "HTML file to write", "out/crossgrain.html");

export const pdf = toggle("--pdf", "write the bench book, and the pattern of a quilt, as PDF too");

export const paper = choice(
  "--paper <size>",
  "paper of the PDF",
  "letter where fabric is sold by the yard, else a4",
  ["a4", "letter"],
);

/** Widths a picture may have, in pixels. */
const PNG_WIDTH = { least: 16, most: 10_000 } as const;

export function pixels(flags: string, help: string, standard: string): Option<number | null> {
  const read = (typed: string): Read<number | null> => {
    const value = Number(typed.trim().replace(/ ?px$/, ""));
    return Number.isInteger(value) && value >= PNG_WIDTH.least && value <= PNG_WIDTH.most
      ? { value }
      : { problem: `Use whole pixels from ${PNG_WIDTH.least} to ${PNG_WIDTH.most}, for example 1600.` };
  };
  return { flags, help, standard, absent: null, read };
}

export const png = pixels(
  "--png <width>",
  "write every drawing as a PNG picture too, this many pixels wide",
  "",
);

export const font = text(
  "--font <file>",
  "font for names in other writing, for PDF and PNG",
  "one of the system's",
);

export const markdown = toggle(
  "--markdown",
  "write the book without its drawings too, for a newsletter: Markdown and text",
);

export const compared = toggle("--compare", "set the ways of making a quilt side by side in the book");

export const decimal = choice(
  "--decimal <mark>",
  "mark before tenths in what is printed",
  "as the file writes them",
  ["comma", "point"],
);

export const ruler = choice(
  "--ruler <unit>",
  "restate a quilt for this ruler: finished sizes move to its marks, and every change is told",
  "the ruler of the file",
  ["in", "cm"],
);
