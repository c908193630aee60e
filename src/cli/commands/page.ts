import { basename, dirname, resolve } from "node:path";
import { defineCommand, EXIT } from "../command.ts";
import { pageFile, replace } from "../options.ts";
import { readInput } from "../read.ts";
import { failWith, report } from "../report.ts";

export const page = defineCommand({
  name: "page",
  summary: "the drawing page: draw a quilt and see what it takes, in a browser",
  about:
    "Writes one HTML file that opens by double click, from a folder or a memory stick, and needs no network: squared " +
    "paper, units and fabrics to draw a quilt with, and beside it what to buy. With a file the page opens on that " +
    "quilt, to hand to a class. The file itself is not changed.",
  arguments: [
    {
      name: "[file]",
      help: "the quilt to open on, YAML or JSON; none: begin with a picture or an empty sheet",
    },
  ],
  options: { out: pageFile, replace },
  examples: ["page", "new blocks > my-quilt.yaml", "page my-quilt.yaml --out my-quilt.html"],
  async run([file], values, io) {
    const { emptyPage, withQuilt } = await import("../page-file.ts");
    let made = await emptyPage();
    const inputs = file === undefined ? [] : [resolve(io.folder, file)];
    if (file !== undefined) {
      const input = await readInput(file, io);
      if (input.value === null) return failWith(input.diagnostics, undefined, false, io);
      made = withQuilt(made, input.value.text);
    }
    const { writeFiles } = await import("../write.ts");
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
    io.talk(`${out} written: open it with a double click, or with your browser\n`);
    return EXIT.done;
  },
});
