import type { LengthUnit, Ticks } from "../length/types.ts";

/** What decides how wide a fabric is at the mat. A `FabricSpec` is one of these. */
export interface Cloth {
  width: Ticks;
  selvage: Ticks;
  /** Tenths of a percent. */
  shrinkAcross: number;
}

/** What decides how much of a fabric must be bought. A `FabricSpec` is one of these. */
export interface SoldCloth {
  /** Tenths of a percent. */
  shrinkAlong: number;
  straighten: Ticks;
  spare: Ticks;
  sold: { unit: Exclude<LengthUnit, "mm">; step: Ticks; least: Ticks };
  /** Where a bolt ends; absent where bolts are taken to be as long as is wanted. */
  bolt?: { length: Ticks };
  price: { hundredths: number; per: "yd" | "m"; currency: string } | null;
}

/** What to ask for at the counter. */
export interface Bought {
  length: Ticks;
  /** As the shop says it: `1 3/8 yd`. */
  text: string;
  /** Needed before rounding up to what is sold: straightening, shrinkage and spare included. */
  needed: Ticks;
  /** In hundredths of the currency; null without a price. */
  cost: number | null;
  /** Where one bolt is too short: the lengths that make it, each from a bolt of its own. Absent where one will do. */
  lengths?: BoltLength[];
}

/** What is bought of one bolt. */
export interface BoltLength {
  length: Ticks;
  text: string;
  needed: Ticks;
}
