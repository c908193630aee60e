import { resolve } from "node:path";
import type { Outcome } from "../../diagnostics/types.ts";
import type { Writer } from "../files/manifest.ts";
import type { Files } from "../files/write.ts";
import type { Io } from "../io.ts";

/** The folder a command writes into. */
export interface Place {
  /** As it was typed; null for the usual one, after the name of the plan. */
  out: string | null;
  name: string;
  /** Files of hers may be written over. */
  replace: boolean;
}

/** What a command writes. */
export interface ToWrite {
  by: Writer;
  files: Files;
  /** What it has read, as typed: none of it is written over. Null and `-` are no files. */
  read: readonly (string | null)[];
}

/** Files that were typed, as paths. */
export const pathsOf = (typed: ToWrite["read"], io: Io): string[] =>
  typed.flatMap((name) => (name === null || name === "-" ? [] : [resolve(io.folder, name)]));

/** Writes all files of a result or none of them; the folder, as found and as spoken of, and the names written. */
export async function writeInto(
  { out, name, replace }: Place,
  { by, files, read }: ToWrite,
  io: Io,
): Promise<Outcome<{ folder: string; named: string; names: string[] }>> {
  const [{ usualFolder }, { writeFiles }] = await Promise.all([
    import("../files/file-names.ts"),
    import("../files/write.ts"),
  ]);
  const named = out ?? usualFolder(name);
  const folder = resolve(io.folder, named);
  const { value, diagnostics } = await writeFiles({
    ...{ folder, named, by, files, replace },
    inputs: pathsOf(read, io),
  });
  return { value: value === null ? null : { folder, named, names: value }, diagnostics };
}
