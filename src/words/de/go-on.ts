import type { Words } from "../types.ts";
import { counted, list, plural } from "./language.ts";

/** What is said of work that a plan was gone on from. */

type OfBag = Parameters<Words["goOn"]["cut"]>[0][number];

const bag = ({ letter, count }: OfBag): string => `${count} aus [${letter}]`;
const letterList = (letters: readonly string[]): string => list(letters.map((letter) => `[${letter}]`));

export const goOn: Words["goOn"] = {
  title: (plan) => `Weiter mit ${plan}`,
  said: (facts) => `Gesagt wurde: ${facts.join("; ")}.`,
  cut: (bags) =>
    bags.length === 0
      ? "Noch nichts ist zugeschnitten."
      : `Zugeschnitten und in den Beuteln: ${list(bags.map(bag))}.`,
  lost: (bags) => `Verloren und noch einmal zu schneiden: ${list(bags.map(bag))}.`,
  served: ({ from, to, count }) =>
    `${count} aus [${from}] ${plural(count, "kommt", "kommen")} in Beutel [${to}]: Das Maß ist gleich, und [${from}] braucht keine mehr.`,
  wider: (measured, kept) =>
    `Der Stoff ist ${measured} breit; es liegen schon Streifen von ${kept} zugeschnitten, darum ist auch der Rest mit ${kept} Breite geplant.`,
  taken: (strips, one, cloth, as) =>
    `Streifen ${list(strips)}${cloth === "" ? "" : ` (${cloth})`} ${one ? "kommt" : "kommen"} vor dem, was gesagt wurde: angenommen als ${
      as === "cut" ? "geschnitten wie geplant" : "abgeschnitten und nicht unterteilt"
    }. Stimmt das nicht, mit --undo zurücknehmen und zusammen mit dem Übrigen sagen.`,
  width: (now, planned) =>
    `Von hier an für eine nutzbare Breite von ${now} geschnitten, wo ${planned} geplant war.`,
  more: (letters) => `Neu: Beutel ${letterList(letters)}.`,
  gone: (letters) => `Nicht mehr nötig: Beutel ${letterList(letters)}.`,
  allCut: "Alles ist zugeschnitten.",
  still: (count, from) =>
    `Noch zu schneiden: ${counted(count, "Teil", "Teile")}. ${from} Die Streifen sind wieder von 1 an nummeriert, wie im neuen Schnittplan.`,
  enough: "Was da ist, reicht: Nichts muss mehr gekauft werden.",
  buy: (amount) => `Was da ist, reicht nicht: ${amount} dazukaufen.`,
  nothing: "Von der Arbeit wurde noch nichts gesagt.",
};

/** Comments at the top of the file that keeps the work. */
export const workFile = {
  about: [
    "# Was von einem Quilt geschnitten, gemessen und verdorben ist, geführt von crossgrain go-on. Wer eine Zeile oder einen",
    "# ganzen Eintrag herausnimmt, hat es nie gesagt. Jeder Eintrag spricht vom Schnittplan, wie er da gerade war.",
  ].join("\n"),
};
