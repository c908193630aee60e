/** Why cloth is not in a piece, in the order it is told. Every square tick bought is in a piece or under one of these. */
export const WASTE_CAUSES = [
  "shrinkage",
  "selvage",
  "straightening",
  "trimming",
  "strip-end",
  "uncut-end",
] as const;

export type WasteCause = (typeof WASTE_CAUSES)[number];
