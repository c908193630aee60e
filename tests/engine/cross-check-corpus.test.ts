import { existsSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import type { BenchCase } from "../bench/cases.ts";
import { corpusCases } from "../bench/corpus-cases.ts";
import { literatureCases } from "../bench/literature-cases.ts";
import { type BenchRecord, measure } from "../bench/measure.ts";

/** Data beside the project; where it is missing these tests are skipped and say so. */
const DATA = fileURLToPath(new URL("../../../shared", import.meta.url));
const there = existsSync(`${DATA}/corpus`);
const title = there ? "the corpus beside the project" : `skipped: no corpus in ${DATA}`;

async function solveAll(cases: readonly BenchCase[], limit: number): Promise<BenchRecord[]> {
  const records: BenchRecord[] = [];
  for (const bench of cases) records.push(await measure(bench, limit, "effort"));
  return records;
}

function expectRight(records: readonly BenchRecord[], leastProven: number): void {
  expect(records.filter((record) => record.faults.length > 0)).toEqual([]);
  const open = records.filter((record) => !record.proven).map((record) => record.name);
  expect(open.length, `not proven: ${open.join(" ")}`).toBeLessThanOrEqual(
    records.length * (1 - leastProven),
  );
}

function every(step: number, cases: readonly BenchCase[]): BenchCase[] {
  return cases.filter((_, index) => index % step === 0);
}

describe.skipIf(!there)(title, () => {
  const cases = there ? corpusCases(DATA) : [];
  const of = (set: string, style: string): BenchCase[] =>
    cases.filter((bench) => bench.set === set && bench.style === style);

  test("half of the bolts in strips-2: proven at the known least length", async () => {
    expectRight(await solveAll(every(2, of("bolts", "strips-2")), 600), 0.9);
  });

  test("half of the fixed pieces in strips-2: proven at the known least cost", async () => {
    expectRight(await solveAll(every(2, of("fixed", "strips-2")), 600), 0.9);
  });

  test("one bolt in eight in strips-3: no wrong bound, no wrong plan", async () => {
    expectRight(await solveAll(every(8, of("bolts", "strips-3")), 300), 0.5);
  });

  test("small level-packing sets of the literature: the known least lengths", async () => {
    const small = literatureCases(DATA).filter((bench) => ["ngcut", "cgcut", "hifi-scp"].includes(bench.set));
    expectRight(await solveAll(every(4, small), 400), 0.8);
  });
});
