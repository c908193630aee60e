import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { dirname } from "node:path";
import { fileURLToPath } from "node:url";
import { Resvg } from "@resvg/resvg-js";
import pixelmatch from "pixelmatch";
import { PNG } from "pngjs";
import { ownFont } from "./fonts.ts";

const fonts = (["plain", "plain-bold"] as const).map(ownFont);

/** Options that keep resvg to the one font the drawings are measured in. */
export const FONT = { loadSystemFonts: false, fontFiles: fonts, defaultFontFamily: "DejaVu Sans" };

/** An SVG as a PNG, `zoom` pixels to the page unit. */
export function rasterise(svg: string, zoom = 1): Buffer {
  return new Resvg(svg, { font: FONT, fitTo: { mode: "zoom", value: zoom } }).render().asPng();
}

/** Pixels in which two pictures differ; all of them when their sizes differ. */
function difference(a: Buffer, b: Buffer): number {
  const [one, other] = [PNG.sync.read(a), PNG.sync.read(b)];
  if (one.width !== other.width || one.height !== other.height) return one.width * one.height;
  return pixelmatch(one.data, other.data, undefined, one.width, one.height, { threshold: 0.05 });
}

function goldenPath(name: string): string {
  return fileURLToPath(new URL(`../../fixtures/golden/${name}.png`, import.meta.url));
}

/**
 * Compares with the golden picture and, when they differ, leaves the new one in out/visual to look at.
 * With `mayKeep` false nothing is written. `PROMOTE_GOLDENS=1` accepts what is drawn now; do so only after looking at it.
 */
export function differenceFromGolden(name: string, png: Buffer, mayKeep = true): number {
  const path = goldenPath(name);
  if (mayKeep && process.env.PROMOTE_GOLDENS === "1") {
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(path, png);
    return 0;
  }
  const changed = difference(readFileSync(path), png);
  if (mayKeep && changed > 0) {
    const folder = fileURLToPath(new URL("../../out/visual/", import.meta.url));
    mkdirSync(folder, { recursive: true });
    writeFileSync(`${folder}${name}.png`, png);
  }
  return changed;
}
