import { deflateSync, Inflate, strFromU8, strToU8 } from "fflate";

/** Begins what an address holds; a later form of it gets another number. */
const VERSION = "1";
/** Most letters of an address that every browser and most mail take whole. */
const MOST_LETTERS = 8000;
/** Most bytes of a quilt's text: an address is not trusted to say how large it grows. */
const MOST_BYTES = 1_000_000;

const asLetters = (bytes: Uint8Array): string =>
  btoa(strFromU8(bytes, true)).replaceAll("+", "-").replaceAll("/", "_").replace(/=+$/, "");

function asBytes(letters: string): Uint8Array | null {
  try {
    return strToU8(atob(letters.replaceAll("-", "+").replaceAll("_", "/")), true);
  } catch {
    return null;
  }
}

/** What stands behind the `#` of an address that holds a quilt; null where it would be too long. */
export function addressOf(text: string): string | null {
  const letters = `quilt=${VERSION}.${asLetters(deflateSync(strToU8(text), { level: 9 }))}`;
  return letters.length > MOST_LETTERS ? null : letters;
}

export type InAddress = { text: string } | { problem: "version" | "broken" } | null;

/** The quilt in an address; null where there is none. */
export function quiltIn(hash: string): InAddress {
  const [, version, letters] = /^#?quilt=(\d{1,4})\.(.*)$/.exec(hash) ?? [];
  if (version === undefined || letters === undefined) return null;
  if (version !== VERSION) return { problem: "version" };
  const packed = asBytes(letters);
  if (packed === null || packed.length === 0) return { problem: "broken" };
  try {
    const parts: Uint8Array[] = [];
    let size = 0;
    let whole = false;
    const inflate = new Inflate((part, last) => {
      size += part.length;
      if (size > MOST_BYTES) throw new Error("too large");
      parts.push(part);
      whole = last;
    });
    inflate.push(packed, true);
    if (!whole) return { problem: "broken" };
    const bytes = new Uint8Array(size);
    let at = 0;
    for (const part of parts) {
      bytes.set(part, at);
      at += part.length;
    }
    return { text: new TextDecoder("utf-8", { fatal: true }).decode(bytes) };
  } catch {
    return { problem: "broken" };
  }
}
