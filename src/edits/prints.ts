/** What the up of a print stays with: the top of the quilt, of the block, of the unit. */
export type PrintFollows = "quilt" | "block" | "unit";

export function followsOf(written: unknown): PrintFollows | null {
  switch (written) {
    case "upright":
      return "quilt";
    case "with block":
      return "block";
    case "with unit":
      return "unit";
    default:
      return null;
  }
}
