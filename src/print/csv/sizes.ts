import type { SeveralSizes } from "../../choices/sizes/several-sizes.ts";
import { sizesRows } from "../../content/buying/several-sizes.ts";
import type { Words } from "../../words/index.ts";
import { csv } from "./index.ts";

/** The requirement table of several sizes: a line for each thing to tell, a column for each size. */
export function sizesCsv(several: SeveralSizes, words: Words): string {
  const { heading, rows } = sizesRows(several, words);
  return csv(heading, rows);
}
