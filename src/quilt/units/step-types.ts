import type { Ticks } from "../../length/types.ts";
import type { Corner } from "./types.ts";

/**
 * Where the allowances of a seam go, as a recipe knows it.
 * `darker`: to the darker of the two fabrics; `outside`: away from the middle of the unit; `one-way`: all seams
 * alike; `by-turns`: the other way from the row before, so that seams nest; `open`: to both sides.
 */
export type RecipePress =
  | { to: "darker" | "outside" | "one-way" | "by-turns" | "open" }
  /** Towards what was named so: a role, a spot, or what an earlier step made. */
  | { to: "part"; part: string };

/** A point where a seam turns: finished ticks from the unit's upper left corner, and the patches that meet there. */
interface SetInCorner {
  x: Ticks;
  y: Ticks;
  spots: readonly string[];
}

/**
 * One thing the hands do to a set, in order. A step names what it takes: `pieces` by their index in the recipe,
 * patches by spot, and what an earlier step made by its name. What lies how follows from the recipe's pieces: every
 * piece lies in the set's own frame, x to the right and y down, as it does at turn 0.
 */
export type RecipeStep =
  /** Single pieces cut on the diagonal, or on both, before anything is sewn. */
  | { do: "cut-triangles"; pieces: readonly number[] }
  /**
   * `over` lies on `under`, right sides together, edges even.
   * `one`: sewn a seam allowance from one diagonal on both sides, cut on it: two units.
   * `both`: the same along both diagonals, cut apart down the middle both ways first: eight units.
   * `edges`: sewn all round a seam allowance inside the edge, cut on both diagonals: four units.
   */
  | {
      do: "pair";
      under: number;
      over: number;
      lines: "one" | "both" | "edges";
      line: "rising" | "falling";
      press: RecipePress;
    }
  /** The two units of a pair laid on each other, unlike fabrics facing, the other diagonal sewn and cut: two units. */
  | { do: "cross-pair"; press: RecipePress }
  /**
   * Geese out of one large square. Round 1: two small squares on its upper left and lower right corners, one line
   * corner to corner, sewn on both sides of it and cut: two hearts. Round 2: one small square on the corner of each
   * that is still bare, sewn on both sides of its line and cut: four geese.
   */
  | { do: "small-on-large"; large: number; small: number; round: 1 | 2; press: RecipePress }
  /** Small squares on corners of a base, sewn corner to corner, cut a seam allowance outside, folded out. */
  | {
      do: "flip";
      base: number;
      squares: readonly { piece: number; corner: Corner }[];
      press: RecipePress;
    }
  /** Strips of one set sewn side by side, then cut into segments named by the set and their place: `A1`, `A2`. */
  | { do: "strip-set"; set: number; press: RecipePress }
  /**
   * Shapes cut from single strips with slanting cuts. `wide`: the strip was rounded up to the mark, so that the edges
   * lie further than a seam allowance outside the seam lines, which are the template's.
   */
  | { do: "cut-shapes"; set: number; wide?: true }
  /**
   * Parts sewn edge to edge, in order: side by side, one below another, or along the edge they share.
   * `setIn`: the seam goes round a corner, or stops before the edge. `corners`: the points where it turns, in
   * finished ticks of the unit's own frame, with the patches that meet there.
   * `level`: rounded up to the mark, one part stands out beyond the others at one end and is cut level with them.
   */
  | {
      do: "join";
      makes: string;
      parts: readonly string[];
      way: "across" | "down" | "edge";
      press: RecipePress;
      setIn?: true;
      corners?: readonly SetInCorner[];
      level?: true;
    }
  /**
   * Brought to size. `diagonal`: the ruler's diagonal on the seam; `cross`: both seams into the corners; `point`:
   * a seam allowance beyond the point; `corners`: the seam through the corners of the seam lines; `ends`: only the
   * ends; `round`: alike on all sides. `to`: a size on the way, raw; absent for the unit's own.
   */
  | {
      do: "trim";
      by: "diagonal" | "cross" | "point" | "corners" | "ends" | "round";
      to?: { across: Ticks; along: Ticks };
    };
