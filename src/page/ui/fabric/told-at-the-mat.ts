import { readWorkFile, WORK_NAME } from "../../../planning.ts";

/** Fabrics of which something was said at the mat, in the order in which that was said first; none where nothing was. */
export function toldAtTheMat(work: string): string[] {
  if (work === "") return [];
  const said = readWorkFile(work, WORK_NAME, "in").value?.said ?? [];
  return [...new Set(said.map(({ fabric }) => fabric))];
}
