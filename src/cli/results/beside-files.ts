import type { Files } from "../files/write.ts";
import type { Io } from "../io.ts";
import { type Beside, type Planned, poolOf } from "../planning.ts";
import { report } from "../report.ts";
import type { Book } from "./result-files.ts";

/** What was asked besides the plan: its files, and of a class the papers of teacher and pupils, which are printed too. */
export interface BesideMade {
  files: Files;
  /** By name, without ending. */
  books: Readonly<Record<string, Book>>;
}

/** The lists that answer what was asked besides the plan: what the stash gives, fat quarters, kits, another width. */
export async function besideFiles(made: Planned, beside: Beside, io: Io): Promise<BesideMade> {
  const { compareKits, compareSorts, compareWidths, fatQuarterList, loadBook, stashUse, widthsList } =
    await import("../../index.ts");
  const files: Record<string, string> = {};
  const books: Record<string, Book> = {};
  const { plan, spec, options, sources, fromFatQuarters, planned } = made;
  if (beside.stash !== null) files["stash.txt"] = stashUse(plan, beside.stash, io.words);
  if (beside.fatQuarters) files["fat-quarters.txt"] = fatQuarterList(plan, fromFatQuarters, io.words);
  if (beside.kits > 1 || planned !== null) {
    const pool = await poolOf(io, options);
    const kits =
      planned === null
        ? await compareKits(spec, plan, options, pool.solve)
        : await compareSorts(planned, options, pool.solve);
    pool.clear();
    if (kits.value === null) report(kits.diagnostics, undefined, io);
    else {
      const { classPapers } = await loadBook();
      const pattern = planned !== null && spec.kind === "quilt" ? spec.pattern : null;
      const papers = classPapers(kits.value, pattern, io.words);
      Object.assign(files, papers.files);
      Object.assign(books, papers.books);
    }
  }
  if (beside.usable !== null) {
    const pool = await poolOf(io, options);
    const widths = await compareWidths(spec, plan, options, sources, pool.solve);
    pool.clear();
    if (widths.value === null) report(widths.diagnostics, undefined, io);
    else files["width.txt"] = widthsList(plan, widths.value, io.words);
  }
  return { files, books };
}

/** What of these files is read on the terminal: pages for the printer are not, nor the papers of pupils. */
export function listsIn(files: Files): string[] {
  return Object.entries(files).flatMap(([name, text]) =>
    name.endsWith(".txt") && !name.startsWith("kit-") && typeof text === "string" ? [text] : [],
  );
}
