import type { Words } from "../../types.ts";
import { making } from "../making.ts";

/** Sentences of a pattern that elsewhere speak of the file, or of how far something is proved. */
export const forMakers: Words["forMakers"] = {
  cutting: { bindingToo: (edge) => `Einfassung für ${edge} Kante und die Ecken.` },
  finishing: {
    anyBacking: (size, overhang) =>
      `Rückseite: ${size} oder größer, an jeder Seite ${overhang} über den Quilt hinaus.`,
    anyWadding: (size, packaged, roll) =>
      `Vlies: ${size} oder größer (${packaged === null ? roll : `${packaged}, oder ${roll}`}).`,
    noBinding: (edge) => `Die Kante, die eingefasst wird, misst ringsum ${edge}.`,
  },
  making: {
    nestSome: (junctions, open) => making.nestSome(junctions, open, false),
    bulk: (most, atMost, places) => making.bulk(most, atMost, places, false),
    thinEnough: (limit) => `Das liegt innerhalb der gewünschten ${limit}.`,
    tooThick: (limit, inches) =>
      `Mehr als ${limit} Lagen, die höchstens gewünscht sind. Wo es unten steht, die zuletzt genähte Naht nach beiden Seiten ${
        inches ? "ein, zwei Zoll" : "einige Zentimeter"
      } weit auseinanderbügeln; überall dürfen die Spitzen innerhalb der Nahtzugaben abgeschnitten werden:`,
    quilting: (by, lines, spacing) => making.quilting(by, lines, spacing, true),
  },
  units: { allOwn: (bags) => `In keinem Schritt hier genäht: ${bags.join("; ")}.` },
};
