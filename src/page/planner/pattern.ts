import {
  english,
  type PatternSize,
  type PatternSpec,
  type Plan,
  type planSpec,
  quickSolve,
  readSizes,
  readSpecFile,
  USUAL_OPTIONS,
  wholeSizes,
  wordAll,
} from "../../planning.ts";

/** What a pattern is made of besides the plan, and why a size of it could not be planned. */
export interface OnPaper {
  told: PatternSpec;
  sizes: PatternSize[];
  problem: string;
}

const extentOf = ({ top }: Plan): string => JSON.stringify([top?.across, top?.down]);

/** The pattern of a quilt with the further sizes its text names, each planned whole, as the command line has it. */
export async function patternFor(
  text: string,
  name: string,
  plan: Plan,
  solve: Parameters<typeof planSpec>[2],
): Promise<OnPaper | null> {
  const spec = readSpecFile(text, name).value;
  if (spec?.kind !== "quilt" || plan.top === null) return null;
  const told = spec.pattern;
  const without = (diagnostics: Parameters<typeof wordAll>[0]): OnPaper => ({
    told,
    sizes: [],
    problem: wordAll(diagnostics, english)
      .map(({ message }) => message)
      .join(" "),
  });
  if (told.sizes === "") return { told, sizes: [], problem: "" };
  const asked = readSizes(told.sizes, spec.ruler);
  if (asked.value === null) return without(asked.diagnostics);
  const options = { ...USUAL_OPTIONS, kits: 1 };
  const found = await wholeSizes(spec, asked.value, options, quickSolve(solve), () => {});
  if (found.value === null) return without(found.diagnostics);
  const sizes = found.value
    .map(({ size: { heading, finished }, plan: whole }) => ({ heading, finished, plan: whole }))
    // The quilt's own size has a column already.
    .filter((size) => extentOf(size.plan) !== extentOf(plan));
  return { told, sizes, problem: "" };
}
