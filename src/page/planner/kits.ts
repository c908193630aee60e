import {
  classPapers,
  compareSorts,
  type Diagnostic,
  KITS_OF_FILE,
  planClassWith,
  planFiles,
  planJson,
  type planSpec,
  readKits,
  readSpecFile,
  USUAL_OPTIONS,
  wordAll,
} from "../../planning.ts";
import { language, tongue } from "../words/index.ts";

/** The papers of a class, by the names of their files as the command line has them; `problem` where there are none. */
export interface KitsMade {
  files: Record<string, string>;
  /** How many kits, and how many sorts of them. */
  kits: number;
  sorts: number;
  problem: string;
}

function without(diagnostics: readonly Diagnostic[]): KitsMade {
  const errors = diagnostics.filter(({ severity }) => severity === "error");
  const problem = wordAll(errors, tongue)
    .map(({ message, hint }) => `${message} ${hint}`.trim())
    .join(" ");
  return { files: {}, kits: 0, sorts: 0, problem };
}

/** The kits that a quilt's text names, cut together: the teacher's sheet, a paper for each sort of kit, the plan of all. */
export async function kitsFor(
  text: string,
  name: string,
  solve: Parameters<typeof planSpec>[2],
): Promise<KitsMade> {
  const read = readSpecFile(text, name, null, language);
  const spec = read.value;
  if (spec?.kind !== "quilt") return without(read.diagnostics);
  const asked = readKits(KITS_OF_FILE, spec);
  if (asked.value === null) return without(asked.diagnostics);
  const options = { ...USUAL_OPTIONS, suggestStacks: true };
  const made = { options, sources: { stash: null, fatQuarters: false } };
  const found = await planClassWith(spec, asked.value, made, solve);
  const planned = found.value?.planned ?? null;
  if (found.value === null || planned === null) return without(found.diagnostics);
  const { value: kits, diagnostics } = await compareSorts(planned, options, solve);
  if (kits === null) return without(diagnostics);
  const plan = { ...found.value.plan, diagnostics: [...read.diagnostics, ...found.diagnostics] };
  return {
    files: {
      ...classPapers(kits, spec.pattern, tongue).files,
      "plan.json": planJson(plan, tongue),
      ...planFiles(plan, tongue, null),
    },
    kits: kits.kits,
    sorts: kits.sorts.length,
    problem: "",
  };
}
