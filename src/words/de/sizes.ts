import type { Words } from "../types.ts";
import { either } from "./language.ts";

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
  bed: (asked, from) => `${asked}: ${from}`,
  usable: (widths) => `Die Mengen gelten für Stoff mit einer nutzbaren Breite von ${either(widths)}.`,
  estimates: "Betten sind verschieden: vor dem Einkauf das eigene messen und die Mengen nachprüfen.",
};
