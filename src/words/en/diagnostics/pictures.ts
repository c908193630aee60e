import type { PicturesFacts } from "../../../diagnostics/pictures.ts";
import type { WordsOf } from "../../diagnostics.ts";

/** Letters and names told one by one; the rest are counted. */
const MOST = 3;

const MOST_LETTERS = 12;

const LONGEST = 40;

export const pictures: WordsOf<PicturesFacts> = {
  fontUnreadable: ({ path, exists }) => {
    const why = exists
      ? "it is no TrueType or OpenType font"
      : "there is no such file, or it may not be read";
    return {
      message: `The font ${path} cannot be used: ${why}.`,
      hint: "Name a file that ends in .ttf, .otf or .ttc, for example --font ~/fonts/NotoSansJP-Regular.ttf",
    };
  },

  lettersWithoutFont: ({ names, letters }) => {
    const quoted = names
      .slice(0, MOST)
      .map(
        (name) =>
          `"${Array.from(name).length > LONGEST ? `${Array.from(name).slice(0, LONGEST).join("")}…` : name}"`,
      );
    const more = names.length > MOST ? ` and ${names.length - MOST} more` : "";
    const some = letters.slice(0, MOST_LETTERS).join(" ");
    const rest = letters.length > MOST_LETTERS ? ` and ${letters.length - MOST_LETTERS} more` : "";
    return {
      message: `No font at hand has these letters: ${some}${rest}. They are in ${quoted.join(", ")}${more}. In the PDF and PNG files ▯ stands for each of them; the web page and the SVG drawings hold the names as you wrote them.`,
      hint: "Install a font for that writing, or name its file: --font ~/fonts/NotoSansJP-Regular.ttf",
    };
  },

  notADrawing: ({ file }) => ({
    message: `${file} is not an SVG drawing.`,
    hint: "Plan first, then name a drawing of the plan, for example crossgrain picture out/tide-pool/cut-1-night-sea.svg --width 1600",
  }),

  noPainter: () => ({
    message: "No PNG pictures were made: this machine can load neither of the programs that draw them.",
    hint: "Everything else is written; open the SVG drawings in a browser. To get pictures, install again with npm install @resvg/resvg-wasm",
  }),
};
