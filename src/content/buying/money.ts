import type { Language } from "../../length/index.ts";
import type { Ruler } from "../../length/types.ts";

/** How a language sets a sum: `CHF 12.50` and `$12.50`, `12,50 CHF` and `12,50 $`. */
const FORMATS = new Map<string, Intl.NumberFormat>();

type Sign = "code" | "sign" | "none";

/** Any code and any sign: only where they stand and how they are set off is taken from the language. */
const PLACES: Readonly<Record<Sign, Intl.NumberFormatOptions>> = {
  code: { style: "currency", currency: "CHF", currencyDisplay: "code" },
  sign: { style: "currency", currency: "USD", currencyDisplay: "narrowSymbol" },
  none: { minimumFractionDigits: 2, maximumFractionDigits: 2 },
};

function formatOf(language: Language, sign: Sign, useGrouping: boolean): Intl.NumberFormat {
  const key = `${language} ${sign} ${useGrouping}`;
  const known = FORMATS.get(key) ?? new Intl.NumberFormat(language, { ...PLACES[sign], useGrouping });
  FORMATS.set(key, known);
  return known;
}

/**
 * Hundredths of the currency as `$12.50` or `12,50 EUR`: the sign or code the maker wrote, where the language sets it. The
 * decimal mark is the language's, or the comma of a maker who writes it in English; thousands are then not set apart.
 */
export function money(
  hundredths: number,
  currency: string,
  { language = "en", decimal }: Pick<Ruler, "language" | "decimal">,
): string {
  const sign = currency === "" ? "none" : /\p{L}$/u.test(currency) ? "code" : "sign";
  const parts = formatOf(language, sign, decimal === undefined || language !== "en").formatToParts(
    hundredths / 100,
  );
  const said = parts.map(({ type, value }) => {
    if (type === "currency") return currency;
    return type === "decimal" && decimal === "comma" ? "," : value;
  });
  return said.join("").replaceAll("\u00a0", " ");
}
