import { formatMeasure } from "../length/format.ts";
import { CENTIMETRE, INCH } from "../length/measures.ts";
import { parseLength } from "../length/parse.ts";
import { floor } from "../length/rational.ts";
import type { LengthUnit, Ticks } from "../length/types.ts";

/** A piece of cloth sold in a fixed size. `across` is null when it runs the whole width of fabric. */
export interface TradeSize {
  name: string;
  across: Ticks | null;
  along: Ticks;
  /** A strip that is cut already: it is only subcut. */
  strip: boolean;
}

/**
 * Sizes shops sell ready cut, as much as can be counted on. A fat quarter is half a width by half a yard; at a usable
 * width of 42 in that is 21 x 18 in. A metric one is half a metre of half a 110 cm width.
 */
export const TRADE_SIZES: readonly TradeSize[] = [
  { name: "fat quarter", across: 21 * INCH, along: 18 * INCH, strip: false },
  { name: "metric fat quarter", across: 55 * CENTIMETRE, along: 50 * CENTIMETRE, strip: false },
  { name: "fat eighth", across: 21 * INCH, along: 9 * INCH, strip: false },
  { name: "long quarter", across: null, along: 9 * INCH, strip: false },
];

/**
 * Precuts by their size: squares, and strips across the whole width. Shops sell squares of 10 in and 5 in, strips of
 * 2 1/2 in and 1 1/2 in (Quilt Quest, Perkins County 4-H Fair Book, University of Nebraska-Lincoln Extension); any
 * other size is read alike.
 */
const PRECUT = /^(.+?)\s+(?:precut\s+)?(square|strip)s?$/;

/**
 * The trade size of that name, whatever its capitals or plural: `fat quarters`, `10 in squares`, `2 1/2 in strips`;
 * null when there is none.
 * @param bare measure of a number written without one; without it a precut must name its measure
 */
export function tradeSize(name: string, bare: LengthUnit | null = null): TradeSize | null {
  const wanted = name.trim().toLowerCase().replace(/\s+/g, " ");
  const known = TRADE_SIZES.find((size) => size.name === wanted.replace(/s$/, ""));
  if (known !== undefined) return known;
  const [, written = "", kind] = PRECUT.exec(wanted) ?? [];
  if (kind === undefined) return null;
  const side = parseLength(written, bare ?? "in");
  if (!side.ok || (side.unit === null && bare === null)) return null;
  const along = Number(floor(side.value));
  if (along <= 0 || along > 100 * INCH) return null;
  const said = `${formatMeasure(along, side.unit ?? bare ?? "in")} ${kind}`;
  return { name: said, across: kind === "strip" ? null : along, along, strip: kind === "strip" };
}
