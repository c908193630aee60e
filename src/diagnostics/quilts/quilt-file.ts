import { tell } from "../tell.ts";

import type { Diagnostic, InFile } from "../types.ts";

/** Why a word of a drawing is no cell. */
export type DrawingFault = { is: "repeats"; count: number; most: number } | { is: "colourway" };

/** What is told of each, to be put in words. */
export interface QuiltFileFacts {
  blockHasNoDrawing: { block: string };
  cornerInSquares: { found: string };
  drawingUnreadable: { found: string; fault: DrawingFault };
  gridsizeUnreadable: { field: string; found: string; most: number };
  turnNotQuarter: { found: string };
  unitNotOne: { found: readonly string[]; fields: readonly string[] };
}

export function blockHasNoDrawing(where: InFile, block: string): Diagnostic {
  return tell("BLOCK-NO-DRAWING", "error", where, "blockHasNoDrawing", { block });
}

export function cornerInSquares(where: InFile, found: string): Diagnostic {
  return tell("CORNER-IN-SQUARES", "error", where, "cornerInSquares", { found });
}

export function drawingUnreadable(where: InFile, found: string, fault: DrawingFault): Diagnostic {
  return tell("DRAWING-UNREADABLE", "error", where, "drawingUnreadable", { found, fault });
}

export function gridsizeUnreadable(where: InFile, field: string, found: string, most: number): Diagnostic {
  return tell("CELLS-UNREADABLE", "error", where, "gridsizeUnreadable", { field, found, most });
}

/** A turn that is not a quarter-turn: squares on a grid know no other. */
export function turnNotQuarter(where: InFile, found: string): Diagnostic {
  return tell("TURN-NOT-QUARTER", "error", where, "turnNotQuarter", { found });
}

export function unitNotOne(where: InFile, found: readonly string[], fields: readonly string[]): Diagnostic {
  return tell("UNIT-NOT-ONE", "error", where, "unitNotOne", { found, fields });
}
