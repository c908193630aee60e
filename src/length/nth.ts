/*
 * Entries that are there by how a list was made. Where one is missing after all it is our fault, and says so where it is
 * read, not later as a size that came to nothing.
 */

/** The entry of a list at an index that is known to be in it. @throws Error when there is none: our fault. */
export function nth<T>(list: ArrayLike<T>, index: number): T {
  const found = list[index];
  if (found === undefined) throw new Error(`a list of ${list.length} has no entry ${index}`);
  return found;
}

/** The last entry of a list that is known to have one. @throws Error when it is empty: our fault. */
export const lastOf = <T>(list: ArrayLike<T>): T => nth(list, list.length - 1);
