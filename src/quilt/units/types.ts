import type { UnitFault } from "../../diagnostics/quilts/design-faults.ts";
import type { Rational } from "../../length/rational.ts";
import type { Surd } from "../../length/surd.ts";
import type { Ticks } from "../../length/types.ts";
import type { Formula } from "../terms/formulas.ts";
import type { MethodName, UnitName } from "../terms/names.ts";
import type { SeamName } from "../terms/seam-names.ts";
import type { RecipeStep } from "./step-types.ts";

export type { RecipePress, RecipeStep } from "./step-types.ts";

/*
 * Frames. Every unit has its own frame at turn 0, as drawn: x to the right, y DOWN, origin in the
 * upper left corner of the finished unit. Turns are clockwise as seen.
 */

/** Quarter-turns, clockwise as seen. */
export type Quarter = 0 | 1 | 2 | 3;

/** Eighths of a turn, clockwise as seen; 0 is up. */
export type Eighth = 0 | 1 | 2 | 3 | 4 | 5 | 6 | 7;

/** A point in exact ticks. */
export interface ExactPoint {
  x: Surd;
  y: Surd;
}

/** A straight-edged outline, corners clockwise as drawn, first corner not repeated. */
export type Outline = readonly ExactPoint[];

/** A finished patch of a unit. */
export interface UnitPatch {
  /** What the patch is for, shared by patches that usually take one fabric: `sky`. */
  role: string;
  /** Name of this one patch, different from every other in the unit: `sky left`. */
  spot: string;
  outline: Outline;
  /**
   * Patches of one unit with the same `shape` are the same but for a turn: one that faces `facing` turned
   * clockwise by the difference of the two is the other. With a print pointing `p` in this spot, the same
   * cloth in a like-shaped spot points `p + other.facing - facing` (modulo 8).
   */
  shape: string;
  facing: Eighth;
}

/** The diagonal of a square, seen with the print's up at the top: `/` rises, `\` falls. */
export type Diagonal = "any" | "rising" | "falling";

/** A corner of a unit as drawn: `top-left` ... */
export type Corner = "top-left" | "top-right" | "bottom-right" | "bottom-left";

/** A straight-edged patch as the designer drew it, corners in finished ticks inside the unit. */
export interface DrawnPatch {
  role: string;
  spot: string;
  corners: readonly { x: Rational; y: Rational }[];
}

/**
 * A unit as asked for: finished size and whatever else its kind needs. Fields a kind does not use
 * are ignored; `plainDesign()` fills the defaults.
 */
export interface UnitDesign {
  /** Finished size, in ticks. */
  across: Rational;
  along: Rational;
  /** Finished leg of the corners of a snowball; null: a third of the shorter side. */
  corner: Rational | null;
  /** Which corners a snowball has; all four by default. */
  corners: readonly Corner[];
  /**
   * Finished widths: of the rails (left to right); of a log cabin's logs by round (one for all when
   * there is one entry). Empty: equal rails, `count` of them.
   */
  strips: readonly Rational[];
  /** Number of equal rails when `strips` is empty; rounds of a log cabin. */
  count: number;
  /** Finished side of a log cabin's centre; null: as wide as a log. */
  centre: Rational | null;
  /** Which way the diagonal of a half-rectangle triangle leans, as drawn: `/` rises, `\` falls. */
  leaning: "rising" | "falling";
  /** The patches of a `drawn patches` unit. */
  patches: readonly DrawnPatch[];
}

/** How units are made, from the quilt's settings. */
export interface HowMade {
  /** Seam allowance in ticks. */
  seam: Rational;
  /** Distance between usable ruler marks. */
  mark: Ticks;
  /** Where `mark` lies between the ruler's own: those. What does not come out even is rounded up to them. */
  ruler?: Ticks;
  /** `exact`: true geometry rounded up to the mark; `trade`: the constants makers know (7/8, 1 1/4 ...). */
  rounding: "exact" | "trade";
  /** Added to squares of units that are trimmed after sewing; zero when they are to come out true. */
  oversize: Rational;
}

/**
 * Where one patch made from a piece ends up. `print` is where the print's up points in the frame of
 * the unit at turn 0, when the piece lies on the cloth at turn 0 (print's up towards the piece's top).
 */
export interface Lie {
  /** Which unit of the set, from 0. */
  unit: number;
  /** Spot of the patch. */
  spot: string;
  print: Eighth;
}

/** How a piece is cut further when free. */
export type PieceSubcut = "none" | "once-diagonal" | "twice-diagonal" | "template";

/** A point of a shape, in ticks. */
export interface ShapePoint {
  x: Ticks;
  y: Ticks;
}

/**
 * A patch cut to a line of its own. All in one frame, x to the right and y down from the upper left corner
 * of the box round the cut line; every coordinate is the exact one to the nearest tick.
 */
export interface PatchShape {
  /** Where to cut: a seam allowance outside every edge, corners clockwise. */
  cut: readonly ShapePoint[];
  /** Where to sew: the finished patch, corners clockwise. */
  seam: readonly ShapePoint[];
  /** Points on the seam line, besides its corners, where a neighbour's corner comes to lie. */
  marks: readonly ShapePoint[];
}

/**
 * One rectangle to cut for a set. Sizes are as the piece lies at turn 0: `along` in the direction of the
 * print's up, `across` at right angles to it. Use `waysToCut(piece)` for the piece at other turns.
 */
export interface RecipePiece {
  role: string;
  across: Ticks;
  along: Ticks;
  /** True when exact geometry lay off the ruler marks and was rounded up. */
  roundedUp: boolean;
  countPerSet: number;
  subcut: PieceSubcut;
  /**
   * The diagonal cut (`once-diagonal`), or drawn and sewn along before it is cut, at turn 0: it turns with
   * the piece. `any` when there is none, or both.
   */
  diagonal: Diagonal;
  /**
   * Every patch made from the `countPerSet` pieces, one entry per piece. A patch not listed by any lie
   * is a spare (for example the second triangle when a set needs one).
   */
  lies: readonly (readonly Lie[])[];
  /** What the size is made from. */
  formula: Formula;
  /** For `template`: the patch inside the rectangle, as it lies at turn 0; otherwise null. */
  template: PatchShape | null;
  /** A way to lay the same patch in a smaller rectangle where no print has a say; null when there is none. */
  freeLay: { across: Ticks; along: Ticks; roundedUp: boolean; template: PatchShape } | null;
  /** Size the same piece has by the other rounding, when it differs; null when it does not. */
  otherRounding: { across: Ticks; along: Ticks } | null;
  /** The trade's constant was asked for and is too small here: the piece is cut by exact geometry. */
  tradeShort: boolean;
}

/** One way to lay a piece on a directional print. */
export interface WayToCut {
  /** Clockwise quarter-turn of the print inside the piece, against turn 0. */
  turn: Quarter;
  across: Ticks;
  along: Ticks;
  diagonal: Diagonal;
  lies: readonly (readonly Lie[])[];
  /** The piece's template, turned with it. */
  template: PatchShape | null;
}

/** One strip of a strip set. */
export interface SetStrip {
  role: string;
  /** Cut width, in ticks. */
  width: Ticks;
  roundedUp: boolean;
  formula: Formula;
  /**
   * Patches cut from this strip, per segment of one making set, one list per segment. `print` holds for a
   * strip cut across the fabric with the print's up pointing along the selvage, out of the strip's top edge.
   */
  lies: readonly (readonly Lie[])[];
}

/** Strips sewn side by side, then cut into segments. */
export interface StripSet {
  /** `A`, `B`: sets of one recipe. */
  name: string;
  /** In sewing order, top to bottom as the set lies on the mat. */
  strips: readonly SetStrip[];
  /**
   * How segments are cut off: `square` across the strips; `diamond-45`, parallel cuts at 45 degrees;
   * `triangle-60`, cuts at 60 degrees leaning to and fro. `segment` is measured along the strip's edge.
   */
  cut: "square" | "diamond-45" | "triangle-60";
  /**
   * Length of a segment along the strip, as cut. Slanting cuts are set on the ruler square to them, as far apart as
   * the strip is wide: along the edge that is no mark, and it follows from the strip as cut.
   */
  segment: Ticks;
  segmentRoundedUp: boolean;
  /** Ruler mark that the strips of a short last set are cut to, slanting segments included. */
  mark: Ticks;
  /** Segments of this set in one unit. */
  segmentsPerUnit: number;
  /** What a slanting cut makes, as the strip lies across the fabric; null when cut square. */
  shape: PatchShape | null;
}

/** A kind of seam sewn while making one set of units. */
export interface RecipeSeam {
  /** What is joined. */
  what: SeamName;
  /** The parts joined, or the spot of a log, where the name alone does not say it. */
  parts?: readonly string[];
  /** Sewn length, from cut edge to cut edge, rounded up to a tick. */
  length: Ticks;
  count: number;
  /** True when at least one of the two edges sewn is off the straight grain. */
  bias: boolean;
  /** Set on what is sewn strip to strip: told for one segment, but sewn once for the whole set. */
  strips?: true;
}

/** What is left of the cloth besides finished units, per set, in whole square ticks. `cut` is the sum of the others. */
interface RecipeAreas {
  cut: number;
  /** Finished units. */
  finished: number;
  /** Hidden in seam allowances, those on the unit's outer edges included. */
  seams: number;
  /** Corners cut off and not used (stitch-and-flip), bonus units included. */
  corners: number;
  /** Trimmed away or lost to rounding up. */
  trimmed: number;
}

/** A further unit that can be sewn from what is cut off. */
export interface Bonus {
  kind: string;
  /** Per set. */
  count: number;
  /** Size before it is sewn in, rounded DOWN to the mark. */
  unfinished: Ticks;
}

/** `constants-short`: the usual constants fall short of exact geometry at this size, and the exact size is cut. */
export type RecipeNote = "constants-short";

/** How one set of units is made. */
export interface Recipe {
  kind: UnitName;
  method: MethodName;
  unitsPerSet: number;
  /**
   * True when every patch is cut to shape before anything is sewn: any patch may then go into any unit, and
   * into any like-shaped spot of its role, whatever `Lie.unit` says. False: the lies of a set belong together.
   */
  loose: boolean;
  pieces: readonly RecipePiece[];
  stripSets: readonly StripSet[];
  seams: readonly RecipeSeam[];
  steps: readonly RecipeStep[];
  /**
   * Raw size of the finished unit, on the ruler's marks: trim to it. `needed` is false when the units come out true,
   * and true whenever the pieces as cut sew up to more.
   */
  trimTo: { across: Ticks; along: Ticks; needed: boolean };
  areas: RecipeAreas;
  bonus: readonly Bonus[];
  /** Sides of the raw unit that lie on the bias: warn when such a side ends up on the outside of the quilt. */
  biasSides: readonly ("top" | "right" | "bottom" | "left")[];
  /**
   * Whether a one-way print can be kept one way in every unit of a set. `kept`: always (with the right
   * ways to cut); `turned`: the units of a set come out with the print in different directions, so some
   * are left over unless the quilt wants all of them; `lost`: within one unit patches of one role point
   * different ways whatever is done. Told per role.
   */
  direction: Readonly<Record<string, "kept" | "turned" | "lost">>;
  /** What the maker should know. */
  notes: readonly RecipeNote[];
}

/** A recipe, or why this method cannot make this size. */
type RecipeAnswer = { ok: true; recipe: Recipe } | { ok: false; fault: UnitFault };

/** One way of making a unit kind. */
export interface UnitMethod {
  /** As written in files: `four at a time`. */
  name: MethodName;
  /**
   * Recipe for the finished size asked.
   * @param design finished size in ticks and what else the kind needs; must have passed the kind's `check`
   */
  recipe(design: UnitDesign, how: HowMade): RecipeAnswer;
}

/** Why a design does not suit its kind. */
export interface UnitProblem {
  fault: UnitFault;
  /** Index of the drawn patch at fault, and the point where to look, finished; where there is one. */
  patch?: number;
  place?: { x: Rational; y: Rational };
}

/** A kind of sewn unit. One file of this room per kind, listed in `registry.ts`. */
export interface UnitKind {
  /** As written in files: `flying geese`. */
  name: UnitName;
  /** Other trade names accepted for it. */
  alsoCalled: readonly string[];
  /** Fields of UnitDesign it reads besides the size. */
  reads: readonly ("corner" | "corners" | "strips" | "count" | "centre" | "leaning" | "patches")[];
  /** Clear reason when the size (or what else it needs) does not suit; null when it does. */
  check(design: UnitDesign): UnitProblem | null;
  /** Roles in the order a maker would name them. */
  roles(design: UnitDesign): readonly string[];
  /** Finished patches; they tile the unit exactly. `check` must have passed. */
  patches(design: UnitDesign): readonly UnitPatch[];
  /** First is the usual one. */
  methods: readonly UnitMethod[];
}

/** How many strip sets, and how long the last is. */
export interface StripSetCount {
  /** Sets over the whole usable width. */
  fullSets: number;
  /** Segments one full set gives. */
  segmentsPerFullSet: number;
  /** Strip length of the short last set; 0 when there is none. */
  lastLength: Ticks;
  /** Segments taken from the short last set. */
  lastSegments: number;
  /** Strip length of a full set. */
  fullLength: Ticks;
  /** Taken off one end of each set to square it. */
  straighten: Ticks;
}
