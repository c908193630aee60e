import type { Purpose } from "../../diagnostics/purposes.ts";
import { fromInteger, mul, type Rational } from "../../length/rational.ts";
import { addSurd, roundSurdUpToMark, type Surd, surd, surdToNumber, timesRoot2 } from "../../length/surd.ts";
import type { BorderPrints, FabricWord, QuiltSpec } from "../../spec/quilt-types.ts";
import { exactToNumber, surdOfExact } from "../exact.ts";
import type { Exact, PatchPlace, Point } from "../types.ts";
import type { StripDemand } from "../work-types.ts";
import type { Builder } from "./builder.ts";

/** A long strip as it lies in the top. */
export interface LaidStrip {
  purpose: Purpose;
  /** What it is in its place. */
  part: "sides" | "ends" | "long-sash";
  word: FabricWord;
  colourway: string;
  outline: Point[];
  /** Finished length along the strip at its longest, and width across it. */
  length: Exact;
  width: Exact;
  /** Finished length it is cut for, where what it is sewn across is trimmed only when it is on; absent: its own. */
  longFor?: Exact;
  /** Finished width it is cut for, where it is trimmed to its own once sewn on; absent: its own. */
  cutFor?: Exact;
  /** The strip stands upright in the quilt: a side border. */
  upright: boolean;
  /** Degrees clockwise from a top border; what a print that turns with the quilt's edge follows. */
  side: 0 | 90 | 180 | 270;
  mitred: boolean;
  extra: number;
  cut: StripDemand["cut"];
  join: StripDemand["join"];
  place: PatchPlace;
  border: number | null;
  /** How a directional print lies; null: as the file says of all prints. */
  prints: BorderPrints | null;
  path: string;
  at: StripDemand["at"];
}

/**
 * Cut length of a strip: finished length and two seams. A mitred strip keeps its seam allowance along the
 * slanting ends too, which adds the root of 2 seams at each end.
 *
 *     derived geometry: finished outer length + 2 seams + 2 x root 2 seams; the same as
 *     unfinished side + 2 x cut border - 4 seams + 2 x root 2 seams
 */
export function cutLengthOf(length: Surd, seam: Rational, mitred: boolean): Surd {
  const straight = addSurd(length, surd(mul(seam, fromInteger(2))));
  return mitred ? addSurd(straight, timesRoot2(mul(seam, fromInteger(2)))) : straight;
}

/** Rounds up to the mark, and says whether that changed anything. */
export function onMarkAbove(value: Surd, spec: QuiltSpec): { ticks: number; roundedUp: boolean } {
  const ticks = roundSurdUpToMark(value, spec.ruler.mark);
  return {
    ticks,
    roundedUp: roundSurdUpToMark(value, 1) !== ticks || value.b.n !== 0n,
  };
}

/** Adds a strip to the top and to what is to be cut; strips alike are counted together. */
export function addStrip(builder: Builder, strips: StripDemand[], strip: LaidStrip): boolean {
  const { spec } = builder;
  const fabric = builder.find(strip.word, null, strip.colourway);
  if (fabric === null) return false;
  const direction = builder.directions.get(fabric);
  const prints = strip.prints ?? (spec.prints === "quilt" ? "upright" : "outwards");
  const lies = printIn(prints, strip, direction === "two-way");
  builder.patches.push({
    outline: strip.outline,
    fabric,
    up: direction === undefined ? null : lies.up,
    origin: {
      place: strip.place,
      block: null,
      unit: null,
      part: strip.part,
      border: strip.border,
    },
  });
  const seam = fromInteger(spec.seam);
  const run = onMarkAbove(cutLengthOf(surdOfExact(strip.longFor ?? strip.length), seam, strip.mitred), spec);
  const width = onMarkAbove(cutLengthOf(surdOfExact(strip.cutFor ?? strip.width), seam, false), spec);
  const demand: StripDemand = {
    purpose: strip.purpose,
    fabric,
    run: run.ticks + strip.extra,
    width: width.ticks,
    roundedUp: run.roundedUp || width.roundedUp,
    count: 1,
    print: direction === undefined ? null : lies.print,
    cut: strip.cut,
    join: strip.join,
    overLong: strip.extra > 0,
    finished: Math.round(areaOf(strip)),
    path: strip.path,
    at: strip.at,
  };
  const same = strips.find((each) => sameStrip(each, demand));
  if (same === undefined) strips.push(demand);
  else {
    same.count += 1;
    same.finished += demand.finished;
  }
  return true;
}

/** Where the print's up points in the quilt, in degrees clockwise, and how it runs in the strip. */
function printIn(
  prints: BorderPrints,
  { upright, side }: LaidStrip,
  stripe: boolean,
): { up: number; print: "along" | "across" } {
  if (prints === "upright") return { up: 0, print: upright ? "along" : "across" };
  // The lines of a stripe that runs round lie along every side.
  if (prints === "round" && stripe) return { up: upright ? 0 : 90, print: "along" };
  return { up: side, print: "across" };
}

/** A mitred strip is a trapezium: its mean length is one width shorter than its outer edge. */
function areaOf(strip: LaidStrip): number {
  const [length, width] = [surdToNumber(surdOfExact(strip.length)), exactToNumber(strip.width)];
  return (strip.mitred ? length - width : length) * width;
}

function sameStrip(a: StripDemand, b: StripDemand): boolean {
  return (
    JSON.stringify(a.purpose) === JSON.stringify(b.purpose) &&
    a.fabric === b.fabric &&
    a.run === b.run &&
    a.width === b.width &&
    a.print === b.print &&
    a.cut === b.cut &&
    a.join === b.join &&
    a.overLong === b.overLong
  );
}
