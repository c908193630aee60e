/** Words for what is done once the top is sewn. Sizes arrive already printed. */

function list(parts: readonly string[]): string {
  if (parts.length < 3) return parts.join(" and ");
  return `${parts.slice(0, -1).join(", ")} and ${parts[parts.length - 1]}`;
}

function counted(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}

export const finishingWords = {
  title: "Finishing",
  square:
    "Press the top, and check that its corners are square and its opposite sides alike; trim only threads.",
  backing: (panels: number, fabric: string, panel: string, size: string) =>
    panels === 1
      ? `Backing: one piece of ${fabric}, ${size}.`
      : `Backing: cut ${panels} panels of ${fabric}, ${panel} each; trim off selvages, sew them side by side and trim to ${size}.`,
  backingSeams: (seams: "vertical" | "horizontal", at: readonly string[]) =>
    seams === "vertical"
      ? `The seams run up and down the quilt, ${list(at)} from the left of the backing; press them open.`
      : `The seams run across the quilt, ${list(at)} from the top of the backing; press them open.`,
  offCentre:
    "To keep the seam out of the middle, cut one panel in half along its length and sew a half to each side of the other, where the width allows one seam more.",
  wadding: (size: string, packaged: string | null) =>
    packaged === null
      ? `Wadding: ${size}, larger than any packaged size: buy it off the roll, or butt two pieces and sew them edge to edge by hand.`
      : `Wadding: ${size}; ${packaged} covers it.`,
  packaged: (name: string, size: string) => `the packaged ${name} size (${size})`,
  layers:
    "Lay backing (right side down), wadding and top one on another, smooth them from the middle out, and tack or pin.",
  straightBinding: (count: number, width: string, join: string, length: string, fabric: string) =>
    `Binding: ${counted(count, "strip")} of ${fabric} ${width} wide${
      count === 1 ? "" : `, sewn end to end with ${counted(count - 1, `${join} join`)}`
    }, for ${length}.`,
  biasBinding: (count: number, square: string, width: string, length: string, fabric: string) =>
    `Binding: ${counted(count, "square")} of ${fabric} ${square}, cut once on the diagonal, sewn to a tube one strip out of step and cut round ${width} wide, for ${length}.`,
  bindingFold: {
    double: "Fold the binding in half along its length, right side out, and press.",
    single: "Press one long edge of the binding under by one seam allowance.",
  },
  bindingSewn: (seam: string) =>
    `Begin in the middle of a side and leave a tail; stop ${seam} from each corner and fold a mitre; join the ends with a diagonal seam.`,
  noBinding: (edge: string) => `The edge to be bound measures ${edge} once round.`,
  sleeve: (size: string, hem: string) =>
    `To hang it: a sleeve of ${size}; hem both short ends by ${hem}, sew it to a tube and stitch it to the back below the top edge.`,
  label: "Sew a label to the back: what it is, who made it, for whom, where and when.",
} as const;
