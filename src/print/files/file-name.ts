/** Most bytes of a part of a name, which systems limit to 255 with what stands around it. */
const MOST_BYTES = 150;

/** Most letters of it: more is not read. */
const MOST_LETTERS = 60;

/** A name as part of a file name: letters and digits of any script, the rest as single dashes. */
export function fileNamePart(name: string): string {
  const dashed = name
    .normalize("NFC")
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, "-")
    .replace(/^-/, "");
  const bytes = new TextEncoder();
  let part = "";
  for (const letter of [...dashed].slice(0, MOST_LETTERS)) {
    if (bytes.encode(part + letter).length > MOST_BYTES) break;
    part += letter;
  }
  return part.replace(/-$/, "");
}
