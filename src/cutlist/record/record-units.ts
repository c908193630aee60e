import { nth } from "../../length/nth.ts";
import type { Ticks } from "../../length/types.ts";
import { asEighth } from "../../quilt/turning/whole-turns.ts";
import type { Eighth, Recipe, StripSet } from "../../quilt/units/types.ts";
import type { UnitDemand, UnitWant } from "../../quilt/work-types.ts";
import type { FabricSpec } from "../../spec/types.ts";
import { type Cover, type LaidBatch, type LaidPiece, type StripBatch, sameness } from "../cover.ts";
import { letterAt } from "../letters.ts";
import { loosePatches } from "./record-loose.ts";
import { recordSteps } from "./record-steps.ts";
import type {
  BatchRecord,
  HeapRecord,
  LaidRecord,
  PatchRecord,
  SeamRecord,
  StripSetRecord,
  UnitRecord,
} from "./unit-record.ts";

/** Units of one demand made by one recipe, before their bags have letters. */
export interface Listed {
  demand: UnitDemand;
  /** Index of the demand in the work, and of `wants` among its wants. */
  order: number;
  wantIndex: number[];
  recipe: Recipe;
  cover: Cover;
  wants: readonly UnitWant[];
}

/** What the record needs to know of the quilt's cloth and settings. */
export interface RecordOf {
  letterOf(mark: number): string;
  /** Whether the template of the bag is that of these pieces turned half round, which a two-way print allows. */
  halfTurned?(mark: number): boolean;
  fabrics: ReadonlyMap<string, FabricSpec>;
  /** Seam allowance in ticks. */
  seam: Ticks;
}

/** Where a piece of cloth in the unit's fabrics points, or null when its fabric has no direction. */
function directed(role: string, listed: Listed, of: RecordOf): "one-way" | "two-way" | null {
  const kind = of.fabrics.get(listed.demand.fabrics[role] ?? "")?.print.kind ?? "none";
  return kind === "none" ? null : kind;
}

/** Direction reflected in a diagonal, or in an upright line. */
const MIRRORED = {
  rising: (up: number): Eighth => asEighth(2 - up),
  falling: (up: number): Eighth => asEighth(6 - up),
  upright: (up: number): Eighth => asEighth(-up),
} as const;

/**
 * How a piece that is laid face down must lie, so that folded out it points `up`: the seam it is folded over is its
 * mirror. Derived geometry.
 */
function faceDownOf(recipe: Recipe, laid: LaidPiece, up: Eighth): Eighth | null {
  for (const step of recipe.steps) {
    if (step.do === "pair" && step.over === laid.piece) {
      return step.lines === "edges" ? MIRRORED.upright(up) : MIRRORED[step.line](up);
    }
    if (step.do === "flip") {
      const flipped = step.squares.find(({ piece }) => piece === laid.piece);
      if (flipped === undefined) continue;
      const rising = flipped.corner === "top-left" || flipped.corner === "bottom-right";
      return MIRRORED[rising ? "rising" : "falling"](up);
    }
    if (step.do === "small-on-large" && step.small === laid.piece)
      return MIRRORED[laid.list % 2 === 0 ? "falling" : "rising"](up);
  }
  return null;
}

function laidRecord(laid: LaidPiece, listed: Listed, of: RecordOf): LaidRecord {
  const piece = nth(listed.recipe.pieces, laid.piece);
  const fabric = listed.demand.fabrics[piece.role] ?? "";
  // Small squares go on from the lower right corner anticlockwise, the units they belong to a quarter on each time.
  const onLarge = listed.recipe.steps.some(
    (step) => step.do === "small-on-large" && step.small === laid.piece,
  );
  const up = laid.turn === null ? null : asEighth(2 * laid.turn - (onLarge ? 2 * laid.list : 0));
  return {
    piece: laid.piece,
    list: laid.list,
    role: piece.role,
    fabric,
    letter: of.letterOf(laid.mark),
    across: piece.across,
    along: piece.along,
    up,
    faceDown: up === null ? null : faceDownOf(listed.recipe, laid, up),
  };
}

/** The direction in which a unit of a set comes out, by role; null when one role would point two ways in it. */
function printsOf(
  unit: number,
  batch: LaidBatch,
  listed: Listed,
  of: RecordOf,
): Record<string, Eighth> | null {
  const prints: Record<string, Eighth> = {};
  for (const { piece: index, list, turn } of batch.laid) {
    const piece = listed.recipe.pieces[index];
    const kind = piece === undefined ? null : directed(piece.role, listed, of);
    if (piece === undefined || turn === null || kind === null) continue;
    for (const lie of piece.lies[list] ?? []) {
      if (lie.unit !== unit) continue;
      const print = asEighth((lie.print + 2 * turn) % sameness(kind));
      if (prints[piece.role] !== undefined && prints[piece.role] !== print) return null;
      prints[piece.role] = print;
    }
  }
  return prints;
}

function samePrints(a: Readonly<Record<string, number>>, b: Readonly<Record<string, number>>): boolean {
  const roles = new Set([...Object.keys(a), ...Object.keys(b)]);
  return [...roles].every((role) => a[role] === b[role]);
}

function batchRecord(batch: LaidBatch, listed: Listed, of: RecordOf): BatchRecord {
  const { recipe, wants } = listed;
  const minded = batch.laid.some(({ turn }) => turn !== null);
  return {
    sets: batch.sets,
    laid: batch.laid.map((laid) => laidRecord(laid, listed, of)),
    gives: Array.from({ length: recipe.unitsPerSet }, (_, unit) => {
      if (!minded) return 0;
      const prints = printsOf(unit, batch, listed, of);
      if (prints === null) return null;
      const found = wants.findIndex((want) => samePrints(want.prints, prints));
      return found < 0 ? null : found;
    }),
  };
}

/** Sets that are laid alike and give alike counted as one: they are one thing to do. */
function together(batches: readonly BatchRecord[]): BatchRecord[] {
  const known = new Map<string, BatchRecord>();
  for (const { sets, ...same } of batches) {
    const key = JSON.stringify(same);
    known.set(key, { sets: sets + (known.get(key)?.sets ?? 0), ...same });
  }
  return [...known.values()];
}

function height(set: StripSet, seam: Ticks): Ticks {
  const widths = set.strips.reduce((sum, { width }) => sum + width, 0);
  return widths - 2 * seam * (set.strips.length - 1);
}

function stripSetRecord(batch: StripBatch, listed: Listed, of: RecordOf): StripSetRecord | null {
  const set = listed.recipe.stripSets[batch.set];
  const units = listed.wants[batch.want]?.count ?? 0;
  if (set === undefined) return null;
  const { counted } = batch;
  const letterOf = (mark: number | null | undefined): string | null =>
    mark == null ? null : of.letterOf(mark);
  return {
    name: set.name,
    heap: batch.want,
    cut: set.cut,
    strips: set.strips.map(({ role, width }, i) => {
      const { full, last, turn } = batch.strips[i] ?? {};
      return {
        role,
        fabric: listed.demand.fabrics[role] ?? "",
        letter: letterOf(full),
        lastLetter: letterOf(last),
        beyond: full == null ? 0 : (batch.strips[i]?.beyond ?? 0),
        width,
        up: turn == null ? null : asEighth(2 * turn),
      };
    }),
    fullSets: counted.fullSets,
    fullLength: counted.fullLength,
    lastLength: counted.lastSegments === 0 ? 0 : counted.lastLength,
    height: height(set, of.seam),
    segment: set.segment,
    perFullSet: counted.segmentsPerFullSet,
    fromLast: counted.lastSegments,
    segments: units * set.segmentsPerUnit,
    segmentsPerUnit: set.segmentsPerUnit,
    turned: Array.from(
      { length: set.segmentsPerUnit },
      (_, segment) => set.strips[0]?.lies[segment]?.[0]?.print === 4,
    ),
    straighten: counted.straighten,
  };
}

/**
 * Seams between strips are sewn once for every set, the others once for every unit or set of units. Of loose pieces a
 * set is only cut together: no more units are sewn than are wanted.
 */
function seamRecords(
  recipe: Recipe,
  sets: number,
  units: number,
  strips: readonly StripSetRecord[],
): SeamRecord[] {
  const times = recipe.loose ? units / recipe.unitsPerSet : sets;
  const between = strips.flatMap(({ name, strips: own, fullSets, fullLength, lastLength }): SeamRecord[] => {
    const shared = { what: "strip-to-strip" as const, parts: [name], bias: false };
    const each = own.length - 1;
    return [
      { ...shared, length: fullLength, count: each * fullSets },
      { ...shared, length: lastLength, count: lastLength > 0 ? each : 0 },
    ].filter(({ count }) => count > 0);
  });
  const others = recipe.seams
    .filter(({ strips: ofStrips }) => ofStrips !== true)
    .map(({ what, parts, length, count, bias }) => ({
      what,
      ...(parts === undefined ? {} : { parts }),
      length,
      count: Math.ceil(count * times),
      bias,
    }));
  return [...between, ...others];
}

/** Patches of a unit that is sewn before it is cut: the bags they come out of, whichever set. */
function sewnPatches(
  want: UnitWant,
  listed: Listed,
  batches: readonly BatchRecord[],
  sets: readonly StripSetRecord[],
): PatchRecord[] {
  const lettersOf = (role: string): string[] => {
    const laid = batches.flatMap((batch) => batch.laid.filter((one) => one.role === role));
    const strips = sets.flatMap((set) => set.strips.filter((strip) => strip.role === role));
    const all = [
      ...laid.map(({ letter }) => letter),
      ...strips.flatMap(({ letter, lastLetter }) => [letter, lastLetter]),
    ];
    return [...new Set(all.filter((letter) => letter !== null))];
  };
  return listed.demand.spots.map(({ spot, role }) => ({
    spot,
    role,
    fabric: listed.demand.fabrics[role] ?? "",
    up: want.prints[role] ?? null,
    from: [],
    letters: lettersOf(role),
  }));
}

/**
 * The record of how one demand's units are made by one recipe.
 * @param index of the record in the quilt, for its name
 */
export function recordUnit(listed: Listed, index: number, of: RecordOf): UnitRecord {
  const { demand, recipe, cover, wants } = listed;
  const bound = cover.batches.filter((batch) => batch.kind === "sets");
  const loose = cover.batches.filter((batch) => batch.kind === "loose");
  const strips = cover.batches.filter((batch) => batch.kind === "strips");
  const batches = together(bound.map((batch) => batchRecord(batch, listed, of)));
  const stripSets = strips
    .map((batch) => stripSetRecord(batch, listed, of))
    .filter((record) => record !== null);
  const units = wants.reduce((sum, { count }) => sum + count, 0);
  const sets = bound.length > 0 ? bound.reduce((sum, batch) => sum + batch.sets, 0) : setsOf(recipe, units);
  const cut = recipe.loose ? loosePatches(loose, listed, of) : null;
  const heapPatches = wants.map((want, heap) => {
    const own = stripSets.filter((set) => set.heap === heap);
    const sewn = sewnPatches(want, listed, batches, own);
    return sewn.map((patch) => {
      const from = cut?.[heap]?.get(patch.spot) ?? [];
      return from.length === 0 ? patch : { ...patch, from, letters: [...new Set(from.map((f) => f.letter))] };
    });
  });
  const name = nameOf(heapPatches, index);
  const heaps = wants.map(
    (want, heap): HeapRecord => ({
      name: wants.length === 1 ? name : `${name}${letterAt(heap).toLowerCase()}`,
      count: want.count,
      prints: want.prints,
      patches: heapPatches[heap] ?? [],
    }),
  );
  return {
    name,
    kind: recipe.kind,
    method: recipe.method,
    told: demand.told,
    path: demand.path,
    demand: listed.order,
    wants: listed.wantIndex,
    uses: demand.uses,
    fabrics: demand.fabrics,
    raw: { across: recipe.trimTo.across, along: recipe.trimTo.along },
    trimmed: recipe.trimTo.needed,
    unitsPerSet: recipe.unitsPerSet,
    loose: recipe.loose,
    units,
    sets,
    spare: recipe.loose ? 0 : sets * recipe.unitsPerSet - units,
    heaps,
    batches,
    stripSets,
    steps: recordSteps(listed, of),
    seams: seamRecords(recipe, sets, units, stripSets),
    bonus: recipe.bonus.map(({ kind, count, unfinished }) => ({ kind, count: count * sets, unfinished })),
  };
}

/** Patches cut to shape are sewn unit by unit: whole sets are only a way to count them. */
function setsOf(recipe: Recipe, units: number): number {
  return Math.ceil(units / recipe.unitsPerSet);
}

/** A single patch goes by its bag's letter when it has only one; everything else by a number. */
function nameOf(heaps: readonly (readonly PatchRecord[])[], index: number): string {
  const patches = heaps.flat();
  const letters = new Set(patches.flatMap((patch) => patch.letters));
  const [only] = letters;
  const single = heaps.every((own) => own.length === 1) && letters.size === 1;
  return single && only !== undefined ? only : `U${index + 1}`;
}
