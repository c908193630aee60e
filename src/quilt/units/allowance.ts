import type { Rational } from "../../length/rational.ts";
import * as q from "../../length/rational.ts";
import type { Ticks } from "../../length/types.ts";
import type { TradeConstants } from "../terms/formulas.ts";
import type { RootSum } from "./outlines/roots.ts";
import * as r from "./outlines/roots.ts";
import type { HowMade } from "./types.ts";

const ROOT2 = r.rootOf(q.fromInteger(2));

/** A number of seams with a root in it: `whole + root * sqrt 2` seam allowances. */
function seams(seam: Rational, count: number, roots: number): RootSum {
  return r.times(
    r.whole(seam),
    r.plus(r.whole(q.fromInteger(count)), r.times(r.whole(q.fromInteger(roots)), ROOT2)),
  );
}

/** What a square or rectangle needs beyond its finished size: two seam allowances. */
export function straightExtra(seam: Rational): RootSum {
  return seams(seam, 2, 0);
}

/**
 * What a square halved on its diagonal needs beyond the finished leg: seam x (2 + sqrt 2).
 * Derived geometry: one seam on the outer edge, seam x (1 + sqrt 2) where the sewn diagonal meets the other.
 */
export function halfSquareExtra(seam: Rational): RootSum {
  return seams(seam, 2, 1);
}

/** What a square quartered on both diagonals needs beyond the finished long side: seam x (2 + 2 sqrt 2). */
export function quarterSquareExtra(seam: Rational): RootSum {
  return seams(seam, 2, 2);
}

/** Half the length `x sqrt 2` away from whole: `value * sqrt 2`. */
export function diagonalOf(value: RootSum): RootSum {
  return r.times(value, ROOT2);
}

/** `value / sqrt 2`: the side of the square whose diagonal is `value`. */
export function sideOf(value: RootSum): RootSum {
  return r.times(diagonalOf(value), r.whole(q.rational(1n, 2n)));
}

/** Constants makers know by heart, and how they are told. */
export interface TradeExtras {
  half: Rational;
  quarter: Rational;
  /** Under which name they are told. */
  named: TradeConstants;
}

const QUARTER_INCH = q.fromInteger(4064);
const THREE_QUARTER_CM = q.fromInteger(4800);

/**
 * The constants in use for a seam allowance: 7/8 and 1 1/4 in at 1/4 in; 2.5 and 3.5 cm at 0.75 cm
 * ("Metric Flying Geese", Weed 'n' Stitch, 2012: rounds down); elsewhere 3 1/2 and 5 seams
 * ("Tilkkumatematiikkaa", Tilkkutaivas, 2012), which at 1/4 in are the same as the inch constants.
 */
export function tradeExtras(seam: Rational): TradeExtras {
  if (q.equal(seam, QUARTER_INCH))
    return {
      half: q.fromInteger(14224),
      quarter: q.fromInteger(20320),
      named: "quarter-inch",
    };
  if (q.equal(seam, THREE_QUARTER_CM))
    return {
      half: q.fromInteger(16000),
      quarter: q.fromInteger(22400),
      named: "three-quarter-cm",
    };
  return {
    half: q.mul(seam, q.rational(7n, 2n)),
    quarter: q.mul(seam, q.fromInteger(5)),
    named: "seams",
  };
}

/** A size to cut: what geometry asks, what the trade's constant gives (the same when null), and room to trim. */
export interface Asked {
  exact: RootSum;
  trade: RootSum | null;
  /** Room for trimming, already in the measure of this side. */
  room: RootSum;
  /** The side it is sewn to, as that comes out of the pieces before it, where it may be larger than finished. */
  meets?: RootSum;
}

/** A size on the ruler marks. */
export interface Cut {
  ticks: Ticks;
  roundedUp: boolean;
  /** The size by the other rounding, when it differs. */
  other: Ticks | null;
  /** True when the trade's constant was asked for and would have left the piece too small: it is cut exactly. */
  tradeShort: boolean;
}

/**
 * The size to cut, rounded UP to the mark from exact geometry or from the trade's constant, as chosen. A constant that
 * leaves less than geometry needs is not used: a piece too small cannot be sewn.
 */
export function cutSize(asked: Asked, how: HowMade): Cut {
  const exact = r.plus(asked.exact, asked.room);
  const up = (value: RootSum): Ticks => {
    const near = r.upToMark(value, how.mark);
    const even = r.compareRoots(r.whole(q.fromInteger(near)), value) === 0;
    return even || how.ruler === undefined ? near : r.upToMark(value, how.ruler);
  };
  const byGeometry = up(r.largest([exact, asked.meets ?? []]));
  const trade = asked.trade === null ? exact : r.plus(asked.trade, asked.room);
  const byTrade = up(r.largest([trade, asked.meets ?? []]));
  const tradeShort = how.rounding === "trade" && r.compareRoots(r.whole(q.fromInteger(byTrade)), exact) < 0;
  const byConstant = how.rounding === "trade" && !tradeShort;
  const ticks = byConstant ? byTrade : byGeometry;
  const other = byConstant ? byGeometry : byTrade;
  return {
    ticks,
    roundedUp: r.compareRoots(r.whole(q.fromInteger(ticks)), byConstant ? trade : exact) !== 0,
    other: other === ticks ? null : other,
    tradeShort,
  };
}
