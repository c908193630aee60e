import type { Ticks } from "../length/types.ts";

/* From the finished top to the quilt, and the thread it takes. */

/** Thread for piecing, with the rule it comes from. */
export interface ThreadEstimate {
  length: Ticks;
  /** Thread to seam, in thousandths. */
  perSeam: number;
  wastePercent: number;
}

/** Thread for quilting, with the rule it comes from. */
export interface QuiltingThread {
  by: "hand" | "machine" | "long-arm";
  lines: "parallel" | "crossed";
  spacing: Ticks;
  /** The maker said so; else what is usual was taken. */
  told: boolean;
  /** Length of all lines of quilting, and of the thread. */
  stitched: Ticks;
  length: Ticks;
  /** Thread to line, in thousandths. */
  perLine: number;
  wastePercent: number;
}

/** Wadding: its size, and the smallest packaged size that covers it. */
export interface Wadding {
  across: Ticks;
  down: Ticks;
  /** Null when it is larger than any: join two, or buy it off the roll. */
  packaged: { name: string; across: Ticks; along: Ticks } | null;
  /** Off the roll: its width, widths butted side by side, and the length to buy. */
  roll: { width: Ticks; widths: number; length: Ticks };
}

/** Backing: panels side by side, the seams as far from both edges as can be. */
export interface Backing {
  fabric: string;
  across: Ticks;
  down: Ticks;
  panels: number;
  /** Of each panel before sewing, across and along the cloth. */
  panel: { across: Ticks; along: Ticks };
  /** Direction of the seams in the quilt. */
  seams: "vertical" | "horizontal";
  /** Where the seams lie when trimmed evenly, from the left (or the top) edge of the backing. */
  seamAt: Ticks[];
  /** Of two panels, one cut in half along its length and sewn to both sides of the other; null: not wide enough. */
  halvedAt: Ticks[] | null;
  /** The print has a direction, which all panels share. */
  directional: boolean;
  /** It lies on its side: the seams asked for go against it. */
  sideways: boolean;
  /** Beyond the quilt on each side. */
  overhang: Ticks;
}

export interface Binding {
  fabric: string;
  cut: "straight" | "bias";
  fold: "single" | "double";
  join: "straight" | "diagonal";
  /** Cut width. */
  width: Ticks;
  /** Length to make, corners and closing included, and how much of it is for those. */
  length: Ticks;
  extra: Ticks;
  /** Strips, or squares for continuous bias, and the side of such a square. */
  count: number;
  square: Ticks | null;
}

/** From the finished top to the quilt. */
export interface Finishing {
  /** Cut edge of the top, once round. */
  edge: Ticks;
  wadding: Wadding | null;
  backing: Backing | null;
  binding: Binding | null;
  /** Sizes as they are usual, of what the file does not name: a quilt has both. Null where it does. */
  unnamed: { backing: { across: Ticks; down: Ticks; overhang: Ticks } | null; wadding: Wadding | null };
  /** Cloth for a hanging sleeve, and the hem at both ends. */
  sleeve: { across: Ticks; down: Ticks; hem: Ticks };
}
