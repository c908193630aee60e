import { freeCode } from "../../edits/block-edits.ts";
import { asLines, marked } from "../../edits/drawing-text.ts";
import { type BlockModel, readModel } from "../../edits/model.ts";
import { readText, valueAt, withItem, withValue } from "../../edits/text-edit.ts";

/** Name of the stand-in for cloth that has not been chosen; no maker writes it. */
export const NOTHING_YET = "(nothing)";
const PAPER = "#fffdf7";

export interface Completed {
  text: string;
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
  if (model.kind !== "quilt" || open.length === 0) return { text, empty: 0 };
  let made = withItem(text, ["fabrics"], model.fabrics.length, { name: NOTHING_YET, colour: PAPER });
  for (const block of open) made = filled(made, block);
  return { text: made, empty: open.reduce((sum, { empties }) => sum + empties.length, 0) };
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
