/** The benchmark: solves what the data folder holds, prints a table, and fails on any wrong answer. */
import { existsSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { lightenSolver } from "../../src/cli/threads/light-solver.ts";
import { pack } from "../../src/engine/index.ts";
import { compareWithBaseline, writeBaseline } from "./baseline.ts";
import type { BenchCase } from "./cases.ts";
import { corpusCases } from "./corpus-cases.ts";
import { easing } from "./easing.ts";
import { fuzz } from "./fuzz.ts";
import { fuzzState } from "./fuzz-state.ts";
import { literatureCases } from "./literature-cases.ts";
import { type BenchRecord, measure } from "./measure.ts";
import { mixCases } from "./mix-cases.ts";
import { nestedCases } from "./nested-cases.ts";
import { type BenchOptions, readOptions, USAGE } from "./options.ts";
import { caseLine, headLine, summaryLine } from "./table.ts";
import { startWatchdog } from "./watchdog.ts";

// The bundle lies in .build, one folder below the root.
const root = new URL("..", import.meta.url);
const baselineFile = fileURLToPath(new URL("fixtures/bench-baseline.json", root));

lightenSolver();
process.exitCode = await main(process.argv.slice(2));

async function main(args: readonly string[]): Promise<number> {
  if (args.includes("--help")) {
    console.log(USAGE);
    return 0;
  }
  const options = readOptions(args, root);
  if (typeof options === "string") {
    console.error(`${options}\n\n${USAGE}`);
    return 2;
  }
  if (options.goOn !== null) return fuzzState(options.goOn, options.seed, console.log);
  if (options.fuzz !== null) return fuzz(options.fuzz, options.seed, console.log);
  const cases = chosenCases(options);
  if (cases.length === 0) {
    console.error(
      `no cases: ${existsSync(options.data) ? "nothing matches" : `${options.data} is not there`}`,
    );
    return 2;
  }
  if (options.easing) {
    const bolts = cases.filter(({ set, style }) => set === "bolts" && style === "strips-2");
    return easing(bolts, console.log);
  }
  const records = await runAll(cases, options);
  if (options.json !== null) writeFileSync(options.json, `${JSON.stringify(records, null, 1)}\n`);
  if (options.baseline) writeBaseline(baselineFile, records);
  else for (const line of compareWithBaseline(baselineFile, records)) console.log(line);
  const wrong = records.filter((record) => record.faults.length > 0);
  for (const record of wrong) {
    for (const fault of record.faults)
      console.log(`WRONG ${record.set} ${record.name} ${record.style}: ${fault}`);
  }
  return wrong.length > 0 ? 1 : 0;
}

function chosenCases(options: BenchOptions): BenchCase[] {
  const { data } = options;
  const all = [...corpusCases(data), ...mixCases(data), ...nestedCases(data), ...literatureCases(data)];
  return all.filter(
    (bench) =>
      (options.only.length === 0 || options.only.includes(bench.set)) &&
      options.styles.includes(bench.style) &&
      (options.name === null || options.name.test(bench.name)),
  );
}

async function runAll(cases: readonly BenchCase[], options: BenchOptions): Promise<BenchRecord[]> {
  const watchdog = startWatchdog();
  // The first solve loads the solver; its time belongs to no case.
  const first = cases.find(({ run }) => run === undefined) ?? cases[0]!;
  await pack(first.problem, { budget: 1000 }).catch(() => null);
  const records: BenchRecord[] = [];
  let set = "";
  for (const bench of cases) {
    if (bench.set !== set) console.log(`\n${bench.set}\n${headLine()}`);
    set = bench.set;
    watchdog.beat(`${bench.set} ${bench.name} ${bench.style}`, options.limit);
    const record = await measure(bench, options.limit, options.work ? "effort" : "budget");
    records.push(record);
    console.log(caseLine(bench, record));
  }
  await watchdog.stop();
  printSummary(cases, records);
  return records;
}

function printSummary(cases: readonly BenchCase[], records: readonly BenchRecord[]): void {
  console.log("");
  const groups = new Map<string, BenchRecord[]>();
  for (const record of records) {
    const title = `${record.set} ${record.variant}`;
    groups.set(title, [...(groups.get(title) ?? []), record]);
  }
  for (const [title, group] of groups) console.log(summaryLine(title, group));
  const small = records.filter((_, index) => {
    const { problem, set } = cases[index]!;
    return set !== "bolts" && set !== "fixed" && problem.items.length <= 60;
  });
  if (small.length > 0) console.log(summaryLine("literature, up to 60 sizes", small));
  const megabytes = Math.round(process.resourceUsage().maxRSS / 1024);
  console.log(`most memory ${megabytes} MB`);
}
