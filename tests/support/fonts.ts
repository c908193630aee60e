import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";

export function fontPath(name: string): string {
  return fileURLToPath(new URL(`../../node_modules/dejavu-fonts-ttf/ttf/${name}.ttf`, import.meta.url));
}

const file = (name: string): Uint8Array => readFileSync(fontPath(name));

/** The fonts a PDF is set in, and none besides. */
export const PDF_FONTS = {
  plain: file("DejaVuSans"),
  plainBold: file("DejaVuSans-Bold"),
  body: file("DejaVuSansCondensed"),
  bodyBold: file("DejaVuSansCondensed-Bold"),
  title: file("DejaVuSerifCondensed-Bold"),
  others: [] as Uint8Array[],
};
