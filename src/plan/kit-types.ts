/** Kits of a class that are alike. */
export interface KitSort {
  kits: number;
  /** Size as it was asked for; empty: as drawn. */
  heading: string;
  /** Finished size, as the ruler reads. */
  finished: string;
  /** Empty: in the quilt's own fabrics. */
  colourway: string;
}

/** Strips of the bolt that fill some kits of a class and no others. */
export interface KitShare {
  /** From 1. */
  first: number;
  last: number;
  /** Numbers in cutting order, of several bolts those of the first one first. */
  strips: number[];
  /** Where several bolts are cut: for each of the strips the bolt it comes from, from 0. */
  bolts?: number[];
}
