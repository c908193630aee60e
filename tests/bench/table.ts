import { type BenchCase, sizeOf } from "./cases.ts";
import type { BenchRecord } from "./measure.ts";

/** Column headings and how wide each is; the first is left-aligned, the rest right-aligned. */
const COLUMNS = [
  ["name", 26],
  ["style", 8],
  ["sizes", 5],
  ["length", 8],
  ["bound", 8],
  ["proven", 6],
  ["ms", 8],
  ["thumb", 8],
  ["saving", 7],
  ["optimum", 9],
  ["gap", 7],
] as const;

export function headLine(): string {
  return aligned(COLUMNS.map(([heading]) => heading));
}

/** One line for one answer; its faults follow on lines of their own. */
export function caseLine(bench: BenchCase, record: BenchRecord): string {
  const line = aligned([
    record.name,
    record.style,
    String(sizeOf(bench.problem).sizes),
    record.value === null ? "none" : String(record.value),
    record.bound === null ? "-" : String(record.bound),
    record.proven ? "yes" : "no",
    record.ms < 100 ? record.ms.toFixed(1) : String(Math.round(record.ms)),
    record.ruleOfThumb === null ? "-" : String(record.ruleOfThumb),
    percent(savingOf(record), 1),
    record.optimum !== null ? String(record.optimum) : record.reached === null ? "-" : `<=${record.reached}`,
    percent(gapOf(record), 2),
  ]);
  return [line, ...record.faults.map((fault) => `  !! ${record.name}: ${fault}`)].join("\n");
}

/** Share of the rule of thumb that is saved; null when there is none. */
function savingOf({ value, ruleOfThumb }: BenchRecord): number | null {
  return value === null || ruleOfThumb === null || ruleOfThumb === 0 ? null : 1 - value / ruleOfThumb;
}

/** Distance above the least known value, or above our own bound where no least value is known. */
function gapOf({ value, optimum, bound }: BenchRecord): number | null {
  const least = optimum ?? bound;
  return value === null || least === null || least === 0 ? null : value / least - 1;
}

/** A line on one set and style. */
export function summaryLine(title: string, records: readonly BenchRecord[]): string {
  const count = records.length;
  const proven = records.filter((record) => record.proven).length;
  const known = records.filter((record) => record.optimum !== null);
  const matched = known.filter((record) => record.value === record.optimum).length;
  const gaps = records.map(gapOf).filter((gap) => gap !== null);
  const savings = records.map(savingOf).filter((saving) => saving !== null);
  const times = records.map((record) => record.ms).sort((a, b) => a - b);
  const faults = records.filter((record) => record.faults.length > 0).length;
  return [
    `${title}:`.padEnd(26),
    `${proven} of ${count} proven,`,
    `${matched} of ${known.length} known optima matched,`,
    `gap mean ${percent(mean(gaps), 3)} worst ${percent(Math.max(0, ...gaps), 2)},`,
    `ms median ${Math.round(quantile(times, 0.5))} p90 ${Math.round(quantile(times, 0.9))}`,
    `max ${Math.round(times.at(-1) ?? 0)},`,
    `over 2 s ${times.filter((ms) => ms > 2000).length},`,
    `saving mean ${percent(mean(savings), 2)}`,
    ...(faults > 0 ? [`, WRONG ${faults}`] : []),
  ].join(" ");
}

function mean(numbers: readonly number[]): number | null {
  return numbers.length === 0 ? null : numbers.reduce((sum, number) => sum + number, 0) / numbers.length;
}

function quantile(sorted: readonly number[], share: number): number {
  return sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? 0;
}

function percent(share: number | null, digits: number): string {
  return share === null ? "-" : `${(share * 100).toFixed(digits)}%`;
}

function aligned(cells: readonly string[]): string {
  return cells
    .map((cell, index) => {
      const width = COLUMNS[index]![1];
      return index === 0 ? cell.padEnd(width) : cell.padStart(width);
    })
    .join(" ");
}
