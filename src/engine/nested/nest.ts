/*
 * Equal shapes that stand alternately in a strip. The engine knows of them only what a run of them takes:
 *
 *     a run of k takes  first + the first k - 1 of the advances, taken in turn
 *
 * Runs of different shapes, and runs of one shape in different lies, stand side by side in a strip as rectangles do.
 */

/** One way a shape may lie in a strip. */
export interface NestLie {
  /** The shape lies turned a quarter. */
  turned: boolean;
  height: number;
  /** What a run of one takes along the strip. */
  first: number;
  /** How much further the next begins: one for all, or two in turn. None is more than `first`. */
  advances: readonly number[];
}

/** The lies of a shape in strips that run across the stock, and in strips that run along it. */
export interface Nest {
  across: readonly NestLie[];
  along: readonly NestLie[];
}

/** What a run of so many takes along the strip. */
export function nestLength(first: number, advances: readonly number[], count: number): number {
  if (count < 1) return 0;
  const round = advances.reduce((sum, advance) => sum + advance, 0);
  const more = count - 1;
  const rest = advances.slice(0, more % advances.length).reduce((sum, advance) => sum + advance, 0);
  return first + Math.floor(more / advances.length) * round + rest;
}

/** The most of a run that fit a length, at most `most`. */
export function nestFits(first: number, advances: readonly number[], length: number, most: number): number {
  let count = 0;
  while (count < most && nestLength(first, advances, count + 1) <= length) count++;
  return count;
}

/** Least area that one of a long run takes: no run takes less for each, as `first` is no less than an advance. */
export function nestArea(height: number, advances: readonly number[]): number {
  return (height * advances.reduce((sum, advance) => sum + advance, 0)) / advances.length;
}

/**
 * True when no run saves anything, in either direction: the shapes stand side by side as their rectangles do, and a
 * rectangle turned from strips that run across to strips that run along is the same rectangle.
 */
export function isPlain({ across, along }: Nest): boolean {
  const plain = ({ first, advances }: NestLie) => advances.every((advance) => advance === first);
  const same = (a: NestLie, b: NestLie) =>
    a.turned === b.turned && a.height === b.first && a.first === b.height;
  return (
    [...across, ...along].every(plain) &&
    across.length === along.length &&
    across.every((lie) => along.some((other) => same(lie, other)))
  );
}

/** All lengths of a nest that sizes are measured by. */
export function nestSizes({ across, along }: Nest): number[] {
  return [...across, ...along].flatMap(({ height, first, advances }) => [height, first, ...advances]);
}

/** The same nest in steps `step` times as large; every size must be a whole multiple of it. */
export function nestDivided({ across, along }: Nest, step: number): Nest {
  const divided = (lie: NestLie): NestLie => ({
    ...lie,
    height: lie.height / step,
    first: lie.first / step,
    advances: lie.advances.map((advance) => advance / step),
  });
  return { across: across.map(divided), along: along.map(divided) };
}

/**
 * What is wrong with a nest, in words; null when nothing is. The lies are to be whole numbers, and a run is to take more
 * the longer it is: of two advances only the first may be 0.
 */
export function nestFault({ across, along }: Nest): string | null {
  for (const { height, first, advances } of [...across, ...along]) {
    const whole = [height, first].every((size) => Number.isSafeInteger(size) && size > 0);
    const steps = advances.every((step) => Number.isSafeInteger(step) && step >= 0 && step <= first);
    if (!whole || !steps || advances.length < 1 || advances.length > 2 || advances.at(-1) === 0)
      return `a lie of ${height} x ${first} with advances ${advances.join(" and ")}`;
  }
  return across.length + along.length === 0 ? "no lies" : null;
}
