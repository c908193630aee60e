import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";

const FOLDER = join(import.meta.dirname, "..", "..", "fixtures", "quilts");

/** Every quilt of the project's own, by file name. */
export const QUILTS: readonly { name: string; text: string }[] = readdirSync(FOLDER)
  .filter((name) => name.endsWith(".yaml"))
  .sort()
  .map((name) => ({ name, text: readFileSync(join(FOLDER, name), "utf8") }));

export function quiltNamed(name: string): string {
  return QUILTS.find((quilt) => quilt.name === `${name}.yaml`)?.text ?? "";
}
