import { nearest } from "./nearest.ts";
import { quote } from "./quote.ts";
import type { InFile } from "./reading.ts";
import type { Diagnostic } from "./types.ts";

function error(code: string, where: InFile, message: string, hint: string): Diagnostic {
  return { code, severity: "error", message, hint, path: where.path, at: where.at };
}

export function blockHasNoDrawing(where: InFile, block: string): Diagnostic {
  return error(
    "BLOCK-NO-DRAWING",
    where,
    `Block ${quote(block)} has no drawing.`,
    "Give `grid:` and `cells:`, or `cell:` when one unit fills the block.",
  );
}

export function cornerInSquares(where: InFile, found: string): Diagnostic {
  return error(
    "CORNER-IN-SQUARES",
    where,
    `${quote(found)} has a measure, but corners are counted in squares here (\`drawn-on\`).`,
    "Write the number of squares alone, `2` or `2 1/2`; or leave out `drawn-on` and write lengths.",
  );
}

export function drawingUnreadable(where: InFile, found: string, why: string): Diagnostic {
  return error(
    "DRAWING-UNREADABLE",
    where,
    `${quote(found)} cannot be read in a drawing: ${why}.`,
    "A cell is a code, perhaps with a turn and a colourway: `g`, `g>`, `star>/night`; `-` and `|` continue a unit.",
  );
}

export function gridsizeUnreadable(where: InFile, field: string, found: string, most: number): Diagnostic {
  return error(
    "CELLS-UNREADABLE",
    where,
    `\`${field}\` is ${quote(found)}; it counts cells, across first, each from 1 to ${most}.`,
    `For example \`${field}: 3 x 4\`.`,
  );
}

/** A turn that is not a quarter-turn: squares on a grid know no other. */
export function turnNotQuarter(where: InFile, found: string): Diagnostic {
  return error(
    "TURN-NOT-QUARTER",
    where,
    `The turn is ${quote(found)}; units and blocks turn by quarters, clockwise: 0, 90, 180 or 270.`,
    "In a drawing `>` is 90, `v` 180 and `<` 270. A quilt on point is set with `layout: on point`.",
  );
}

export function unitNotOne(where: InFile, found: readonly string[], fields: readonly string[]): Diagnostic {
  if (found.length === 0) {
    return error("UNIT-NOT-ONE", where, "This cell names no unit.", "For example `{ square: cream }`.");
  }
  const near = found
    .map((word) => [word, nearest(word, fields)] as const)
    .find(([, field]) => field !== null);
  return error(
    "UNIT-NOT-ONE",
    where,
    `This cell names ${found.length} units: ${found.map((word) => quote(word)).join(", ")}.`,
    near === undefined ? "Keep one unit to a cell." : `Did you mean \`${near[1]}\` by ${quote(near[0])}?`,
  );
}
