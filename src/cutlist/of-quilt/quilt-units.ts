import type { Purpose } from "../../diagnostics/purposes.ts";
import { directionByOtherMethod, directionSpares } from "../../diagnostics/quilts/quilt.ts";
import type { Diagnostic } from "../../diagnostics/types.ts";
import type { Ticks } from "../../length/types.ts";
import { quartersToBolt, turnLaid } from "../../quilt/turning/turning.ts";
import type { PatchShape, Recipe } from "../../quilt/units/types.ts";
import type { SpotFacts, UnitDemand, UnitWant } from "../../quilt/work-types.ts";
import type { FabricSpec } from "../../spec/types.ts";
import { usableWidth } from "../../stock/usable-width.ts";
import type { Cloths, Cover, CoverPiece, NextMark } from "../cover.ts";
import type { Listed } from "../record/record-units.ts";
import { addShapes, shapeNumber } from "../shapes.ts";
import type { CutPiece } from "../types.ts";
import { coverDemand } from "./quilt-ways.ts";

/** A piece and the fabric it is cut from. */
export interface OfFabric {
  fabric: string;
  piece: CutPiece;
  /** Numbers by which the record of a unit finds the bag it ends up in; empty for what belongs to no unit. */
  marks: readonly number[];
}

/** The pieces of one kind of unit, and how they are sewn. */
export interface ListedUnit {
  pieces: OfFabric[];
  made: Listed[];
}

/** What the units of a quilt are listed with. */
export interface Listing {
  fabrics: ReadonlyMap<string, FabricSpec>;
  /** Taken off the end of a strip set before its first segment. */
  straightenSets: Ticks;
  next: NextMark;
}

/**
 * The pieces for one kind of unit: the method wanted when it keeps every print's direction, else the least
 * cloth that can; said in a diagnostic.
 */
export function listUnit(
  demand: UnitDemand,
  order: number,
  { fabrics, straightenSets, next }: Listing,
  diagnostics: Diagnostic[],
): ListedUnit {
  const cloths = clothsOf(demand, fabrics, straightenSets, true);
  const chosen = chooseRecipe(demand, cloths, fabrics, next, diagnostics);
  if (chosen === null) return { pieces: [], made: [] };
  const made = chosen.map(({ recipe, cover, wants }): Listed => {
    const wantIndex = wants.map((want) => demand.wants.indexOf(want));
    return { demand, order, wantIndex, recipe, cover, wants };
  });
  const pieces = made.flatMap(({ recipe, cover, wants }) => {
    const need = needOf(demand.spots, wants);
    return gather(cover.pieces, demand, fabrics).flatMap(({ piece, parts }): OfFabric[] => {
      const fabric = fabrics.get(demand.fabrics[piece.role] ?? "");
      if (fabric === undefined) return [];
      const purpose = purposeOf(parts, recipe, demand);
      const cut = asCutPiece(piece, purpose, recipe.trimTo, fabric, need);
      return [{ fabric: fabric.name, piece: cut, marks: piece.marks }];
    });
  });
  return { pieces, made };
}

/** Pieces of one size, outline and fabric that serve several parts of the unit, as one line. */
function gather(
  pieces: readonly CoverPiece[],
  demand: UnitDemand,
  fabrics: ReadonlyMap<string, FabricSpec>,
): { piece: CoverPiece; parts: string[] }[] {
  const lines = new Map<string, { piece: CoverPiece; parts: string[] }>();
  const shapes = new Map<string, PatchShape[]>();
  for (const piece of pieces) {
    const { role, count: _count, made, marks, shape, ...size } = piece;
    const name = demand.fabrics[role] ?? "";
    // Seen with the print's up at the top, whichever way it runs on the cloth.
    const print = { kind: fabrics.get(name)?.print.kind ?? "none", axis: "along" } as const;
    const known = shapes.get(name) ?? [];
    shapes.set(name, known);
    const key = JSON.stringify([name, size, shape === null ? null : shapeNumber(known, shape, print)]);
    const before = lines.get(key);
    if (before === undefined) {
      lines.set(key, { piece, parts: [role] });
      continue;
    }
    before.piece = {
      ...before.piece,
      count: before.piece.count + piece.count,
      shape:
        before.piece.shape === null || shape === null ? shape : addShapes(before.piece.shape, shape, print),
      made: [...before.piece.made, ...made],
      marks: [...before.piece.marks, ...marks],
    };
    if (!before.parts.includes(role)) before.parts.push(role);
  }
  return [...lines.values()];
}

function clothsOf(
  demand: UnitDemand,
  fabrics: ReadonlyMap<string, FabricSpec>,
  straightenSets: Ticks,
  minded: boolean,
): Cloths {
  const of = (role: string): FabricSpec | undefined => fabrics.get(demand.fabrics[role] ?? "");
  return {
    direction: (role) => {
      const kind = of(role)?.print.kind ?? "none";
      return kind === "none" || !minded ? undefined : kind;
    },
    axis: (role) => of(role)?.print.axis ?? "along",
    usable: (role) => {
      const fabric = of(role);
      return fabric === undefined ? 0 : usableWidth(fabric);
    },
    straightenSets,
  };
}

interface Chosen {
  recipe: Recipe;
  cover: Cover;
  wants: readonly UnitWant[];
}

function chooseRecipe(
  demand: UnitDemand,
  cloths: Cloths,
  fabrics: ReadonlyMap<string, FabricSpec>,
  next: NextMark,
  diagnostics: Diagnostic[],
): Chosen[] | null {
  const directional = Object.keys(demand.fabrics).filter((role) => cloths.direction(role) !== undefined);
  const wanted = demand.recipes[0];
  if (wanted === undefined) return null;
  const where = { path: demand.path, at: demand.at };
  const free = (recipe: Recipe, minded: Cloths, wants = demand.wants): Chosen[] => {
    const cover = coverDemand(recipe, demand, wants, minded, next);
    return cover === null ? [] : [{ recipe, cover, wants }];
  };
  const merged = [{ prints: {}, count: demand.wants.reduce((sum, want) => sum + want.count, 0) }];
  if (directional.length === 0) {
    // Without direction only the cloth's width can stand in the way of a method (a segment that is too long).
    for (const recipe of demand.recipes) {
      const found = free(recipe, cloths, merged);
      if (found.length > 0) return found;
    }
    return null;
  }
  const names = [...new Set(directional.map((role) => demand.fabrics[role] ?? ""))];
  const unit = demand.told;
  const all = demand.recipes.flatMap((recipe) => free(recipe, cloths));
  const first = all.find((each) => each.recipe === wanted);
  if (first !== undefined && (demand.chosen || first.cover.spare <= 0)) {
    if (first.cover.spare > 0) {
      diagnostics.push(directionSpares(where, demand.told, wanted.method, first.cover.spare));
    }
    return [first];
  }
  const mixed = first === undefined ? mixMethods(demand, wanted, cloths, next) : null;
  const best = [...all].sort((a, b) => a.cover.cloth - b.cover.cloth)[0];
  if (best !== undefined && (mixed === null || best.cover.cloth < sumCloth(mixed))) {
    if (best.recipe !== wanted) {
      diagnostics.push(directionByOtherMethod(where, unit, names, wanted.method, [best.recipe.method]));
    } else if (best.cover.spare > 0) {
      diagnostics.push(directionSpares(where, demand.told, wanted.method, best.cover.spare));
    }
    return [best];
  }
  if (mixed !== null) {
    const others = [...new Set(mixed.map(({ recipe }) => recipe.method))].filter(
      (name) => name !== wanted.method,
    );
    diagnostics.push(directionByOtherMethod(where, unit, names, wanted.method, others));
    return mixed;
  }
  diagnostics.push(directionByOtherMethod(where, unit, names, wanted.method, []));
  return free(wanted, clothsOf(demand, fabrics, cloths.straightenSets, false), merged);
}

function sumCloth(parts: readonly Chosen[]): number {
  return parts.reduce((sum, { cover }) => sum + cover.cloth, 0);
}

/** The wanted method for the directions it can keep, the least cloth for the others; null when some have none. */
function mixMethods(demand: UnitDemand, wanted: Recipe, cloths: Cloths, next: NextMark): Chosen[] | null {
  const parts: Chosen[] = [];
  for (const want of demand.wants) {
    const wants = [want];
    const ways = demand.recipes.flatMap((recipe) => {
      const cover = coverDemand(recipe, demand, wants, cloths, next);
      return cover === null ? [] : [{ recipe, cover, wants }];
    });
    const kept =
      ways.find(({ recipe }) => recipe === wanted) ?? ways.sort((a, b) => a.cover.cloth - b.cover.cloth)[0];
    if (kept === undefined) return null;
    parts.push(kept);
  }
  return parts;
}

/** Patches still to be made, so that spares are told from patches that are used. Counted down as pieces take them. */
interface Need {
  left: Map<string, number>;
  spots: ReadonlyMap<string, SpotFacts>;
}

function likeness(spot: SpotFacts): string {
  return `${spot.role} ${spot.shape}`;
}

function needOf(spots: readonly SpotFacts[], wants: readonly UnitWant[]): Need {
  const units = wants.reduce((sum, want) => sum + want.count, 0);
  const left = new Map<string, number>();
  for (const spot of spots) left.set(likeness(spot), (left.get(likeness(spot)) ?? 0) + units);
  return { left, spots: new Map(spots.map((spot) => [spot.spot, spot])) };
}

/** Finished area of the patches used from a piece, and their area with seam allowances on. */
function areasUsed(piece: CoverPiece, need: Need): { finished: number; raw: number } {
  let [finished, raw] = [0, 0];
  for (const { spot, count } of piece.made) {
    const facts = need.spots.get(spot);
    if (facts === undefined) continue;
    const left = need.left.get(likeness(facts)) ?? 0;
    const used = Math.min(left, count);
    need.left.set(likeness(facts), left - used);
    finished += used * facts.finished;
    raw += used * facts.raw;
  }
  return { finished: Math.round(finished), raw: Math.round(raw) };
}

function asCutPiece(
  piece: CoverPiece,
  purpose: Purpose,
  trimTo: Recipe["trimTo"],
  fabric: FabricSpec,
  need: Need,
): CutPiece {
  const directional = fabric.print.kind !== "none";
  // Strips are told as they are cut already.
  const strip = piece.set !== undefined;
  const quarters = piece.fullWidth || strip ? 0 : quartersToBolt(piece, fabric.print);
  const told = turnLaid({ ...piece, template: piece.shape }, quarters);
  const free = !directional && !piece.fullWidth && told.across !== told.along;
  const size = { across: told.across, along: told.along };
  // Longer than the fabric is wide: it lies along the selvage, beside strips when that takes less.
  const long = free && size.along > usableWidth(fabric);
  const cut = size.across * size.along * piece.count;
  const used = areasUsed(piece, need);
  const corners = Math.max(0, cut - used.raw);
  return {
    letter: "",
    label: "",
    ...size,
    fullWidth: piece.fullWidth,
    count: piece.count,
    turnable: free && !long,
    cut: long ? "either" : "strips",
    join: "no",
    uses: [{ purpose, count: piece.count }],
    subcut: piece.subcut,
    // A plain square is halved either way; a rectangle halved the other way gives mirror images.
    diagonal: directional || size.across !== size.along ? told.diagonal : "any",
    trimTo: trimTo.needed ? { across: trimTo.across, along: trimTo.along } : null,
    roundedUp: piece.roundedUp,
    notes: piece.set === undefined ? [] : [{ is: "set", ...piece.set }],
    ...(piece.beyond === undefined
      ? {}
      : { rests: [{ cause: "set-end", count: piece.count, across: piece.beyond }] }),
    ...(piece.shape === null ? {} : { shape: { ...piece.shape, ...told.template } }),
    corners,
    seams: cut - used.finished - corners,
  };
}

/** What the piece is for: where, which unit, how made, which part. */
function purposeOf(parts: readonly string[], recipe: Recipe, demand: UnitDemand): Purpose {
  const places = demand.uses.map(({ place }) => place);
  const single = recipe.pieces.length === 1 && recipe.unitsPerSet === 1 && recipe.stripSets.length === 0;
  if (single) return { for: "unit", places, made: null };
  const { needed, ...raw } = recipe.trimTo;
  const { kind, method } = recipe;
  return { for: "unit", places, made: { kind, method, parts, trimTo: needed ? raw : null } };
}
