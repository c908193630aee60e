import { list } from "./language.ts";

/** What is said of work that a plan was gone on from. */

const bag = ({ letter, count }: { letter: string; count: number }) => `${count} of [${letter}]`;

type OfBag = { letter: string; count: number };

export const goOn = {
  title: (plan: string) => `Gone on with ${plan}`,
  said: (facts: readonly string[]) => `You said: ${facts.join("; ")}.`,
  cut: (bags: readonly OfBag[]) =>
    bags.length === 0 ? "Nothing lies cut yet." : `Cut and in their bags: ${list(bags.map(bag))}.`,
  lost: (bags: readonly OfBag[]) => `Lost, and to be cut again: ${list(bags.map(bag))}.`,
  served: ({ from, to, count }: { from: string; to: string; count: number }) =>
    `${count} of [${from}] ${count === 1 ? "goes" : "go"} into bag [${to}]: the size is the same, and [${from}] needs no more.`,
  wider: (measured: string, kept: string) =>
    `The fabric is ${measured} wide; strips of ${kept} lie cut, so the rest is planned ${kept} wide too.`,
  taken: (strips: readonly string[], one: boolean, cloth: string, as: "cut" | "cut-off") =>
    `${one ? "Strip" : "Strips"} ${list(strips)}${cloth === "" ? "" : ` of ${cloth}`} ${one ? "comes" : "come"} before what you told of: taken as ${
      as === "cut" ? "cut as planned" : "cut off and not cut up"
    }. If that is not so, take it back with --undo and say it with the rest.`,
  width: (now: string, planned: string) =>
    `Cut for a usable width of ${now} from here on, where ${planned} was planned.`,
  more: (letters: readonly string[]) =>
    `New ${letters.length === 1 ? "bag" : "bags"}: ${list(letters.map((letter) => `[${letter}]`))}.`,
  gone: (letters: readonly string[]) =>
    `No longer needed: ${letters.length === 1 ? "bag" : "bags"} ${list(letters.map((letter) => `[${letter}]`))}.`,
  allCut: "All of it is cut.",
  still: (count: number, from: string) =>
    `Still to cut: ${count} ${count === 1 ? "piece" : "pieces"}. ${from} Strips are numbered from 1 again, as in the new diagram.`,
  enough: "What you have is enough: nothing more is to be bought.",
  buy: (amount: string) => `What you have is not enough: buy ${amount} more.`,
  nothing: "Nothing has been said of the work yet.",
} as const;

/** Comments at the top of the file that keeps the work. */
export const workFile = {
  about: [
    "# What is cut, measured and spoiled of a quilt, kept by crossgrain go-on. Take a line out, or a whole entry, and it is",
    "# as if it had never been said. Each entry speaks of the diagram as it was when it was said.",
  ].join("\n"),
};
