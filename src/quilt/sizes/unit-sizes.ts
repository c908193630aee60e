import { lengthUnreadable, NOT_ABOVE_ZERO, sizeUnreadable } from "../../diagnostics/fields.ts";
import { unitUnknown, unitUnsuited } from "../../diagnostics/quilts/quilt.ts";
import type { Diagnostic, Outcome } from "../../diagnostics/types.ts";
import { parseLength } from "../../length/parse.ts";
import { fromInteger, type Rational, toNumber, toTicksExact } from "../../length/rational.ts";
import { parseSize } from "../../length/size.ts";
import type { SpokenSize } from "../../length/spoken.ts";
import type { Ruler, Ticks } from "../../length/types.ts";
import { type Language, writingOf } from "../../length/writing.ts";
import { saySize } from "../say.ts";
import type { Formula } from "../terms/formulas.ts";
import type { MethodName, UnitName } from "../terms/names.ts";
import { plainDesign } from "../units/design.ts";
import { findUnitKind, UNIT_KINDS } from "../units/registry.ts";
import type { HowMade, PieceSubcut, Recipe, RecipeNote } from "../units/types.ts";

/** What is asked, as typed. */
export interface SizesAsked {
  unit: string;
  /** Finished: `4`, or `4 x 2`. */
  size: string;
  measure: "in" | "cm" | "mm";
  /** Null: 1/4 in or 0.75 cm. */
  seam: string | null;
  /** Null: every 1/8 in, 0.25 cm or 1 mm. */
  ruler: string | null;
  rounding: "exact" | "trade";
  /** What lengths are written in; English where it is left out. */
  language?: Language;
}

/** How a segment is cut from a strip set, and how many a unit takes; `apart`: between slanting cuts. */
export interface SegmentsSaid {
  cut: "square" | "diamond-45" | "triangle-60";
  /** Along the strip, or between the cuts. */
  length: Ticks;
  perUnit: number;
}

/** One piece of a method. */
export interface PieceSaid {
  part: string;
  /** `A`, `B`: the strip set it is a strip of; null for a piece. */
  set: string | null;
  /** As cut; null where that follows from the width of the fabric. */
  across: Ticks | null;
  along: Ticks;
  count: number;
  /** How it is cut further. */
  further: PieceSubcut | SegmentsSaid;
  formula: Formula;
  /** Size by the other rounding; null when it is the same. */
  other: { across: Ticks; along: Ticks } | null;
}

export interface MethodSaid {
  method: MethodName;
  makes: number;
  pieces: PieceSaid[];
  /** What the sewn unit is trimmed to; null when the units come out true. */
  trimTo: { across: Ticks; along: Ticks } | null;
  notes: readonly RecipeNote[];
}

/** Cut sizes of one unit by every method. Plain data. */
export interface UnitSizes {
  unit: UnitName;
  finished: SpokenSize;
  /** Finished, to the nearest tick. */
  across: Ticks;
  down: Ticks;
  /** Seam allowance, to the nearest tick, and whether it is that. */
  seam: Ticks;
  seamExact: boolean;
  ruler: Ruler;
  methods: MethodSaid[];
}

/** Seam allowance and marks where none are told: 1/4 and 1/8 in; 0.75 and 0.25 cm; 7.5 and 1 mm. */
const USUAL = {
  in: { seam: 4064, ruler: 2032 },
  cm: { seam: 4800, ruler: 1600 },
  mm: { seam: 4800, ruler: 640 },
} as const;

/** A ruler that reads as the language writes; English is what goes without saying. */
function rulerFor({ measure, language = "en" }: SizesAsked, mark: Ticks): Ruler {
  const { decimal } = writingOf(language);
  return {
    unit: measure,
    mark,
    ...(decimal === undefined ? {} : { decimal }),
    ...(language === "en" ? {} : { language }),
  };
}

/** Works out the cut sizes of a unit by all its methods. */
export function unitSizes(asked: SizesAsked): Outcome<UnitSizes> {
  const diagnostics: Diagnostic[] = [];
  const seam = readLength(asked.seam, USUAL[asked.measure].seam, "--seam", asked, diagnostics);
  const mark = readLength(asked.ruler, USUAL[asked.measure].ruler, "--ruler", asked, diagnostics);
  const size = readFinished(asked, diagnostics);
  const kind = findUnitKind(asked.unit);
  if (kind === null) {
    const known = UNIT_KINDS.map((each) => each.name);
    diagnostics.push(unitUnknown({ path: asked.unit, at: null }, asked.unit, known));
  }
  const ticks = mark === null ? null : toTicksExact(mark);
  if (seam === null || ticks === null || size === null || kind === null) return { value: null, diagnostics };
  const ruler = rulerFor(asked, ticks);
  const design = plainDesign(size.across, size.down);
  const problem = kind.check(design);
  const finished = saySize(size.across, size.down, ruler);
  if (problem !== null) {
    diagnostics.push(
      unitUnsuited(
        { path: asked.size, at: null },
        { unit: kind.name, asked: { finished }, fault: problem.fault, place: null },
      ),
    );
    return { value: null, diagnostics };
  }
  const how: HowMade = { seam, mark: ticks, rounding: asked.rounding, oversize: fromInteger(0) };
  const methods = kind.methods.flatMap((method) => {
    const answer = method.recipe(design, how);
    return answer.ok ? [said(answer.recipe)] : [];
  });
  return {
    value: {
      unit: kind.name,
      finished,
      across: Math.round(toNumber(size.across)),
      down: Math.round(toNumber(size.down)),
      seam: Math.round(toNumber(seam)),
      seamExact: toTicksExact(seam) !== null,
      ruler,
      methods,
    },
    diagnostics,
  };
}

function readLength(
  written: string | null,
  usual: Ticks,
  option: string,
  asked: SizesAsked,
  diagnostics: Diagnostic[],
): Rational | null {
  if (written === null) return fromInteger(usual);
  const read = parseLength(written, asked.measure);
  if (read.ok && read.value.n > 0n) return read.value;
  const fault = read.ok ? NOT_ABOVE_ZERO : read.problem.fault;
  diagnostics.push(lengthUnreadable({ path: option, at: null }, written, fault, asked.measure));
  return null;
}

function readFinished(
  asked: SizesAsked,
  diagnostics: Diagnostic[],
): { across: Rational; down: Rational } | null {
  const one = parseLength(asked.size, asked.measure);
  if (one.ok && one.value.n > 0n) return { across: one.value, down: one.value };
  const two = parseSize(asked.size, asked.measure);
  if (two.ok && two.across.n > 0n && two.along.n > 0n) return { across: two.across, down: two.along };
  const fault = two.ok || one.ok ? NOT_ABOVE_ZERO : two.problem.fault;
  diagnostics.push(
    sizeUnreadable({ path: asked.size, at: null }, asked.size, fault, { like: "finished-unit" }),
  );
  return null;
}

function said(recipe: Recipe): MethodSaid {
  const pieces = recipe.pieces.map(
    (piece): PieceSaid => ({
      part: piece.role,
      set: null,
      across: piece.across,
      along: piece.along,
      count: piece.countPerSet,
      further: piece.subcut,
      formula: piece.formula,
      other: piece.otherRounding,
    }),
  );
  const strips = recipe.stripSets.flatMap(({ name, cut, segment, segmentsPerUnit, strips: own }) =>
    own.map(
      (strip): PieceSaid => ({
        part: strip.role,
        set: name,
        across: null,
        along: strip.width,
        count: 1,
        // Cuts at 45 degrees lie as far apart as the strip is wide.
        further: { cut, length: cut === "square" ? segment : (own[0]?.width ?? 0), perUnit: segmentsPerUnit },
        formula: strip.formula,
        other: null,
      }),
    ),
  );
  const { needed, ...trimTo } = recipe.trimTo;
  return {
    method: recipe.method,
    makes: recipe.unitsPerSet,
    pieces: alike([...pieces, ...strips]),
    trimTo: needed ? trimTo : null,
    notes: recipe.notes,
  };
}

/** Pieces of one part and size on one line. */
function alike(pieces: readonly PieceSaid[]): PieceSaid[] {
  const lines = new Map<string, PieceSaid>();
  for (const piece of pieces) {
    const { count, ...rest } = piece;
    const key = JSON.stringify(rest);
    const before = lines.get(key);
    lines.set(key, before === undefined ? piece : { ...before, count: before.count + count });
  }
  return [...lines.values()];
}
