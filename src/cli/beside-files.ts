import type { Io } from "./io.ts";
import { type Beside, type Planned, poolOf } from "./planning.ts";
import { report } from "./report.ts";
import type { Book } from "./result-files.ts";
import type { Files } from "./write.ts";

/** What was asked besides the plan: its files, and of a class the teacher's sheet, which is printed too. */
export interface BesideMade {
  files: Files;
  teachers: Book | null;
}

/** The lists that answer what was asked besides the plan: what the stash gives, fat quarters, kits, another width. */
export async function besideFiles(made: Planned, beside: Beside, io: Io): Promise<BesideMade> {
  const { compareKits, compareWidths, fatQuarterList, kitsList, loadBook, stashUse, widthsList } =
    await import("../index.ts");
  const files: Record<string, string> = {};
  let teachers: Book | null = null;
  const { plan, spec, options, sources, fromFatQuarters } = made;
  if (beside.stash !== null) files["stash.txt"] = stashUse(plan, beside.stash, io.words);
  if (beside.fatQuarters) files["fat-quarters.txt"] = fatQuarterList(plan, fromFatQuarters, io.words);
  if (beside.kits > 1) {
    const pool = await poolOf(io, options);
    const kits = await compareKits(spec, plan, options, pool.solve);
    pool.clear();
    if (kits.value === null) report(kits.diagnostics, undefined, io);
    else {
      const { classSheet, pageOf } = await loadBook();
      files["kits.txt"] = kitsList(kits.value, io.words);
      teachers = classSheet(kits.value, io.words);
      files["class.html"] = pageOf(teachers, io.words);
    }
  }
  if (beside.usable !== null) {
    const pool = await poolOf(io, options);
    const widths = await compareWidths(spec, plan, options, sources, pool.solve);
    pool.clear();
    if (widths.value === null) report(widths.diagnostics, undefined, io);
    else files["width.txt"] = widthsList(plan, widths.value, io.words);
  }
  return { files, teachers };
}

/** What of these files is read on the terminal: a page for the printer is not. */
export function listsIn(files: Files): string[] {
  return Object.entries(files).flatMap(([name, text]) =>
    name.endsWith(".txt") && typeof text === "string" ? [text] : [],
  );
}
