import { blockHasNoDrawing, cornerInSquares, unitNotOne } from "../../diagnostics/quilts/quilt-file.ts";
import type { Diagnostic } from "../../diagnostics/types.ts";
import { TICKS_PER } from "../../length/measures.ts";
import { parseLength } from "../../length/parse.ts";
import { div, fromInteger, type Rational } from "../../length/rational.ts";
import { PRINTS_FOLLOW } from "../key-words.ts";
import type {
  BlockSpec,
  CellSpec,
  ColourwaySpec,
  DrawnRow,
  FabricWord,
  FractionTicks,
  PatchSpec,
  PrintsFollow,
} from "../quilt-types.ts";
import { type Path, pathText, type SourceDocument } from "../read/document.ts";
import { CELL_FIELDS, type WrittenBlock, type WrittenCell } from "../schema/quilt-schema.ts";
import { readDrawing } from "../written/quilt-drawing.ts";
import type { WrittenLength } from "../written/written.ts";

/** What filling in needs to know of the file around it. */
export interface QuiltFrame {
  document: SourceDocument;
  diagnostics: Diagnostic[];
}

const [, WITH_BLOCK, WITH_UNIT] = PRINTS_FOLLOW;

export const FOLLOWS: Readonly<Record<(typeof PRINTS_FOLLOW)[number], PrintsFollow>> = {
  upright: "quilt",
  [WITH_BLOCK]: "block",
  [WITH_UNIT]: "unit",
};

export function fraction(value: Rational): FractionTicks {
  return { n: Number(value.n), d: Number(value.d) };
}

export function fabricWord(word: string, path: Path, { document }: QuiltFrame): FabricWord {
  return { word, path: pathText(path), at: document.valueAt(path) };
}

/** A map from roles to words, with the place of each. */
function roleMap(
  written: Readonly<Record<string, string>> | undefined,
  path: Path,
  frame: QuiltFrame,
): Record<string, FabricWord> {
  const roles: Record<string, FabricWord> = {};
  for (const [role, word] of Object.entries(written ?? {})) {
    Object.defineProperty(roles, role, { value: fabricWord(word, [...path, role], frame), enumerable: true });
  }
  return roles;
}

type OfUnit = string | string[] | Record<string, string>;

function fillCell(code: string, written: WrittenCell, path: Path, frame: QuiltFrame): CellSpec | null {
  const fields: readonly string[] = CELL_FIELDS;
  const units = Object.keys(written).filter((key) => !fields.includes(key));
  const unit = units[0];
  const where = { path: pathText(path), at: frame.document.keyAt(path) };
  if (unit === undefined || units.length > 1) {
    frame.diagnostics.push(unitNotOne(where, units, fields));
    return null;
  }
  const of = written[unit] as OfUnit;
  const unitPath = [...path, unit];
  const inOrder =
    typeof of === "string"
      ? [fabricWord(of, unitPath, frame)]
      : Array.isArray(of)
        ? of.map((word, i) => fabricWord(word, [...unitPath, i], frame))
        : [];
  const size = (length: WrittenLength | undefined): FractionTicks | null =>
    length === undefined ? null : fraction(length.value);
  return {
    code,
    unit,
    byRole: typeof of === "object" && !Array.isArray(of) ? roleMap(of, unitPath, frame) : {},
    inOrder,
    turn: written.turn ?? 0,
    span: written.span ?? null,
    method: written.method ?? null,
    prints: written.prints === undefined ? null : FOLLOWS[written.prints],
    corner: size(written.corner),
    corners: written.corners ?? null,
    strips: written.strips?.map((strip) => fraction(strip.value)) ?? null,
    count: written.count ?? null,
    centre: size(written.centre),
    leaning: written.leaning ?? null,
    patches: written.patches?.map((patch, i) => fillPatch(patch, i, written, path, frame)) ?? null,
    drawnOn: written["drawn-on"] ?? null,
    path: where.path,
    at: where.at,
  };
}

type WrittenPatch = NonNullable<WrittenCell["patches"]>[number];

/** A patch by its corners. Counted in squares, a corner is a plain number, whatever the file measures in. */
function fillPatch(
  { part, corners }: WrittenPatch,
  index: number,
  written: WrittenCell,
  cellPath: Path,
  frame: QuiltFrame,
): PatchSpec {
  const path = [...cellPath, "patches", index];
  const read = (length: WrittenLength, place: Path): FractionTicks => {
    if (written["drawn-on"] === undefined) return fraction(length.value);
    if (length.unit !== null) {
      const where = { path: pathText(place), at: frame.document.valueAt(place) };
      frame.diagnostics.push(cornerInSquares(where, length.text));
    }
    const counted = parseLength(length.text, "mm");
    return fraction(counted.ok ? div(counted.value, fromInteger(TICKS_PER.mm)) : length.value);
  };
  return {
    role: part,
    corners: corners.flatMap(([x, y], i) =>
      x === undefined || y === undefined
        ? []
        : [
            {
              x: read(x, [...path, "corners", i, 0]),
              y: read(y, [...path, "corners", i, 1]),
            },
          ],
    ),
    path: pathText(path),
    at: frame.document.valueAt(path),
  };
}

/** Fills in one block design; a block of one unit needs no drawing. */
export function fillBlock(key: string, written: WrittenBlock, frame: QuiltFrame): BlockSpec {
  const path: Path = ["blocks", key];
  const where = { path: pathText(path), at: frame.document.keyAt(path) };
  const cells: CellSpec[] = [];
  let grid: DrawnRow[] = [];
  if (written.cell !== undefined) {
    const cell = fillCell("*", written.cell, [...path, "cell"], frame);
    if (cell !== null) cells.push(cell);
    grid = [{ cells: [{ code: "*", turn: 0, colourway: "" }], ...where }];
  } else if (written.grid !== undefined) {
    const explained = Object.entries(written.cells ?? {});
    for (const [code, cell] of explained) {
      const filled = fillCell(code, cell, [...path, "cells", code], frame);
      if (filled !== null) cells.push(filled);
    }
    const known = new Set(explained.map(([code]) => code));
    grid = readDrawing(written.grid, [...path, "grid"], known, frame.document, frame.diagnostics);
  } else frame.diagnostics.push(blockHasNoDrawing(where, key));
  return {
    key,
    name: written.name ?? key,
    across: written.size === undefined ? null : fraction(written.size.across),
    down: written.size === undefined ? null : fraction(written.size.down),
    columns: written.columns?.map((each) => fraction(each.value)) ?? null,
    lines: written.lines?.map((each) => fraction(each.value)) ?? null,
    grid,
    cells,
    roles: roleMap(written.roles, [...path, "roles"], frame),
    motifs:
      written.motifs === undefined
        ? null
        : {
            ...written.motifs,
            path: pathText([...path, "motifs"]),
            at: frame.document.valueAt([...path, "motifs"]),
          },
    ...where,
  };
}

export function fillColourway(
  name: string,
  written: Readonly<Record<string, string>>,
  frame: QuiltFrame,
): ColourwaySpec {
  const path: Path = ["colourways", name];
  const { like = "", ...roles } = written;
  return {
    name,
    like,
    roles: roleMap(roles, path, frame),
    path: pathText(path),
    at: frame.document.keyAt(path),
  };
}
