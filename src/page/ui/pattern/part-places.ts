/*
 * The list of a pattern's parts as it is shown: every part has a place, taken or left out, so that nothing moves under the
 * hand that ticks. What the text holds is those taken, in this order.
 */

/** Those of `places` that are taken, in their order. */
export function takenOf<Part>(places: readonly Part[], taken: readonly Part[]): Part[] {
  return places.filter((part) => taken.includes(part));
}

/**
 * Places for all parts with those taken in the order the text has them: the places there were where they still hold, else
 * each part left out behind the one that it usually follows.
 * @param usual all parts in their usual order
 * @param before places as they were shown last
 */
export function placesFor<Part>(
  taken: readonly Part[],
  usual: readonly Part[],
  before: readonly Part[],
): Part[] {
  if (takenOf(before, taken).join() === taken.join()) return [...before];
  const places = [...taken];
  for (const [at, part] of usual.entries()) {
    if (places.includes(part)) continue;
    const behind = usual.slice(0, at).findLast((one) => places.includes(one));
    places.splice(behind === undefined ? 0 : places.indexOf(behind) + 1, 0, part);
  }
  return places;
}

/** A part moved before the one taken before it; the same where there is none. */
export function movedEarlier<Part>(places: readonly Part[], taken: readonly Part[], part: Part): Part[] {
  const own = takenOf(places, taken);
  const other = own[own.indexOf(part) - 1];
  if (other === undefined) return [...places];
  const without = places.filter((one) => one !== part);
  without.splice(without.indexOf(other), 0, part);
  return without;
}
