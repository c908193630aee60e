import type { Bought, Difference } from "./types.ts";

/** What is bought otherwise in `then`: money where every fabric has a price, and length. */
export function difference(now: readonly Bought[], then: readonly Bought[]): Difference {
  const names = [...new Set([...now, ...then].map(({ fabric }) => fabric))];
  const of = (all: readonly Bought[], name: string) => all.find(({ fabric }) => fabric === name);
  let [cost, length]: [number | null, number] = [0, 0];
  const fabrics: string[] = [];
  for (const name of names) {
    const [before, after] = [of(now, name), of(then, name)];
    const more = (after?.length ?? 0) - (before?.length ?? 0);
    // A fabric that is bought in one plan only costs nothing in the other.
    const [paid, pays] = [before, after].map((one) => (one === undefined ? 0 : one.cost));
    cost = cost === null || paid == null || pays == null ? null : cost + pays - paid;
    length += more;
    if (more !== 0 || (paid ?? 0) !== (pays ?? 0)) fabrics.push(name);
  }
  return { cost, length, fabrics };
}

/** Less money, or where there are no prices (or the same money) less length. */
export function saves({ cost, length }: Difference): boolean {
  return cost === null || cost === 0 ? length < 0 : cost < 0;
}

/** What saves most first; the order of the ideas decides between equals. */
export function bySaving(a: Difference, b: Difference): number {
  return (a.cost ?? 0) - (b.cost ?? 0) || a.length - b.length;
}
