import { formatMeasure, TICKS_PER } from "../../length/index.ts";

const NO_BREAK = "\u00a0";

/** A fraction as a glyph: what a measure divides into it can be said in. */
function fraction(whole: string | undefined, top: string, bottom: string): string {
  const unit = Number(bottom) % 3 === 0 ? "yd" : "in";
  const ticks = (Number(whole ?? 0) + Number(top) / Number(bottom)) * TICKS_PER[unit];
  if (!Number.isSafeInteger(ticks)) return `${whole === undefined ? "" : `${whole} `}${top}/${bottom}`;
  return formatMeasure(ticks, unit, { typeset: true, unit: false });
}

/**
 * Sizes inside text as print has them: `2 1/2 x 4 1/2 in` becomes `2½ × 4½ in`, and a number stays on one
 * line with its measure.
 */
export function typeset(text: string): string {
  return text
    .replace(/(?<![\d/.])(?:(\d{1,4}) )?(\d{1,3})\/(\d{1,3})(?![\d/])/g, (_, whole, top, bottom) =>
      fraction(whole, top, bottom),
    )
    .replace(/([\d¼½¾⅛-⅞⅓⅔₀-₉]|(?<=\d|[¼½¾⅛-⅞⅓⅔₀-₉]) (?:in|cm|mm)) x (?=[\d¼½¾⅛-⅞⅓⅔]|WOF)/g, "$1 × ")
    .replace(/([\d¼½¾⅛-⅞⅓⅔₀-₉]) (in|cm|mm|m|yd)\b/g, `$1${NO_BREAK}$2`)
    .replace(/([\d¼½¾⅛-⅞⅓⅔₀-₉]) × /g, `$1${NO_BREAK}×${NO_BREAK}`);
}

/** The same with its first letter large, as the start of a sentence. */
export function sentence(text: string): string {
  return typeset(text).replace(/^\p{Ll}/u, (letter) => letter.toUpperCase());
}
