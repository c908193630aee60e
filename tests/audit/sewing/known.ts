/**
 * Faults of the record that are known and being mended, so that the audit itself can stay strict: a fault of a unit
 * whose kind and method match. Each must still occur: what is mended is taken off.
 */
export interface Known {
  unit: RegExp;
  fault: RegExp;
  why: string;
}

export const KNOWN: readonly Known[] = [];

/** Faults that nobody knows of yet; `hit` gathers which of the known ones occur. */
export function unknown(
  faults: readonly { unit: string; fault: string }[],
  hit: Set<Known> = new Set(),
): string[] {
  return faults.flatMap(({ unit, fault }) => {
    const known = KNOWN.find((each) => each.unit.test(unit) && each.fault.test(fault));
    if (known === undefined) return [`${unit}: ${fault}`];
    hit.add(known);
    return [];
  });
}
