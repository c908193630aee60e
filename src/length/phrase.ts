import { formatLength } from "./format.ts";
import type { Ruler, Ticks } from "./types.ts";

/**
 * A length in a phrase. `moves`: it belongs to a design and goes to the marks of another ruler when that is restated;
 * what cloth and tools measure stays.
 */
export interface PhraseLength {
  ticks: Ticks;
  moves: boolean;
}

/** Words and lengths that can be said for any ruler. */
export type Phrase = readonly (string | PhraseLength)[];

/** A length that stays as it is whatever the ruler. */
export function stays(ticks: Ticks): PhraseLength {
  return { ticks, moves: false };
}

/** The phrase with its lengths printed as the ruler reads. */
export function sayPhrase(phrase: Phrase, ruler: Ruler): string {
  return phrase.map((part) => (typeof part === "string" ? part : formatLength(part.ticks, ruler))).join("");
}
