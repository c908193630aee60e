/** Words for sewing borders on. Sizes arrive already printed. */

export const borderWords = {
  title: "Borders",
  measure: (across: string, down: string) =>
    `Measure the top through its middle, not along its edges: it should be ${across} from side to side and ${down} from ` +
    "top to bottom. Both strips of a pair are cut or trimmed to what you measure, and the edges eased to fit them.",
  pin: "Fold strip and top edge in half, pin the middles and the ends first, then the quarters, then between.",
  piecedFirst: "Sew the blocks of each pieced border end to end before it goes on.",
  sides: {
    left: "left and right",
    right: "left and right",
    top: "top and bottom",
    bottom: "top and bottom",
  },
  strips: (width: string, cut: string) => `2 strips ${width} wide and ${cut} long`,
  piecedStrips: (blocks: number, width: string, long: string) =>
    `2 rows of ${blocks} ${blocks === 1 ? "block" : "blocks"}, ${width} wide and ${long} long`,
  /** Rows that an upright print tells apart. */
  unlike: (sides: string) =>
    `; the print stands otherwise in the two rows (${sides}): lay both out as in the picture before you sew`,
  trim: (extra: string, long: string) => `; ${extra} over-long, trim to ${long} once sewn`,
  cornerstones: "; sew a corner square to both ends of each first",
  step: (name: string, where: string, what: string, over: string, corners: string, after: string) =>
    `${name}, ${where}: ${what}${over}${corners}; sew them on, press outwards; the top measures ${after}`,
  fit: (size: string) =>
    `This border makes the pieced one outside it come out: the top must measure ${size} now. Trim the border alike on ` +
    "opposite sides, or take its seams in or out, until it does.",
  mitreStrips: (name: string, width: string, sides: string, ends: string, extra: string) =>
    `${name}, mitred: 2 strips ${width} wide and ${sides} long for left and right, 2 strips ${ends} long for top and bottom ` +
    `(${extra} of it to spare); mark the middle of each strip and of each edge of the top`,
  mitreSew: (seam: string) =>
    `Pin each strip middle to middle, right sides together; begin and stop ${seam} from the corners of the top, with a few ` +
    "stitches back, so that no seam crosses another; press outwards",
  mitreFold: (seam: string) =>
    "At each corner fold the top on the diagonal, right sides together, strips lying on each other; mark a line at 45 degrees from " +
    `the last stitch to the outer edge and sew along it from the inside, ${seam} from the corner, outwards`,
  mitreTrim: (seam: string, size: string) =>
    `Open it out: when the corner lies flat and square, trim to ${seam} and press the mitre open; the top measures ${size}`,
} as const;
