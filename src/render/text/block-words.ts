import type { Press, Pressing, RowPressing } from "../../making/types.ts";

/** Words for sewing units to blocks, blocks to rows and rows to the top. Sizes arrive already printed. */

function list(parts: readonly (string | number)[]): string {
  if (parts.length < 3) return parts.join(" and ");
  return `${parts.slice(0, -1).join(", ")} and ${parts[parts.length - 1]}`;
}

const TURNED = { 0: "", 90: " turned right", 180: " turned half round", 270: " turned left" } as const;

const TOWARD: Readonly<Record<Press, string>> = {
  left: "to the left",
  right: "to the right",
  up: "upwards",
  down: "downwards",
};

const SOFT = {
  sashes: "towards the sashes",
  "plain blocks": "towards the plain blocks",
} as const;

export type Turn = keyof typeof TURNED;

/** The presses of the seams of one joining, from its first part to its last; null where one is pressed in two ways. */
export type Presses = readonly (Press | null)[];

function pressed(presses: Presses, softly: RowPressing["press"], line: Pressing["lines"]): string {
  if (softly === "sashes" || softly === "plain blocks") return `Press ${SOFT[softly]}.`;
  const [first] = presses;
  if (presses.length === 0 || first === undefined) return "";
  if (presses.some((press) => press === null)) return "Press each seam as the pressing map shows.";
  if (presses.every((press) => press === first)) {
    const seams = presses.length === 1 ? "the seam" : presses.length === 2 ? "both seams" : "all seams";
    return `Press ${seams} ${TOWARD[first as Press]}.`;
  }
  const from = line === "rows" ? "the left" : "the top";
  return `Press the seams, from ${from}: ${presses.map((press) => TOWARD[press as Press].replace("to the ", "")).join(", ")}.`;
}

function kindsTold(names: readonly { name: string; count: number }[]): string {
  return list(names.map(({ name, count }) => `${name} (make ${count})`));
}

export const blockWords = {
  list,
  turned: (turn: Turn) => TURNED[turn],
  turnedMeans:
    "Turned right is a quarter turn clockwise, turned left a quarter turn the other way, from how it lies in its own steps.",
  /** A piece of cloth or a unit of one patch, by its bag. */
  cloth: (letter: string, what: string) => (letter === "" ? what : `${letter} (${what})`),
  lying: (upright: boolean) => (upright ? "standing" : "lying"),
  bag: (letter: string, fabric: string, how: string) =>
    `${letter} (${fabric}${how === "" ? "" : `, ${how}`})`,
  block: (name: string) => `block ${name}`,
  title: (name: string, kinds: readonly { name: string; count: number }[]) => {
    const [only] = kinds;
    if (kinds.length === 1 && only !== undefined) return `Block ${only.name} (make ${only.count})`;
    const all = kinds.reduce((sum, { count }) => sum + count, 0);
    return `Block ${name} (${all} in all, in ${kinds.length} kinds: ${kindsTold(kinds)})`;
  },
  first: (name: string) => `${name}, chain-pieced step by step for all of them:`,
  frame: "The block lies as it is drawn by itself. Parts are named from the left, or from the top.",
  join: (makes: string, parts: string, across: boolean, press: string, size: string) =>
    `${makes}: ${parts}, ${across ? "side by side" : "one below another"}.${press === "" ? "" : ` ${press}`} It measures ${size}.`,
  rows: (from: number, to: number, line: string) => `${line}s ${from} to ${to}`,
  whole: (name: string) => `Block ${name}`,
  single: (name: string, count: number, unit: string) => `${name} (make ${count}) is one ${unit}.`,
  /** A kind that is sewn as another, out of other heaps. */
  likewise: (
    name: string,
    count: number,
    as: string,
    parts: readonly string[],
    pressings: readonly string[],
  ) =>
    `${name} (make ${count}): sewn as ${as}${parts.length === 0 ? ", of the same" : `, of ${parts.join("; ")}`}${
      pressings.length === 0 ? ", and pressed alike" : `; pressed otherwise: ${pressings.join("; ")}`
    }.`,
  made: (makes: string, parts: string) => `${makes}: ${parts}`,
  pressedSo: (makes: string, press: string) => `${makes}: ${press.replace(/^Press /, "").replace(/\.$/, "")}`,
  pressed,
  rowsTitle: "Rows and top",
  diagonalRow: (row: string, parts: string, press: string, upper: string, lower: string) =>
    `${row}: ${parts}.${press === "" ? "" : ` ${press}`} About ${upper} along its upper edge, ${lower} along its lower.`,
  /** Lines of the top sewn alike: `Rows 1 and 3`. */
  lines: (rows: readonly (string | number)[], line: "row" | "column") =>
    `${line === "row" ? "Row" : "Column"}${rows.length === 1 ? "" : "s"} ${list(rows)}`,
  centre: "Sew together",
  setTriangles: (sides: string, corners: string) =>
    `Side triangles come from ${sides}, corner triangles from ${corners}.`,
  triangleUp: (fabric: string) =>
    `For every place take the triangle whose print then stands upright (${fabric}): lay them out before you sew.`,
} as const;
