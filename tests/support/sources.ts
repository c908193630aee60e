import { readdirSync, readFileSync } from "node:fs";
import { join, relative, sep } from "node:path";
import ts from "typescript";

/** Where the sources lie. */
export const SRC = join(import.meta.dirname, "..", "..", "src");

/** A path below `src/` with slashes, as lists of files have it. */
export const keyOf = (path: string): string => relative(SRC, path).split(sep).join("/");

/** Every source file, folder by folder. */
export function sourcePaths(folder = SRC): string[] {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const path = join(folder, entry.name);
    return entry.isDirectory() ? sourcePaths(path) : /\.tsx?$/.test(entry.name) ? [path] : [];
  });
}

const parsed = new Map<string, ts.SourceFile>();

/** A source file as the compiler reads it, read once however many tests look at it. */
export function sourceFile(path: string): ts.SourceFile {
  const known = parsed.get(path);
  if (known !== undefined) return known;
  const source = ts.createSourceFile(path, readFileSync(path, "utf8"), ts.ScriptTarget.ES2023, true);
  parsed.set(path, source);
  return source;
}
