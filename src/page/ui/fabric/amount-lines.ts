import { formatMeasure, TICKS_PER } from "../../../planning.ts";
import type { Amount } from "../../planner/amounts.ts";
import { words, written } from "../../words/index.ts";
import * as state from "../state.ts";

export type AmountState = "before" | "so-far" | "proven" | "found" | "none";

/** How far a fabric's amount is known. */
export function stateOf({ proven }: Amount): AmountState {
  switch (state.progress.value) {
    case "before":
      return "before";
    case "failed":
      return "none";
    case "so-far":
      return proven ? "proven" : "so-far";
    case "done":
      return proven ? "proven" : "found";
  }
}

/** `1⅛ yd`, as it is asked for. */
export function amountText({ length, unit }: Pick<Amount, "length" | "unit">): string {
  return length === null ? words.nothingToBuy : formatMeasure(length, unit, { typeset: true, ...written });
}

/** What the last edit changed; null where nothing did or nothing is known yet. */
export function changeOf(now: Amount): { ticks: number; text: string } | null {
  if (state.progress.value === "before" || state.progress.value === "failed") return null;
  const before = state.amountsBefore.value?.fabrics.find(({ fabric }) => fabric === now.fabric);
  if (before === undefined) return null;
  return difference(before, now);
}

/** The last edit is worked out to the end and changed nothing of this fabric. */
export function isUnchanged(now: Amount): boolean {
  const known = state.amountsBefore.value?.fabrics.some(({ fabric }) => fabric === now.fabric) ?? false;
  return known && state.progress.value === "done" && changeOf(now) === null;
}

function difference(before: Amount, now: Amount): { ticks: number; text: string } | null {
  const ticks = (now.length ?? 0) - (before.length ?? 0);
  if (ticks === 0) return null;
  const size = formatMeasure(Math.abs(ticks), now.unit, { typeset: true, ...written });
  return { ticks, text: ticks > 0 ? words.changeMore(size) : words.changeLess(size) };
}

/** A difference in cloth alone: `⅛ yd more`, `the same`. */
export function costText(ticks: number, unit: Amount["unit"]): string {
  if (ticks === 0) return words.sameFabric;
  const size = formatMeasure(Math.abs(ticks), unit, { typeset: true, ...written });
  return ticks > 0 ? words.changeMore(size) : words.changeLess(size);
}

const metricOf = ({ unit }: Pick<Amount, "unit">): boolean => unit === "m" || unit === "cm";

/** Folds of one fabric, and of a whole pile, that are not higher than a screen. */
const MOST_FOLDS = 16;
const MOST_IN_ALL = 64;

/** What one fold stands for in the whole pile: an eighth of a yard or 10 cm, doubled until the pile is no taller than a screen. */
function foldOf(metric: boolean): number {
  const all = (state.amounts.value?.fabrics ?? []).map(({ length }) => length ?? 0);
  let each = metric ? 10 * TICKS_PER.cm : TICKS_PER.yd / 8;
  const folds = (): number[] => all.map((length) => Math.ceil(length / each));
  while (Math.max(0, ...folds()) > MOST_FOLDS || folds().reduce((sum, one) => sum + one, 0) > MOST_IN_ALL)
    each *= 2;
  return each;
}

/** Folds of cloth an amount is drawn as. */
export function foldsOf(amount: Amount): number {
  const { length } = amount;
  return length === null || length === 0 ? 0 : Math.ceil(length / foldOf(metricOf(amount)));
}

/** What one fold is, to be read. */
export function foldSaid(): string {
  const metric = (state.amounts.value?.fabrics ?? []).some(metricOf);
  return formatMeasure(foldOf(metric), metric ? "cm" : "yd", { typeset: true, ...written });
}

/** All lengths together, where every fabric is sold in one measure. */
export function sumText(all: readonly Amount[]): string {
  const [first] = all;
  if (first === undefined || all.some(({ unit }) => unit !== first.unit)) return "";
  return amountText({ length: all.reduce((sum, { length }) => sum + (length ?? 0), 0), unit: first.unit });
}

/** What the last edit did to the fabric, in words to hear; empty while it is not known. */
export function changesSaid(): string {
  const all = state.amounts.value?.fabrics ?? [];
  if (state.amountsBefore.value === null || state.progress.value !== "done") return "";
  const told = all.flatMap((amount) => {
    const change = changeOf(amount);
    return change === null ? [] : [`${amount.fabric} ${change.text}`];
  });
  return told.length === 0 ? words.noChange : words.changes(told);
}
