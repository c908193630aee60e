import type { Words } from "../../types.ts";
import { borderName } from "../quilt/border-name.ts";
import { methodName, unitName } from "../quilt/unit-names.ts";

const TURNED: Readonly<Record<number, string>> = { 0: "wie gezeichnet", 90: "nach rechts gedreht" };

/** The words of what would save, for the list on the terminal and on the page. */
export const savings: Words["savings"] = {
  title: (name) => `${name}: was sparen würde`,
  columns: ["", "Spart", "Änderung", "Dann zu kaufen"],
  none: (tried) => `Keine der ${tried} geplanten Änderungen kauft weniger.`,
  tried: (tried) =>
    `${tried} Änderungen wurden geplant, jede als eigene Datei; eine Breite ist die nächste, die weniger kauft.`,
  take: (file) =>
    `Um eine davon zu übernehmen: crossgrain savings ${file} --take 1 --out geaendert.yaml. Jede Ersparnis ist für sich gerechnet.`,
  more: (amount) => `${amount} mehr`,
  and: ", ",
  noLess: "keine",
};

/** A change in a few words. */
export const changeSaid: Words["changeSaid"] = (change) => {
  switch (change.kind) {
    case "style":
      return "Streifen noch einmal der Länge nach schneiden";
    case "method":
      return `${unitName(change.unit)}: ${methodName(change.method)}`;
    case "print-free":
      return `${change.fabric} darf beliebig gedreht liegen`;
    case "blocks-turned":
      return `jeder Block ${change.block} ${TURNED[change.turn] ?? `um ${change.turn}° gedreht`}`;
    case "border-width":
      return `${borderName(change.border)} (${change.fabric}) ${change.width} breit`;
    case "border-cut":
      return change.cut === "lengthwise"
        ? `${borderName(change.border)} (${change.fabric}) entlang der Webkante geschnitten, in einem Stück`
        : `${borderName(change.border)} (${change.fabric}) aus Streifen zusammengenäht`;
    case "border-join":
      return `${borderName(change.border)} (${change.fabric}) gerade statt schräg zusammengenäht`;
    case "border-corners":
      return `${borderName(change.border)} (${change.fabric}) zuerst die Seiten, keine Gehrung an den Ecken`;
    case "sash-width":
      return `Zwischenstreifen ${change.width} breit`;
    case "binding-join":
      return "Einfassung gerade statt schräg zusammengenäht";
    case "block-size":
      return `jeder Block fertig ${change.size}`;
  }
};
