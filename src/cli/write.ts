import { mkdir, mkdtemp, readdir, rename, rm, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { folderNotWritable } from "../diagnostics/files.ts";
import type { Outcome } from "../diagnostics/types.ts";

/** Names and contents of the files of one result. */
export type Files = Readonly<Record<string, string | Uint8Array>>;

/** A folder in a file's place would stop the renaming halfway, so it is looked for before. */
async function refuseFolders(folder: string, names: readonly string[]): Promise<void> {
  const inside = await readdir(folder, { withFileTypes: true });
  if (inside.some((entry) => entry.isDirectory() && names.includes(entry.name))) {
    throw Object.assign(new Error("a folder is in the way"), { code: "EISDIR" });
  }
}

/**
 * Writes all files of a result, or none: they are written whole into a folder inside the target and then
 * renamed into place, so that a full disk or a missing permission leaves the old result untouched.
 * Files in the folder for which `outdated` holds and which are not written again are removed.
 */
export async function writeFiles(
  folder: string,
  files: Files,
  outdated: (name: string) => boolean,
): Promise<Outcome<string[]>> {
  let made: string | null = null;
  let partial: string | null = null;
  try {
    // The topmost folder that had to be made.
    made = (await mkdir(folder, { recursive: true })) ?? null;
    await refuseFolders(folder, Object.keys(files));
    partial = await mkdtemp(join(folder, ".partial-"));
    for (const [name, content] of Object.entries(files)) await writeFile(join(partial, name), content);
    for (const name of Object.keys(files)) await rename(join(partial, name), join(folder, name));
    await rm(partial, { recursive: true, force: true });
    const left = (await readdir(folder)).filter((name) => outdated(name) && !(name in files));
    for (const name of left) await rm(join(folder, name), { force: true });
    return { value: Object.keys(files), diagnostics: [] };
  } catch (error) {
    const leftover = made ?? partial;
    if (leftover !== null) await rm(leftover, { recursive: true, force: true }).catch(() => undefined);
    const code = (error as NodeJS.ErrnoException).code ?? "UNKNOWN";
    return { value: null, diagnostics: [folderNotWritable(folder, code)] };
  }
}
