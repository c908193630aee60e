import type { LengthUnit } from "../../length/types.ts";

/**
 * What is made for a measure, made once for each: schemas are built by the hundred, and a file that is edited is read
 * anew with every change.
 */
export function oncePerUnit<T>(make: (unit: LengthUnit) => T): (unit: LengthUnit) => T {
  const made = new Map<LengthUnit, { is: T }>();
  return (unit) => {
    const known = made.get(unit) ?? { is: make(unit) };
    made.set(unit, known);
    return known.is;
  };
}
