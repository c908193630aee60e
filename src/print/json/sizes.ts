import type { Ruler, Ticks } from "../../length/types.ts";
import type { MethodSaid, PieceSaid, UnitSizes } from "../../quilt/sizes/unit-sizes.ts";
import type { UnitListed } from "../../quilt/unit-list.ts";
import type { Words } from "../../words/index.ts";

/** One piece of a method, in words. */
export interface PieceWorded {
  part: string;
  /** As cut; null where that follows from the width of the fabric. */
  across: Ticks | null;
  along: Ticks;
  size: string;
  count: number;
  /** How it is cut further; empty when it is not. */
  further: string;
  formula: string;
  /** Size by the other rounding; empty when it is the same. */
  other: string;
}

export interface MethodWorded {
  method: string;
  makes: number;
  pieces: PieceWorded[];
  /** Empty when the units come out true. */
  trim: string;
  /** The same in ticks; null when they do. */
  trimTo: { across: Ticks; along: Ticks } | null;
  notes: readonly string[];
  sources: readonly string[];
}

/** Cut sizes of one unit by every method, in words. */
export interface SizesWorded {
  unit: string;
  finished: string;
  /** Finished, to the nearest tick. */
  across: Ticks;
  down: Ticks;
  /** Seam allowance, to the nearest tick; `seamText` as the ruler reads it, empty where it lies between ticks. */
  seam: Ticks;
  seamText: string;
  ruler: Ruler;
  methods: MethodWorded[];
}

/** A kind of unit and its methods, in words. */
export interface UnitWorded extends Omit<UnitListed, "methods"> {
  /** The usual method first. */
  methods: { name: string; summary: string }[];
}

function pieceWorded(piece: PieceSaid, ruler: Ruler, { unitSizes }: Words): PieceWorded {
  return {
    part: unitSizes.part(piece),
    across: piece.across,
    along: piece.along,
    size: unitSizes.size(piece, ruler),
    count: piece.count,
    further: unitSizes.further(piece, ruler),
    formula: unitSizes.formula(piece.formula),
    other: unitSizes.other(piece, ruler),
  };
}

function methodWorded(method: MethodSaid, unit: string, ruler: Ruler, words: Words): MethodWorded {
  return {
    method: method.method,
    makes: method.makes,
    pieces: method.pieces.map((piece) => pieceWorded(piece, ruler, words)),
    trim: words.unitSizes.trim(method, ruler),
    trimTo: method.trimTo,
    notes: method.notes.map((note) => words.unitSizes.note(note)),
    sources: words.unitNames.sources(unit, method.method),
  };
}

/** Cut sizes of one unit, with what is said of them; its kind and methods as files name them. */
export function sizesWorded(sizes: UnitSizes, words: Words): SizesWorded {
  const { unit, finished, across, down, seam, ruler, methods } = sizes;
  return {
    unit,
    finished: words.spoken.size(finished),
    across,
    down,
    seam,
    seamText: words.unitSizes.seam(sizes),
    ruler,
    methods: methods.map((method) => methodWorded(method, unit, ruler, words)),
  };
}

/** Every kind of unit, with a line for each of its methods. */
export function unitsWorded(units: readonly UnitListed[], words: Words): UnitWorded[] {
  return units.map(({ methods, ...unit }) => ({
    ...unit,
    methods: methods.map((name) => ({ name, summary: words.unitNames.summary(unit.name, name) })),
  }));
}
