import type { Words } from "../../types.ts";
import { counted, either } from "../language.ts";

const TURNS: Readonly<Record<number, string>> = {
  0: "aufrecht",
  90: "nach rechts gedreht",
  180: "halb gedreht",
  270: "nach links gedreht",
};

/** All the words that stand in drawings of quilt tops and blocks. */
export const quilt: Words["drawings"]["quilt"] = {
  top: "Quilttop",
  block: "Block",
  sideBySide: (tops) => `${tops} Quilttops nebeneinander.`,
  fabrics: "Stoffe",
  units: "Zu nähende Einheiten",
  finished: "Fertiger Block",
  finishedSize: "Fertige Größe",
  setting: "Anordnung",
  holds: "Enthält",
  make: "Nähen",
  madeOf: "Besteht aus",
  set: (onPoint, across, down) => `${onPoint ? "auf der Spitze" : "gerade"}, ${across} × ${down}`,
  held: (blocks, patches) => `${counted(blocks, "Block", "Blöcke")}, ${counted(patches, "Patch", "Patches")}`,
  blockCount: (count) => counted(count, "Block", "Blöcke"),
  unitCount: (count) => counted(count, "Einheit", "Einheiten"),
  topDescribed: (size, blocks, patches) =>
    `${size}, ${counted(blocks, "Block", "Blöcke")}, ${counted(patches, "Patch", "Patches")}.`,
  blockDescribed: (units, count) => `${units.join("; ")}. ${count} nähen.`,
  apart: "Seine Einheiten, auseinandergerückt",
  bags: "Beutel",
  bag: (letter, size, further, fabric) => `${letter}: ${size}${further}, ${fabric}`,
  strip: (width) => `Streifen ${width} breit`,
  cutFurther: {
    none: "",
    "once-diagonal": ", halbiert",
    "twice-diagonal": ", geviertelt",
    template: ", nach Schablone",
  },
  unitMade: (name, kind, method) =>
    method === "" ? `${kind}, Beutel ${name}` : `${name}: ${kind}, ${method}`,
  made: (count, turns, order) => {
    const turned = either(turns.map((turn) => TURNS[turn] ?? `um ${turn}°`));
    return `${order === 0 ? "Wie beschriftet" : "Aus denselben Beuteln, andere Stapel"}, ${count} so gelegt: ${turned}`;
  },
  arrows: "Ein Pfeil in einem Patch zeigt, wohin die Oberseite des Drucks weist.",
  bothWays: "Ein Pfeil mit zwei Spitzen: Der Druck ist von beiden Seiten gleich.",
  colouring: {
    title: "Malvorlage: der Quilt im Umriss und noch einmal mit einer Struktur je Stoff",
    toColour: "Von Hand auszumalen.",
  },
};
