import {
  type PatternSource,
  type Plan,
  type planSpec,
  quickSolve,
  readSizes,
  readSpecFile,
  sizesBeside,
  USUAL_OPTIONS,
  wholeSizes,
  wordAll,
} from "../../planning.ts";
import { language, tongue } from "../words/index.ts";

/** What a pattern is made of besides the plan, and why a size of it could not be planned. */
export interface PatternMade extends PatternSource {
  problem: string;
}

/** The pattern of a quilt with the further sizes its text names, each planned whole, as the command line has it. */
export async function patternFor(
  text: string,
  name: string,
  plan: Plan,
  solve: Parameters<typeof planSpec>[2],
): Promise<PatternMade | null> {
  const spec = readSpecFile(text, name, null, language).value;
  if (spec?.kind !== "quilt" || plan.top === null) return null;
  const told = spec.pattern;
  const without = (diagnostics: Parameters<typeof wordAll>[0]): PatternMade => ({
    told,
    sizes: [],
    problem: wordAll(diagnostics, tongue)
      .map(({ message }) => message)
      .join(" "),
  });
  if (told.sizes === "") return { told, sizes: [], problem: "" };
  const asked = readSizes(told.sizes, spec.ruler);
  if (asked.value === null) return without(asked.diagnostics);
  const options = { ...USUAL_OPTIONS, kits: 1 };
  const found = await wholeSizes(spec, asked.value, options, quickSolve(solve), () => {});
  if (found.value === null) return without(found.diagnostics);
  return { told, sizes: sizesBeside(plan, found.value), problem: "" };
}
