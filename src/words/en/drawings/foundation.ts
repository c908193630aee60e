function turned(degrees: number): string {
  return degrees === 0
    ? "not turned"
    : degrees === 180
      ? "turned upside down"
      : `turned to the ${degrees === 90 ? "right" : "left"}`;
}

/** The words that stand in drawings of gridded foundation. */
export const foundation = {
  over: "Gridded foundation",
  cut: "Cut, on the lines",
  finished: "Finished",
  make: "Make",
  grid: "Printed squares",
  front: "Patches up: in the order they are added",
  back: "Printed side, mirrored: lines in sewing order",
  edge: "Dashed: the edge of the foundation and of the finished part. Arrows show where a seam is pressed.",
  laid: "Parts laid edge to edge; lines to fold numbered in sewing order",
  fold: "Full lines are folded, dashed lines beside them are sewn. Round each part lies its seam allowance. In boxes: the order of pinning.",
  places: "Where it goes, and where its top points",
  blocks: "Blocks on it, from the left, and where the top of each points",
  block: (name: string, turns: readonly number[] | null) =>
    turns === null || turns.length === 0
      ? `block ${name}`
      : `block ${name}, ${turns.map(turned).join(" or ")}`,
  fabrics: "Fabrics",
  squares: (across: string, down: string) => `${across} × ${down} squares`,
} as const;
