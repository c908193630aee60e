import { formatNumber } from "../../length/index.ts";
import type { Ruler } from "../../length/types.ts";

/**
 * Hundredths of the currency as `$12.50` or `CHF 12.50`, with the sign or code the maker wrote, and the decimal mark
 * of the ruler.
 */
export function money(hundredths: number, currency: string, ruler: Pick<Ruler, "decimal"> = {}): string {
  const amount = formatNumber(hundredths / 100, 2, ruler);
  return /\p{L}$/u.test(currency) ? `${currency} ${amount}` : `${currency}${amount}`;
}
