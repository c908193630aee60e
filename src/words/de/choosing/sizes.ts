import type { Words } from "../../types.ts";
import { either, list } from "../language.ts";

type SizeFrom = Parameters<Words["sizes"]["from"]>[0];

const SIDES: Readonly<Record<string, string>> = {
  left: "links",
  right: "rechts",
  foot: "am Fußende",
  head: "am Kopfende",
};

/** `US queen mattress 60 x 80 in, drop 13 in at both sides and foot`. */
function sizeFrom(from: SizeFrom): string {
  if (from.kind === "usual") return `übliche Größe ${from.name}, gängige Praxis`;
  const drops = from.drops.map(({ length, sides }) => {
    const both = sides.includes("left") && sides.includes("right");
    const others = sides.filter((side) => !both || (side !== "left" && side !== "right"));
    return `Überhang ${length} ${list([...(both ? ["an beiden Seiten"] : []), ...others.map((side) => SIDES[side] ?? side)])}`;
  });
  const tuck = from.tuck === null ? [] : [`Einschlag am Kissen ${from.tuck}`];
  return [`Matratze ${from.name} ${from.mattress}`, ...drops, ...tuck].join(", ");
}

/** The words of the table of one design in several sizes. */
export const sizes: Words["sizes"] = {
  title: (name) => `Bedarf für ${name}, nach Größen`,
  size: "Größe",
  asked: "gewünscht",
  finished: "fertige Größe",
  blocks: "Blöcke, quer x hoch",
  grid: (across, down) => `${across} x ${down}`,
  make: (block) => `${block} nähen`,
  border: (name) => `${name}, Seiten / Enden`,
  asDrawn: "wie gezeichnet",
  wadding: "Vlies, mindestens",
  price: "Preis",
  unproven: "~",
  notProven:
    "~ das Wenigste, was in der Zeit gefunden wurde; weniger ist nicht ausgeschlossen (--budget gibt mehr Zeit)",
  from: sizeFrom,
  bed: (asked, from) => `${asked}: ${sizeFrom(from)}`,
  usable: (widths) => `Die Mengen gelten für Stoff mit einer nutzbaren Breite von ${either(widths)}.`,
  estimates: "Betten sind verschieden: vor dem Einkauf das eigene messen und die Mengen nachprüfen.",
};
