import { formatLength, formatSize } from "../length/format.ts";
import { type Rational, toNumber, toTicksExact } from "../length/rational.ts";
import type { Ruler } from "../length/types.ts";

const PER_UNIT = { in: 16256, cm: 6400, mm: 640 } as const;

/** A length as the maker's ruler reads; thirds and fifths, which no ruler shows, as a decimal. */
export function sayLength(value: Rational, ruler: Ruler): string {
  const ticks = toTicksExact(value);
  if (ticks !== null) return formatLength(ticks, ruler, { unit: true });
  return `about ${(toNumber(value) / PER_UNIT[ruler.unit]).toFixed(3)} ${ruler.unit}`;
}

/** A size, across first, as the maker's ruler reads. */
export function saySize(across: Rational, down: Rational, ruler: Ruler): string {
  const [x, y] = [toTicksExact(across), toTicksExact(down)];
  if (x !== null && y !== null) return formatSize(x, y, ruler);
  return `${sayLength(across, ruler)} by ${sayLength(down, ruler)}`;
}

/** `1 block`, `3 blocks`. */
export function sayCount(count: number | bigint, one: string): string {
  return `${count} ${one}${Number(count) === 1 ? "" : "s"}`;
}
