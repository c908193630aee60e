import type { Words } from "../../types.ts";
import { capital, list, plural, rangeOrList } from "../language.ts";
import { borderName } from "../quilt/border-name.ts";
import { unitName } from "../quilt/unit-names.ts";

/** Words for sewing units to blocks, blocks to rows and rows to the top. */

type Blocks = Words["blocks"];
type Press = NonNullable<Parameters<Blocks["pressed"]>[0][number]>;
type Line = Parameters<Blocks["lines"]>[1];

const TURNED = {
  0: "",
  90: " nach rechts gedreht",
  180: " halb gedreht",
  270: " nach links gedreht",
} as const;

const TOWARD: Readonly<Record<Press, string>> = {
  left: "nach links",
  right: "nach rechts",
  up: "nach oben",
  down: "nach unten",
};

const SHORT: Readonly<Record<Press, string>> = { left: "links", right: "rechts", up: "oben", down: "unten" };

const SOFT = {
  sashes: "zu den Zwischenstreifen",
  "plain-blocks": "zu den einfarbigen Blöcken",
} as const;

const UNPRESSED = { all: "", way: "", sentence: "" };

const pressed: Blocks["pressed"] = (presses, softly, line) => {
  const [first] = presses;
  const seams = presses.length === 1 ? "die Naht" : presses.length === 2 ? "beide Nähte" : "alle Nähte";
  const uniform = (way: string) => ({
    all: seams,
    way,
    sentence: `${capital(seams)} ${way} bügeln.`,
  });
  if (softly === "sashes" || softly === "plain-blocks") return uniform(SOFT[softly]);
  if (first === undefined) return UNPRESSED;
  if (presses.some((press) => press === null))
    return { ...UNPRESSED, sentence: "Jede Naht bügeln, wie der Bügelplan es zeigt." };
  if (presses.every((press) => press === first)) return uniform(TOWARD[first as Press]);
  const from = line === "rows" ? "von links" : "von oben";
  const ways = presses.map((press) => SHORT[press as Press]);
  return { ...UNPRESSED, sentence: `Die Nähte bügeln, ${from}: ${ways.join(", ")}.` };
};

const nounOf = (line: Line, count: number): string =>
  line === "row" ? plural(count, "Reihe", "Reihen") : plural(count, "Spalte", "Spalten");

const linesTold: Blocks["linesTold"] = (rows, line) =>
  `${nounOf(line, rows.length)} ${rangeOrList(rows.map(Number))}`;

const kindsTold = (names: readonly { name: string; count: number }[]): string =>
  list(names.map(({ name, count }) => `${name} (${count} nähen)`));

const nextTo = (across: boolean): string => (across ? "nebeneinander" : "untereinander");

const CLOTH = {
  block: "Block",
  sash: "Zwischenstreifen",
  cornerstone: "Eckquadrat",
  "setting-triangle": "Randdreieck",
  border: "Rand",
} as const;
const BETWEEN = { sides: "Mitte mit Seitenrändern", ends: "Mitte mit Rändern oben und unten" } as const;
const STRIP = {
  top: "oberer Rand",
  bottom: "unterer Rand",
  left: "linker Rand",
  right: "rechter Rand",
} as const;
const LINE = { row: "Reihe", column: "Spalte", part: "Teil" } as const;
const PER = { unit: "Einheit", motif: "Motiv", block: "Block", row: "Reihe" } as const;

/** What is joined, or made by it. */
const named: Blocks["named"] = (name) => {
  switch (name.is) {
    case "line":
      return `${LINE[name.line]} ${name.number}`;
    case "part":
      return `${LINE[name.line]} ${name.number} von ${named(name.of)}`;
    case "strip":
      return STRIP[name.side];
    case "between":
      return BETWEEN[name.with];
    case "core":
      return "das Top so weit";
    case "centre":
      return "Mitte";
    case "top-with":
      return `Top mit ${borderName(name.border)}`;
    case "block":
      return name.name;
    case "unit":
      return unitName(name.kind);
    case "alike":
      return `Teil ${name.number}`;
    case "foundation":
      return `${PER[name.per]} ${name.letters.join(" oder ")}`;
    case "cloth":
      return CLOTH[name.place];
  }
};

export const blocks: Blocks = {
  named,
  made: (name) => capital(named(name)),
  heap: (name, heads) => `${name} (${heads})`,
  trimmed: (sewn, size) => `${sewn}; auf ${size} beschneiden, an allen Seiten gleich viel`,
  list,
  turned: (turn) => TURNED[turn],
  turnedMeans:
    "„Nach rechts gedreht“ heißt eine Vierteldrehung im Uhrzeigersinn, „nach links gedreht“ eine gegen ihn, von der Lage in den eigenen Schritten aus.",
  cloth: (letter, what) => (letter === "" ? what : `${letter} (${what})`),
  lying: (upright) => (upright ? "stehend" : "liegend"),
  bag: (letter, fabric, how) => `${letter} (${fabric}${how === "" ? "" : `, ${how}`})`,
  clothAt: (fabric, place) => `${fabric}, ${CLOTH[place]}`,
  block: (name) => `Block ${name}`,
  title: (name, kinds) => {
    const [only] = kinds;
    if (kinds.length === 1 && only !== undefined) return `Block ${only.name} (${only.count} nähen)`;
    const all = kinds.reduce((sum, { count }) => sum + count, 0);
    return `Block ${name}: insgesamt ${all}, in ${kinds.length} Arten: ${kindsTold(kinds)}`;
  },
  aboutTitle: "Blöcke",
  frame:
    "Jeder Block liegt aufrecht, so wie er einzeln gezeichnet ist. Was zusammengenäht wird, ist von links oder von oben genannt.",
  between: (parts, cloth, ends) => `${parts}, dazwischen${ends ? " und an beiden Enden" : ""} ${cloth}`,
  each: (unit) => `Jeder ist eine Einheit: ${unit}.`,
  inside:
    "Die Arten unterscheiden sich darin, wie die Nähte in der Einheit gebügelt sind: siehe die Schritte der Einheit und den Bügelplan.",
  join: (makes, parts, press, size, many) =>
    `${makes}: ${parts}.${press === "" ? "" : ` ${press}`} ${many ? "Jede misst" : "Das Ergebnis misst"} ${size}.`,
  pressIn: (all, ways, line) =>
    `${capital(all)} ${ways.map(({ way, rows }) => `in ${linesTold(rows, line)} ${way}`).join(", ")} bügeln.`,
  way: nextTo,
  withWay: (parts, across) => `${parts}, ${nextTo(across)}`,
  rows: (from, to, line) =>
    `${capital(line === "column" ? "Spalten" : line === "row" ? "Reihen" : line)} ${from} bis ${to}`,
  whole: (name) => `Block ${name}`,
  single: (name, count, unit) => `Block ${name} (${count} nähen): eine Einheit, ${unit}.`,
  likewise: ({ name, count, as, instead, rows, pressings }) => {
    const other = [
      ...(instead.length === 0 ? [] : [`mit ${list(instead.map(({ of, take }) => `${take} statt ${of}`))}`]),
      ...(rows.length === 0 ? [] : [`aus ${rows.join("; ")}`]),
    ];
    const how = pressings.length === 0 ? "gleich gebügelt" : `anders gebügelt: ${list(pressings)}`;
    return `Block ${name} (${count} nähen): wie ${as} genäht${other.length === 0 ? "" : `, ${other.join(", ")}`}, ${how}.`;
  },
  madeOf: (makes, parts) => `${makes}: ${parts}`,
  pressedSo: (what, way) => `${what} ${way}`,
  mapShows: (what) => `${what}, wie der Bügelplan es zeigt`,
  lastSeams: (only, line) =>
    only ? "seine Nähte" : `die Nähte zwischen den ${line === "row" ? "Reihen" : "Spalten"}`,
  checkBlock: (mark) =>
    `Jeden Block messen. Ist einer bis zu ${mark} größer, an allen vier Seiten gleich viel beschneiden; ist einer kleiner, ` +
    "nicht beschneiden: noch einmal bügeln, oder die Nähte mit etwas weniger Zugabe nähen.",
  pressed,
  linesTold,
  rowsTitle: "Reihen und Top",
  begins: (block, size) => `Das Top beginnt mit einem einzigen Block: ${block}, ${size}.`,
  diagonalRow: (row, parts, press, upper, lower) =>
    `${row}: ${parts}.${press === "" ? "" : ` ${press}`} Etwa ${upper} an der oberen, ${lower} an der unteren Kante.`,
  lines: (rows, line) => capital(linesTold(rows, line)),
  centre: "Zusammennähen",
  setTriangles: (sides, corners) => `Seitendreiecke kommen aus ${sides}, Eckdreiecke aus ${corners}.`,
  triangleUp: (fabric) =>
    `Für jeden Platz das Dreieck nehmen, dessen Druck dann aufrecht steht (${fabric}): vor dem Nähen auslegen.`,
};
