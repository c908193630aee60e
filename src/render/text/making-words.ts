import type { Pressing, QuiltingThread, RowPressing } from "../../making/types.ts";

/** Every word the making instructions use besides those of the cutting. Sizes arrive already printed. */

function list(parts: readonly (string | number)[]): string {
  if (parts.length < 3) return parts.join(" and ");
  return `${parts.slice(0, -1).join(", ")} and ${parts[parts.length - 1]}`;
}

function counted(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}

const TOWARD: Record<Exclude<RowPressing["press"], null>, string> = {
  left: "to the left",
  right: "to the right",
  up: "upwards",
  down: "downwards",
  sashes: "towards the sashes",
  "plain blocks": "towards the plain blocks",
};

const PLACED: Record<Pressing["placed"], string> = {
  "everywhere alike": "everywhere alike",
  "every second column": "in every second column, from the second",
  "every second row": "in every second row, from the second",
  chequered: "on every other place, like the dark squares of a chequerboard",
  "blocks turned on their side": "wherever the block lies on its side",
};

const BY: Record<QuiltingThread["by"], string> = {
  hand: "by hand",
  machine: "by machine",
  "long-arm": "on a frame",
};

const LINE: Record<Pressing["lines"], string> = { rows: "row", columns: "column" };

/** Rows on point end in setting triangles, which count as plain. */
function towards(press: Exclude<RowPressing["press"], null>, diagonal: boolean): string {
  return diagonal && press === "plain blocks" ? "towards the plain blocks and triangles" : TOWARD[press];
}

/** Numbers in a row told as `1 to 7`, others listed. */
function numbers(found: readonly number[]): string {
  const [first = 0] = found;
  const last = found.at(-1) ?? 0;
  return found.length > 2 && found.every((each, i) => each === first + i)
    ? `${first} to ${last}`
    : list(found);
}

export const makingWords = {
  title: (name: string) => `${name}: sewing`,
  cautions: [
    "Keep fingers clear of the needle; take the foot off the pedal before you reach under it.",
    "An iron burns: set it back on its heel, press away from your hand, and switch it off when you leave.",
  ],
  cautionsTitle: "With needle and iron",
  estimates: "Lengths and amounts are estimates: sew one of each, measure it, and go on when it is right.",
  seam: (seam: string) => `Seam allowance ${seam}. Sizes are as sewn, seam allowance included.`,
  total: (length: string, seams: number) =>
    `About ${length} of piecing seams, ${counted(seams, "seam")} in all.`,
  /** A rate in thousandths, to one decimal: the rule is no finer. */
  times: (thousandths: number) => `about ${Math.round(thousandths / 100) / 10}`,
  thread: (length: string, perSeam: string, percent: number) =>
    `About ${length} of thread for piecing, needle and bobbin together: ${perSeam} times the seams (two layers of ` +
    `quilting cotton, 2 mm stitches) and ${percent} percent more for ends and breaks.`,
  unitsTitle: "Units",
  blockTitle: (names: string) => `Block ${names}`,
  block: (name: string, count: number) => `${name} (make ${count})`,
  rowsTitle: "Rows and top",
  join: (makes: string, parts: string, seams: number, length: string, size: string) =>
    `${makes}: ${parts}; ${seams === 1 ? "1 seam" : `${seams} seams`} ${length} long; measures ${size}`,
  sameRows: (rows: readonly string[], line: "row" | "column") =>
    `${line}${rows.length === 1 ? "" : "s"} ${list(rows)}`,
  pressTitle: "Pressing",
  pressRows: (
    rows: readonly number[],
    press: Exclude<RowPressing["press"], null>,
    lines: Pressing["lines"],
    diagonal: boolean,
  ) => `${LINE[lines]}${rows.length === 1 ? "" : "s"} ${list(rows)} ${towards(press, diagonal)}`,
  pressEvery: (press: Exclude<RowPressing["press"], null>, lines: Pressing["lines"], diagonal: boolean) =>
    `every ${LINE[lines]} ${towards(press, diagonal)}`,
  press: (parts: readonly string[], diagonal: boolean) =>
    `Seams between the blocks${diagonal ? ", in diagonal rows" : ""}: press ${list(parts)}.`,
  asDrawn: (rows: readonly number[], lines: Pressing["lines"]) =>
    `In ${LINE[lines]}${rows.length === 1 ? "" : "s"} ${list(rows)} press each seam as the pressing map shows.`,
  inBlock: (row: string, press: string) => `${row} ${press}`,
  toward: TOWARD,
  blockPress: (name: string, parts: readonly string[]) => `${name}: press ${list(parts)}.`,
  nestAll: (junctions: number) => `All ${counted(junctions, "place")} where seams meet nest.`,
  noJunctions: "No seams meet across a joining seam.",
  nestSome: (junctions: number, open: number, proven: boolean) =>
    `Of ${counted(junctions, "place")} where seams meet, ${open} ${open === 1 ? "does" : "do"} not nest${
      proven ? "; fewer is not possible with the blocks pressed so (proved)" : ""
    }. Press one of the two seams open there:`,
  openAt: (x: string, y: string) => `${x} from the left, ${y} from the top`,
  more: (count: number) => `and ${count} more, ringed in the pressing map`,
  variants: (placed: Pressing["placed"], alike: number) =>
    `Press the blocks in two ways, A and B, as the pressing map shows: B ${PLACED[placed]}. ` +
    `Pressed all alike, ${counted(alike, "place")} would not nest.`,
  bulk: (most: number, atMost: number, places: number, proven: boolean) =>
    `Where seams meet, at most ${most} layers of cloth lie on one another (in ${atMost} of ${counted(places, "place")}, slanted seams ` +
    `counted to their worse side); ${
      proven
        ? "no pressing that nests as well is thinner on the whole (proved)."
        : "the thinnest pressing found that nests as well."
    }`,
  thinEnough: (limit: number) => `That is within ${limit}, the most wanted (\`most-layers\` in the file).`,
  tooThick: (limit: number) =>
    `More than ${limit} layers, the most wanted (\`most-layers\` in the file). There press the seam sewn last open, for an inch ` +
    "or two to both sides, or cut off the points within the seam allowances:",
  thickAt: (x: string, y: string, layers: number, opened: number) =>
    `${layers} layers ${x} from the left, ${y} from the top; ${opened} with the seam open`,
  moreThick: (count: number) => `and ${counted(count, "place")} more, with a dot in the pressing map`,
  pinTitle: (lines: Pressing["lines"]) =>
    `Long seams: pin or tack the places where seams meet first, from the middle out, then between them; places are counted ${
      lines === "rows" ? "from the left" : "from the top"
    }.`,
  pinSeam: (
    rows: readonly number[],
    count: number,
    order: readonly (readonly number[])[],
    onwards: boolean,
    lines: Pressing["lines"],
  ) =>
    `${lines === "rows" ? "Below row" : "Right of column"}${rows.length === 1 ? "" : "s"} ${numbers(rows)}: ${counted(count, "place")}; first ${order
      .map((round) => list(round))
      .join(", then ")}${onwards ? ", then outwards, left and right by turns" : ""}.`,
  before:
    "What the pressing map shows inside a unit comes before what the unit's own steps say about pressing.",
  partial: (name: string, divides: readonly string[]) =>
    `Block ${name} cannot be sewn in straight seams alone.${
      divides.length === 0 ? "" : ` To sew straight seams only, divide ${divides.join(", and ")}.`
    }`,
  partialGeneric: "Sew its first seam only half-way, go round, and close the first seam last.",
  partialFirst: (side: string, from: string) =>
    `Sew the ${side} unit to the middle one, from the ${from} corner only half-way along; press it away from the middle`,
  partialNext: (side: string) => `Sew on the ${side} unit along its whole side; press away from the middle`,
  partialClose: (side: string) => `Close the first seam: sew on the rest of the ${side} unit`,
  divide: (unit: string, column: number, row: number, at: string, upright: boolean) =>
    `the ${unit} in column ${column}, line ${row} in two, ${at} from its ${upright ? "left" : "upper"} edge`,
  whorlParts: (name: string, count: number, units: readonly string[]) =>
    `${name} (make ${count}), its units line by line from the upper left: ${units.join(", ")}.`,
  towardPlain: "Press all seams towards the plain blocks and triangles.",
  diagonalTitle: "Diagonal rows and top",
  diagonalAbout: (high: string) =>
    `The rows run from the upper left to the lower right; row 1 is at the upper right corner. Pieces are named from the left. Every row is ${high} high, and so long are its seams.`,
  triangles:
    "Side triangles: the long edge belongs to the edge of the quilt. Match the square corner to the block's corner; the sharp point " +
    "reaches beyond it and is trimmed off once the seam is pressed.",
  sideTriangle: "side triangle",
  corner: "(corner last)",
  diagonalRow: (row: number, parts: string, upper: string, lower: string) =>
    `row ${row}: ${parts}; about ${upper} along its upper edge, ${lower} along its lower`,
  diagonalJoin: (rows: number) => {
    const half = Math.floor(rows / 2);
    const order =
      rows < 4
        ? `Join rows 1 to ${rows}, one to the next`
        : `Join rows 1 to ${half} one to the next, and rows ${half + 1} to ${rows}; then the two halves, so that the longest seam comes last`;
    return `${order}. Match the seams and let the points of the triangles reach beyond.`;
  },
  diagonalCorners:
    "Add the four corner triangles last: fold the long edge in half and match the fold to the middle of the block's edge.",
  diagonalSquare: (size: string, seam: string) =>
    `Square the top: cut off only what lies more than ${seam} outside the points of the blocks; it measures ${size}`,
  trimTitle: "Trimming and squaring",
  trimUnits: (units: readonly string[]) => `Trimmed once sewn: ${units.join("; ")}.`,
  trimUnit: (text: string, size: string) => `${text}, to ${size}`,
  neaten: (units: readonly string[]) =>
    `Not trimmed: ${units.join("; ")}. Neaten their edges: cut off threads and the tips of seams, no more.`,
  squareBlock: (blocks: readonly string[], mark: string) =>
    `Measure every block: ${blocks.join("; ")}. One that is up to ${mark} larger is trimmed alike on all four sides; one that is ` +
    "smaller is not trimmed: press it again, or sew its seams with a little less allowance.",
  squareBlockSize: (name: string, size: string) => `${name} ${size}`,
  keepPoints: (seam: string) => `Never cut nearer than ${seam} to a point: the next seam needs it.`,
  squareTop: (size: string, diagonal: string) =>
    `The finished top: ${size} through its middle, ${diagonal} from corner to corner both ways; where these two differ, pull the ` +
    "shorter one while you press.",
  quilting: (by: QuiltingThread["by"], lines: QuiltingThread["lines"], spacing: string, told: boolean) =>
    `Quilting ${BY[by]}, lines ${spacing} apart ${lines === "crossed" ? "both ways" : "one way"}${
      told ? "" : " (assumed; `quilting:` in the file says how you do it)"
    }`,
  quiltingThread: (line: string, stitched: string, length: string, rule: string) =>
    `${line}: about ${stitched} of lines and ${length} of thread, ${rule}.`,
  quiltingRule: (by: QuiltingThread["by"], perLine: string, percent: number) =>
    `${by === "hand" ? "" : "needle and bobbin together, "}${perLine} times the lines (top, low wadding and backing, ${
      by === "hand" ? "8 stitches to the inch" : "2.5 mm stitches"
    }) and ${percent} percent more`,
} as const;
