import { existsSync, readFileSync, writeFileSync } from "node:fs";
import type { BenchRecord } from "./measure.ts";

/** What is kept of one case: value, bound and milliseconds; a value equal to its bound was proven. */
type Entry = readonly [value: number | null, bound: number | null, ms: number];

/** Slower is told only when it is both twice as slow and this many milliseconds slower. */
const NOTICEABLE = 250;

/** Writes the baseline, keeping what it knows of cases that did not run this time. */
export function writeBaseline(file: string, records: readonly BenchRecord[]): void {
  const entries = readEntries(file);
  for (const record of records) {
    entries[keyOf(record)] = [record.value, record.bound, Math.round(record.ms)];
  }
  const lines = Object.keys(entries)
    .sort()
    .map((key) => `  ${JSON.stringify(key)}: ${JSON.stringify(entries[key])}`);
  writeFileSync(file, `{\n${lines.join(",\n")}\n}\n`);
}

/** Says what got worse, slower or better since the baseline was written; worse first. */
export function compareWithBaseline(file: string, records: readonly BenchRecord[]): string[] {
  const entries = readEntries(file);
  const worse: string[] = [];
  const slower: string[] = [];
  const better: string[] = [];
  for (const record of records) {
    const before = entries[keyOf(record)];
    if (before === undefined) continue;
    const [value, bound, ms] = before;
    const wasProven = value !== null && value === bound;
    const named = `${record.set} ${record.name} ${record.style}`;
    if (isAbove(record.value, value)) worse.push(`worse: ${named} value ${value} -> ${record.value}`);
    else if (wasProven && !record.proven) worse.push(`worse: ${named} is no longer proven (${record.bound})`);
    else if (isAbove(value, record.value)) better.push(`better: ${named} value ${value} -> ${record.value}`);
    else if (!wasProven && record.proven) better.push(`better: ${named} is proven now`);
    if (record.ms > ms * 2 && record.ms > ms + NOTICEABLE) {
      slower.push(`slower: ${named} ${ms} -> ${Math.round(record.ms)} ms`);
    }
  }
  return [...worse, ...slower, ...better];
}

function isAbove(left: number | null, right: number | null): boolean {
  return (left ?? Number.POSITIVE_INFINITY) > (right ?? Number.POSITIVE_INFINITY);
}

function keyOf(record: BenchRecord): string {
  return `${record.set}/${record.name}/${record.style}`;
}

function readEntries(file: string): Record<string, Entry> {
  return existsSync(file) ? (JSON.parse(readFileSync(file, "utf8")) as Record<string, Entry>) : {};
}
