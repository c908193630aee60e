import type { ClothLayer, Figure } from "./cloth-layer.ts";

/** One picture of a step before it has its number. */
export interface PanelDraft {
  says: string;
  figures: Figure[];
  /** Columns of the page it takes; 1 where it is not told. */
  columns?: 1 | 2 | 3;
  /**
   * Cloth in a pile of many strips: no strip of this height in ticks may be drawn too low to hold its letter, and
   * the width need not keep to scale.
   */
  lowest?: number;
}

/** One picture of a step. */
export interface Panel extends PanelDraft {
  /** Number of the step, with a letter where it has several pictures; empty for what it is now. */
  number: string;
}

/** A unit as it comes off the needle, standing as at turn 0; the raw unit is from 0, 0 to its raw size. */
export interface Made {
  layers: ClothLayer[];
}

/** Pictures of one way of making a unit, under a heading where there are several. */
export interface PanelGroup {
  heading: string;
  panels: Panel[];
}
