import bidiFactory from "bidi-js";
import { turns } from "../../draw/scene/text-fit.ts";

// The package is a function of itself to Node; its types speak of a module with a default.
const bidi = (bidiFactory as unknown as typeof bidiFactory.default)();

/** A stretch of a line that is read one way. Runs stand in the order they are set, from left to right. */
export interface Run {
  text: string;
  rightToLeft: boolean;
}

/** Marks that steer the order of letters and are not letters themselves. */
const STEERING = /[\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]/g;

/**
 * One line in the order it is set (Unicode Standard Annex 9, by the package bidi-js). Inside a run the letters
 * stay in the order they are read: whoever shapes them turns them. `base` is the direction of the whole; by
 * default its first letter decides.
 */
export function visualRuns(line: string, base?: "ltr" | "rtl"): Run[] {
  if (!turns(line)) return [{ text: line.replace(STEERING, ""), rightToLeft: false }];
  const found = bidi.getEmbeddingLevels(line, base ?? "auto");
  const mirrored = bidi.getMirroredCharactersMap(line, found.levels);
  const order = bidi.getReorderedIndices(line, found);
  const runs: Run[] = [];
  let [level, last] = [-1, -1];
  for (const index of order) {
    const letter = line[index] ?? "";
    if (letter.match(STEERING) !== null) continue;
    const own = found.levels[index] ?? 0;
    const rightToLeft = own % 2 === 1;
    const said = mirrored.get(index) ?? letter;
    const run = runs.at(-1);
    const follows = run !== undefined && own === level && Math.abs(index - last) === 1;
    if (!follows) runs.push({ text: said, rightToLeft });
    // In a run from right to left the next to the right is the one before.
    else run.text = rightToLeft ? said + run.text : run.text + said;
    [level, last] = [own, index];
  }
  return runs;
}
