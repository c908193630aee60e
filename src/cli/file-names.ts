import { join } from "node:path";

/** Names that one system or another keeps for its devices, whatever follows after a dot. */
const DEVICES =
  /^(?:con|prn|aux|nul|conin\$|conout\$|clock\$|com[0-9\u00b9\u00b2\u00b3]|lpt[0-9\u00b9\u00b2\u00b3])$/u;

/** Most bytes of a part of a name, which systems limit to 255 with what stands around it. */
const MOST_BYTES = 150;

/** A name as part of a file name: letters and digits of any script, the rest as single dashes. */
export function fileNamePart(name: string): string {
  const dashed = name
    .normalize("NFC")
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, "-")
    .replace(/^-/, "");
  let part = "";
  for (const letter of [...dashed].slice(0, 60)) {
    if (Buffer.byteLength(part + letter) > MOST_BYTES) break;
    part += letter;
  }
  return part.replace(/-$/, "");
}

/** The folder for the results of what has this name, where the maker names none: one that every system allows. */
export function usualFolder(name: string): string {
  const part = fileNamePart(name) || "plan";
  return join("out", DEVICES.test(part) ? `${part}-quilt` : part);
}
