import { freeCode } from "../../edits/block-edits.ts";
import { asLines, marked } from "../../edits/drawing-text.ts";
import { type BlockModel, readModel } from "../../edits/model.ts";
import { readText, valueAt, withItem, withValue } from "../../edits/text-edit.ts";

/** Name of the stand-in for cloth that has not been chosen; no maker writes it. */
export const NOTHING_YET = "(nothing)";
const PAPER = "#fffdf7";

export interface Completed {
  text: string;
  /** The line of her own text that a line of this one stands for, both counted from 1. */
  ownLine(line: number): number;
  /** Squares of the design on which nothing lies yet, counted once for each block drawn. */
  empty: number;
}

/**
 * The same quilt with every empty square filled by a stand-in fabric, so that what is drawn so far can be laid out and
 * its amounts counted. A design without empty squares comes back as it is.
 */
export function completed(text: string): Completed {
  const model = readModel(text);
  const open = model.blocks.filter(({ empties }) => empties.length > 0);
  if (model.kind !== "quilt" || open.length === 0) return { text, empty: 0, ownLine: (line) => line };
  let made = withItem(text, ["fabrics"], model.fabrics.length, { name: NOTHING_YET, colour: PAPER });
  for (const block of open) made = filled(made, block);
  const lines = linesBetween(text, made);
  return {
    text: made,
    empty: open.reduce((sum, { empties }) => sum + empties.length, 0),
    ownLine: (line) => lines[line - 1] ?? line,
  };
}

/**
 * For each line of a text made from another the line it was, both counted from 1; a line that is new stands behind the
 * last that was there. Lines are the same where the longest run of lines alike, in their order, has them so.
 */
export function linesBetween(own: string, made: string): number[] {
  const [before, after] = [own.split("\n"), made.split("\n")];
  let head = 0;
  while (head < Math.min(before.length, after.length) && before[head] === after[head]) head += 1;
  let tail = 0;
  while (
    tail < Math.min(before.length, after.length) - head &&
    before[before.length - 1 - tail] === after[after.length - 1 - tail]
  )
    tail += 1;
  const [old, fresh] = [before.slice(head, before.length - tail), after.slice(head, after.length - tail)];
  // most[i][j]: lines alike from line i of the one and line j of the other on.
  const most = Array.from({ length: old.length + 1 }, () => new Uint16Array(fresh.length + 1));
  for (let i = old.length - 1; i >= 0; i--)
    for (let j = fresh.length - 1; j >= 0; j--)
      most[i]![j] =
        old[i] === fresh[j] ? most[i + 1]![j + 1]! + 1 : Math.max(most[i + 1]![j]!, most[i]![j + 1]!);
  const lines = Array.from({ length: head }, (_, i) => i + 1);
  let i = 0;
  for (let j = 0; j < fresh.length; j++) {
    while (
      i < old.length &&
      old[i] !== fresh[j] &&
      most[i + 1]![j]! >= most[i]![j + 1]! &&
      most[i + 1]![j]! > 0
    )
      i += 1;
    if (i < old.length && old[i] === fresh[j]) i += 1;
    lines.push(Math.max(1, head + i));
  }
  for (let j = 0; j < tail; j++) lines.push(before.length - tail + j + 1);
  return lines;
}

function filled(text: string, block: BlockModel): string {
  const code = freeCode(block, "o");
  const words = Array.from({ length: block.rows }, () => Array<string>(block.columns).fill(code));
  for (const unit of block.units) {
    for (let r = 0; r < unit.rows; r++)
      for (let c = 0; c < unit.columns; c++) {
        const line = words[unit.row + r];
        if (line !== undefined)
          line[unit.column + c] =
            c > 0 ? "-" : r > 0 ? "|" : marked(unit.cell.code, unit.turn - unit.cell.turn);
      }
  }
  const path = ["blocks", block.key];
  const listed = Array.isArray(valueAt(readText(text), [...path, "grid"]));
  const lines = asLines(words);
  const drawn = withValue(text, [...path, "grid"], listed ? lines.split("\n") : `${lines}\n`);
  return withValue(drawn, [...path, "cells", code], { rectangle: NOTHING_YET });
}
