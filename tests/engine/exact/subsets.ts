/**
 * Sub-multisets of a small demand, numbered. A state is "how many of each item"; its number is the mixed
 * radix number of those counts, so that states can be added and taken apart by plain integer arithmetic.
 */
export interface SubsetSpace {
  /** Number of states: the product of (demand + 1). */
  readonly size: number;
  /** The state that holds everything. */
  readonly full: number;
  /** Counts of a state, per item. */
  countsOf(state: number): readonly number[];
  /** Every state contained in `state` that is not empty. */
  partsOf(state: number): readonly number[];
  /** As `partsOf`, but only those holding at least one of the first item that `state` holds. */
  anchoredPartsOf(state: number): readonly number[];
  /** The state with one of `item`. */
  single(item: number): number;
}

export function subsetSpace(demands: readonly number[]): SubsetSpace {
  const weights: number[] = [];
  let size = 1;
  for (const demand of demands) {
    weights.push(size);
    size *= demand + 1;
  }
  const counts: number[][] = [];
  for (let state = 0; state < size; state++) {
    counts.push(demands.map((demand, item) => Math.floor(state / weights[item]!) % (demand + 1)));
  }
  const listParts = (state: number): number[] => {
    let parts = [0];
    counts[state]!.forEach((count, item) => {
      const next: number[] = [];
      for (let taken = 0; taken <= count; taken++) {
        for (const part of parts) next.push(part + taken * weights[item]!);
      }
      parts = next;
    });
    return parts.filter((part) => part > 0);
  };
  const parts: (number[] | undefined)[] = [];
  const anchored: (number[] | undefined)[] = [];
  const partsOf = (state: number): number[] => {
    parts[state] ??= listParts(state);
    return parts[state];
  };
  const anchoredPartsOf = (state: number): number[] => {
    const first = counts[state]!.findIndex((count) => count > 0);
    anchored[state] ??= partsOf(state).filter((part) => counts[part]![first]! > 0);
    return anchored[state];
  };
  return {
    size,
    full: size - 1,
    countsOf: (state) => counts[state]!,
    partsOf,
    anchoredPartsOf,
    single: (item) => weights[item]!,
  };
}
