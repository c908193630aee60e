import { signal } from "@preact/signals";
import * as state from "./state.ts";

/** A line of the text to be shown, counted from 1; with a number of its own, so that the same can be asked twice. */
export const lineWanted = signal<{ line: number; ask: number } | null>(null);

export function showLine(line: number): void {
  state.textOpen.value = true;
  lineWanted.value = { line, ask: (lineWanted.value?.ask ?? 0) + 1 };
}
