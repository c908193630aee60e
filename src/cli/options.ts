import { aboveZero, choice, text, toggle } from "./option.ts";

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

export const pdf = toggle("--pdf", "write the cutting book as a PDF too");

export const paper = choice(
  "--paper <size>",
  "paper of the PDF",
  "letter where fabric is sold by the yard, else a4",
  ["a4", "letter"],
);

export const ruler = choice(
  "--ruler <unit>",
  "restate a quilt for this ruler: finished sizes move to its marks, and every change is told",
  "the ruler of the file",
  ["in", "cm"],
);
