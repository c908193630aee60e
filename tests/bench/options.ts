import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";
import type { CuttingStyle } from "../../src/engine/types.ts";

/** What the command line of the benchmark asks for. */
export interface BenchOptions {
  data: string;
  /** Names of sets; empty for all. */
  only: readonly string[];
  styles: readonly CuttingStyle[];
  /** Milliseconds a case may take. */
  limit: number;
  /** The limit is counted work, which says the same on a busy machine. */
  work: boolean;
  /** Tell how much work easing leaves, and how far that is above the least, instead of solving the cases. */
  easing: boolean;
  /** File for the records; null for none. */
  json: string | null;
  /** Keeps only the cases whose name it matches; null for all. */
  name: RegExp | null;
  /** Number of random cut lists; null when the cases are to be run. */
  fuzz: number | null;
  /** Number of random plans to go on with; null when there are other things to run. */
  goOn: number | null;
  /** Where the random cut lists start: a failure names its seed. */
  seed: number;
  /** Write the baseline instead of comparing with it. */
  baseline: boolean;
}

export const USAGE = `npm run bench -- [options]
  --data DIR          folder with corpus/ and benchmarks/ (default ../shared beside the project)
  --only SET[,SET]    bolts, fixed, bands, joined, mixes, nested, or the name of a literature set
  --style STYLE       strips-2, strips-3 or both (default both)
  --limit MS          time for one case (default 10000)
  --work              the limit counts work, not time: the same on a busy machine
  --easing            work at the mat before and after easing of the bolts in strips-2, and the gap to the least
  --name REGEX        only cases whose name matches
  --json FILE         write one record per case and style
  --baseline          write fixtures/bench-baseline.json from this run
  --fuzz [N]          N random cut lists instead of the cases (default 10000)
  --go-on [N]         N random plans stopped, spoiled and gone on with (default 200)
  --seed N            first seed of the random cut lists (default 1)`;

/** How many are run where an option stands without its number. */
const USUAL_COUNTS: Readonly<Record<string, number>> = { "--fuzz": 10_000, "--go-on": 200 };

/** Reads the options, or says in words what is wrong with them. */
export function readOptions(args: readonly string[], root: URL): BenchOptions | string {
  let values: Record<string, string | boolean | undefined>;
  let positionals: string[];
  try {
    ({ values, positionals } = parseArgs({
      args: withCounts(args),
      allowPositionals: true,
      options: {
        data: { type: "string", default: fileURLToPath(new URL("../shared", root)) },
        only: { type: "string", default: "" },
        style: { type: "string", default: "both" },
        limit: { type: "string", default: "10000" },
        work: { type: "boolean", default: false },
        easing: { type: "boolean", default: false },
        name: { type: "string" },
        json: { type: "string" },
        baseline: { type: "boolean", default: false },
        fuzz: { type: "string" },
        "go-on": { type: "string" },
        seed: { type: "string", default: "1" },
      },
    }));
  } catch (error) {
    return error instanceof Error ? error.message : String(error);
  }
  if (positionals.length > 0) return `unexpected word: ${positionals[0]}`;
  const styles = stylesOf(String(values.style));
  if (styles === null) return `unknown style: ${values.style}; use strips-2, strips-3 or both`;
  for (const key of ["limit", "fuzz", "go-on", "seed"]) {
    const value = values[key];
    if (value !== undefined && !/^[1-9]\d*$/.test(String(value)))
      return `--${key} ${value}: not a whole number`;
  }
  return {
    data: String(values.data),
    only: String(values.only)
      .split(",")
      .filter((word) => word !== ""),
    styles,
    limit: Number(values.limit),
    work: values.work === true,
    easing: values.easing === true,
    json: values.json === undefined ? null : String(values.json),
    name: values.name === undefined ? null : new RegExp(String(values.name)),
    fuzz: values.fuzz === undefined ? null : Number(values.fuzz),
    goOn: values["go-on"] === undefined ? null : Number(values["go-on"]),
    seed: Number(values.seed),
    baseline: values.baseline === true,
  };
}

function stylesOf(word: string): CuttingStyle[] | null {
  if (word === "both") return ["strips-2", "strips-3"];
  return word === "strips-2" || word === "strips-3" ? [word] : null;
}

/** `--fuzz` and `--go-on` may stand without their number. */
function withCounts(args: readonly string[]): string[] {
  return args.flatMap((word, index) => {
    const usual = USUAL_COUNTS[word];
    if (usual === undefined || /^\d+$/.test(args[index + 1] ?? "")) return [word];
    return [word, String(usual)];
  });
}
