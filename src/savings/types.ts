import type { BorderName } from "../diagnostics/purposes.ts";
import type { Ticks } from "../length/types.ts";

/** What one fabric comes to: enough to set two plans side by side. */
export interface Bought {
  fabric: string;
  /** Length to ask for, in ticks; null where nothing comes off a bolt. */
  length: Ticks | null;
  /** Hundredths of the currency; null where the file gives no price. */
  cost: number | null;
}

/** What would be changed; what it is called is for the words to say. */
export type Change =
  | { kind: "style"; style: "strips-3" }
  | { kind: "method"; unit: string; method: string }
  | { kind: "print-free"; fabric: string }
  | { kind: "blocks-turned"; block: string; turn: number }
  | { kind: "border-width"; border: BorderName; fabric: string; width: string }
  | { kind: "border-cut"; border: BorderName; fabric: string; cut: "strips" | "lengthwise" }
  | { kind: "border-join"; border: BorderName; fabric: string }
  | { kind: "border-corners"; border: BorderName; fabric: string }
  | { kind: "sash-width"; width: string }
  | { kind: "binding-join" }
  | { kind: "block-size"; size: string };

/** A change that may buy less, and the file's text with it made. */
export interface Idea {
  key: string;
  change: Change;
  text: string;
}

/** Ideas of which the first that buys less is the one to tell: the nearest width before narrower ones. */
export type Family = readonly Idea[];

/** What an idea changes in all; below zero saves. */
export interface Difference {
  /** Hundredths; null where a price is missing. */
  cost: number | null;
  /** Ticks. */
  length: Ticks;
  /** Fabrics of which another amount is bought. */
  fabrics: string[];
}
