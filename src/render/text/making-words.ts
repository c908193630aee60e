import type { Pressing, RowPressing } from "../../making/types.ts";

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
  thread: (length: string, perSeam: string, percent: number) =>
    `About ${length} of thread for piecing, needle and bobbin together: ${perSeam} times the seams (two layers of ` +
    `quilting cotton, 2 mm stitches) and ${percent} percent more for ends and breaks.`,
  unitsTitle: "Units",
  unit: (units: number, text: string, method: string) => `${units} x ${text}, ${method}`,
  sets: (sets: number, perSet: number) =>
    perSet === 1
      ? "Chain-piece each step for all of them before the next."
      : `${counted(sets, "set")}, ${perSet} units from each; chain-piece each step for all sets before the next.`,
  trim: (size: string) => `Trim each to ${size}.`,
  comesOut: (size: string) => `Each measures ${size}.`,
  blockTitle: (names: string) => `Block ${names}`,
  block: (name: string, count: number) => `${name} (make ${count})`,
  rowsTitle: "Rows and top",
  bordersTitle: "Borders",
  measure:
    "Measure the top through its centre, not along its edges, and cut the border strips to that before you sew them on.",
  mitred: (name: string, seam: string) =>
    `${name}: sew each strip on from ${seam} inside the corner to ${seam} inside the next, then sew the four corners at 45 degrees and trim.`,
  join: (makes: string, parts: string, seams: number, length: string, size: string) =>
    `${makes}: ${parts}; ${seams === 1 ? "1 seam" : `${seams} seams`} ${length} long; measures ${size}`,
  sameRows: (rows: readonly string[]) => `${rows.length === 1 ? "row" : "rows"} ${list(rows)}`,
  run: (count: number, part: string) => (count === 1 ? part : `${count} x ${part}`),
  pressTitle: "Pressing",
  pressRows: (rows: readonly number[], press: Exclude<RowPressing["press"], null>) =>
    `${rows.length === 1 ? "row" : "rows"} ${list(rows)} ${TOWARD[press]}`,
  pressEvery: (press: Exclude<RowPressing["press"], null>) => `every row ${TOWARD[press]}`,
  press: (parts: readonly string[], diagonal: boolean) =>
    `Seams between the blocks${diagonal ? ", in diagonal rows" : ""}: press ${list(parts)}.`,
  asDrawn: (rows: readonly number[]) =>
    `${rows.length === 1 ? "Row" : "Rows"} ${list(rows)}: press each seam as the pressing map shows.`,
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
  pin: "On long seams pin the places where seams meet first, from the middle out.",
  before:
    "What the pressing map shows inside a unit comes before what the unit's own steps say about pressing.",
  partial: (name: string) =>
    `Block ${name} cannot be sewn in straight seams alone: sew the first seam only in part, go round, and close it last.`,
  diagonalRows:
    "Sew the blocks and setting triangles in diagonal rows, join the rows, and add the corners last.",
} as const;
