import { fabricKey } from "../../../planning.ts";
import * as state from "../state.ts";

/** Numbers fabrics have had since the quilt was taken up, by name. */
const had = new Map<string, number>();

/** A quilt just taken up: its fabrics are numbered in their order, as the book numbers them. */
export const forgetTextures = (): void => had.clear();

/**
 * Which texture a fabric is drawn with. It keeps its own while the quilt is on the table: a fabric taken away leaves the
 * others as they are, and one that comes new takes the first that is free.
 */
export function textureNumber(name: string): number {
  const keys = state.model.value.fabrics.map((fabric) => fabricKey(fabric.name));
  const taken = new Set<number>();
  const given = new Map<string, number>();
  for (const key of keys) {
    const number = had.get(key);
    if (number === undefined || taken.has(number) || given.has(key)) continue;
    taken.add(number);
    given.set(key, number);
  }
  for (const key of keys) {
    if (given.has(key)) continue;
    let free = 0;
    while (taken.has(free)) free += 1;
    taken.add(free);
    given.set(key, free);
    // Whose it was before takes another when it comes back: what is there keeps its own.
    for (const [other, number] of had) if (number === free) had.delete(other);
    had.set(key, free);
  }
  return given.get(fabricKey(name)) ?? 0;
}
