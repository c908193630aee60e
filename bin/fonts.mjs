// Writes the fonts of src/draw/fonts, and those in the web pages (src/print/html/faces.ts), from the DejaVu fonts (dejavu-fonts-ttf 2.37.3): only the letters that drawings
// and books are measured in, without hints for screens of long ago. Run again only when the letters change.
import { copyFileSync, readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import subsetFont from "subset-font";

const root = fileURLToPath(new URL("..", import.meta.url));
const target = `${root}src/draw/fonts`;

const SIGNS = [
  [0x2010, 0x2026],
  [0x2030, 0x203a],
  [0x2044, 0x2044],
  [0x2070, 0x208e],
  [0x20a0, 0x20b5],
  [0x2116, 0x2116],
  [0x2122, 0x2122],
  [0x2150, 0x215e],
  [0x2190, 0x21ff],
  [0x2200, 0x2265],
  [0x25a0, 0x25ff],
  [0x2600, 0x266f],
];
/** Latin of Europe, Greek, Cyrillic, Hebrew and Arabic. */
const LETTERS = [
  [0x20, 0x7e],
  [0xa0, 0x24f],
  [0x300, 0x36f],
  [0x370, 0x3ff],
  [0x400, 0x45f],
  [0x591, 0x5f4],
  [0x600, 0x6ff],
  [0xfffd, 0xfffd],
  ...SIGNS,
];
/** What travels inside every web page: the words of the languages spoken, and names in Latin letters. */
const LATIN = [
  [0x20, 0x7e],
  [0xa0, 0x17f],
  [0x218, 0x21b],
  ...SIGNS.slice(0, 8),
  [0x2190, 0x2193],
  [0x2212, 0x2212],
  [0x2248, 0x2248],
  [0x25af, 0x25af],
];

const lettersOf = (ranges) =>
  ranges
    .flatMap(([first, last]) =>
      Array.from({ length: last - first + 1 }, (_, i) => String.fromCodePoint(first + i)),
    )
    .join("");

const subset = (name, ranges, targetFormat) =>
  subsetFont(readFileSync(`${root}node_modules/dejavu-fonts-ttf/ttf/${name}.ttf`), lettersOf(ranges), {
    targetFormat,
    noHinting: true,
  });

const FILES = {
  plain: ["DejaVuSans", LETTERS],
  "plain-bold": ["DejaVuSans-Bold", LETTERS],
  title: ["DejaVuSerifCondensed-Bold", LATIN],
};
for (const [file, [name, ranges]] of Object.entries(FILES))
  writeFileSync(`${target}/${file}.ttf`, await subset(name, ranges, "sfnt"));

const FACES = {
  text: "DejaVuSansCondensed",
  textBold: "DejaVuSansCondensed-Bold",
  title: "DejaVuSerifCondensed-Bold",
};
const written = [];
for (const [face, name] of Object.entries(FACES)) {
  const bytes = await subset(name, LATIN, "woff2");
  written.push(`  /** ${name} */\n  ${face}: "${Buffer.from(bytes).toString("base64")}",`);
}
writeFileSync(
  `${root}src/print/html/faces.ts`,
  `// Written by bin/fonts.mjs from the DejaVu fonts 2.37 (dejavu-fonts-ttf 2.37.3). Do not edit.

/** The faces of the web pages as WOFF2 in base64: their Latin letters, figures and signs. */
export const FACES = {
${written.join("\n")}
} as const;
`,
);
copyFileSync(`${root}node_modules/dejavu-fonts-ttf/LICENSE`, `${target}/LICENSE`);
