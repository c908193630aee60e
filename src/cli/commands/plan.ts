import { join, resolve } from "node:path";
import { workLeftAside } from "../../diagnostics/work.ts";
import { fatQuarters, kits, stash, usable } from "../asking.ts";
import { besideFiles } from "../beside-files.ts";
import { defineCommand, EXIT } from "../command.ts";
import { comparisonOf } from "../comparing.ts";
import { realDisk } from "../disk.ts";
import { text } from "../option.ts";
import {
  budget,
  compared,
  decimal,
  font,
  json,
  markdown,
  out,
  paper,
  pdf,
  png,
  prefer,
  replace,
  ruler,
  style,
  thorough,
} from "../options.ts";
import { patternFor } from "../pattern.ts";
import { planFile } from "../planning.ts";
import { failWith, report } from "../report.ts";

const sizes = text(
  "--sizes <sizes>",
  "sizes the pattern is for besides the file's own: blocks (3x3,4x5), finished sizes (60 x 80 in) or beds (queen); each is planned whole",
  "those that `pattern: sizes` in the file names",
);

export const plan = defineCommand({
  name: "plan",
  summary: "buy list, cutting plan, drawings and steps, written into a folder",
  about:
    "Works out what to buy and how to cut it with the least waste, prints the buy list, the cutting steps and " +
    "where the cloth goes, and writes them into a folder (files of yours in the way are named and not written over) together with a cutting diagram for each fabric (SVG), " +
    "a bench book to work from (book.html, which also prints), for a quilt the pattern to hand out or to sell (pattern.html), how it is sewn (sewing.txt, and blocks, assembly, pressing, borders and finishing as SVG), tables (CSV) and the whole plan (plan.json). With --json the plan is printed instead, and files are written " +
    "only when --out names a folder.",
  arguments: [{ name: "<file>", help: "the cut list, YAML or JSON" }],
  options: {
    out,
    replace,
    json,
    style,
    prefer,
    thorough,
    budget,
    stash,
    fatQuarters,
    kits,
    sizes,
    usable,
    ruler,
    pdf,
    paper,
    png,
    font,
    markdown,
    compare: compared,
    decimal,
  },
  examples: [
    "new cut-list > my-cuts.yaml",
    "plan my-cuts.yaml",
    "plan my-cuts.yaml --out ~/quilts/mine --prefer simple",
    "plan my-cuts.yaml --kits 12 --out kits",
    "plan my-cuts.yaml --pdf --paper letter --out printed",
    "new quilt > my-quilt.yaml",
    "plan my-quilt.yaml --sizes 3x3,4x5 --out for-sale",
    "plan my-cuts.yaml --png 1600 --markdown --out pictures",
  ],
  async run([file = ""], values, io) {
    const beside = { ...values, kits: values.kits ?? 1 };
    const made = await planFile(file, values, io, beside);
    if ("code" in made) return made.code;
    const besides = await besideFiles(made, beside, io);
    const comparison = values.compare ? await comparisonOf(made, io) : null;
    if (comparison?.value === null) return failWith(comparison.diagnostics, undefined, values.json, io);
    const pattern = await patternFor(made, values.sizes, values, io);
    if ("code" in pattern) return pattern.code;
    await (await import("../pool.ts")).endThreads();
    const { buyList, cuttingSteps, makingSteps, planJson, wasteTable } = await import("../../index.ts");
    if (values.json && values.out === null) {
      io.out(planJson(made.plan));
      return EXIT.done;
    }
    const [{ usualFolder }, { resultFiles }, { printedFiles }, { writeFiles }] = await Promise.all([
      import("../file-names.ts"),
      import("../result-files.ts"),
      import("../printed-files.ts"),
      import("../write.ts"),
    ]);
    const named = values.out ?? usualFolder(made.plan.name);
    const results = await resultFiles(made.plan, pattern.value);
    const printed = await printedFiles(
      made.plan,
      results,
      values,
      comparison?.value ?? null,
      pattern.value,
      io,
    );
    const files = { ...results, ...printed, ...besides };
    const folder = resolve(io.folder, named);
    const inputs = [file, values.stash, values.font].flatMap((name) =>
      name === null || name === "-" ? [] : [resolve(io.folder, name)],
    );
    const written = await writeFiles({ folder, named, by: "plan", files, inputs, replace: values.replace });
    if (written.value === null) return failWith(written.diagnostics, undefined, values.json, io);
    report(written.diagnostics, undefined, io);
    const { WORK_NAME } = await import("../../index.ts");
    if ((await realDisk.kind(join(folder, WORK_NAME))) !== null)
      report([workLeftAside(join(named, WORK_NAME))], undefined, io);
    if (values.json) io.out(planJson(made.plan));
    else {
      const all = [buyList(made.plan), ...Object.values(besides), cuttingSteps(made.plan)];
      if (made.plan.making !== undefined) all.push(makingSteps(made.plan));
      io.out([...all, wasteTable(made.plan)].join("\n"));
    }
    io.talk(`${written.value.length} files written into ${named}\n`);
    return EXIT.done;
  },
});
