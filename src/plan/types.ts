import type { CutPiece } from "../cutlist/types.ts";
import type { Diagnostic } from "../diagnostics/types.ts";
import type { Ruler, Ticks } from "../length/types.ts";
import type { Making } from "../making/types.ts";
import type { QuiltTop } from "../quilt/types.ts";
import type { Assumption, Price, Print, SoldBy } from "../spec/types.ts";
import type { Planned as PlannedAs } from "../spec/work-types.ts";
import type { KitShare, KitSort } from "./kit-types.ts";
import type { Template } from "./template-types.ts";
import type { WasteCause } from "./waste-causes.ts";

export type { WasteCause };

/** Written in every plan file; raised when a reader of older plans would misread a newer one. */
export const PLAN_VERSION = 1;

export type PartRole =
  | "stock"
  | "straightening"
  | "strip"
  | "band-section"
  | "band"
  | "rest"
  | "segment"
  | "piece"
  | "waste"
  | "uncut-end";

/** One of a run of shapes: where the corner of the box round it lies, from the corner of the run. */
export interface PlacedShape {
  x: Ticks;
  y: Ticks;
  /** Turned half round from its outline. */
  halfTurned: boolean;
}

/**
 * One rectangle of cloth and how it is cut. x runs from the left selvage's inner edge across the usable
 * width, y from the raw cut end down the bolt. Children tile their parent exactly: with `cut` "across" they
 * follow one another in y, with "along" in x. A part with no children is a piece or it is waste.
 *
 *     stock ── straightening (waste)
 *           ── band-section ── band ── piece ..., waste      long pieces, along the selvage
 *                           ── rest ── strip ..., waste
 *           ── strip ── piece ...                            as high as the strip
 *                    ── segment ── piece, piece, waste       stacked subcut
 *                    ── segment ── segment ── piece ...      a run of pieces trimmed to one height
 *                               ── waste (trimming)
 *                    ── waste (strip end)
 *           ── uncut-end (waste)
 *
 * A strip, band, rest or band section may hold a single part that fills it; every other inner part has two or more.
 * Waste has the role that says where it lies: `straightening`, `uncut-end`, or `waste`.
 */
export interface Part {
  role: PartRole;
  x: Ticks;
  y: Ticks;
  across: Ticks;
  along: Ticks;
  /** Direction the knife runs between the children; null on a leaf. */
  cut: "across" | "along" | null;
  parts: Part[];
  /** Index into the fabric's `pieces` on a piece leaf, else null. */
  piece: number | null;
  /** The piece lies turned a quarter from its size as written. */
  turned: boolean;
  /** On a piece leaf that is a run of shapes: every one of them, as they stand one after another. Absent elsewhere. */
  shapes?: PlacedShape[];
  /** On a waste leaf. */
  cause: WasteCause | null;
  /** On a waste leaf: big enough to keep. */
  keep: boolean;
  /** On a strip or band: its number in cutting order, from 1 within the lay; 0 elsewhere. */
  number: number;
  /** On a strip or band: equal for those of a lay that are cut exactly alike; -1 elsewhere. */
  kind: number;
}

/** One piece of cloth laid on the mat: a length of a bolt, or one fat quarter or scrap. */
export interface Lay {
  source: "bolt" | "fixed";
  /** `bolt`, `bolt 1` and so on where one is too short, or the name of the fixed piece. */
  name: string;
  /** Usable size after washing and without selvages. */
  across: Ticks;
  along: Ticks;
  root: Part;
}

/**
 * What squaring takes off cloth of a fixed size: of the side that strips are cut from before the first of them is cut,
 * of the other at the end of every strip.
 */
export interface SquareUp {
  across: Ticks;
  along: Ticks;
}

/** One kind of cloth in a fixed size that the fabric may be cut from besides the bolt. */
export interface FixedStock {
  /** Lays of it have this name; no two kinds of a fabric share one. */
  name: string;
  /** Usable size: what `trim` leaves. */
  across: Ticks;
  along: Ticks;
  /** Taken off each edge before it is cut. */
  trim: Ticks;
  /** Lost in squaring it; absent where nothing is. */
  squareUp?: SquareUp;
  /** `to-hand` and `stash`: there already. `shop`: bought ready cut. */
  from: "to-hand" | "stash" | "shop";
  /** A strip that is cut already: it is only subcut. */
  strip: boolean;
  /** Left of cloth that is cut into already: straight on the sides where it was. Absent elsewhere. */
  begun?: true;
  /** It ends where the fabric does: a width measured later makes it as much narrower or wider. Absent elsewhere. */
  atEdge?: true;
  /** How many there are, or the most that could be of use. */
  available: number;
  /** How many are cut into. */
  used: number;
  /** Price of one in hundredths; null without one. */
  price: number | null;
}

/** One way of buying a fabric that was weighed: pieces ready cut, yardage, or both. */
export interface MixChoice {
  bought: { name: string; count: number }[];
  /** Amount from the bolt as the shop says it; null when nothing is. */
  yardage: string | null;
  /** All together, in hundredths. */
  cost: number;
}

/** What was weighed where cloth can be bought ready cut. */
export interface Mix {
  /** Everything bought, in hundredths. Null where the pieces have no price: then as few as can be are bought. */
  cost: number | null;
  /** Sign or code printed with it, as the maker wrote it; empty when none was given. */
  currency: string;
  /** Nothing cheaper (without prices: no fewer pieces) can do in this style. */
  proven: boolean;
  /** What was taken first, then the others worth telling: yardage alone, ready cut alone. */
  choices: MixChoice[];
}

/** How one group of pieces is cut from a run of equal strips. */
export interface SubcutStep {
  /** Index into the fabric's `pieces`. */
  piece: number;
  turned: boolean;
  /** Total over all strips of the step. */
  count: number;
  perStrip: number;
  /** Of shapes that stand alternately: how many a run holds. `across` and `along` are then the run's. */
  run?: number;
  /** Size along the strip of what is first cut off it: the piece itself, a run to trim, or a stack. */
  segmentAcross: Ticks;
  /** Size of the piece as it lies. */
  across: Ticks;
  along: Ticks;
  /**
   * `whole`: as high as the strip. `trimmed`: a run is cut off, trimmed to the piece's height, then subcut.
   * `stacked`: a segment is cut parallel to the strip into rows.
   */
  how: "whole" | "trimmed" | "stacked";
}

/**
 * `longer-than-ruler`: the cut that takes the strip off, as the fabric is folded, is longer than two placings of the
 * ruler; `refold`: one more fold brings it into reach. `long-subcut`: a cut inside the strip, which lies unfolded, is
 * longer than the ruler. `wide-strip`: the strip is wider than the ruler is long, so that its width is measured.
 */
export type StepFlag = "longer-than-ruler" | "long-subcut" | "narrow-segment" | "refold" | "wide-strip";

/** One numbered instruction. Wording is made from it by the renderers. */
export interface CuttingStep {
  number: number;
  /** Index into `lays`. */
  lay: number;
  kind: "straighten" | "strips" | "bands";
  /** For strips and bands: how many, how wide (along), how long, and their numbers in cutting order. */
  count: number;
  width: Ticks;
  run: Ticks;
  strips: number[];
  /** In the order they lie in the strip. */
  subcuts: SubcutStep[];
  flags: StepFlag[];
}

/** One knife cut, in order. Ends are in the lay's frame. */
export interface Cut {
  number: number;
  lay: number;
  direction: "across" | "along";
  x1: Ticks;
  y1: Ticks;
  x2: Ticks;
  y2: Ticks;
  /** What the ruler is set to: the size of the part being cut off. */
  setting: Ticks;
}

export interface Purchase {
  /** Length to ask for. */
  length: Ticks;
  /** As the shop says it: `1 3/8 yd`. */
  text: string;
  /** Needed before rounding up to what is sold (straightening, shrinkage and spare included). */
  needed: Ticks;
  /** In hundredths of the currency; null without a price. */
  cost: number | null;
  /** Where one bolt is too short: a length from each of several, whose sum `length` is. Absent where one will do. */
  lengths?: BoltLength[];
}

/** What is bought of one bolt: a lay of its own, of the same place among those of bolts. */
export interface BoltLength {
  length: Ticks;
  text: string;
  needed: Ticks;
}

export interface WasteLine {
  cause: WasteCause;
  /** Square ticks. */
  area: number;
}

export interface WasteSummary {
  /** Square ticks: everything bought, selvages included. */
  bought: number;
  /** Square ticks in pieces. */
  pieces: number;
  /** Every cause once, in the order of `WasteCause`; `pieces` plus these is `bought` exactly. */
  lines: WasteLine[];
}

/**
 * Why cloth is left over to keep. Besides what cutting leaves: `run-end`, of strips joined end to end, `panel-side`, of
 * panels sewn side by side, and `set-end`, of strips longer than their set; these lie in pieces until they are sewn.
 */
export type LeftoverCause = WasteCause | "run-end" | "panel-side" | "set-end";

export interface Leftover {
  /** Index into `lays`; -1 for what sewing leaves. */
  lay: number;
  across: Ticks;
  along: Ticks;
  count: number;
  cause: LeftoverCause;
}

/** A strip cut wrongly and cut once more. */
export interface Mistake {
  /** Width of the strip, lost once. */
  width: Ticks;
  /** More to buy; 0 when what is left uncut takes it. */
  more: Ticks;
  /** What that costs in hundredths; null without a price. */
  cost: number | null;
}

export interface Sturdiness {
  /** Narrowest usable width at which the same purchase still works; null when not worked out. */
  narrowestUsable: Ticks | null;
  /** Bought length left over after all cutting. */
  spareLength: Ticks;
  /** One strip spoiled: of the width cut most often, and of the widest. Absent where no strip comes off a bolt, or off several. */
  mistakes?: { usual: Mistake; worst: Mistake };
}

/** What was proved about the length cut and about the amount bought. */
export interface PlanBound {
  /** Length used by the cuts, and the least any plan of this style can use. */
  used: Ticks;
  least: Ticks;
  style: "strips-2" | "strips-3";
  /** No plan in this style uses less length. */
  lengthProven: boolean;
  /** No plan in this style needs a smaller purchase. */
  purchaseProven: boolean;
  /** Length by the rule of thumb: each size on its own strips. */
  ruleOfThumb: Ticks;
}

/**
 * What is done of a fabric already. `lays`, `steps` and `purchase` then tell what is left to do: `pieces` still count all
 * that the quilt needs.
 */
export interface Done {
  /** By index into `pieces`: how many lie cut in their bags. */
  cut: number[];
  /** Amounts that the work so far was bought by, as the shop says them. */
  bought: string[];
  /** Cloth in hand of which nothing that is still to cut can come. */
  kept: FixedStock[];
  /** Cloth of the drawer that was cut into, as it was before. */
  took: { across: Ticks; along: Ticks; count: number }[];
}

/** What would be bought if strips might be cut once more along their length, and how many of them would be. */
export interface StackedCuts {
  purchase: Purchase;
  strips: number;
}

export interface FabricPlan {
  name: string;
  colour: string;
  /** In the maker's own words. */
  note: string;
  /** A foundation whose lines are printed: it is cut on them and nowhere else. Absent elsewhere. */
  onPrintedLines?: true;
  print: Print;
  width: Ticks;
  selvage: Ticks;
  /** Usable width at the mat: after washing, without selvages. */
  usable: Ticks;
  shrinkAcross: number;
  shrinkAlong: number;
  straighten: Ticks;
  spare: Ticks;
  sold: SoldBy;
  /** Where a bolt ends; absent where it is neither told nor of account. */
  bolt?: Ticks;
  price: Price | null;
  pieces: CutPiece[];
  lays: Lay[];
  /** Cloth in fixed sizes that was offered to the plan; absent when there was none. */
  stock?: FixedStock[];
  /** How the purchase was chosen where cloth is sold ready cut; absent elsewhere. */
  mix?: Mix;
  /** From the bolt. Null when everything came from fixed pieces. */
  purchase: Purchase | null;
  bound: PlanBound;
  steps: CuttingStep[];
  cuts: Cut[];
  waste: WasteSummary;
  leftovers: Leftover[];
  sturdiness: Sturdiness;
  /** Less to buy in the freer style; absent where it saves nothing, and where the style was chosen. */
  stacked?: StackedCuts;
  /** Kits of a class that are cut from whole strips of their own; absent where they are dealt out by count. */
  kitShares?: KitShare[];
  /** What is done already; absent where the work has not begun. */
  done?: Done;
}

/** What was said of the work while it was done: of a fabric, in the order said. */
export interface Said {
  fabric: string;
  facts: string[];
}

/** Everything printed or drawn is a function of this. Plain data: it survives JSON unchanged. */
export interface Plan {
  format: "crossgrain plan";
  version: typeof PLAN_VERSION;
  /** Ticks to the millimetre, so that a reader needs nothing else. */
  ticksPerMillimetre: 640;
  name: string;
  ruler: Ruler;
  style: "strips-2" | "strips-3";
  prefer: "sparing" | "simple";
  rulerLength: Ticks;
  /** Longer side of the mat that strips are cut into stacks on; absent where none are. */
  matLength?: Ticks;
  folded: boolean;
  keepFrom: Ticks;
  assumptions: Assumption[];
  fabrics: FabricPlan[];
  /** How many quilts are cut together; absent for one. */
  kits?: number;
  /** Kits of several sorts that are cut together, for a class; `inKits` of every piece is in this order. Absent elsewhere. */
  sorts?: KitSort[];
  /** What was asked for besides the file; absent where nothing was. Cutting is gone on with by the same. */
  asked?: PlannedAs;
  /** What the plan has been gone on with from; absent where the work has not begun. */
  said?: Said[];
  /** The quilt top for drawing; null when the plan came from a plain cut list. */
  top: QuiltTop | null;
  /** Outlines to copy at full size; absent when every piece stays a rectangle. */
  templates?: Template[];
  /** How the pieces become the quilt; absent when the plan came from a plain cut list. */
  making?: Making;
  /** Warnings and notes from reading and planning. */
  diagnostics: Diagnostic[];
}
