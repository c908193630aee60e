import { pieceJoined, pieceTooWide } from "../../diagnostics/planning.ts";
import type { PieceTold } from "../../diagnostics/purposes.ts";
import {
  backingSideways,
  backingTooNarrow,
  cannotBeCut,
  mitreDirectional,
  roundingDiffers,
} from "../../diagnostics/quilts/quilt-plan.ts";
import type { Diagnostic, Outcome, Place } from "../../diagnostics/types.ts";
import { formatLength, formatSize } from "../../length/format.ts";
import type { SpokenSize } from "../../length/spoken.ts";
import type { QuiltWork } from "../../quilt/index.ts";
import { saySizeBeside } from "../../quilt/say.ts";
import { onBolt } from "../../quilt/turning/turning.ts";
import type { PatchShape } from "../../quilt/units/types.ts";
import type { TriangleDemand, UnitDemand } from "../../quilt/work-types.ts";
import type { FabricWord, QuiltSpec } from "../../spec/quilt-types.ts";
import type { FabricSpec } from "../../spec/types.ts";
import { usableWidth } from "../../stock/usable-width.ts";
import { withBackingAccount, withBindingAccount } from "../finishing-account.ts";
import { joinFromStrips, needsJoin } from "../joins.ts";
import { type LettersOfFabric, letterMarked } from "../letters.ts";
import { listCuts } from "../list-cuts.ts";
import { type Marked, mergeMarked } from "../merge.ts";
import { standingInStrips } from "../nested-cut.ts";
import { type Listed, recordUnit } from "../record/record-units.ts";
import type { UnitRecord } from "../record/unit-record.ts";
import { isHalfTurned } from "../shapes.ts";
import { shareSpares } from "../share-spares.ts";
import type { CutList, CutPiece } from "../types.ts";
import { backingPanels, backingPiece, bindingLength, bindingPiece, waddingPiece } from "./quilt-finishing.ts";
import { foundationPieces } from "./quilt-foundation.ts";
import { stripPiece, trianglePieces } from "./quilt-strips.ts";
import { type ListedUnit, listUnit, type OfFabric } from "./quilt-units.ts";

/** What is cut for a quilt, and what is known of how its units are made from it. */
export interface QuiltCuts {
  cutLists: CutList[];
  /** How the units of every demand are made, in the order of the demands. */
  made: Listed[];
  /** By mark, the letter of the bag that its pieces are in. */
  letters: ReadonlyMap<number, string>;
  /** Marks of pieces whose template is their bag's turned half round. */
  halfTurned: ReadonlySet<number>;
}

/**
 * Lists what is to be cut from each fabric for a quilt laid out: units by their methods, borders and sashes,
 * setting triangles, binding, backing and wadding, and pieces the file adds; sizes alike gathered, each with
 * what it is for.
 * @param known letters that bags have already, by fabric
 */
export function listQuiltCuts(
  spec: QuiltSpec,
  work: QuiltWork,
  known: ReadonlyMap<string, LettersOfFabric> | null = null,
): Outcome<QuiltCuts> {
  const diagnostics: Diagnostic[] = [];
  const fabrics = new Map(spec.fabrics.map((fabric) => [fabric.name, fabric]));
  const units = listUnits(spec, work, fabrics, diagnostics);
  const others = listBesideUnits(spec, work, fabrics, diagnostics);
  const written = listCuts({ ...spec, kind: "cut-list" });
  diagnostics.push(...written.diagnostics);
  const asked = (written.value ?? []).flatMap((list) =>
    list.pieces.map((piece): OfFabric => ({ fabric: list.fabric.name, piece: asOwn(piece), marks: [] })),
  );
  if (diagnostics.some((each) => each.severity === "error")) return { value: null, diagnostics };
  const found = [...units.pieces, ...others, ...asked];
  return { value: inBags(spec, { ...units, pieces: found }, fabrics, known), diagnostics };
}

/** The pieces of all units, with the marks by which their bags are found again, and how the units are made. */
function listUnits(
  spec: QuiltSpec,
  work: QuiltWork,
  fabrics: ReadonlyMap<string, FabricSpec>,
  diagnostics: Diagnostic[],
): ListedUnit {
  const pieces: OfFabric[] = [];
  const made: Listed[] = [];
  let marked = 0;
  const next = (): number => {
    marked += 1;
    return marked;
  };
  const listing = { fabrics, straightenSets: spec.straightenSets.off, next };
  for (const [order, demand] of work.units.entries()) {
    const listed = listUnit(demand, order, listing, diagnostics);
    made.push(...listed.made);
    for (const { fabric, piece, marks } of listed.pieces) {
      const cloth = fabrics.get(fabric);
      const where = { piece: demand.told, path: demand.path, at: demand.at };
      const cut = cloth === undefined ? null : settled(piece, cloth, where, spec, diagnostics);
      if (cut !== null) pieces.push({ fabric, piece: cut, marks });
    }
    noteUnitRounding(demand, spec, diagnostics);
  }
  return { pieces, made };
}

/** Setting triangles, borders and long sashes, foundation, binding, backing and wadding. */
function listBesideUnits(
  spec: QuiltSpec,
  work: QuiltWork,
  fabrics: ReadonlyMap<string, FabricSpec>,
  diagnostics: Diagnostic[],
): OfFabric[] {
  const found: OfFabric[] = [];
  const add = (fabric: FabricSpec | undefined, ...pieces: (CutPiece | null)[]): void => {
    if (fabric === undefined) return;
    for (const piece of pieces) if (piece !== null) found.push({ fabric: fabric.name, piece, marks: [] });
  };
  for (const triangle of work.triangles) {
    const fabric = fabrics.get(triangle.fabric);
    if (fabric !== undefined) add(fabric, ...trianglePieces(triangle, fabric));
    noteTriangleRounding(triangle, spec, diagnostics);
  }
  for (const strip of work.strips) {
    const fabric = fabrics.get(strip.fabric);
    if (fabric !== undefined)
      add(
        fabric,
        settled(stripPiece(strip, fabric), fabric, { ...strip, piece: strip.purpose }, spec, diagnostics),
      );
  }
  for (const fabric of spec.fabrics) {
    for (const piece of foundationPieces(work, fabric)) {
      const [use] = piece.uses;
      if (use === undefined) continue;
      const where = { piece: use.purpose, path: "foundation", at: spec.foundation?.at ?? null };
      add(fabric, settled(piece, fabric, where, spec, diagnostics));
    }
  }
  warnOfMitres(spec, fabrics, diagnostics);
  addFinishing(spec, work, fabrics, add, diagnostics);
  return found;
}

/** Pieces cut alike gathered into lettered bags, by fabric, and the bags that the pieces of units end up in. */
function inBags(
  spec: QuiltSpec,
  { pieces: found, made }: ListedUnit,
  fabrics: ReadonlyMap<string, FabricSpec>,
  known: ReadonlyMap<string, LettersOfFabric> | null,
): QuiltCuts {
  const letters = new Map<number, string>();
  const halfTurned = new Set<number>();
  const templates = templatesByMark(made, fabrics);
  let lettered = 0;
  const all = spec.fabrics.map((fabric): CutList => {
    const own = found.filter((each) => each.fabric === fabric.name);
    const merged = mergeMarked(withoutClashingTrims(own), fabric.print);
    const bags = letterMarked(
      shareSpares(merged, fabric, made, fabrics),
      lettered,
      known?.get(fabric.name) ?? null,
    );
    lettered += bags.length;
    for (const { piece, marks } of bags) for (const mark of marks) letters.set(mark, piece.letter);
    for (const { piece, marks } of bags)
      for (const mark of marks)
        if (isHalfTurned(piece.shape, templates.get(mark), fabric.print)) halfTurned.add(mark);
    return { fabric, pieces: bags.map(({ piece }) => standingInStrips(piece, fabric.print, spec.ruler)) };
  });
  const cutLists = all.filter((list) => list.pieces.length > 0);
  return { cutLists, made, letters, halfTurned };
}

/** Templates as they lie on the bolt, by the mark of the pieces that are cut along them. */
function templatesByMark(
  made: readonly Listed[],
  fabrics: ReadonlyMap<string, FabricSpec>,
): Map<number, PatchShape> {
  const found = new Map<number, PatchShape>();
  for (const { demand, cover } of made)
    for (const piece of cover.pieces) {
      if (piece.shape === null) continue;
      const axis = fabrics.get(demand.fabrics[piece.role] ?? "")?.print.axis ?? "along";
      const { template } = onBolt({ ...piece, template: piece.shape }, axis);
      if (template !== null) for (const mark of piece.marks) found.set(mark, template);
    }
  return found;
}

/** The record of how every unit of the quilt is made. */
export function recordUnits({ made, letters, halfTurned }: QuiltCuts, spec: QuiltSpec): UnitRecord[] {
  const fabrics = new Map(spec.fabrics.map((fabric) => [fabric.name, fabric]));
  const record = {
    letterOf: (mark: number) => letters.get(mark) ?? "",
    halfTurned: (mark: number) => halfTurned.has(mark),
    fabrics,
    seam: spec.seam,
  };
  // Units that are one patch go by their bag, so that the numbers of the others have no gaps.
  let number = 0;
  return made.map((listed) => {
    const own = recordUnit(listed, number, record);
    if (own.name === `U${number + 1}`) number += 1;
    return own;
  });
}

/** A long strip joined from full widths where it must be; a strip that fits in no way is reported. */
function settled(
  piece: CutPiece,
  fabric: FabricSpec,
  where: { piece: PieceTold; path: string; at: Place | null },
  spec: QuiltSpec,
  diagnostics: Diagnostic[],
): CutPiece | null {
  const usable = usableWidth(fabric);
  const at = { piece: where.piece, ruler: spec.ruler, fabric: fabric.name, path: where.path, at: where.at };
  if (piece.cut === "strips" && needsJoin(piece, usable)) {
    const joined = joinFromStrips(piece, usable, spec);
    if (joined !== null) {
      diagnostics.push(pieceJoined(at, joined.joined!.lengths));
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
    const round = border.prints === null ? spec.prints !== "quilt" : border.prints !== "upright";
    diagnostics.push(mitreDirectional(border, border.name, fabric.name, round));
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
    const piece = bindingPiece(binding, bound, work, spec);
    const length = bindingLength(work.top, binding);
    const told = piece === null ? null : withBindingAccount(piece, binding, length, spec.seam);
    add(bound, orFault(told, "binding", bound, binding));
  }
  const back = of(backing?.fabric ?? null);
  if (backing !== null && back !== undefined) {
    const panels = backingPanels(backing, back, work, spec);
    if (panels?.sideways === true)
      diagnostics.push(backingSideways(backing, back.name, panels.seams, back.print.axis === "along"));
    const piece = backingPiece(backing, back, work, spec);
    const told =
      piece === null ? null : withBackingAccount(piece, work, spec.seam, panels?.seams ?? "vertical");
    add(back, orFault(told, "backing", back, backing, backing.overhang));
  }
  const padded = of(wadding?.fabric ?? null);
  const piece = waddingPiece(padded ?? null, work, spec, diagnostics);
  if (wadding !== null && padded !== undefined) add(padded, orFault(piece, "wadding", padded, wadding));
}

/** Said to be the maker's own, so that nobody looks for the step that sews it. */
function asOwn(piece: CutPiece): CutPiece {
  return { ...piece, uses: piece.uses.map((use) => ({ ...use, own: true })) };
}

/** One square may serve units trimmed to different sizes: then each use says its own. */
function withoutClashingTrims(pieces: readonly Marked[]): Marked[] {
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
  for (const { piece } of pieces) {
    const seen = trims.get(key(piece)) ?? new Set<string>();
    seen.add(JSON.stringify(piece.trimTo));
    trims.set(key(piece), seen);
  }
  return pieces.map(({ piece, marks }) => {
    const clash = (trims.get(key(piece))?.size ?? 1) > 1;
    return { piece: clash ? { ...piece, trimTo: null } : piece, marks };
  });
}

/** Parts of one size are told together. */
function noteUnitRounding(demand: UnitDemand, spec: QuiltSpec, diagnostics: Diagnostic[]): void {
  const told = new Map<string, { parts: string[]; sizes: [SpokenSize, SpokenSize]; short: boolean }>();
  for (const piece of demand.recipes[0]?.pieces ?? []) {
    if (piece.otherRounding === null) continue;
    const { across, along } = piece.otherRounding;
    const sizes = saySizeBeside([piece.across, piece.along], [across, along], spec.ruler);
    const key = JSON.stringify(sizes);
    const own = told.get(key) ?? { parts: [], sizes, short: false };
    if (!own.parts.includes(piece.role)) own.parts.push(piece.role);
    own.short ||= piece.tradeShort;
    told.set(key, own);
  }
  for (const { parts, sizes, short } of told.values()) {
    const [taken, other] = sizes;
    const where = { path: demand.path, at: demand.at };
    const what = { unit: demand.told, parts };
    diagnostics.push(roundingDiffers(where, what, taken, other, short ? "too-small" : spec.rounding));
  }
}

function noteTriangleRounding(demand: TriangleDemand, spec: QuiltSpec, diagnostics: Diagnostic[]): void {
  if (demand.otherRounding === null) return;
  const { square, otherRounding: other } = demand;
  const [taken, otherwise] = saySizeBeside([square, square], [other, other], spec.ruler);
  diagnostics.push(
    roundingDiffers(
      { path: demand.path, at: demand.at },
      { triangles: demand.part },
      taken,
      otherwise,
      demand.tradeShort ? "too-small" : spec.rounding,
    ),
  );
}
