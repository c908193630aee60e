import type { Words } from "../types.ts";

/** What stands in a pattern in place of sentences that speak of the file. */
export const makers: Words["makers"] = {
  anyBacking: (size, overhang) =>
    `Rückseite: ${size} oder größer, an jeder Seite ${overhang} über den Quilt hinaus.`,
  anyWadding: (size, packaged, roll) =>
    `Vlies: ${size} oder größer (${packaged === null ? roll : `${packaged}, oder ${roll}`}).`,
  noBinding: (edge) => `Die Kante, die eingefasst wird, misst ringsum ${edge}.`,
  bindingToo: (edge) => `Einfassung für ${edge} Kante und die Ecken.`,
  thinEnough: (limit) => `Das liegt innerhalb der gewünschten ${limit}.`,
  tooThick: (limit, inches) =>
    `Mehr als ${limit} Lagen, die höchstens gewünscht sind. Wo es unten steht, die zuletzt genähte Naht nach beiden Seiten ${
      inches ? "ein, zwei Zoll" : "einige Zentimeter"
    } weit auseinanderbügeln; überall dürfen die Spitzen innerhalb der Nahtzugaben abgeschnitten werden:`,
  allOwn: (bags) => `Zugeschnitten und hier in keinem Schritt vernäht: ${bags.join("; ")}.`,
};
