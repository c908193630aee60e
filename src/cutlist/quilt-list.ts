import { pieceJoined, pieceTooWide } from "../diagnostics/planning.ts";
import {
  backingTooNarrow,
  cannotBeCut,
  mitreDirectional,
  roundingDiffers,
} from "../diagnostics/quilt-plan.ts";
import type { Diagnostic, Outcome, Place } from "../diagnostics/types.ts";
import { formatLength, formatSize } from "../length/format.ts";
import type { QuiltWork } from "../quilt/index.ts";
import type { TriangleDemand, UnitDemand } from "../quilt/work-types.ts";
import type { FabricWord, QuiltSpec } from "../spec/quilt-types.ts";
import type { FabricSpec } from "../spec/types.ts";
import { usableWidth } from "../stock/usable-width.ts";
import { joinFromStrips, lengthsSaid, needsJoin } from "./joins.ts";
import { letterPieces } from "./letters.ts";
import { listCuts } from "./list-cuts.ts";
import { mergePieces } from "./merge.ts";
import { backingPiece, bindingPiece, waddingPiece } from "./quilt-finishing.ts";
import { foundationPieces } from "./quilt-foundation.ts";
import { stripPiece, trianglePieces } from "./quilt-strips.ts";
import { listUnit, type OfFabric } from "./quilt-units.ts";
import type { CutList, CutPiece } from "./types.ts";

/**
 * Lists what is to be cut from each fabric for a quilt laid out: units by their methods, borders and sashes,
 * setting triangles, binding, backing and wadding, and pieces the file adds; sizes alike gathered, each with
 * what it is for.
 */
export function listQuiltCuts(spec: QuiltSpec, work: QuiltWork): Outcome<CutList[]> {
  const diagnostics: Diagnostic[] = [];
  const fabrics = new Map(spec.fabrics.map((fabric) => [fabric.name, fabric]));
  const found: OfFabric[] = [];
  const add = (fabric: FabricSpec | undefined, ...pieces: (CutPiece | null)[]): void => {
    if (fabric === undefined) return;
    for (const piece of pieces) if (piece !== null) found.push({ fabric: fabric.name, piece });
  };
  for (const demand of work.units) {
    const pieces = listUnit(demand, fabrics, spec, diagnostics);
    for (const { fabric, piece } of pieces) {
      const cloth = fabrics.get(fabric);
      const where = { text: demand.text, path: demand.path, at: demand.at };
      if (cloth !== undefined) add(cloth, settled(piece, cloth, where, spec, diagnostics));
    }
    noteUnitRounding(demand, spec, diagnostics);
  }
  for (const triangle of work.triangles) {
    const fabric = fabrics.get(triangle.fabric);
    if (fabric !== undefined) add(fabric, ...trianglePieces(triangle, fabric));
    noteTriangleRounding(triangle, spec, diagnostics);
  }
  for (const strip of work.strips) {
    const fabric = fabrics.get(strip.fabric);
    if (fabric !== undefined)
      add(fabric, settled(stripPiece(strip, fabric), fabric, strip, spec, diagnostics));
  }
  for (const fabric of spec.fabrics) {
    for (const piece of foundationPieces(work, fabric)) {
      const where = { text: piece.uses[0]?.text ?? "", path: "foundation", at: spec.foundation?.at ?? null };
      add(fabric, settled(piece, fabric, where, spec, diagnostics));
    }
  }
  warnOfMitres(spec, fabrics, diagnostics);
  addFinishing(spec, work, fabrics, add, diagnostics);
  const written = listCuts({ ...spec, kind: "cut-list" });
  diagnostics.push(...written.diagnostics);
  for (const list of written.value ?? []) add(list.fabric, ...list.pieces);
  const value = spec.fabrics.map((fabric): CutList => {
    const own = found.filter((each) => each.fabric === fabric.name).map((each) => each.piece);
    return { fabric, pieces: letterPieces(mergePieces(withoutClashingTrims(own), fabric.print)) };
  });
  const failed = diagnostics.some((each) => each.severity === "error");
  return { value: failed ? null : value.filter((list) => list.pieces.length > 0), diagnostics };
}

/** A long strip joined from full widths where it must be; a strip that fits in no way is reported. */
function settled(
  piece: CutPiece,
  fabric: FabricSpec,
  where: { text: string; path: string; at: Place | null },
  spec: QuiltSpec,
  diagnostics: Diagnostic[],
): CutPiece | null {
  const usable = usableWidth(fabric);
  const at = { piece: where.text, fabric: fabric.name, path: where.path, at: where.at };
  if (piece.cut === "strips" && needsJoin(piece, usable)) {
    const joined = joinFromStrips(piece, usable, spec.ruler);
    if (joined !== null) {
      diagnostics.push(pieceJoined(at, lengthsSaid(joined.joined!)));
      return joined;
    }
  }
  const least = piece.turnable ? Math.min(piece.across, piece.along) : piece.across;
  if (least <= usable || needsJoin(piece, usable)) return piece;
  diagnostics.push(
    pieceTooWide(at, {
      size: formatSize(piece.across, piece.along, spec.ruler),
      usable: formatLength(usable, spec.ruler),
      over: formatLength(least - usable, spec.ruler),
      turnHelps: false,
      // What may lie along the selvage has been tried so: only a print that forbids it comes this far.
      lengthwiseHelps: false,
    }),
  );
  return null;
}

function warnOfMitres(
  spec: QuiltSpec,
  fabrics: ReadonlyMap<string, FabricSpec>,
  diagnostics: Diagnostic[],
): void {
  for (const border of spec.borders) {
    const fabric = fabrics.get(border.fabric?.word ?? "");
    if (border.corners !== "mitred" || fabric === undefined || fabric.print.kind === "none") continue;
    diagnostics.push(mitreDirectional(border, border.name, fabric.name, spec.prints !== "quilt"));
  }
}

function addFinishing(
  spec: QuiltSpec,
  work: QuiltWork,
  fabrics: ReadonlyMap<string, FabricSpec>,
  add: (fabric: FabricSpec | undefined, piece: CutPiece | null) => void,
  diagnostics: Diagnostic[],
): void {
  const sizeBeyond = (overhang: number): string =>
    formatSize(work.top.across + 2 * overhang, work.top.down + 2 * overhang, spec.ruler);
  const orFault = (
    piece: CutPiece | null,
    what: string,
    fabric: FabricSpec,
    where: { path: string; at: Place | null },
    beyond: number | null = null,
  ): CutPiece | null => {
    if (piece !== null) return piece;
    const usable = formatLength(usableWidth(fabric), spec.ruler);
    const size = beyond === null ? null : sizeBeyond(beyond);
    diagnostics.push(
      size === null
        ? cannotBeCut(where, what, fabric.name, usable)
        : backingTooNarrow(where, what, fabric.name, {
            usable,
            seams: formatLength(2 * spec.seam, spec.ruler),
            size,
          }),
    );
    return piece;
  };
  const of = (word: FabricWord | null): FabricSpec | undefined =>
    word === null ? undefined : fabrics.get(word.word);
  const { binding, backing, wadding } = spec;
  const bound = of(binding?.fabric ?? null);
  if (binding !== null && bound !== undefined) {
    add(bound, orFault(bindingPiece(binding, bound, work, spec), "binding", bound, binding));
  }
  const back = of(backing?.fabric ?? null);
  if (backing !== null && back !== undefined) {
    add(back, orFault(backingPiece(backing, back, work, spec), "backing", back, backing, backing.overhang));
  }
  const padded = of(wadding?.fabric ?? null);
  const piece = waddingPiece(padded ?? null, work, spec, diagnostics);
  if (wadding !== null && padded !== undefined) add(padded, orFault(piece, "wadding", padded, wadding));
}

/** One square may serve units trimmed to different sizes: then each use says its own. */
function withoutClashingTrims(pieces: readonly CutPiece[]): CutPiece[] {
  const key = (piece: CutPiece): string =>
    JSON.stringify([
      Math.min(piece.across, piece.along),
      Math.max(piece.across, piece.along),
      piece.turnable,
      piece.fullWidth,
      piece.subcut,
      piece.diagonal,
    ]);
  const trims = new Map<string, Set<string>>();
  for (const piece of pieces) {
    const seen = trims.get(key(piece)) ?? new Set<string>();
    seen.add(JSON.stringify(piece.trimTo));
    trims.set(key(piece), seen);
  }
  return pieces.map((piece) => ((trims.get(key(piece))?.size ?? 1) > 1 ? { ...piece, trimTo: null } : piece));
}

/** Parts of one size are told together. */
function noteUnitRounding(demand: UnitDemand, spec: QuiltSpec, diagnostics: Diagnostic[]): void {
  const told = new Map<string, string[]>();
  for (const piece of demand.recipes[0]?.pieces ?? []) {
    if (piece.otherRounding === null) continue;
    const { across, along } = piece.otherRounding;
    const key = `${formatSize(piece.across, piece.along, spec.ruler)}|${formatSize(across, along, spec.ruler)}`;
    const parts = told.get(key) ?? [];
    if (!parts.includes(piece.role)) parts.push(piece.role);
    told.set(key, parts);
  }
  for (const [key, parts] of told) {
    const [taken = "", other = ""] = key.split("|");
    const where = { path: demand.path, at: demand.at };
    const what = `${demand.text}, ${parts.join(" and ")}`;
    diagnostics.push(roundingDiffers(where, what, taken, other, spec.rounding === "trade"));
  }
}

function noteTriangleRounding(demand: TriangleDemand, spec: QuiltSpec, diagnostics: Diagnostic[]): void {
  if (demand.otherRounding === null) return;
  const say = (side: number): string => formatLength(side, spec.ruler);
  diagnostics.push(
    roundingDiffers(
      { path: demand.path, at: demand.at },
      demand.text,
      say(demand.square),
      say(demand.otherRounding),
      spec.rounding === "trade",
    ),
  );
}
