import type { Place } from "../diagnostics/types.ts";
import type { LengthUnit, Ruler, Ticks } from "../length/types.ts";
import type { Assumption } from "./assumption-types.ts";
import type { SHAPES } from "./key-words.ts";

export type { Assumed, Assumption } from "./assumption-types.ts";

/** How a print reads. `along`: its up runs along the selvage; `across`: from selvage to selvage. */
export interface Print {
  kind: "none" | "two-way" | "one-way";
  axis: "along" | "across";
}

/** How the shop sells a fabric from the bolt. */
export interface SoldBy {
  /** The measure amounts are spoken in. */
  unit: "yd" | "m" | "in" | "cm";
  /** Amounts are whole multiples of this. */
  step: Ticks;
  /** The least the shop will cut. */
  least: Ticks;
}

/** A price per yard or metre, in hundredths of the currency so that sums stay exact. */
export interface Price {
  hundredths: number;
  per: "yd" | "m";
  /** Sign or code printed with it, as the maker wrote it; empty when none was given. */
  currency: string;
}

/** Which way a piece may lie on the cloth. `free` turns a quarter at will; the others are fixed. */
type TurnRule = "free" | "fixed";

/** What the maker said about one size to cut. Sizes are as cut, seam allowance included. */
export interface PieceSpec {
  /** Short name printed on the bag label; empty when the maker gave none. */
  label: string;
  /** Size across the width of fabric as written (before any quarter-turn). */
  across: Ticks;
  /** Size along the selvage as written. */
  along: Ticks;
  /** True for a piece that runs the whole usable width, whatever that is; `across` is then 0. */
  fullWidth: boolean;
  count: number;
  turn: TurnRule;
  /**
   * How a piece may be cut when it is long: `strips` as every piece; `lengthwise` must lie along the
   * selvage in a band; `either` lets the engine choose.
   */
  cut: "strips" | "lengthwise" | "either";
  /** Whether a piece longer than the usable width may be joined from strips, and how. */
  join: "no" | "straight" | "diagonal";
  /** A shape cut aslant from a strip; `across` and `along` then only say about how large it is. */
  shape?: ShapeSpec;
  note: string;
  at: Place | null;
}

/** Shapes that are cut aslant from a strip, as a file calls them. */
export type ShapeKind = (typeof SHAPES)[number];

/** A shape as it is to be finished; what is cut has the seam allowance outside every edge. */
export interface ShapeSpec {
  kind: ShapeKind;
  /** The side that lies along the strip; of a half hexagon one of the three equal sides. */
  side: Ticks;
  /** Square to that side. Null where the angle says it. */
  height: Ticks | null;
  /** Degrees between that side and a slanting one. Null where the height says it. */
  angle: number | null;
  seam: Ticks;
  /** Of triangles: the point that lies at the strip's edge is cut whole, or off at one seam beyond its corner. */
  tips: "sharp" | "blunt";
  /** Where the slanting sides of a diamond or parallelogram lean; where the point of a right triangle lies. */
  lean: "right" | "left";
}

/** Cloth of one fabric in a fixed size: to hand, or sold ready cut. */
export interface FixedClothSpec {
  /** In trade words: `fat quarter`, `10 in square`, `2 1/2 in strip`, `piece 21 in x 18 in`. */
  name: string;
  /** Size as it lies with its selvage upright, before it is trimmed; `across` is 0 when it runs the whole width. */
  across: Ticks;
  along: Ticks;
  fullWidth: boolean;
  /** A strip that is cut already: it is only subcut. */
  strip: boolean;
  /** Taken off each edge before it is used, pinked edges for example. */
  trim: Ticks;
  /** Lost off one edge each way in squaring it. Default 0. */
  squareUp?: Ticks;
  /** How many are to hand, or the most that can be bought; null for as many as wanted. */
  count: number | null;
  /** Price of one in hundredths; null for what is to hand, and where none is given. */
  price: number | null;
  /** Sign or code of the price, as the maker wrote it; empty when none was given. */
  currency: string;
}

/** A fabric with every default filled in. */
export interface FabricSpec {
  name: string;
  /** Drawing colour as `#rrggbb`. */
  colour: string;
  /** Width of fabric from selvage to selvage. */
  width: Ticks;
  /** Width of each selvage, never used. */
  selvage: Ticks;
  print: Print;
  /** Shrinkage by pre-washing in tenths of a percent (30 = 3 %), width and length. */
  shrinkAcross: number;
  shrinkAlong: number;
  /** Length lost in straightening the cut end. */
  straighten: Ticks;
  /** Lost off one edge each way in squaring cloth of a fixed size. Default 0. */
  squareUp?: Ticks;
  sold: SoldBy;
  /** Where a bolt of it ends, and whether the maker said so; absent where bolts are as long as is wanted. */
  bolt?: { length: Ticks; told: boolean };
  price: Price | null;
  /** Extra length the maker wants beyond the plan. */
  spare: Ticks;
  /** Cloth that is there already, used before any is bought. */
  have: FixedClothSpec[];
  /** Sizes that can be bought ready cut. */
  readyCut: FixedClothSpec[];
  /** Whether it can be bought from the bolt. */
  yardage: boolean;
  /** A foundation whose lines are printed: it is cut on them and nowhere else. Absent elsewhere. */
  onPrintedLines?: true;
  note: string;
  pieces: PieceSpec[];
  at: Place | null;
}

/** A plain cut list, validated, defaults filled in, nothing derived. */
export interface CutListSpec {
  kind: "cut-list";
  name: string;
  ruler: Ruler;
  /** Unit of bare numbers in the file. */
  defaultUnit: LengthUnit;
  style: "strips-2" | "strips-3";
  /** The file names no style. */
  styleOpen?: true;
  prefer: "sparing" | "simple";
  /** Longest cut one placing of the maker's ruler can make. */
  rulerLength: Ticks;
  /** Longer side of the maker's cutting mat: of account where strips are cut into stacks. Absent: as long as is needed. */
  matLength?: Ticks;
  /** Fabric is folded once, selvage to selvage, for cutting strips. */
  folded: boolean;
  /** Leftovers at least this big both ways are listed as worth keeping. */
  keepFrom: Ticks;
  /** Strips and ends of strips joined end to end are at least so long, each. */
  joinFrom: Ticks;
  fabrics: FabricSpec[];
  assumptions: Assumption[];
}
