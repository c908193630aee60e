import type { SpokenLength, SpokenSize } from "../../length/spoken.ts";
import { tell } from "../tell.ts";
import type { Diagnostic, InFile, Nothing } from "../types.ts";
import type {
  BlockSizesFault,
  BorderFault,
  CellPlace,
  DivideTold,
  OnPointFault,
  RowsFault,
  SumFault,
  UnitFault,
} from "./design-faults.ts";

/** Where in the design a diagnostic speaks of. */
export type InDesign = InFile;

/** Why parts of a block that a file names are none that can be turned. */
export type NotMotifs =
  | { why: "no-code"; code: string; known: readonly string[] }
  | { why: "one-only" | "same-all-round" | "units-across" | "not-alike" };

/** A unit by its kind and its finished size. */
export interface UnitTold {
  kind: string;
  finished: SpokenSize;
}

/** Cells of a block that lie off the marks: so many columns or lines in so much make each cell that size. */
export interface OffMarks {
  block: string;
  axis: "across" | "down";
  count: number;
  whole: SpokenLength;
  cell: SpokenLength;
  mark: SpokenLength;
  /** Sizes of the whole that lie on the marks. */
  below: SpokenLength;
  above: SpokenLength;
}

/** A unit that cannot be made so: its size, or the method it was to be made by, and where to look in it. */
export interface Unsuited {
  unit: string;
  asked: { finished: SpokenSize } | { method: string };
  fault: UnitFault;
  place: { across: SpokenLength; down: SpokenLength } | null;
}

/** What is told of each, to be put in words. */
export interface QuiltFacts {
  directionByOtherMethod: {
    unit: UnitTold;
    fabrics: readonly string[];
    from: string;
    to: readonly string[];
  };
  biasOutside: { unit: string; method: string };
  blockSizeMissing: { block: string };
  blockSizesDiffer: { fault: BlockSizesFault };
  blockUnknown: { word: string; known: readonly string[] };
  blockUnused: { block: string };
  borderDoesNotFit: { fault: BorderFault };
  cellEmpty: { block: string; place: CellPlace; mark: string };
  codeUnknown: { code: string; known: readonly string[] };
  codeUnused: { code: string; block: string };
  colourwayCircular: { chain: readonly string[] };
  colourwayUnknown: { word: string; known: readonly string[] };
  directionSpares: { unit: UnitTold; method: string; spare: number };
  fabricMissing: { word: string; block: string | null; known: readonly string[] };
  fabricUnused: { fabric: string };
  gridOffMarks: OffMarks;
  methodUnknown: { unit: string; word: string; known: readonly string[] };
  motifsNotAlike: { block: string; found: NotMotifs };
  onPointUneven: { fault: OnPointFault };
  partialSeam: { block: string; divides: readonly DivideTold[] };
  printTilted: { fabric: string };
  quiltTooLarge: { patches: number; most: number };
  roleUnknown: { unit: string; role: string | { number: number }; known: readonly string[] };
  rolesUncovered: { unit: string; role: string; known: readonly string[] };
  rowsUneven: { fault: RowsFault };
  seamsDoNotMeet: Nothing;
  setInSeam: { unit: string; cuts: readonly { role: string; count: number }[] };
  sizesDoNotAddUp: { fault: SumFault };
  spanOffGrid: { code: string; place: CellPlace; columns: number; rows: number };
  unitUnknown: { word: string; known: readonly string[] };
  unitUnsuited: Unsuited;
  unitsOverlap: { code: string; other: string; place: CellPlace };
}

export function biasOutside(where: InFile, unit: string, method: string): Diagnostic {
  return tell("BIAS-OUTSIDE", "warning", where, "biasOutside", { unit, method });
}

export function blockSizeMissing(where: InFile, block: string): Diagnostic {
  return tell("BLOCK-SIZE-MISSING", "error", where, "blockSizeMissing", { block });
}

export function blockSizesDiffer(where: InFile, fault: BlockSizesFault): Diagnostic {
  return tell("BLOCK-SIZES-DIFFER", "error", where, "blockSizesDiffer", { fault });
}

export function blockUnknown(where: InFile, word: string, known: readonly string[]): Diagnostic {
  return tell("BLOCK-UNKNOWN", "error", where, "blockUnknown", { word, known });
}

export function blockUnused(where: InFile, block: string): Diagnostic {
  return tell("BLOCK-UNUSED", "warning", where, "blockUnused", { block });
}

export function borderDoesNotFit(where: InFile, fault: BorderFault): Diagnostic {
  return tell("BORDER-DOES-NOT-FIT", "error", where, "borderDoesNotFit", { fault });
}

export function cellEmpty(where: InFile, block: string, place: CellPlace, mark: string): Diagnostic {
  return tell("CELL-EMPTY", "error", where, "cellEmpty", { block, place, mark });
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

export function directionSpares(where: InFile, unit: UnitTold, method: string, spare: number): Diagnostic {
  return tell("DIRECTION-SPARES", "warning", where, "directionSpares", { unit, method, spare });
}

export function fabricMissing(
  where: InFile,
  word: string,
  block: string | null,
  known: readonly string[],
): Diagnostic {
  return tell("FABRIC-MISSING", "error", where, "fabricMissing", { word, block, known });
}

export function fabricUnused(where: InFile, fabric: string): Diagnostic {
  return tell("FABRIC-UNUSED", "warning", where, "fabricUnused", { fabric });
}

export function gridOffMarks(where: InFile, off: OffMarks): Diagnostic {
  return tell("GRID-OFF-MARKS", "warning", where, "gridOffMarks", off);
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

export function onPointUneven(where: InFile, fault: OnPointFault): Diagnostic {
  return tell("ON-POINT-UNEVEN", "error", where, "onPointUneven", { fault });
}

/** @param divides units to divide so that straight seams would do; empty when none were found */
export function partialSeam(where: InFile, block: string, divides: readonly DivideTold[]): Diagnostic {
  return tell("PARTIAL-SEAM", "warning", where, "partialSeam", { block, divides });
}

export function printTilted(where: InFile, fabric: string): Diagnostic {
  return tell("PRINT-TILTED", "warning", where, "printTilted", { fabric });
}

export function quiltTooLarge(where: InFile, patches: number, most: number): Diagnostic {
  return tell("QUILT-TOO-LARGE", "error", where, "quiltTooLarge", { patches, most });
}

export function roleUnknown(
  where: InFile,
  unit: string,
  role: string | { number: number },
  known: readonly string[],
): Diagnostic {
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

export function rowsUneven(where: InFile, fault: RowsFault): Diagnostic {
  return tell("ROWS-UNEVEN", "error", where, "rowsUneven", { fault });
}

export function seamsDoNotMeet(where: InFile): Diagnostic {
  return tell("SEAMS-DO-NOT-MEET", "warning", where, "seamsDoNotMeet", {});
}

/** @param cuts how many cuts through patches of which part would do away with them; empty when none were found */
export function setInSeam(
  where: InFile,
  unit: string,
  cuts: readonly { role: string; count: number }[],
): Diagnostic {
  return tell("SET-IN-SEAM", "warning", where, "setInSeam", { unit, cuts });
}

export function sizesDoNotAddUp(where: InFile, fault: SumFault): Diagnostic {
  return tell("SIZES-DO-NOT-ADD-UP", "error", where, "sizesDoNotAddUp", { fault });
}

export function spanOffGrid(
  where: InFile,
  code: string,
  place: CellPlace,
  span: { columns: number; rows: number },
): Diagnostic {
  return tell("SPAN-OFF-GRID", "error", where, "spanOffGrid", { code, place, ...span });
}

export function unitUnknown(where: InFile, word: string, known: readonly string[]): Diagnostic {
  return tell("UNIT-UNKNOWN", "error", where, "unitUnknown", { word, known });
}

export function unitUnsuited(where: InFile, unsuited: Unsuited): Diagnostic {
  return tell("UNIT-UNSUITED", "error", where, "unitUnsuited", unsuited);
}

export function unitsOverlap(where: InFile, code: string, other: string, place: CellPlace): Diagnostic {
  return tell("UNITS-OVERLAP", "error", where, "unitsOverlap", { code, other, place });
}

/** `to`: the methods that do instead; none when no method keeps the direction at all. */
export function directionByOtherMethod(
  where: InFile,
  unit: UnitTold,
  fabrics: readonly string[],
  from: string,
  to: readonly string[],
): Diagnostic {
  const facts = { unit, fabrics, from, to };
  return tell("DIRECTION-OTHER-METHOD", "warning", where, "directionByOtherMethod", facts);
}
