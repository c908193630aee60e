// Writes src/draw/scene/metrics-table.ts: advance widths of DejaVu Sans, so that drawings can fit text
// without a font file at run time. Run again only when the font or the ranges change.
import { readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { create } from "fontkit";

const root = fileURLToPath(new URL("..", import.meta.url));
const ranges = [
  [0x20, 0x7e],
  [0xa0, 0x24f],
  [0x370, 0x3ff],
  [0x400, 0x45f],
  [0x5d0, 0x5ea],
  [0x621, 0x64a],
  [0x2010, 0x2026],
  [0x2030, 0x203a],
  [0x2044, 0x2044],
  [0x2070, 0x208e],
  [0x20a0, 0x20b5],
  [0x2150, 0x215e],
  [0x2190, 0x21ff],
  [0x2200, 0x2265],
];

const tables = ["DejaVuSans", "DejaVuSans-Bold"].map((name) => {
  const font = create(readFileSync(`${root}node_modules/dejavu-fonts-ttf/ttf/${name}.ttf`));
  if (font.unitsPerEm !== 2048) throw new Error(`${name} is not drawn on 2048 units`);
  return ranges.map(([first, last]) => {
    const widths = [];
    for (let code = first; code <= last; code++) {
      widths.push(font.hasGlyphForCodePoint(code) ? font.glyphForCodePoint(code).advanceWidth : -1);
    }
    return `  [${first}, "${widths.join(" ")}"],`;
  });
});

writeFileSync(
  `${root}src/draw/scene/metrics-table.ts`,
  `// Written by bin/font-metrics.mjs from DejaVu Sans 2.37 (dejavu-fonts-ttf 2.37.3). Do not edit.

/** First code point of a run and the advance widths from there on, in 1/2048 em; -1 where no glyph is. */
export type WidthRun = readonly [number, string];

export const REGULAR_WIDTHS: readonly WidthRun[] = [
${tables[0].join("\n")}
];

export const BOLD_WIDTHS: readonly WidthRun[] = [
${tables[1].join("\n")}
];
`,
);
