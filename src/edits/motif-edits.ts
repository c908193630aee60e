import { inTheForm, linesOf } from "./drawing-text.ts";
import { readText, valueAt, withoutValue, withValue } from "./text-edit.ts";
import type { Value } from "./values.ts";

/** A block's drawing as it is to be written, with what no longer holds beside it. */
export interface Grid {
  block: string;
  grid: readonly string[];
  columns: readonly string[] | null;
  lines: readonly string[] | null;
  leaveOut: readonly ("columns" | "lines")[];
  withoutSpan: readonly string[];
}

/** The text with a block drawn anew, its motifs turned; nothing else of the block changes. */
export function withGrid(text: string, { block, grid, columns, lines, leaveOut, withoutSpan }: Grid): string {
  const path = ["blocks", block] as const;
  const written = valueAt(readText(text), [...path, "grid"]);
  if (written === undefined) return text;
  const same = linesOf(written).join("\n") === grid.join("\n");
  let made = same ? text : withValue(text, [...path, "grid"], inTheForm(written, [...grid]) as Value);
  for (const [key, sizes] of [
    ["columns", columns],
    ["lines", lines],
  ] as const)
    if (sizes !== null) made = withValue(made, [...path, key], [...sizes], "size");
  for (const key of leaveOut) made = withoutValue(made, [...path, key]);
  for (const code of withoutSpan) made = withoutValue(made, [...path, "cells", code, "span"]);
  return made;
}
