/**
 * Whether every case of the wide sweeps is run: `SWEEP=all`, as the check of a whole change does. Without it a sweep
 * takes its first cases, so that the tests are soon done while somebody works.
 */
const SWEEP = process.env.SWEEP === "all";

/** Whether a test that takes long, and holds what a quicker one holds in part, is left to a whole sweep. */
export const LEFT_OUT = !SWEEP;

/** `few` cases, or `all` of them in a whole sweep. */
export const upTo = (few: number, all: number): number => (SWEEP ? all : few);

/** The first `few` of a list, or the whole of it in a whole sweep. */
export const firstOf = <T>(list: readonly T[], few: number): readonly T[] =>
  list.slice(0, upTo(few, list.length));

/** One in `step` of a list, beginning with the first, or the whole of it in a whole sweep. */
export const oneIn = <T>(step: number, list: readonly T[]): readonly T[] =>
  SWEEP ? list : list.filter((_, i) => i % step === 0);

/** How many times as many random problems are held to an exact model or a law: `CROSS_CHECKS=12` makes some 7,000 of them. */
export const CROSS_CHECKS = Number(process.env.CROSS_CHECKS ?? 1);
