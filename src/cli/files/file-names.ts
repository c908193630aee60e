import { join } from "node:path";
import { fileNamePart } from "../../index.ts";

/** Names that one system or another keeps for its devices, whatever follows after a dot. */
const DEVICES =
  /^(?:con|prn|aux|nul|conin\$|conout\$|clock\$|com[0-9\u00b9\u00b2\u00b3]|lpt[0-9\u00b9\u00b2\u00b3])$/u;

/** The folder for the results of what has this name, where the maker names none: one that every system allows. */
export function usualFolder(name: string): string {
  const part = fileNamePart(name) || "plan";
  return join("out", DEVICES.test(part) ? `${part}-quilt` : part);
}
