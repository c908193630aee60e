import { CENTIMETRE, INCH } from "../length/measures.ts";
import type { Ticks } from "../length/types.ts";

/** A piece of cloth sold in a fixed size. `across` is null when it runs the whole width of fabric. */
export interface TradeSize {
  name: string;
  across: Ticks | null;
  along: Ticks;
}

/**
 * Sizes shops sell ready cut, as much as can be counted on. A fat quarter is half a width by half a yard; at a usable
 * width of 42 in that is 21 x 18 in. A metric one is half a metre of half a 110 cm width.
 */
export const TRADE_SIZES: readonly TradeSize[] = [
  { name: "fat quarter", across: 21 * INCH, along: 18 * INCH },
  { name: "metric fat quarter", across: 55 * CENTIMETRE, along: 50 * CENTIMETRE },
  { name: "fat eighth", across: 21 * INCH, along: 9 * INCH },
  { name: "long quarter", across: null, along: 9 * INCH },
  { name: "10 in precut square", across: 10 * INCH, along: 10 * INCH },
  { name: "5 in precut square", across: 5 * INCH, along: 5 * INCH },
  { name: "2 1/2 in precut strip", across: null, along: (5 * INCH) / 2 },
];

/** The trade size of that name, whatever its capitals or plural; null when there is none. */
export function tradeSize(name: string): TradeSize | null {
  const wanted = name.trim().toLowerCase().replace(/\s+/g, " ").replace(/s$/, "");
  return TRADE_SIZES.find((size) => size.name === wanted) ?? null;
}
