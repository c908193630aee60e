import { counted, list } from "../language.ts";

/** Words for sewing borders on. Sizes arrive already printed. */

const ALONG = {
  left: "from top to bottom",
  right: "from top to bottom",
  top: "from side to side",
  bottom: "from side to side",
} as const;

const PAIR = {
  left: "left and right",
  right: "left and right",
  top: "top and bottom",
  bottom: "top and bottom",
} as const;

export type Side = keyof typeof ALONG;

export const borders = {
  title: "Borders",
  measure:
    "Lengths are what you measure through the middle of the top, not along its edges. What is printed is about what it should be; " +
    "where yours is more than a thumb's width off, look for a seam first.",
  pin: "Fold strip and top edge in half: pin the middles and the ends first, then the quarters, then between, and ease what is over.",
  bag: (count: number, letters: string, fabric: string) =>
    letters === ""
      ? `${counted(count, "strip")} of ${fabric}`
      : `${counted(count, "strip")} ${letters} (${fabric})`,
  joined: (bag: string, joins: number, how: "straight" | "diagonal") =>
    `Sew the ${bag} end to end, ${counted(joins, how === "straight" ? "straight join" : "slanting join")}, and press the joins open. Do not cut this run yet.`,
  oneRun: "Sides and ends come from this one run.",
  measured: (name: string, side: Side, about: string) =>
    `${name}, ${PAIR[side]}: measure the top ${ALONG[side]} through its middle (about ${about}).`,
  cutFromRun: (bag: string) => `Cut two lengths of that from the run of ${bag}.`,
  cutToThat: (bag: string) => `Cut the ${bag} to that length.`,
  markOnRun: (bag: string, cut: string) =>
    `Cut two lengths of about ${cut} from the run of ${bag}: they are over-long. Mark on both the length you measured, the same bit left over at both ends, and its middle.`,
  mark: (bag: string) =>
    `The ${bag} are over-long. Mark on both the length you measured, the same bit left over at both ends, and its middle.`,
  sewPair: (press: string) => `Match middles and ends, sew. ${press}`,
  sewMarked: (press: string) =>
    `Match middle to middle and the marks to the ends of the top, sew. ${press} Only now cut the tails level with the top.`,
  outwards: "Press outwards.",
  inwards: "Press inwards, towards the top.",
  asMap: "Press as the pressing map shows.",
  top: (size: string) => `The top measures about ${size}.`,
  cornerstones: (bag: string) =>
    `Sew a corner square${bag === "" ? "" : `, ${bag},`} to both ends of each first.`,
  pieced: (name: string, side: Side, rows: readonly { where: string; blocks: string }[], press: string) =>
    `${name}, ${PAIR[side]}: sew the blocks end to end: ${rows.map(({ where, blocks }) => `${where}, ${blocks}`).join("; ")}. ${press}`.trim(),
  rowOf: {
    left: "left, from the top",
    right: "right, from the top",
    top: "top, from the left",
    bottom: "bottom, from the left",
  },
  bothRows: (side: Side) =>
    side === "left" || side === "right"
      ? "left and right alike, from the top"
      : "top and bottom alike, from the left",
  piecedFits: (long: string) =>
    `Each row measures about ${long}: take its seams in or out until it is as long as the top.`,
  pressRow: "Press its seams one way.",
  fit: (width: string, size: string) =>
    `This border, cut ${width} wide all round, makes the pieced one outside it come out: the top must measure ${size} now. ` +
    "Trim the border alike on opposite sides until it does; where the top is smaller, let the border's seams out.",
  mitreStrips: (name: string, sides: string, ends: string, extra: string) =>
    `${name}, mitred: for left and right two strips of about ${sides}, for top and bottom two of about ${ends}; ${extra} of it is to spare. ` +
    "Measure the top through its middle both ways. Mark on every strip its middle and, about it, the length of the edge it meets; mark the middle of each edge.",
  mitreSew: (seam: string) =>
    `Pin each strip middle to middle and mark to corner, right sides together; begin and stop ${seam} from the corners of the top, with a few ` +
    "stitches back, so that no seam crosses another; press outwards.",
  mitreFold: (seam: string) =>
    "At each corner fold the top on the diagonal, right sides together, strips lying on each other; mark a line at 45 degrees from " +
    `the last stitch to the outer edge and sew along it from the inside, ${seam} from the corner, outwards.`,
  mitreTrim: (seam: string, size: string) =>
    `Open it out: when the corner lies flat and square, trim to ${seam} and press the mitre open; the top measures about ${size}.`,
  list,
} as const;
