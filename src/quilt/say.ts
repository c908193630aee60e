import { nearestMark } from "../length/format.ts";
import { div, fromInteger, type Rational, toNumber, toTicksExact } from "../length/rational.ts";
import type { SpokenLength, SpokenSize } from "../length/spoken.ts";
import type { Ruler, Ticks } from "../length/types.ts";

const PER_UNIT = { in: 16256, cm: 6400, mm: 640 } as const;

/** Shares of a unit finer than the marks that people still write: 1/32 in, half a millimetre. */
const WRITTEN = { in: 508, cm: 320, mm: 320 } as const;

/** The largest parts of an inch that are said as a fraction though no ruler shows them: thirds, fifths, twelfths. */
const FINEST_SHARE = 12;

/** `3 1/3 in`; null in centimetres and where the fraction is no common one. */
function sayShare(value: Rational, { unit }: Ruler): SpokenLength | null {
  if (unit !== "in" || value.n < 0n) return null;
  const inches = div(value, fromInteger(PER_UNIT.in));
  if (inches.d > FINEST_SHARE) return null;
  return { as: "share", n: Number(inches.n), d: Number(inches.d), unit };
}

/** A length as the maker's ruler reads; what no ruler shows and no common fraction says is about the nearest mark. */
export function sayLength(value: Rational, ruler: Ruler): SpokenLength {
  const ticks = toTicksExact(value);
  if (ticks !== null && (ticks % ruler.mark === 0 || ticks % WRITTEN[ruler.unit] === 0))
    return { as: "marks", ticks, ruler };
  const share = sayShare(value, ruler);
  if (share !== null) return share;
  const near = Math.round(toNumber(value) / ruler.mark) * ruler.mark;
  return near === 0 ? sayDecimal(value, ruler) : { as: "about", ticks: near, ruler };
}

/** A length to a thousandth of its unit. */
function sayDecimal(value: Rational, { unit }: Ruler): SpokenLength {
  return { as: "decimal", value: toNumber(value) / PER_UNIT[unit], digits: 3, unit };
}

/** Two lengths that differ, told so that one sees it: to the nearest marks, or more finely where those are alike. */
export function sayUnlike(one: Rational, other: Rational, ruler: Ruler): [SpokenLength, SpokenLength] {
  const near = (value: Rational): number => Math.round(toNumber(value) / ruler.mark);
  const isPlain = (value: Rational): boolean => sayShare(value, ruler) !== null;
  if (near(one) !== near(other) || (isPlain(one) && isPlain(other)))
    return [sayLength(one, ruler), sayLength(other, ruler)];
  return [sayDecimal(one, ruler), sayDecimal(other, ruler)];
}

/** A size that is cut, and another that may lie off the marks, told to the nearest mark or finer where that is the same. */
export function saySizeBeside(
  cut: readonly [Ticks, Ticks],
  other: readonly [Ticks, Ticks],
  ruler: Ruler,
): [SpokenSize, SpokenSize] {
  const [wide, high] = cut;
  const said: SpokenSize = { as: "marks", across: wide, along: high, ruler };
  const [across, along] = [
    nearestMark(Math.round(other[0]), ruler),
    nearestMark(Math.round(other[1]), ruler),
  ];
  const near = { across: across.ticks, along: along.ticks, ruler };
  if (across.exact && along.exact) return [said, { as: "marks", ...near }];
  if (near.across !== wide || near.along !== high) return [said, { as: "about", ...near }];
  const [fineAcross, fineAlong] = [other[0] / PER_UNIT[ruler.unit], other[1] / PER_UNIT[ruler.unit]];
  return [said, { as: "decimal", across: fineAcross, along: fineAlong, digits: 2, unit: ruler.unit }];
}

/** A size, across first, as the maker's ruler reads. */
export function saySize(across: Rational, down: Rational, ruler: Ruler): SpokenSize {
  const [x, y] = [toTicksExact(across), toTicksExact(down)];
  if (x !== null && y !== null) return { as: "marks", across: x, along: y, ruler };
  return { as: "sides", across: sayLength(across, ruler), along: sayLength(down, ruler) };
}

/** Two sides, each said by itself. */
export function saySides(
  across: Rational,
  down: Rational,
  ruler: Ruler,
): { across: SpokenLength; down: SpokenLength } {
  return { across: sayLength(across, ruler), down: sayLength(down, ruler) };
}
