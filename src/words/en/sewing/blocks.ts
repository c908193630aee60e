import type { JoinName, Press, Pressing, RowPressing } from "../../../making/types.ts";
import type { PatchPlace } from "../../../quilt/types.ts";
import { capital, list } from "../language.ts";
import { borderName } from "../quilt/border-name.ts";
import { unitName } from "../quilt/unit-names.ts";

/** Words for sewing units to blocks, blocks to rows and rows to the top. Sizes arrive already printed. */

const TURNED = { 0: "", 90: " turned right", 180: " turned half round", 270: " turned left" } as const;

const TOWARD: Readonly<Record<Press, string>> = {
  left: "to the left",
  right: "to the right",
  up: "upwards",
  down: "downwards",
};

const SHORT: Readonly<Record<Press, string>> = { left: "left", right: "right", up: "up", down: "down" };

const SOFT = {
  sashes: "towards the sashes",
  "plain-blocks": "towards the plain blocks",
} as const;

export type Turn = keyof typeof TURNED;

/** The presses of the seams of one joining, from its first part to its last; null where one is pressed in two ways. */
export type Presses = readonly (Press | null)[];

/** How the seams of a joining are pressed: which, and where to; `all` is empty where it takes a sentence of its own. */
export interface Pressed {
  all: string;
  way: string;
  sentence: string;
}

const UNPRESSED: Pressed = { all: "", way: "", sentence: "" };

function pressed(presses: Presses, softly: RowPressing["press"], line: Pressing["lines"]): Pressed {
  const [first] = presses;
  const seams = presses.length === 1 ? "the seam" : presses.length === 2 ? "both seams" : "all seams";
  const uniform = (way: string): Pressed => ({ all: seams, way, sentence: `Press ${seams} ${way}.` });
  if (softly === "sashes" || softly === "plain-blocks") return uniform(SOFT[softly]);
  if (first === undefined) return UNPRESSED;
  if (presses.some((press) => press === null))
    return { ...UNPRESSED, sentence: "Press each seam as the pressing map shows." };
  if (presses.every((press) => press === first)) return uniform(TOWARD[first as Press]);
  const from = line === "rows" ? "the left" : "the top";
  const ways = presses.map((press) => SHORT[press as Press]);
  return { ...UNPRESSED, sentence: `Press the seams, from ${from}: ${ways.join(", ")}.` };
}

function linesTold(rows: readonly (string | number)[], line: "row" | "column"): string {
  const counted = rows.map(Number);
  const [first = 0] = counted;
  const run = counted.length > 2 && counted.every((number, i) => number === first + i);
  return `${line}${rows.length === 1 ? "" : "s"} ${run ? `${first} to ${counted.at(-1)}` : list(rows)}`;
}

function kindsTold(names: readonly { name: string; count: number }[]): string {
  return list(names.map(({ name, count }) => `${name} (make ${count})`));
}

const CLOTH = {
  block: "block",
  sash: "sash",
  cornerstone: "cornerstone",
  "setting-triangle": "setting triangle",
  border: "border",
} as const;
const BETWEEN = { sides: "centre with side borders", ends: "centre with top and bottom borders" } as const;

/** What is joined, or made by it. */
function named(name: JoinName): string {
  switch (name.is) {
    case "line":
      return `${name.line} ${name.number}`;
    case "part":
      return `${name.line} ${name.number} of ${named(name.of)}`;
    case "strip":
      return `${name.side} border`;
    case "between":
      return BETWEEN[name.with];
    case "core":
      return "the top so far";
    case "centre":
      return "centre";
    case "top-with":
      return `top with ${borderName(name.border)}`;
    case "block":
      return name.name;
    case "unit":
      return unitName(name.kind);
    case "alike":
      return `part ${name.number}`;
    case "foundation":
      return `${name.per} ${name.letters.join(" or ")}`;
    case "cloth":
      return CLOTH[name.place];
  }
}

/** A kind of block that is sewn as another, out of other heaps. */
interface Likewise {
  name: string;
  count: number;
  /** The kind it is sewn as. */
  as: string;
  /** What is taken in place of what the other is made of. */
  instead: readonly { of: string; take: string }[];
  /** Its rows, where they are made of other parts altogether. */
  rows: readonly string[];
  /** How it is pressed, where not alike. */
  pressings: readonly string[];
}

export const blocks = {
  named,
  /** The same at the head of a line. */
  made: (name: JoinName): string => capital(named(name)),
  heap: (name: string, heads: string) => `${name} (${heads})`,
  trimmed: (sewn: string, size: string) => `${sewn}; trim it to ${size}, alike on all sides`,
  list,
  turned: (turn: Turn) => TURNED[turn],
  turnedMeans:
    "Turned right is a quarter turn clockwise, turned left a quarter turn the other way, from how it lies in its own steps.",
  /** A piece of cloth or a unit of one patch, by its bag. */
  cloth: (letter: string, what: string) => (letter === "" ? what : `${letter} (${what})`),
  lying: (upright: boolean) => (upright ? "standing" : "lying"),
  bag: (letter: string, fabric: string, how: string) =>
    `${letter} (${fabric}${how === "" ? "" : `, ${how}`})`,
  /** A piece of cloth that is no block, by its fabric and what it is. */
  clothAt: (fabric: string, place: PatchPlace) => `${fabric} ${CLOTH[place]}`,
  block: (name: string) => `block ${name}`,
  title: (name: string, kinds: readonly { name: string; count: number }[]) => {
    const [only] = kinds;
    if (kinds.length === 1 && only !== undefined) return `Block ${only.name} (make ${only.count})`;
    const all = kinds.reduce((sum, { count }) => sum + count, 0);
    return `Block ${name}: ${all} in all, of ${kinds.length} kinds: ${kindsTold(kinds)}`;
  },
  aboutTitle: "Blocks",
  frame:
    "Every block lies upright, as it is drawn by itself. What is joined is named from the left, or from the top.",
  between: (parts: string, cloth: string, ends: boolean) =>
    `${parts}, with ${cloth} between them${ends ? " and at both ends" : ""}`,
  each: (unit: string) => `Each is one ${unit}.`,
  inside:
    "The kinds differ in how the seams inside the unit are pressed: see the steps of the unit and the pressing map.",
  join: (makes: string, parts: string, press: string, size: string, many: boolean) =>
    `${makes}: ${parts}.${press === "" ? "" : ` ${press}`} ${many ? "Each" : "It"} measures ${size}.`,
  /** Lines pressed in more than one way. */
  pressIn: (all: string, ways: readonly { way: string; rows: readonly string[] }[], line: "row" | "column") =>
    `Press ${all} ${ways.map(({ way, rows }) => `${way} in ${linesTold(rows, line)}`).join(", ")}.`,
  way: (across: boolean) => (across ? "side by side" : "one below another"),
  withWay: (parts: string, across: boolean) => `${parts}, ${across ? "side by side" : "one below another"}`,
  rows: (from: number, to: number, line: string) => `${line}s ${from} to ${to}`,
  whole: (name: string) => `Block ${name}`,
  single: (name: string, count: number, unit: string) => `Block ${name} (make ${count}): one ${unit}.`,
  likewise: ({ name, count, as, instead, rows, pressings }: Likewise) => {
    const other = [
      ...(instead.length === 0
        ? []
        : [`with ${list(instead.map(({ of, take }) => `${take} in place of ${of}`))}`]),
      ...(rows.length === 0 ? [] : [`of ${rows.join("; ")}`]),
    ];
    const how = pressings.length === 0 ? "pressed alike" : `but press ${list(pressings)}`;
    return `Block ${name} (make ${count}): sewn as ${as}${other.length === 0 ? "" : ` ${other.join(", ")}`}, ${how}.`;
  },
  madeOf: (makes: string, parts: string) => `${makes}: ${parts}`,
  pressedSo: (what: string, way: string) => `${what} ${way}`,
  mapShows: (what: string) => `${what} as the pressing map shows`,
  lastSeams: (only: boolean, line: "row" | "column") => (only ? "its seams" : `the seams between ${line}s`),
  checkBlock: (mark: string) =>
    `Measure each block. One that is up to ${mark} larger is trimmed alike on all four sides; one that is smaller is ` +
    "not trimmed: press it again, or sew its seams with a little less allowance.",
  pressed,
  linesTold,
  rowsTitle: "Rows and top",
  /** A top of one block: nothing is joined before its borders. */
  begins: (block: string, size: string) => `The top begins as one ${block}, ${size}.`,
  diagonalRow: (row: string, parts: string, press: string, upper: string, lower: string) =>
    `${row}: ${parts}.${press === "" ? "" : ` ${press}`} About ${upper} along its upper edge, ${lower} along its lower.`,
  /** Lines of the top sewn alike: `Rows 1 and 3`. */
  lines: (rows: readonly (string | number)[], line: "row" | "column") => capital(linesTold(rows, line)),
  centre: "Sew together",
  setTriangles: (sides: string, corners: string) =>
    `Side triangles come from ${sides}, corner triangles from ${corners}.`,
  triangleUp: (fabric: string) =>
    `For every place take the triangle whose print then stands upright (${fabric}): lay them out before you sew.`,
} as const;
