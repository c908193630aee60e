import { counted, list } from "../language.ts";

/** Every word about gridded foundation in the sewing. Sizes and counts of squares arrive already printed. */

/** Halves as makers write them. */
function halves(squares: number): string {
  const whole = Math.floor(squares);
  if (whole === squares) return String(squares);
  return whole === 0 ? "1/2" : `${whole} 1/2`;
}

/** `6 columns 18 squares wide`, or `columns 18, 10 and 18 squares wide`. */
function lines(sizes: readonly number[], one: string, way: string): string {
  const alike = sizes.every((size) => size === sizes[0]);
  if (alike) return `${counted(sizes.length, one)} ${halves(sizes[0] ?? 0)} squares ${way}`;
  return `${one}s ${list(sizes.map(halves))} squares ${way}`;
}

const SAID_WAY = {
  pieced: "made patch by patch, every seam on a printed line",
  folded: "made of finished parts laid edge to edge, the lines between them folded and sewn",
} as const;

const WAYS = {
  "0,-1": "upwards",
  "0,1": "downwards",
  "-1,0": "to the left",
  "1,0": "to the right",
  "-1,-1": "up to the left",
  "1,-1": "up to the right",
  "-1,1": "down to the left",
  "1,1": "down to the right",
} as const;

const ORDINALS = ["first", "second", "third", "fourth", "fifth"];

const HEADS = {
  0: "heads up",
  90: "heads to the right",
  180: "heads down",
  270: "heads to the left",
} as const;

const TURNED = {
  0: "not turned",
  90: "turned once to the right",
  180: "turned upside down",
  270: "turned once to the left",
} as const;

/** A line of a foundation, and the patch that is sewn on along it. */
interface FoundationLine {
  number: number;
  patch: number;
  /** What the patch is cut from. */
  what: string;
  /** How the line runs on the printed squares. */
  run: string;
  /** Which way it is pressed. */
  toward: string;
  /** How far the patch must reach beyond its place, where no edge of it runs along the line; else null. */
  crease: string | null;
}

export const foundation = {
  /** How a print lies in a part, after its fabric. */
  lies: (up: number, print: "one-way" | "two-way") => {
    if (print === "two-way")
      return up % 180 === 0 ? ", its print up and down" : ", its print from side to side";
    return `, ${HEADS[up as keyof typeof HEADS] ?? "as the picture shows"}`;
  },
  forBlocks: (block: string, turns: readonly number[]) =>
    `For blocks ${block} that are ${turns.map((turn) => TURNED[turn as keyof typeof TURNED] ?? "tilted").join(" or ")} in the quilt.`,
  /** What one piece of foundation carries, by name. */
  part: (per: "unit" | "motif" | "block" | "row", letters: readonly string[]) =>
    `${per} ${letters.join("/")}`,
  title: "On the gridded foundation",
  pictures:
    "Lay these pictures beside the machine: they show every piece of foundation with its squares counted, in the order of the sewing.",
  partsTitle: "Parts to lay on the foundation",
  halves,
  squares: (across: number, down: number) => `${halves(across)} x ${halves(down)} squares`,
  lead: (way: "pieced" | "folded", grid: string, per: string) =>
    `Measure a few printed squares: ${grid} each. One piece of foundation carries one ${per}, ${SAID_WAY[way]}.`,
  cut: (count: number, fabric: string, squares: string, size: string, name: string) =>
    `Cut ${counted(count, "piece")} of ${fabric} ${squares} (${size}) on the printed lines, for ${name}.`,
  allowance: (squares: number) =>
    `${counted(squares, "square")} of each lie${squares === 1 ? "s" : ""} beyond the outermost seam line on every side: count from there.`,
  /** Foundation is cut in whole squares: what is made on it in halves lies nearer to its left and upper edge. */
  uneven: (name: string, [left, right, above, below]: readonly [number, number, number, number]) =>
    `Of ${name}, seen from the front, so much lies beyond the outermost seam line: ${halves(left)} ${left === 1 ? "square" : "squares"} at the left and ${halves(right)} at the right, ${halves(above)} above and ${halves(below)} below.`,
  cautions: (hold: "fusible" | "sew-in") =>
    hold === "fusible"
      ? "Glue melts: iron dry on a scrap first, cover bare foundation with a pressing cloth, and let the iron touch patches only."
      : "Test the iron on a scrap: some foundations shrink or melt.",
  make: (name: string, count: number, squares: string) => `${name} (make ${count}), ${squares} finished`,
  first: (what: string, hold: "fusible" | "sew-in", seam: string) =>
    `Printed side down${hold === "fusible" ? ", glue up" : ""}: lay patch 1, ${what}, right side up over its squares, at least ${seam} beyond them all round; ${
      hold === "fusible" ? "touch it with the iron so that it holds" : "pin it"
    }.`,
  each: (seam: string) =>
    `For every patch after the first: lay it on what is there, right sides together, its edge ${seam} beyond the line; turn the work over and sew on the line, from a few stitches before it to a few beyond; ` +
    `fold the foundation back and trim the seam allowance to ${seam}; fold the patch over and press.`,
  line: ({ number, patch, what, run, toward, crease }: FoundationLine) =>
    `Line ${number}: patch ${patch}, ${what}; ${run}; ${
      crease === null
        ? ""
        : `no edge of it runs along this line: lay it right side up and straight over its place, at least ${crease} beyond it all round, crease it along the line, turn it over the crease and sew in the crease; `
    }press ${toward}, towards the new patch.`,
  along: (squares: number, between: boolean) =>
    `${between ? "half-way between two printed lines (rule it first)" : "along the line"}, ${halves(squares)} ${squares === 1 ? "square" : "squares"}`,
  slanting: (across: number, down: number, between: boolean) =>
    `${between ? "from point to point, half-way between lines where the picture shows it," : "from corner to corner,"} ${halves(across)} across and ${halves(down)} down (rule it first)`,
  toward: (x: number, y: number) => WAYS[`${x},${y}` as keyof typeof WAYS],
  chain: "Sew line 1 on all of them before line 2.",
  neatenLevel:
    "Neaten the edges: cut the patches level with the edge of the foundation. Nothing is squared up or cut smaller.",
  neaten: (seam: string) =>
    `Neaten the edges: cut patches and foundation ${seam} beyond the outermost seam line, never on it. Nothing is squared up or cut smaller.`,
  join: (seam: string) =>
    `Join what is made on the outermost printed seam lines, which lie ${seam} from the neatened edges: pin through the lines at the corners first.`,
  notSquared: (blocks: readonly string[]) =>
    `Made on foundation, not squared up: ${blocks.join("; ")}. The printed lines have kept them true; neaten edges only.`,
  settled:
    "Seams on the foundation are pressed towards the patch added last; the others are chosen round them.",
  leftIn:
    "The foundation stays in: it is one layer more at every seam. Layers counted under pressing leave it out. Once two parts are joined, cut it out of their seam allowance where it is thick.",
  shortStitches: "Sew with short stitches, about 1.5 mm (18 to the inch), so that it tears along them later.",
  tornAway:
    "Tear the foundation away once the top is sewn round, along the stitching and never across a seam, holding the stitches with your thumb.",
  tornPressing: "Press before you tear it away: bias edges are held only as long as it is there.",
  lay: (columns: readonly number[], rows: readonly number[]) =>
    `Printed side down, lay the parts on it edge to edge: ${lines(columns, "column", "wide")}, ${lines(rows, "row", "high")}.`,
  laid: (hold: "fusible" | "sew-in") =>
    hold === "fusible"
      ? "Check the picture, then fuse them all."
      : "Check the picture, then tack every part along its middle.",
  upright: (lines: number, allowance: number, from: string, length: string) =>
    `${counted(lines, "upright line")} first: fold the foundation on the line between two columns, right sides together, and sew on the ${ORDINALS[allowance - 1] ?? `${allowance}th`} printed line beside the fold (${counted(allowance, "square")}, ${from}, from it), ${length} long.`,
  snip: "Where level lines will cross them, snip the allowances of these seams to the stitching, so that each row can be pressed its own way.",
  level: (lines: number, length: string) =>
    `Then ${counted(lines, "level line")}: fold between two rows in the same way and sew, ${length} long.`,
  pins: (order: readonly number[]) =>
    order.length === 1
      ? "Pin the crossing first, seam against seam."
      : `Pin the crossings first, seam against seam, the middle one before the others: ${order.join(", ")} from the left.`,
  tackFirst:
    "A crossing that slips: tack it by hand, or sew a few stitches over it and look, before the whole line.",
  folded: (squares: string, size: string) =>
    `It measures ${size}, ${squares}: neaten threads only, nothing is squared up.`,
  bulk: "Every fold is caught in its seam: press such a seam open after cutting the fold on its line, where it is thick.",
} as const;
