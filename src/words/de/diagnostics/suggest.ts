import { nearest } from "../../../diagnostics/nearest.ts";

/** Most known words that are listed. */
const MOST = 12;

/** A question for the word that was probably meant; empty for none. */
export function likely(near: string | null): string {
  return near === null ? "" : `Ist \`${near}\` gemeint?`;
}

/** The word that is probably meant, else the list of known words. */
export function suggest(word: string, known: readonly string[]): string {
  const near = nearest(word, [...known]);
  if (near !== null) return likely(near);
  const shown = known.slice(0, MOST).map((each) => `\`${each}\``);
  return shown.length === 0
    ? ""
    : `Bekannt sind hier: ${shown.join(", ")}${known.length > MOST ? " ..." : ""}.`;
}
