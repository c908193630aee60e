import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";

/** A font of the package ours are taken from: for letters that ours lack. */
export function fontPath(name: string): string {
  return fileURLToPath(new URL(`../../node_modules/dejavu-fonts-ttf/ttf/${name}.ttf`, import.meta.url));
}

/** A font that comes with the program. */
export function ownFont(name: "plain" | "plain-bold" | "title"): string {
  return fileURLToPath(new URL(`../../src/draw/fonts/${name}.ttf`, import.meta.url));
}

const file = (name: Parameters<typeof ownFont>[0]): Uint8Array => readFileSync(ownFont(name));

/** The fonts a PDF is set in, and none besides. */
export const PDF_FONTS = {
  plain: file("plain"),
  plainBold: file("plain-bold"),
  title: file("title"),
  others: [] as Uint8Array[],
};
