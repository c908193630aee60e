import { formatMeasure, TICKS_PER } from "../../planning.ts";
import type { Amount } from "../planner/amounts.ts";
import { words } from "../words/en.ts";
import * as state from "./state.ts";

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
  return length === null ? words.nothingToBuy : formatMeasure(length, unit, { typeset: true });
}

/** What the last edit changed; null where nothing did or nothing is known yet. */
export function changeOf(now: Amount): { ticks: number; text: string } | null {
  if (state.progress.value === "before" || state.progress.value === "failed") return null;
  const before = state.amountsBefore.value?.fabrics.find(({ fabric }) => fabric === now.fabric);
  if (before === undefined) return null;
  return difference(before, now);
}

export function difference(before: Amount, now: Amount): { ticks: number; text: string } | null {
  const ticks = (now.length ?? 0) - (before.length ?? 0);
  if (ticks === 0) return null;
  const size = formatMeasure(Math.abs(ticks), now.unit, { typeset: true });
  return { ticks, text: ticks > 0 ? words.changeMore(size) : words.changeLess(size) };
}

/** A difference in cloth alone: `⅛ yd more`, `the same`. */
export function costText(ticks: number, unit: Amount["unit"]): string {
  if (ticks === 0) return words.sameFabric;
  const size = formatMeasure(Math.abs(ticks), unit, { typeset: true });
  return ticks > 0 ? words.changeMore(size) : words.changeLess(size);
}

/** Folds of cloth an amount is drawn as: eighths of a yard, or 10 cm; above two yards one fold is twice as much. */
export function foldsOf({ length, unit }: Amount): number {
  if (length === null || length === 0) return 0;
  const metric = unit === "m" || unit === "cm";
  const each = metric ? 10 * TICKS_PER.cm : TICKS_PER.yd / 8;
  const folds = Math.ceil(length / each);
  return folds > 16 ? Math.ceil(folds / 2) : folds;
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
