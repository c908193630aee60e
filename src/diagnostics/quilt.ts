import { tell } from "./tell.ts";

import type { Diagnostic, InFile } from "./types.ts";

/** Where in the design a diagnostic speaks of. */
export type InDesign = InFile;

/** Why parts of a block that a file names are none that can be turned. */
export type NotMotifs =
  | { why: "no code"; code: string; known: readonly string[] }
  | { why: "one only" | "same all round" | "units across" | "not alike" };

/** What is told of each, to be put in words. */
export interface QuiltFacts {
  directionByOtherMethod: {
    unit: { kind: string; text: string };
    fabric: string;
    from: string;
    to: string | null;
  };
  biasOutside: { what: string; hint: string };
  blockSizeMissing: { block: string };
  blockSizesDiffer: { found: string; expected: string };
  blockUnknown: { word: string; known: readonly string[] };
  blockUnused: { block: string };
  borderDoesNotFit: { message: string; hint: string };
  cellEmpty: { cell: string; mark: string };
  codeUnknown: { code: string; known: readonly string[] };
  codeUnused: { code: string; block: string };
  colourwayCircular: { chain: readonly string[] };
  colourwayUnknown: { word: string; known: readonly string[] };
  directionSpares: { unit: string; method: string; spare: number };
  fabricMissing: { word: string; block: string; known: readonly string[] };
  fabricUnused: { fabric: string };
  gridOffMarks: { message: string; below: string; above: string };
  methodUnknown: { unit: string; word: string; known: readonly string[] };
  motifsNotAlike: { block: string; found: NotMotifs };
  onPointUneven: { message: string; hint: string };
  partialSeam: { block: string; divides: readonly string[] };
  printTilted: { fabric: string };
  quiltTooLarge: { patches: string; most: string };
  roleUnknown: { unit: string; role: string; known: readonly string[] };
  rolesUncovered: { unit: string; role: string; known: readonly string[] };
  rowsUneven: { found: string; expected: string };
  seamsDoNotMeet: { message: string };
  setInSeam: { unit: string; cuts: readonly string[] };
  sizesDoNotAddUp: { message: string; hint: string };
  spanOffGrid: { code: string; cell: string; span: string };
  unitUnknown: { word: string; known: readonly string[] };
  unitUnsuited: { unit: string; size: string; reason: string; hint: string };
  unitsOverlap: { code: string; other: string; cell: string };
}

export function biasOutside(where: InFile, what: string, hint: string): Diagnostic {
  return tell("BIAS-OUTSIDE", "warning", where, "biasOutside", { what, hint });
}

export function blockSizeMissing(where: InFile, block: string): Diagnostic {
  return tell("BLOCK-SIZE-MISSING", "error", where, "blockSizeMissing", { block });
}

export function blockSizesDiffer(where: InFile, found: string, expected: string): Diagnostic {
  return tell("BLOCK-SIZES-DIFFER", "error", where, "blockSizesDiffer", { found, expected });
}

export function blockUnknown(where: InFile, word: string, known: readonly string[]): Diagnostic {
  return tell("BLOCK-UNKNOWN", "error", where, "blockUnknown", { word, known });
}

export function blockUnused(where: InFile, block: string): Diagnostic {
  return tell("BLOCK-UNUSED", "warning", where, "blockUnused", { block });
}

export function borderDoesNotFit(where: InFile, message: string, hint: string): Diagnostic {
  return tell("BORDER-DOES-NOT-FIT", "error", where, "borderDoesNotFit", { message, hint });
}

export function cellEmpty(where: InFile, cell: string, mark: string): Diagnostic {
  return tell("CELL-EMPTY", "error", where, "cellEmpty", { cell, mark });
}

export function codeUnknown(where: InFile, code: string, known: readonly string[]): Diagnostic {
  return tell("CODE-UNKNOWN", "error", where, "codeUnknown", { code, known });
}

export function codeUnused(where: InFile, code: string, block: string): Diagnostic {
  return tell("CODE-UNUSED", "warning", where, "codeUnused", { code, block });
}

export function colourwayCircular(where: InFile, chain: readonly string[]): Diagnostic {
  return tell("COLOURWAY-CIRCULAR", "error", where, "colourwayCircular", { chain });
}

export function colourwayUnknown(where: InFile, word: string, known: readonly string[]): Diagnostic {
  return tell("COLOURWAY-UNKNOWN", "error", where, "colourwayUnknown", { word, known });
}

export function directionSpares(where: InFile, unit: string, method: string, spare: number): Diagnostic {
  return tell("DIRECTION-SPARES", "warning", where, "directionSpares", { unit, method, spare });
}

export function fabricMissing(
  where: InFile,
  word: string,
  block: string,
  known: readonly string[],
): Diagnostic {
  return tell("FABRIC-MISSING", "error", where, "fabricMissing", { word, block, known });
}

export function fabricUnused(where: InFile, fabric: string): Diagnostic {
  return tell("FABRIC-UNUSED", "warning", where, "fabricUnused", { fabric });
}

export function gridOffMarks(where: InFile, message: string, below: string, above: string): Diagnostic {
  return tell("GRID-OFF-MARKS", "warning", where, "gridOffMarks", { message, below, above });
}

export function methodUnknown(
  where: InFile,
  unit: string,
  word: string,
  known: readonly string[],
): Diagnostic {
  return tell("METHOD-UNKNOWN", "error", where, "methodUnknown", { unit, word, known });
}

export function motifsNotAlike(where: InFile, block: string, found: NotMotifs): Diagnostic {
  return tell("MOTIFS-NOT-ALIKE", "error", where, "motifsNotAlike", { block, found });
}

export function onPointUneven(where: InFile, message: string, hint: string): Diagnostic {
  return tell("ON-POINT-UNEVEN", "error", where, "onPointUneven", { message, hint });
}

/** @param divides units to divide so that straight seams would do; empty when none were found */
export function partialSeam(where: InFile, block: string, divides: readonly string[]): Diagnostic {
  return tell("PARTIAL-SEAM", "warning", where, "partialSeam", { block, divides });
}

export function printTilted(where: InFile, fabric: string): Diagnostic {
  return tell("PRINT-TILTED", "warning", where, "printTilted", { fabric });
}

export function quiltTooLarge(where: InFile, patches: string, most: string): Diagnostic {
  return tell("QUILT-TOO-LARGE", "error", where, "quiltTooLarge", { patches, most });
}

export function roleUnknown(where: InFile, unit: string, role: string, known: readonly string[]): Diagnostic {
  return tell("ROLE-UNKNOWN", "error", where, "roleUnknown", { unit, role, known });
}

export function rolesUncovered(
  where: InFile,
  unit: string,
  role: string,
  known: readonly string[],
): Diagnostic {
  return tell("ROLE-WITHOUT-FABRIC", "error", where, "rolesUncovered", { unit, role, known });
}

export function rowsUneven(where: InFile, found: string, expected: string): Diagnostic {
  return tell("ROWS-UNEVEN", "error", where, "rowsUneven", { found, expected });
}

export function seamsDoNotMeet(where: InFile, message: string): Diagnostic {
  return tell("SEAMS-DO-NOT-MEET", "warning", where, "seamsDoNotMeet", { message });
}

/** @param cuts how many cuts through patches of which part would do away with them; empty when none were found */
export function setInSeam(where: InFile, unit: string, cuts: readonly string[]): Diagnostic {
  return tell("SET-IN-SEAM", "warning", where, "setInSeam", { unit, cuts });
}

export function sizesDoNotAddUp(where: InFile, message: string, hint: string): Diagnostic {
  return tell("SIZES-DO-NOT-ADD-UP", "error", where, "sizesDoNotAddUp", { message, hint });
}

export function spanOffGrid(where: InFile, code: string, cell: string, span: string): Diagnostic {
  return tell("SPAN-OFF-GRID", "error", where, "spanOffGrid", { code, cell, span });
}

export function unitUnknown(where: InFile, word: string, known: readonly string[]): Diagnostic {
  return tell("UNIT-UNKNOWN", "error", where, "unitUnknown", { word, known });
}

export function unitUnsuited(
  where: InFile,
  unit: string,
  size: string,
  reason: string,
  hint: string,
): Diagnostic {
  return tell("UNIT-UNSUITED", "error", where, "unitUnsuited", { unit, size, reason, hint });
}

export function unitsOverlap(where: InFile, code: string, other: string, cell: string): Diagnostic {
  return tell("UNITS-OVERLAP", "error", where, "unitsOverlap", { code, other, cell });
}

/** `unit` is told by its kind and its text; `to` is null when no method keeps the direction at all. */
export function directionByOtherMethod(
  where: InFile,
  unit: { kind: string; text: string },
  fabric: string,
  from: string,
  to: string | null,
): Diagnostic {
  const facts = { unit, fabric, from, to };
  return tell("DIRECTION-OTHER-METHOD", "warning", where, "directionByOtherMethod", facts);
}
