import { basename, dirname, extname, resolve } from "node:path";
import { notADrawing } from "../../diagnostics/pictures.ts";
import type { Words } from "../../words/index.ts";
import { defineCommand, EXIT } from "../command.ts";
import { readInput } from "../files/read.ts";
import type { Files } from "../files/write.ts";
import { inWords, takes } from "../option.ts";
import { font, pixels, replace } from "../options.ts";
import { failWith, report } from "../report.ts";

const width = (words: Words) =>
  pixels(
    takes("--width", words.commandLine.values.pixels),
    words.commandLine.picture.widthOfThePicture,
    "1600",
    words,
  );
const USUAL_WIDTH = 1600;

/** The texts of a drawing, as they are written in it. */
function textsOf(svg: string): string[] {
  return [...svg.matchAll(/<text[^>]*>([^<]*)</g)].map(([, text = ""]) => text);
}

export const picture = (words: Words) =>
  defineCommand({
    name: "picture",
    summary: words.commandLine.picture.aDrawingAsA,
    about: words.commandLine.picture.makesAPngPicture,
    arguments: [{ name: "<drawings...>", help: words.commandLine.picture.svgDrawings }],
    options: inWords(words, { width, font, replace }),
    examples: words.commandLine.picture.examples,
    async run(drawings, values, io) {
      const [{ fontsFor }, { pictureFiles }, { writeFiles }] = await Promise.all([
        import("../results/fonts.ts"),
        import("../results/pictures.ts"),
        import("../files/write.ts"),
      ]);
      const named = values.font === null ? [] : [resolve(io.folder, values.font)];
      const inputs = [...drawings.map((drawing) => resolve(io.folder, drawing)), ...named];
      const made: { drawing: string; folder: string; files: Files }[] = [];
      for (const drawing of drawings) {
        const input = await readInput(drawing, io);
        if (input.value === null) return failWith(input.diagnostics, undefined, false, io);
        const { text } = input.value;
        if (!/<svg\b/.test(text)) return failWith([notADrawing(drawing)], undefined, false, io);
        const fonts = await fontsFor(textsOf(text), named);
        report(fonts.diagnostics, undefined, io);
        const path = resolve(io.folder, drawing);
        const name = basename(path, extname(path));
        const drawn = { [`${name}.svg`]: text };
        const { files, diagnostics } = await pictureFiles(drawn, values.width ?? USUAL_WIDTH, fonts, "error");
        if (diagnostics.length > 0) return failWith(diagnostics, undefined, false, io);
        if (files === null) return failWith([notADrawing(drawing)], undefined, false, io);
        made.push({ drawing, folder: dirname(path), files });
      }
      for (const { drawing, folder, files } of made) {
        const beside = dirname(drawing);
        const written = await writeFiles({
          folder,
          named: beside,
          by: "picture",
          files,
          inputs,
          replace: values.replace,
        });
        if (written.value === null) return failWith(written.diagnostics, undefined, false, io);
        report(written.diagnostics, undefined, io);
        io.talk(
          io.words.commandLine.picture.pngWritten(drawing.slice(0, drawing.length - extname(drawing).length)),
        );
      }
      return EXIT.done;
    },
  });
