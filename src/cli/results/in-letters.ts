/**
 * Letters in which bytes stand in a page: printable, and none that begins anything in HTML. `src/page/boot.js` has the
 * same.
 */
const LETTERS = Array.from({ length: 94 }, (_, i) => String.fromCharCode(33 + i)).filter(
  (letter) => !'"&<'.includes(letter),
);
const BASE = LETTERS.length;

/** Bits in two letters, since 91 x 91 is just above 2^13; and most that one holds. */
const PAIR = 13;
const SINGLE = 6;

/**
 * Bytes as text, thirteen bits in two letters: an eighth shorter than six bits in one. What is left at the end stands in
 * one letter where it fits, so that how many bytes there were is known from how many letters there are.
 */
export function inLetters(bytes: Uint8Array): string {
  const parts: string[] = [];
  let [held, bits, text] = [0, 0, ""];
  for (const byte of bytes) {
    held |= byte << bits;
    bits += 8;
    if (bits < PAIR) continue;
    const pair = held & (2 ** PAIR - 1);
    text += `${LETTERS[pair % BASE]}${LETTERS[Math.floor(pair / BASE)]}`;
    held >>= PAIR;
    bits -= PAIR;
    if (text.length > 8000) {
      parts.push(text);
      text = "";
    }
  }
  if (bits > 0)
    text += bits > SINGLE ? `${LETTERS[held % BASE]}${LETTERS[Math.floor(held / BASE)]}` : LETTERS[held];
  return parts.join("") + text;
}
