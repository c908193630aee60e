import type { UnitTold } from "../../../diagnostics/quilts/quilt.ts";
import type { MethodName, UnitName } from "../../../quilt/terms/names.ts";
import type { Words } from "../../types.ts";
import { spoken } from "./spoken.ts";
import { methodTold } from "./unit-methods.ts";

/** Kinds of units. */
const UNITS: Readonly<Record<UnitName, string>> = {
  square: "Quadrat",
  rectangle: "Rechteck",
  "half-square triangle": "Halbquadrat-Dreieck",
  "quarter-square triangle": "Viertelquadrat-Dreieck",
  "three-patch square": "Quadrat aus drei Patches",
  "four-triangle square": "Quadrat aus vier Dreiecken",
  "flying geese": "Fliegende Gänse",
  "square-in-a-square": "Quadrat im Quadrat",
  snowball: "Schneeball",
  "half-rectangle triangle": "Halbrechteck-Dreieck",
  "four-patch": "Vierer-Patch",
  "nine-patch": "Neuner-Patch",
  rails: "Streifenblock",
  "log cabin": "Blockhaus",
  "courthouse steps": "Gerichtstreppe",
  "eight-pointed star": "Achtzackstern",
  "sixty-degree triangles": "60-Grad-Dreiecke",
  "drawn patches": "Gezeichnete Patches",
};

/** Ways of making them, before "genäht". */
const METHODS: Readonly<Record<MethodName, string>> = {
  "two at a time": "je zwei auf einmal",
  "four at a time": "je vier auf einmal",
  "eight at a time": "je acht auf einmal",
  "single triangles": "aus einzelnen Dreiecken",
  "corner triangles": "aus Eckdreiecken",
  "stitch-and-flip": "mit umgeklappten Ecken",
  "strip sets": "aus Streifensets",
  "two strip sets": "aus zwei Streifensets",
  "single pieces": "aus einzelnen Teilen",
  "cut logs": "aus zugeschnittenen Balken",
  "from strips": "aus Streifen",
  templates: "nach Schablonen",
  "on the foundation": "auf der Rasterunterlage",
  "on the foundation, from rectangles": "auf der Rasterunterlage, aus Rechtecken",
};

/** Patches by their place, and what is made on the way to a unit; others are called as they are. */
const PARTS: Readonly<Record<string, string>> = {
  unit: "Einheit",
  patch: "Patch",
  pair: "Paar",
  star: "Stern",
  centre: "Mitte",
  goose: "Gans",
  sky: "Himmel",
  half: "Hälfte",
  top: "oben",
  bottom: "unten",
  left: "links",
  right: "rechts",
  upper: "oben",
  lower: "unten",
  corners: "Ecken",
  sides: "Seiten",
  ball: "Ball",
  background: "Hintergrund",
  ends: "Enden",
  first: "erster",
  second: "zweiter",
  "sky-left": "Himmel links",
  "sky-right": "Himmel rechts",
  "top-left": "oben links",
  "top-right": "oben rechts",
  "bottom-left": "unten links",
  "bottom-right": "unten rechts",
  "upper-row": "obere Reihe",
  "middle-row": "mittlere Reihe",
  "lower-row": "untere Reihe",
  "upper-pair": "oberes Paar",
  "lower-pair": "unteres Paar",
  "left-half": "linke Hälfte",
  "right-half": "rechte Hälfte",
  "goose-and-sky": "Gans mit einem Himmel",
  "centre-and-two": "Mitte mit zwei Ecken",
};

/** The same with a number: `pair 2`. */
const NUMBERED: Readonly<Record<string, string>> = {
  pair: "Paar",
  part: "Stück",
  diamond: "Raute",
  corner: "Ecke",
  side: "Seite",
  rail: "Streifen",
};

/** Rows and rounds by the last patch that is in them. */
const MADE_WITH: Readonly<Record<string, (patch: string) => string>> = {
  "up-to": (patch) => `bis ${patch}`,
  "star-with": (patch) => `Stern mit ${patch}`,
  "row-to": (patch) => `Reihe bis ${patch}`,
};

/** A patch of a unit, or what is made on the way to it, by its code. */
export function partName(code: string): string {
  const [made = "", patch] = code.split("/");
  const named = patch === undefined ? undefined : MADE_WITH[made]?.(partName(patch));
  const [, round, side = ""] = /^round (\d+) ([a-z]+)$/.exec(code) ?? [];
  if (round !== undefined) return `Runde ${round}, ${PARTS[side] ?? side}`;
  const [, word = "", number = ""] = /^([a-z]+) (\d+)$/.exec(code) ?? [];
  const counted = NUMBERED[word];
  return named ?? PARTS[code] ?? (counted === undefined ? code : `${counted} ${number}`);
}

/** A kind of unit by its code; any other name as it stands. */
export function unitName(code: string): string {
  return UNITS[code as UnitName] ?? code;
}

/** A way of making a unit by its code. */
export function methodName(code: string): string {
  return METHODS[code as MethodName] ?? code;
}

/** A unit by its kind and its finished size. */
export function unitTold({ kind, finished }: UnitTold): string {
  return `${unitName(kind)}, fertig ${spoken.size(finished)}`;
}

/** Units and ways of making them. */
export const unitNames: Words["unitNames"] = {
  unit: unitName,
  method: methodName,
  part: partName,
  told: unitTold,
  summary: (unit, method) => methodTold(unit, method)?.summary ?? "",
  sources: (unit, method) => methodTold(unit, method)?.sources ?? [],
};
