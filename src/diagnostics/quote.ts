const LONGEST = 60;

/** Characters that would move the cursor, hide text or turn its direction on a terminal. */
const UNSEEN = /[\p{Cc}\p{Cf}\p{Co}\p{Cs}\u2028\u2029]/gu;

/** Makes unseen characters visible as `\u{...}`, so that no file can play tricks on the reader's screen. */
export function visible(text: string): string {
  return text.replace(UNSEEN, (character) => `\\u{${(character.codePointAt(0) ?? 0).toString(16)}}`);
}

/** What was found in the file, in backticks, shortened, and safe to print. */
export function quote(found: string): string {
  const letters = [...found.slice(0, 4 * LONGEST)];
  const short = letters.length > LONGEST ? `${letters.slice(0, LONGEST - 3).join("")}...` : found;
  return `\`${visible(short)}\``;
}
