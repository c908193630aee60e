import { PRINTS_FOLLOW } from "../spec/index.ts";

/** What the up of a print stays with: the top of the quilt, of the block, of the unit. */
export type PrintFollows = "quilt" | "block" | "unit";

export function followsOf(written: unknown): PrintFollows | null {
  switch (written) {
    case "upright":
      return "quilt";
    case PRINTS_FOLLOW[1]:
      return "block";
    case PRINTS_FOLLOW[2]:
      return "unit";
    default:
      return null;
  }
}
