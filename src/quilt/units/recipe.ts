import * as q from "../../length/rational.ts";
import { alike, type Formula, twoSeams } from "../terms/formulas.ts";
import type { MethodName, UnitName } from "../terms/names.ts";
import { asEighth } from "../turning/whole-turns.ts";
import { type Asked, type Cut, cutSize, straightExtra } from "./allowance.ts";
import type { RootSum } from "./outlines/roots.ts";
import * as r from "./outlines/roots.ts";
import { finishShape, type ShapeDraft } from "./outlines/shapes.ts";
import { levelledSteps, unitAsSewn } from "./sewn-sizes.ts";
import type {
  Bonus,
  Diagonal,
  HowMade,
  Lie,
  PieceSubcut,
  Recipe,
  RecipePiece,
  RecipeSeam,
  RecipeStep,
  SetStrip,
  StripSet,
  UnitDesign,
  UnitMethod,
} from "./types.ts";

/** A piece before its size is rounded to the marks. */
export interface PieceDraft {
  role: string;
  across: Asked;
  along: Asked;
  subcut: PieceSubcut;
  diagonal: Diagonal;
  /** One list per piece of a set. */
  lies: readonly (readonly Lie[])[];
  formula: { exact: Formula; trade: Formula };
  template: ShapeDraft | null;
  freeLay: { across: RootSum; along: RootSum; template: ShapeDraft } | null;
}

/** A strip set before rounding. */
export interface SetDraft {
  name: string;
  cut: StripSet["cut"];
  /** Of no account where the cut slants: there it follows from the strip as cut. */
  segment: Asked;
  segmentsPerUnit: number;
  shape: ShapeDraft | null;
  strips: readonly {
    role: string;
    width: Asked;
    formula: Formula;
    lies: readonly (readonly Lie[])[];
  }[];
}

/** A recipe before rounding. */
export interface RecipeDraft {
  kind: UnitName;
  method: MethodName;
  unitsPerSet: number;
  loose: boolean;
  pieces: readonly PieceDraft[];
  stripSets: readonly SetDraft[];
  seams: readonly (Omit<RecipeSeam, "length"> & { length: RootSum })[];
  steps: readonly RecipeStep[];
  /** Area of cut-off corners per set at the exact sizes. */
  corners: RootSum;
  bonus: readonly { kind: string; count: number; unfinished: RootSum }[];
  biasSides: Recipe["biasSides"];
  /** Set where patches are cut exactly, off the marks: the unit comes out true whatever is rounded up. */
  true?: true;
}

/** What a kind leaves out most of the time. */
export const NOTHING_MORE = {
  loose: false,
  stripSets: [],
  corners: [],
  bonus: [],
  biasSides: [],
} as const satisfies Partial<RecipeDraft>;

/** A size that is what it is: no trade constant, no room to trim. */
export function plain(exact: RootSum): Asked {
  return { exact, trade: null, room: [] };
}

/** A finished length with its two seams. */
export function withSeamsAdded(finished: RootSum, how: HowMade): RootSum {
  return r.plus(finished, straightExtra(how.seam));
}

export function lie(unit: number, spot: string, print: number): Lie {
  return { unit, spot, print: asEighth(print) };
}

/** A square piece. */
export function square(
  draft: Pick<PieceDraft, "role" | "lies" | "formula"> &
    Partial<Pick<PieceDraft, "subcut" | "diagonal">> & { side: Asked },
): PieceDraft {
  return {
    role: draft.role,
    across: draft.side,
    along: draft.side,
    subcut: draft.subcut ?? "none",
    diagonal: draft.diagonal ?? "any",
    lies: draft.lies,
    formula: draft.formula,
    template: null,
    freeLay: null,
  };
}

/** A rectangle that becomes one rectangular patch: finished size and a seam all round. */
export function patchPiece(
  role: string,
  across: RootSum,
  along: RootSum,
  how: HowMade,
  lies: PieceDraft["lies"],
): PieceDraft {
  const formula = twoSeams("size");
  return {
    role,
    across: plain(withSeamsAdded(across, how)),
    along: plain(withSeamsAdded(along, how)),
    subcut: "none",
    diagonal: "any",
    lies,
    formula: alike(formula),
    template: null,
    freeLay: null,
  };
}

/** Rounds one piece to the marks. */
export function finishPiece(draft: PieceDraft, how: HowMade): RecipePiece {
  const across = cutSize(draft.across, how);
  const along = cutSize(draft.along, how);
  const other = (cut: Cut): number => cut.other ?? cut.ticks;
  return {
    role: draft.role,
    across: across.ticks,
    along: along.ticks,
    roundedUp: across.roundedUp || along.roundedUp,
    countPerSet: draft.lies.length,
    subcut: draft.subcut,
    diagonal: draft.diagonal,
    lies: draft.lies,
    formula: draft.formula[how.rounding],
    template: draft.template === null ? null : finishShape(draft.template),
    freeLay: draft.freeLay === null ? null : finishFreeLay(draft.freeLay, how),
    otherRounding:
      across.other === null && along.other === null ? null : { across: other(across), along: other(along) },
    tradeShort: across.tradeShort || along.tradeShort,
  };
}

function finishFreeLay(
  lay: NonNullable<PieceDraft["freeLay"]>,
  how: HowMade,
): NonNullable<RecipePiece["freeLay"]> {
  const [across, along] = [cutSize(plain(lay.across), how), cutSize(plain(lay.along), how)];
  return {
    across: across.ticks,
    along: along.ticks,
    roundedUp: across.roundedUp || along.roundedUp,
    template: finishShape(lay.template),
  };
}

/** Along the edge of a strip as cut, how far slanting cuts lie apart that are set on the ruler square to them. */
const SLANTED = {
  /** Parallel cuts at 45 degrees, the strip's width apart: width x root 2. */
  "diamond-45": r.rootOf(q.fromInteger(2)),
  /** To and fro at 60 degrees: the base of a triangle as high as the strip, width x 2 / root 3. */
  "triangle-60": r.rootOf(q.rational(4n, 3n)),
} as const;

function finishSet(draft: SetDraft, how: HowMade): StripSet {
  const strips = draft.strips.map((strip): SetStrip => {
    const width = cutSize(strip.width, how);
    return {
      role: strip.role,
      width: width.ticks,
      roundedUp: width.roundedUp,
      formula: strip.formula,
      lies: strip.lies,
    };
  });
  const high = r.whole(q.fromInteger(strips[0]?.width ?? 0));
  const segment =
    draft.cut === "square"
      ? cutSize(draft.segment, how)
      : { ticks: r.upToMark(r.times(high, SLANTED[draft.cut]), 1), roundedUp: false };
  return {
    name: draft.name,
    cut: draft.cut,
    segment: segment.ticks,
    segmentRoundedUp: segment.roundedUp,
    mark: how.mark,
    segmentsPerUnit: draft.segmentsPerUnit,
    shape: draft.shape === null ? null : finishShape(draft.shape),
    strips,
  };
}

/** Whether a one-way print can be kept one way in every unit, told from where the patches end up. */
function directionOf(lists: readonly (readonly Lie[])[], loose: boolean): "kept" | "turned" | "lost" {
  const all = lists.flat();
  if (all.some((one) => one.print % 2 === 1)) return "lost";
  const differ = (group: readonly Lie[]): boolean => group.some((one) => one.print !== group[0]?.print);
  if (!loose) {
    const torn = lists.some((list) => list.some((one) => differ(list.filter((l) => l.unit === one.unit))));
    if (torn) return "lost";
  }
  return lists.some(differ) ? "turned" : "kept";
}

function directions(draft: RecipeDraft): Recipe["direction"] {
  const byRole = new Map<string, (readonly Lie[])[]>();
  const note = (role: string, lists: readonly (readonly Lie[])[]): void => {
    byRole.set(role, [...(byRole.get(role) ?? []), ...lists]);
  };
  for (const piece of draft.pieces) note(piece.role, piece.lies);
  // All segments of a strip come from one cloth lying one way: they stand or fall together.
  for (const set of draft.stripSets) for (const strip of set.strips) note(strip.role, [strip.lies.flat()]);
  return Object.fromEntries([...byRole].map(([role, lists]) => [role, directionOf(lists, draft.loose)]));
}

/** Segments of a set as parallelograms: triangles cut to and fro are half of one each. */
function parallelograms(set: { cut: StripSet["cut"]; segmentsPerUnit: number }): number {
  return set.cut === "triangle-60" ? set.segmentsPerUnit / 2 : set.segmentsPerUnit;
}

function areas(
  draft: RecipeDraft,
  made: Pick<Recipe, "pieces" | "stripSets">,
  design: UnitDesign,
): Recipe["areas"] {
  const part = (n: number): RootSum => r.whole(q.rational(BigInt(2 * n), 2n));
  const exactPieces = draft.pieces.map((p) =>
    r.times(part(p.lies.length), r.times(p.across.exact, p.along.exact)),
  );
  const exactSets = draft.stripSets.flatMap((set) =>
    set.strips.map((strip) =>
      r.times(part(parallelograms(set)), r.times(strip.width.exact, set.segment.exact)),
    ),
  );
  const cutPieces = made.pieces.map((p) => p.across * p.along * p.countPerSet);
  const cutSets = made.stripSets.map(
    (set) => set.strips.reduce((sum, s) => sum + s.width, 0) * set.segment * parallelograms(set),
  );
  const cut = Math.round([...cutPieces, ...cutSets].reduce((sum, area) => sum + area, 0));
  const exact = r.nearest(r.plus(...exactPieces, ...exactSets));
  const finished = r.nearest(
    r.whole(q.mul(q.fromInteger(draft.unitsPerSet), q.mul(design.across, design.along))),
  );
  const corners = r.nearest(draft.corners);
  // The trade's metric constants fall short of geometry: then nothing is trimmed and the seams take the blame.
  const trimmed = Math.max(0, cut - exact);
  return { cut, finished, corners, trimmed, seams: cut - finished - corners - trimmed };
}

/** Tells of strips that were rounded up for slanting cuts. */
function withWideShapes(steps: readonly RecipeStep[], sets: readonly StripSet[]): readonly RecipeStep[] {
  return steps.map((step) =>
    step.do === "cut-shapes" && sets[step.set]?.strips.some(({ roundedUp }) => roundedUp) === true
      ? { ...step, wide: true as const }
      : step,
  );
}

/** Whether the pieces as cut sew up to more than the unit is to measure. */
function isLarger(
  draft: RecipeDraft,
  made: Pick<Recipe, "pieces" | "stripSets" | "steps" | "trimTo">,
  how: HowMade,
): boolean {
  if (draft.true === true) return false;
  const asked = draft.pieces.flatMap((piece) => [piece.across, piece.along]);
  const room = asked.some((one) => one.room.length > 0);
  const sewn = unitAsSewn(made, Math.round(q.toNumber(how.seam)));
  const exact = draft.steps.some((step) => step.do === "pair" || step.do === "small-on-large");
  if (sewn !== null && !exact) {
    const { across, along } = made.trimTo;
    return room || sewn.across > across || sewn.along > along;
  }
  return (
    room ||
    made.pieces.some((piece) => piece.roundedUp) ||
    made.stripSets.some(({ strips }) => strips.some(({ roundedUp }) => roundedUp)) ||
    (how.rounding === "trade" && asked.some((one) => one.trade !== null))
  );
}

/**
 * Rounds a draft to the ruler and adds up what it costs.
 * @param design the unit asked for; its finished size closes the area account
 */
export function finishRecipe(draft: RecipeDraft, design: UnitDesign, how: HowMade): Recipe {
  const pieces = draft.pieces.map((piece) => finishPiece(piece, how));
  const stripSets = draft.stripSets.map((set) => finishSet(set, how));
  // Nothing is trimmed to a size the ruler has no mark for: the unit is left as much larger.
  const raw = (side: q.Rational): number => r.upToMark(withSeamsAdded(r.whole(side), how), how.mark);
  const trimTo = { across: raw(design.across), along: raw(design.along) };
  const needed = isLarger(
    draft,
    { pieces, stripSets, steps: draft.steps, trimTo: { ...trimTo, needed: true } },
    how,
  );
  const trims = draft.steps.some((step) => step.do === "trim" && step.to === undefined);
  const steps: RecipeStep[] =
    needed && !trims && draft.steps.length > 0
      ? [...draft.steps, { do: "trim", by: "round" }]
      : [...draft.steps];
  const made = { pieces, stripSets, steps: withWideShapes(steps, stripSets), trimTo: { ...trimTo, needed } };
  return {
    kind: draft.kind,
    method: draft.method,
    unitsPerSet: draft.unitsPerSet,
    loose: draft.loose,
    pieces,
    stripSets,
    seams: draft.seams.map((seam): RecipeSeam => ({ ...seam, length: r.upToMark(seam.length, 1) })),
    steps: levelledSteps(made, Math.round(q.toNumber(how.seam))),
    trimTo: { ...trimTo, needed },
    areas: areas(draft, { pieces, stripSets }, design),
    bonus: draft.bonus
      .map((one): Bonus => ({ ...one, unfinished: r.downToMark(one.unfinished, how.mark) }))
      // A unit that is all seam allowance is no bonus.
      .filter((one) => r.compareRoots(r.whole(q.fromInteger(one.unfinished)), straightExtra(how.seam)) > 0),
    biasSides: draft.biasSides,
    direction: directions(draft),
    notes: pieces.some(({ tradeShort }) => tradeShort) ? ["constants-short"] : [],
  };
}

/** Builds the methods of one kind: name, and how a design becomes a draft. */
export function methodsOf(
  kind: UnitName,
): (
  name: MethodName,
  draft: (design: UnitDesign, how: HowMade) => Omit<RecipeDraft, "kind" | "method">,
) => UnitMethod {
  return (name, draft) => ({
    name,
    recipe: (design, how) => ({
      ok: true,
      recipe: finishRecipe({ kind, method: name, ...draft(design, how) }, design, how),
    }),
  });
}
