import { counted, list } from "../language.ts";

/** Words for what is done once the top is sewn. Sizes arrive already printed. */

/** Squares that a binding on the bias is cut from, and what it comes to. */
interface BiasBinding {
  count: number;
  square: string;
  width: string;
  length: string;
  /** Of the length, for corners and closing. */
  extra: string;
  fabric: string;
}

export const finishing = {
  title: "Finishing",
  square: (size: string, diagonal: string) =>
    `Press the top: it measures ${size}, and ${diagonal} from corner to corner both ways; cut off threads only.`,
  backing: (panels: number, fabric: string, panel: string, size: string) =>
    panels === 1
      ? `Backing: one piece ${fabric}, ${size}.`
      : `Backing: ${panels} panels ${fabric}, ${panel} each; trim off selvages, sew them side by side and trim to ${size}.`,
  backingSeams: (seams: "vertical" | "horizontal", at: readonly string[]) =>
    seams === "vertical"
      ? `The seams run up and down the quilt, ${list(at)} from the left of the backing; press them open.`
      : `The seams run across the quilt, ${list(at)} from the top of the backing; press them open.`,
  halved: (at: readonly string[]) =>
    `To keep the seam out of the middle of the backing, do this in place of the next two steps: cut one panel in half along its length, sew a half to each side of the other and trim as told there; the seams then lie ${list(at)} from the edge.`,
  printUp:
    "The print has a direction: keep it upright on every panel, and its up towards the top of the quilt.",
  printSideways:
    "The print lies on its side behind the quilt: these seams go against it. Turn every panel the same way, its up to the right of the backing as you look at its right side.",
  reach: (overhang: string) =>
    `The backing reaches beyond the quilt by ${overhang} on each side; it is trimmed once it is quilted.`,
  wadding: (size: string, packaged: string | null, roll: string) =>
    packaged === null
      ? `Wadding: ${size}, larger than any packaged size: ${roll}.`
      : `Wadding: ${size}; ${packaged} covers it, or ${roll}.`,
  roll: (width: string, widths: number, length: string) =>
    widths === 1
      ? `${length} off a roll ${width} wide`
      : `${length} off a roll ${width} wide, in ${widths} lengths laid edge to edge and joined by hand with a wide zigzag stitch, not overlapped`,
  packaged: (name: string, size: string) => `the packaged ${name} size (${size})`,
  anyBacking: (size: string, overhang: string) =>
    `Backing: ${size} or larger, ${overhang} beyond the quilt on each side. The file names no fabric for it: it is not in the plan.`,
  anyWadding: (size: string, packaged: string | null, roll: string) =>
    `Wadding: ${size} or larger (${packaged === null ? roll : `${packaged}, or ${roll}`}). The file does not name it.`,
  layers:
    "Press the backing. Lay it right side down, the wadding on it, then the top in the middle, right side up. Smooth each from the " +
    "middle out, and tack or pin about a hand apart; no pin stays in the way of the needle.",
  quilt: "Quilt it from the middle out. Then trim backing and wadding level with the top, corners square.",
  straightBinding: (count: number, width: string, length: string, extra: string, fabric: string) =>
    `Binding: ${counted(count, "strip")} ${fabric}, ${width} wide, for ${length}, of which ${extra} are for the corners and the closing.`,
  join: {
    diagonal: (joins: number, width: string) =>
      `Join the strips with ${counted(joins, "diagonal join")}: lay two ends across each other at right angles, right sides together, sew from corner to corner of the square they share, trim to the seam allowance and press open; each takes ${width}.`,
    straight: (joins: number, width: string) =>
      `Join the strips end to end with ${counted(joins, "straight join")}, right sides together, and press open; each takes ${width}.`,
  },
  biasBinding: ({ count, square, width, length, extra, fabric }: BiasBinding) =>
    `Binding: ${counted(count, "square")} ${fabric}, ${square}, for ${length} of bias ${width} wide, of which ${extra} are for the corners and the closing.`,
  biasTube: (width: string) =>
    `Cut the square on one diagonal; sew the two triangles together along two straight edges, right sides together, to a slanting piece, and press open. Rule lines ${width} apart along its bias edges, sew the other straight edges to a tube with the lines one strip out of step, and cut along the line, round and round.`,
  bindingFold: {
    double: "Fold the binding in half along its length, right side out, and press.",
    single: "Press one long edge of the binding under by one seam allowance.",
  },
  bindingOn: (fold: "single" | "double", seam: string) =>
    `Begin half way along a side, on the front of the quilt, with a tail of a hand's length left loose. Lay the ${
      fold === "double" ? "two raw edges" : "edge that is not pressed under, right sides together,"
    } level with the edge of the quilt and sew ${seam} in.`,
  bindingCorner: (seam: string) =>
    `At each corner stop ${seam} before the edge, sew a stitch back and take it out. Fold the strip straight up, so that the fold ` +
    "slants at 45 degrees, then straight down along the next side, its fold level with the edge just left. Begin again at that edge.",
  bindingEnds: (join: "straight" | "diagonal") =>
    `A hand's length before the beginning, stop. Join the two tails ${
      join === "diagonal" ? "slantwise as the strips were joined" : "straight"
    }, just long enough to lie flat, trim, press open, and sew the gap.`,
  bindingBack: (fold: "single" | "double") =>
    `Fold the binding over to the back so that its ${
      fold === "double" ? "fold" : "pressed edge"
    } just covers the stitches, and sew it down by hand; fold each corner the other way from the front.`,
  noBinding: (edge: string) =>
    `The edge to be bound measures ${edge} once round. The file names no binding: it is not in the plan.`,
  sleeve: (size: string, hem: string) =>
    `To hang it: a sleeve of ${size}; hem both short ends by ${hem}, sew it to a tube and stitch it to the back below the top edge.`,
  bag: (letters: string, fabric: string) => (letters === "" ? `of ${fabric}` : `${letters} (${fabric})`),
  off: "Switch the iron off.",
  label: "Sew a label to the back: what it is, who made it, for whom, where and when.",
} as const;
