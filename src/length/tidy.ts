/** Fractions with a glyph of their own, as a maker may type or paste them. */
const VULGAR: Readonly<Record<string, string>> = {
  "½": "1/2",
  "⅓": "1/3",
  "⅔": "2/3",
  "¼": "1/4",
  "¾": "3/4",
  "⅕": "1/5",
  "⅖": "2/5",
  "⅗": "3/5",
  "⅘": "4/5",
  "⅙": "1/6",
  "⅚": "5/6",
  "⅛": "1/8",
  "⅜": "3/8",
  "⅝": "5/8",
  "⅞": "7/8",
};
const SMALL_DIGITS = "⁰¹²³⁴⁵⁶⁷⁸⁹₀₁₂₃₄₅₆₇₈₉";

/** A text in plain characters, with the place in the original of every character. */
export interface Tidied {
  text: string;
  /** `columns[i]` is the column, from 1, in the original of `text[i]`; one more entry stands for the end. */
  columns: number[];
}

function plain(character: string, before: string): string {
  const fraction = VULGAR[character];
  if (fraction !== undefined) return /\d$/.test(before) ? ` ${fraction}` : fraction;
  const digit = SMALL_DIGITS.indexOf(character);
  if (digit >= 0) {
    // A raised numerator straight after a whole number: `2⁵⁄₁₆`.
    const opens = digit < 10 && /\d$/.test(before);
    return `${opens ? " " : ""}${digit % 10}`;
  }
  if (/[\u2044\u2215]/.test(character)) return "/";
  if (/[\u2032\u2018\u2019]/.test(character)) return "'";
  if (/[\u2033\u201c\u201d]/.test(character)) return '"';
  if (/[\u2212\u2010\u2011\u2012\u2013\u2014]/.test(character)) return "-";
  if (/\s/.test(character)) return " ";
  return character;
}

/** Puts typographic fractions, primes, dashes and spaces into plain characters. */
export function tidy(original: string): Tidied {
  let text = "";
  const columns: number[] = [];
  let raised = false;
  for (let at = 0; at < original.length; at++) {
    const character = original[at] ?? "";
    const isRaised = "⁰¹²³⁴⁵⁶⁷⁸⁹".includes(character);
    // Only the first raised digit after a whole number opens a new number.
    const made = plain(character, raised && isRaised ? "" : text);
    raised = isRaised;
    text += made;
    for (let i = 0; i < made.length; i++) columns.push(at + 1);
  }
  columns.push(original.length + 1);
  return { text, columns };
}
