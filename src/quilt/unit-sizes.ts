import { lengthUnreadable, NOT_ABOVE_ZERO, sizeUnreadable } from "../diagnostics/fields.ts";
import { unitUnknown, unitUnsuited } from "../diagnostics/quilt.ts";
import type { Diagnostic, Outcome } from "../diagnostics/types.ts";
import { formatCut, formatCutSize, formatLength, formatSize } from "../length/format.ts";
import { parseLength } from "../length/parse.ts";
import { fromInteger, type Rational, toNumber, toTicksExact } from "../length/rational.ts";
import { parseSize } from "../length/size.ts";
import type { Ruler, Ticks } from "../length/types.ts";
import { type Language, writingOf } from "../length/writing.ts";
import { saySize } from "./say.ts";
import { plainDesign } from "./units/design.ts";
import { findUnitKind, UNIT_KINDS } from "./units/registry.ts";
import type { HowMade, Recipe } from "./units/types.ts";

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

/** One piece of a method, in words. */
export interface PieceSaid {
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

export interface MethodSaid {
  method: string;
  makes: number;
  pieces: PieceSaid[];
  /** Empty when the units come out true. */
  trim: string;
  /** The same in ticks; null when they do. */
  trimTo: { across: Ticks; along: Ticks } | null;
  notes: readonly string[];
  sources: readonly string[];
}

/** Cut sizes of one unit by every method. Plain data. */
export interface UnitSizes {
  unit: string;
  finished: string;
  /** Finished, to the nearest tick. */
  across: Ticks;
  down: Ticks;
  /** Seam allowance, to the nearest tick; `seamText` as the ruler reads it, empty where it lies between ticks. */
  seam: Ticks;
  seamText: string;
  ruler: Ruler;
  methods: MethodSaid[];
}

const USUAL = {
  in: { seam: "1/4 in", ruler: "1/8 in" },
  cm: { seam: "0.75 cm", ruler: "0.25 cm" },
  mm: { seam: "7.5 mm", ruler: "1 mm" },
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
  const seam = readLength(asked.seam ?? USUAL[asked.measure].seam, "--seam", asked, diagnostics);
  const mark = readLength(asked.ruler ?? USUAL[asked.measure].ruler, "--ruler", asked, diagnostics);
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
      unitUnsuited({ path: asked.size, at: null }, kind.name, finished, problem.reason, problem.hint),
    );
    return { value: null, diagnostics };
  }
  const how: HowMade = { seam, mark: ticks, rounding: asked.rounding, oversize: fromInteger(0) };
  const methods = kind.methods.flatMap((method) => {
    const answer = method.recipe(design, how);
    return answer.ok ? [said(answer.recipe, ruler)] : [];
  });
  const seamTicks = toTicksExact(seam);
  return {
    value: {
      unit: kind.name,
      finished,
      across: Math.round(toNumber(size.across)),
      down: Math.round(toNumber(size.down)),
      seam: Math.round(toNumber(seam)),
      seamText: seamTicks === null ? "" : formatLength(seamTicks, ruler),
      ruler,
      methods,
    },
    diagnostics,
  };
}

function readLength(
  written: string,
  option: string,
  asked: SizesAsked,
  diagnostics: Diagnostic[],
): Rational | null {
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

const THEN = {
  none: "",
  "once-diagonal": "halved on the diagonal",
  "twice-diagonal": "quartered on both diagonals",
  template: "cut to a template",
} as const;

function segmentsSaid(
  { cut, segment, segmentsPerUnit, strips }: Recipe["stripSets"][number],
  ruler: Ruler,
): string {
  const [strip] = strips;
  switch (cut) {
    case "square":
      return `segments ${formatCut(segment, ruler)} long, ${segmentsPerUnit} to a unit`;
    case "diamond-45":
      return `diamonds cut at 45 degrees ${formatCut(strip?.width ?? 0, ruler)} apart, ${segmentsPerUnit} to a unit`;
    case "triangle-60":
      return `triangles cut to and fro at 60 degrees, ${segmentsPerUnit} to a unit`;
  }
}

function said(recipe: Recipe, ruler: Ruler): MethodSaid {
  const pieces = recipe.pieces.map(
    (piece): PieceSaid => ({
      part: piece.role,
      across: piece.across,
      along: piece.along,
      size: formatCutSize(piece.across, piece.along, ruler),
      count: piece.countPerSet,
      further: THEN[piece.subcut],
      formula: piece.formula,
      other:
        piece.otherRounding === null
          ? ""
          : formatSize(piece.otherRounding.across, piece.otherRounding.along, ruler),
    }),
  );
  const strips = recipe.stripSets.flatMap((set) =>
    set.strips.map(
      (strip): PieceSaid => ({
        part: `${strip.role}, set ${set.name}`,
        across: null,
        along: strip.width,
        size: `strip ${formatCut(strip.width, ruler)} wide`,
        count: 1,
        further: segmentsSaid(set, ruler),
        formula: strip.formula,
        other: "",
      }),
    ),
  );
  const { needed, ...trimTo } = recipe.trimTo;
  return {
    method: recipe.method,
    makes: recipe.unitsPerSet,
    pieces: alike([...pieces, ...strips]),
    trim: needed ? formatCutSize(trimTo.across, trimTo.along, ruler) : "",
    trimTo: needed ? trimTo : null,
    notes: recipe.notes,
    sources: recipe.sources,
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
