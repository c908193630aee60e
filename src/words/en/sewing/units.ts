import type { PatchPart } from "../../../cutlist/record/unit-record.ts";
import type { Press } from "../../../making/types.ts";
import type { Corner, Eighth } from "../../../quilt/units/types.ts";
import { list } from "../language.ts";
import { partName } from "../quilt/unit-names.ts";

/**
 * Every word the steps of a unit use. Sizes arrive already printed. Bags are told as `A (hens)`: a letter and its
 * fabric. A print's heads are the ends of its figures that point up.
 */

/** A heap with how many belong to it; 0 where a table says it. */
const counted = (name: string, count: number): string => (count === 0 ? name : `${name} (${count})`);

/** Where the heads of a print point. */
const HEADS: Readonly<Record<Eighth, string>> = {
  0: "heads up",
  1: "heads to the upper right",
  2: "heads to the right",
  3: "heads to the lower right",
  4: "heads down",
  5: "heads to the lower left",
  6: "heads to the left",
  7: "heads to the upper left",
};

/** The same for a print that reads alike from both ends. */
const RUNS: readonly string[] = ["print upright", "print leaning right", "print level", "print leaning left"];

const CORNERS: Readonly<Record<Corner, string>> = {
  "top-left": "upper left",
  "top-right": "upper right",
  "bottom-right": "lower right",
  "bottom-left": "lower left",
};

/** From corner to corner, as drawn. */
const LINES = {
  rising: "from the lower left to the upper right corner",
  falling: "from the upper left to the lower right corner",
} as const;

/** What of a unit shows which way it stands, where something does. */
const POINTS: Readonly<Record<string, string>> = { "flying geese": "the goose" };

const TURNED = ["up", "right", "down", "left"] as const;
const AS_DRAWN = [
  "as drawn",
  "turned a quarter to the right",
  "turned half round",
  "turned a quarter to the left",
] as const;

const PRESSED: Readonly<Record<Press, string>> = {
  left: "to the left",
  right: "to the right",
  up: "upwards",
  down: "downwards",
};

/** Presses of seams in order: all one way, away from the middle, towards it, or each by itself. */
function pressedTold(presses: readonly Press[]): string {
  const [first] = presses;
  if (first === undefined) return "";
  if (presses.every((press) => press === first)) return PRESSED[first];
  const half = presses.length / 2;
  const [before, after] = [presses.slice(0, half), presses.slice(half)];
  const split = before.every((press) => press === before[0]) && after.every((press) => press === after[0]);
  if (Number.isInteger(half) && split) return first === "left" || first === "up" ? "outwards" : "inwards";
  return presses.map((press) => PRESSED[press]).join(", ");
}

const PARTS: Readonly<Record<Exclude<PatchPart, "whole" | "template">, string>> = {
  "top-left": "right angle upper left",
  "top-right": "right angle upper right",
  "bottom-right": "right angle lower right",
  "bottom-left": "right angle lower left",
  top: "long side above",
  right: "long side at the right",
  bottom: "long side below",
  left: "long side at the left",
};

/** Segments that are cut from the sets of one kind. */
interface SegmentsCut {
  count: number;
  width: string;
  /** From each full set, and from the short one; 0 where there is none. */
  perSet: number;
  fromLast: number;
  /** How many full sets. */
  full: number;
  /** The number the set is called by, and how many of its segments a unit takes. */
  number: number;
  used: number;
}

export const units = {
  /** Units that are sewn alike, in a list of all that is sewn. */
  inList: (names: readonly string[], unit: string) => `${list(names)}: ${unit}`,
  heapOf: (letter: string) => `heap ${letter}`,
  about: (said: string) => `about ${said}`,
  bag: (letter: string, fabric: string) => `${letter} (${fabric})`,
  heads: (up: Eighth, twoWay: boolean) => (twoWay ? (RUNS[up % 4] ?? "") : HEADS[up]),
  line: LINES,
  /** How a plain rectangle lies while it is cut: `line` alone would do for the mirror image too. */
  standing: (line: string, upright: boolean) =>
    `${line} as it lies right side up, its long sides ${upright ? "upright" : "level"}`,
  corner: (corner: Corner) => CORNERS[corner],
  title: (name: string, text: string, method: string, units: number) =>
    `${name}: ${text}, ${method}: make ${units}`,
  /** Units alike but for fabric, told once. */
  groupTitle: (names: readonly string[], text: string, method: string, units: number) =>
    `${list(names)}: ${text}, ${method}: make ${units} in all`,
  group: {
    unit: "Unit",
    make: "Make",
    sets: "Sets",
    over: "Over",
    heap: (heap: string) => `In ${heap}`,
    heapOf: (name: string, count: number) => `${name}: ${count}`,
    /** A bag by what it is in the unit: in capitals, so that it is not taken for a place on the table. */
    role: (role: string) => role.toUpperCase(),
    roleBag: (role: string, number: number) => `${role.toUpperCase()} ${number}`,
    bag: (number: number) => `BAG ${number}`,
    alike:
      "Units that stand in a table are sewn alike: the steps call each bag by the head of its column, and their counts are for one row. Keep the units apart by name.",
    perSet: (perSet: number) => `Each set gives ${perSet} units.`,
    /** A line that goes for some units of the group only. */
    own: (names: readonly string[], line: string) => `${list(names)}: ${line}`,
  },
  sets: (sets: number, perSet: number, spare: number) => {
    const over = spare === 0 ? "" : `; ${spare} ${spare === 1 ? "is" : "are"} over`;
    if (perSet === 1) return over === "" ? "" : `Make ${sets}${over}.`;
    const each =
      sets === 1 ? `Make 1 set: ${perSet} units from it` : `Make ${sets} sets: ${perSet} units from each`;
    return `${each}${over}.`;
  },
  batch: (sets: number) => `For ${sets} ${sets === 1 ? "set" : "sets"}:`,
  take: (bags: readonly { count: number; bag: string }[], of: "set" | "unit") =>
    `For each ${of} take ${list(bags.map(({ count, bag }) => `${count} ${bag}`))}.`,
  lay: (over: string, under: string, underHeads: string, overHeads: string) =>
    `Lay ${over} on ${under}, right sides together, edges even${
      underHeads === "" ? "" : `; below, ${underHeads}`
    }${overHeads === "" ? "" : `; above, seen on its wrong side, ${overHeads}`}.`,
  drawLine: (bag: string, line: keyof typeof LINES) =>
    `As it lies, rule a line on the wrong side of ${bag} ${LINES[line]}.`,
  drawBoth: (bag: string) => `Rule both diagonals on the wrong side of ${bag}.`,
  sewBoth: (seam: string) => `Sew ${seam} from the line on both sides of it. Cut on the line.`,
  sewBothDiagonals: (seam: string) =>
    `Sew ${seam} from each line on both sides of it. Cut apart down the middle both ways, then on both lines.`,
  sewEdges: (seam: string) =>
    `Sew ${seam} inside the edge all the way round. Cut on both diagonals without moving the layers.`,
  biasEdges: "All outer edges are bias now: press without pulling.",
  crossPair: (seam: string) =>
    `On the wrong side of one of the two, rule the other diagonal, across its seam. Lay the two on each other, unlike fabrics facing, seams nested. Sew ${seam} from the line on both sides of it. Cut on the line.`,
  ruleSmall: (bag: string) => `On the wrong side of each ${bag} rule a line from corner to corner.`,
  firstSmall: (small: string, large: string, largeHeads: string, seam: string) =>
    `Lay two ${small} on the upper left and lower right corners of ${large}${
      largeHeads === "" ? "" : ` (${largeHeads})`
    }, right sides together, edges even, the lines making one line; they overlap a little in the middle. Sew ${seam} from the line on both sides of it. Cut on the line: two hearts.`,
  secondSmall: (small: string, seam: string) =>
    `On each heart lay one ${small} on the corner of the large piece that is still bare, its line running to the dip of the heart. Sew ${seam} from the line on both sides of it. Cut on the line: four geese from each set.`,
  smallHeads: (corners: readonly { corner: Corner; heads: string }[]) =>
    `The small squares, seen on the wrong side: ${corners
      .map(({ corner, heads }) => `${CORNERS[corner]} ${heads}`)
      .join(", ")}.`,
  flipBase: (base: string, heads: string) =>
    `Lay ${base} in front of you${heads === "" ? "" : `, ${heads}`}.`,
  itsSquare: "the square told",
  flipEach: (small: string, seam: string) =>
    `On each corner named lay ${small}, right sides together, edges even; rule the line told on its wrong side and sew on it. Cut ${seam} outside the stitching, fold the triangle out over the corner and press it outwards. One corner after another:`,
  flipCorner: (corner: Corner, small: string, line: keyof typeof LINES, heads: string) =>
    `${CORNERS[corner]}${small === "" ? "" : `, ${small}`}: ${LINES[line]}${
      heads === "" ? "" : `, the piece lying, seen on its wrong side, ${heads}`
    }`,
  stripSet: (number: number, strips: readonly string[]) =>
    `Set ${number}, strips from the top: ${strips.join(", ")}. Sew them together along their length, every other seam from the other end.`,
  setCount: (full: number, length: string, short: number, shortLength: string, height: string) => {
    const sets = [
      ...(full > 0 ? [`${full} ${full === 1 ? "set" : "sets"} of strips ${length} long`] : []),
      ...(short > 0 ? [`1 short set of strips ${shortLength} long`] : []),
    ];
    return `Make ${list(sets)}; each is ${height} high.`;
  },
  longerStrips: (bag: string, length: string) =>
    `The strips of ${bag} are longer than that: cut each to ${length} before you sew it, and keep the rest.`,
  segments: ({ count, width, perSet, fromLast, full, number, used }: SegmentsCut) => {
    const from = [
      ...(full > 0
        ? [`${perSet} from ${full === 1 ? "the" : "each"} ${fromLast > 0 ? "long " : ""}set`]
        : []),
      ...(fromLast > 0 ? [`${fromLast} from the short one`] : []),
    ];
    return `Square one end of each set, then cut ${count} ${count === 1 ? "segment" : "segments"} ${width} wide (${list(from)}): segments of set ${number}, ${used} for each unit.`;
  },
  diamonds: (bag: string, count: number, apart: string) =>
    `Trim one end of each ${bag} at 45 degrees: lay the 45-degree line of the ruler on the strip's edge. Cut on, parallel to that end and ${apart} apart, measured square to the cuts: ${count} diamonds.`,
  triangles60: (bag: string, count: number) =>
    `Cut each ${bag} into triangles, the 60-degree line of the ruler on the strip's edge, to and fro, each cut beginning where the one before ended: ${count} triangles.`,
  wideShapes:
    "Their width is rounded up to the ruler's marks, so their edges lie further than a seam allowance from the seam lines: rule the seam lines on the wrong side from the template, and sew on them.",
  join: (
    parts: readonly string[],
    way: "across" | "down" | "edge",
    makes: string,
    setIn: boolean,
    corners: readonly { across: string; down: string }[],
  ) => {
    const order = way === "across" ? "side by side, from the left" : "one below another, from the top";
    const at = corners.map(({ across, down }) => `${across} from its left and ${down} from its top`);
    const where = at.length === 0 ? "" : ` (in the finished unit ${list(at)})`;
    const how = setIn
      ? ` The seam goes round a corner${where}: sew to a seam allowance from the corner, turn the work there and go on.`
      : "";
    const made = makes === "" ? "" : ` This makes ${makes}.`;
    return way === "edge"
      ? `Sew together on the edge they share: ${parts.join("; ")}.${how}${made}`
      : `Sew together ${list(parts)}, ${order}.${how}${made}`;
  },
  segment: (set: number, turned: boolean) => `a segment of set ${set}${turned ? " turned half round" : ""}`,
  patch: (letters: string, fabric: string, heads: string) => {
    const said = [fabric, heads].filter((each) => each !== "");
    return said.length === 0 ? letters : `${letters} (${said.join(", ")})`;
  },
  /** Halves and quarters of a print are told apart by how they lay when they were cut. */
  patchFrom: (
    sources: readonly { letter: string; part: PatchPart; count: number }[],
    fabric: string,
    heads: string,
    minded: boolean,
  ) => {
    const letters = [...new Set(sources.map(({ letter }) => letter))].join("/");
    const shapes = sources.flatMap(({ part }) => (part === "whole" || part === "template" ? [] : [part]));
    const piece = shapes.length === 0 ? "" : shapes[0]?.includes("-") ? "a half of " : "a quarter of ";
    const ways = minded
      ? sources.flatMap(({ letter, part, count }) =>
          part === "whole" || part === "template"
            ? []
            : [`${sources.length > 1 ? `for ${count} of them ${letter}, ` : ""}${PARTS[part]} as it was cut`],
        )
      : [];
    const how = [...ways, ...(heads === "" ? [] : [shapes.length === 0 ? heads : `laid ${heads}`])];
    const said = [fabric, ...how].filter((each) => each !== "");
    return said.length === 0 ? `${piece}${letters}` : `${piece}${letters} (${said.join(", ")})`;
  },
  edgeByEdge: (setIn: boolean, press: string) =>
    `Sew together on the edge they share, one pair after another as listed.${
      setIn
        ? " The seam goes round a corner: sew to a seam allowance from the corner, turn the work there and go on."
        : ""
    }${press === "" ? "" : ` Every time: ${press.charAt(0).toLowerCase()}${press.slice(1)}`}`,
  edgePair: (
    parts: readonly string[],
    makes: string,
    corners: readonly { across: string; down: string }[],
  ) => {
    const at = corners.map(({ across, down }) => `${across} from its left and ${down} from its top`);
    return `${list(parts)}${makes === "" ? "" : `: ${makes}`}${at.length === 0 ? "" : `; corner, in the finished unit, ${list(at)}`}`;
  },
  begin: (a: string, b: string, way: "across" | "down" | "edge") =>
    way === "across" ? `${a} to the left of ${b}` : `${a} above ${b}`,
  added: (what: string, side: "left" | "right" | "top" | "bottom") =>
    `${what} ${{ left: "on its left", right: "on its right", top: "above it", bottom: "below it" }[side]}`,
  sized: (what: string, size: string, level: boolean) =>
    `${what}${size === "" ? "" : `: ${size}`}${level ? ", once the end that stands out is cut level" : ""}`,
  level:
    "Rounded up, one part is a little longer: lay them even at one end, sew, and cut the other end level.",
  oneByOne: (press: string) =>
    `Sew on one after another, as listed, with the size it must measure each time.${press === "" ? "" : ` Every time: ${press.charAt(0).toLowerCase()}${press.slice(1)}`}`,
  press: {
    to: (what: string) => `Press to ${what}.`,
    outside: "Press outwards.",
    "one-way": "Press all seams one way.",
    "by-turns": "Press the other way from the row before.",
    open: "Press open.",
    darker: "Press to one side, always the same.",
    all: "Press the seams all round one way.",
  },
  placesIn: (name: string, which: readonly number[]) =>
    `${which.length === 1 ? "place" : "places"} ${list(which.map(String))} in ${name}`,
  /** Places are those of this unit in the block. */
  countedSo:
    "Places are counted in the block as it lies by itself, along its rows from the upper left, only those of this unit.",
  forKinds: (count: number, kinds: readonly string[]) => `${count} of them, for ${list(kinds)}, `,
  /** Lines are sewn and pressed before they are joined. */
  insidePressed: (
    whose: string,
    lines: "rows" | "columns",
    inner: readonly (readonly Press[])[],
    between: readonly Press[],
  ) => {
    const line = lines === "rows" ? "row" : "column";
    const ways = new Map<string, number[]>();
    for (const [i, presses] of inner.entries())
      if (presses.length > 0)
        ways.set(pressedTold(presses), [...(ways.get(pressedTold(presses)) ?? []), i + 1]);
    const parts = [...ways].map(
      ([way, numbers]) => `${line}${numbers.length === 1 ? "" : "s"} ${list(numbers.map(String))} ${way}`,
    );
    const joined = pressedTold(between);
    const from = lines === "rows" ? "from the top" : "from the left";
    if (parts.length === 0)
      return `Press ${whose}so that they nest later: ${between.length === 1 ? "the seam" : "the seams"} ${joined}.`;
    return `Press ${whose}so that they nest later: before you join the ${line}s the seams in ${list(parts)}, counted ${from}; then the seams between them ${joined}.`;
  },
  measures: (size: string) => `It measures ${size}.`,
  trim: {
    diagonal: (size: string) => `Trim to ${size}, the diagonal of the ruler on the seam.`,
    cross: (size: string) => `Trim to ${size}, both seams running into the corners.`,
    point: (size: string, seam: string) =>
      `Trim to ${size}: keep ${seam} beyond the point and never cut into it.`,
    corners: (size: string) =>
      `Trim to ${size} so that the seam runs through the corners of the seam lines, not of the cut edges.`,
    ends: (size: string) => `Trim both ends square: ${size}.`,
    round: (size: string) => `Trim to ${size}, alike on all sides.`,
  },
  measuresUnit: (size: string) => `Each measures ${size}; nothing is trimmed.`,
  /** Units that one set gives are told apart by how their prints lie. */
  sort: (heaps: readonly string[]) => `Sort them into heaps, each as the unit is drawn: ${heaps.join("; ")}.`,
  heapPrints: (name: string, count: number, prints: readonly { fabric: string; heads: string }[]) =>
    `${counted(name, count)} ${list(prints.map(({ fabric, heads }) => `${fabric} ${heads}`))}`,
  sortUpright: (fabrics: readonly string[], twoWay: boolean, heaps: readonly string[]) =>
    `Sort them into heaps: turn every unit so that ${twoWay ? `the print of ${list(fabrics)} stands upright` : `the heads of ${list(fabrics)} point up`}. Then ${heaps.join("; ")}.`,
  heapUpright: (name: string, count: number, kind: string, turn: 0 | 1 | 2 | 3) => {
    const points = POINTS[kind];
    return points === undefined
      ? `${counted(name, count)} is the unit ${AS_DRAWN[turn]}`
      : `in ${counted(name, count)} ${points} points ${TURNED[turn]}`;
  },
  heap: (name: string, count: number) => (count === 0 ? `For ${name}:` : `${name} (make ${count}):`),
  shareOf: (share: "whole" | "half" | "quarter", bag: string) =>
    share === "whole" ? bag : `a ${share} of ${bag}`,
  over: (count: number, parts: 2 | 4 | 1, bag: string) => {
    const what = parts === 2 ? (count === 1 ? "half" : "halves") : count === 1 ? "quarter" : "quarters";
    return `${count} ${what} of ${bag}`;
  },
  allOver: (bags: readonly string[]) => `Over when all units are sewn: ${bags.join("; ")}.`,
  ownPieces: (count: number, bag: string) => `${count} of ${bag}`,
  allOwn: (bags: readonly string[]) =>
    `Sewn by no step here, as the file lists them by themselves: ${bags.join("; ")}.`,
  spot: (spot: string, bag: string) => `${partName(spot)}, ${bag}`,
};
