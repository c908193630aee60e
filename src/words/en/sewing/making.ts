import type { Pressing, QuiltingThread } from "../../../making/types.ts";
import { bladeCautions, sewingCautions } from "../cautions.ts";
import { counted, list } from "../language.ts";

/** Every word the making instructions use besides those of the cutting. Sizes arrive already printed. */

const BY: Record<QuiltingThread["by"], string> = {
  hand: "by hand",
  machine: "by machine",
  "long-arm": "on a frame",
};

/** Numbers in a row told as `1 to 7`, others listed. */
function numbers(found: readonly number[]): string {
  const [first = 0] = found;
  const last = found.at(-1) ?? 0;
  return found.length > 2 && found.every((each, i) => each === first + i)
    ? `${first} to ${last}`
    : list(found);
}

export const making = {
  title: (name: string, kits: number) =>
    kits > 1 ? `${name}: sewing, for one of ${kits}` : `${name}: sewing`,
  cautions: Object.values(sewingCautions),
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
  unitsAbout:
    "Make one first, measure it, then the rest, each step for all of them before the next. Chain-piece: feed one after another " +
    "under the needle and cut them apart afterwards.",
  heads:
    "Heads are the ends of a print's figures that point up. They are told as the work lies in front of you, right side up unless " +
    "it says otherwise.",
  beforeTrimming: (seam: string, trimmed: boolean) =>
    `Measure before you cut anything off. Never cut nearer than ${seam} to a point: the next seam needs it. ` +
    `${trimmed ? "Where nothing is said of trimming, neaten" : "Neaten"} the edges only: threads and the tips of seams.`,
  cutSewn: `You also cut apart what is sewn. ${[bladeCautions.pins, bladeCautions.fingers, bladeCautions.shut].join(" ")}`,
  /** The same in a book that tells the rules of the blade before. */
  cutSewnToo: "You also cut apart what is sewn: the rules for blade and ruler hold there too.",
  block: (name: string, count: number) => `${name} (make ${count})`,
  join: (makes: string, parts: string, seams: number, size: string, trim: string | null) =>
    `${makes}: ${parts}; ${counted(seams, "seam")}; it measures ${size}${
      trim === null ? "" : `; trim it to ${trim}, alike on all sides`
    }.`,
  pressTitle: "Pressing, looked at as a whole",
  nestAll: (junctions: number) => `All ${counted(junctions, "place")} where seams meet nest.`,
  noJunctions: "No seams meet across a joining seam.",
  nestSome: (junctions: number, open: number, proven: boolean) =>
    `Of ${counted(junctions, "place")} where seams meet, ${open} ${open === 1 ? "does" : "do"} not nest${
      proven ? "; fewer is not possible with the blocks pressed so (proved)" : ""
    }. Press one of the two seams open there:`,
  openAt: (x: string, y: string) => `${x} from the left, ${y} from the top`,
  more: (count: number) => `and ${count} more, ringed in the pressing map`,
  pressOverview: "Every step says how its seams are pressed; the pressing map shows all of them.",
  variants: (alike: number) =>
    `Blocks that are pressed in two ways have a number each. Pressed all alike, ${counted(alike, "place")} would not nest.`,
  bulk: (most: number, atMost: number, places: number, proven: boolean) =>
    `Where seams meet, at most ${most} layers of fabric lie on one another (in ${atMost} of ${counted(places, "place")}, slanted seams ` +
    `counted to their worse side); ${
      proven
        ? "no pressing that nests as well is thinner on the whole (proved)."
        : "the thinnest pressing found that nests as well."
    }`,
  thinEnough: (limit: number) => `That is within ${limit}, the most wanted (\`most-layers\` in the file).`,
  tooThick: (limit: number, inches: boolean) =>
    `More than ${limit} layers, the most wanted (\`most-layers\` in the file). Where it says so below, press the seam sewn last open, for ${
      inches ? "an inch or two" : "a few centimetres"
    } to both sides; anywhere you can cut off the points within the seam allowances:`,
  /** `opened` null where the place is no thinner with the seam open. */
  thickAt: (at: readonly { x: string; y: string }[], layers: number, opened: number | null) =>
    `${layers} layers (${
      opened === null ? "cut off the points, an open seam does not help" : `${opened} with the seam open`
    }), from the left and from the top: ${at.map(({ x, y }) => `${x} and ${y}`).join("; ")}`,
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
  towardTriangles: (plain: boolean) =>
    `Press all seams towards the ${plain ? "plain blocks and " : ""}triangles.`,
  diagonalTitle: "Diagonal rows and top",
  diagonalAbout: (high: string) =>
    `The rows run from the upper left to the lower right; row 1 is at the upper right corner. Pieces are named from the left. Every row is ${high} high, and so long are its seams.`,
  triangles:
    "Side triangles: the long edge belongs to the edge of the quilt. Match the square corner to the block's corner; the sharp point " +
    "reaches beyond it and is trimmed off once the seam is pressed.",
  sideTriangle: "side triangle",
  corner: "(corner last)",
  diagonalJoin: (rows: number) => {
    const half = Math.floor(rows / 2);
    const order =
      rows < 4
        ? `Join rows 1 to ${rows}, one to the next`
        : `Join rows 1 to ${half} one to the next, and rows ${half + 1} to ${rows}; then the two halves, so that the longest seam comes last`;
    return `${order}. Match the seams and let the points of the triangles reach beyond.`;
  },
  diagonalCorners:
    "Add the four corner triangles last: fold the long edge in half and match the fold to the middle of the block's edge. Press towards the triangles.",
  diagonalSquare: (size: string, seam: string) =>
    `Square the top: cut off only what lies more than ${seam} outside the points of the blocks; it measures ${size}.`,
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
