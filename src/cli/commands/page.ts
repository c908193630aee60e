import { basename, dirname, resolve } from "node:path";
import type { Words } from "../../words/index.ts";
import { defineCommand, EXIT } from "../command.ts";
import { readInput } from "../files/read.ts";
import { inWords } from "../option.ts";
import { pageFile, replace } from "../options.ts";
import { failWith, report } from "../report.ts";

export const page = (words: Words) =>
  defineCommand({
    name: "page",
    summary: words.commandLine.page.theDrawingPageDraw,
    about: words.commandLine.page.writesOneHtmlFile,
    arguments: [
      {
        name: "[file]",
        help: words.commandLine.page.theQuiltToOpen,
      },
    ],
    options: inWords(words, { out: pageFile, replace }),
    examples: words.commandLine.page.examples,
    async run([file], values, io) {
      const { emptyPage, withQuilt } = await import("../results/page-file.ts");
      let made = await emptyPage();
      const inputs = file === undefined ? [] : [resolve(io.folder, file)];
      if (file !== undefined) {
        const input = await readInput(file, io);
        if (input.value === null) return failWith(input.diagnostics, undefined, false, io);
        made = withQuilt(made, input.value.text);
      }
      const { writeFiles } = await import("../files/write.ts");
      const out = values.out ?? "out/crossgrain.html";
      const path = resolve(io.folder, out);
      const written = await writeFiles({
        folder: dirname(path),
        named: dirname(out),
        by: "page",
        files: { [basename(path)]: made },
        inputs,
        replace: values.replace,
      });
      if (written.value === null) return failWith(written.diagnostics, undefined, false, io);
      report(written.diagnostics, undefined, io);
      io.talk(io.words.commandLine.page.writtenOpenItWith(out));
      return EXIT.done;
    },
  });
