import type { RestLevels, StripOracle } from "../oracles/oracle.ts";
import type { StripCount } from "../problem/assemble.ts";
import type { Rest } from "../problem/roll-question.ts";

/** Strips of every rest gathered to one filling of it, numbered after the `sheets` given. */
export function onRests(oracle: StripOracle, strips: readonly StripCount[], sheets: number): StripCount[] {
  const { rests = [] } = oracle;
  if (rests.length === 0) return [...strips];
  const inRest = ({ filling }: StripCount, rest: RestLevels) =>
    filling.level >= rest.first && filling.level < rest.end;
  const others = strips.filter((strip) => !rests.some((rest) => inRest(strip, rest)));
  const gathered = rests.flatMap((rest, r): StripCount[] => {
    const held = strips.filter((strip) => inRest(strip, rest));
    if (held.length === 0) return [];
    const counts = oracle.kinds.map((_, k) =>
      held.reduce((sum, { filling, count }) => sum + filling.counts[k]! * count, 0),
    );
    const list = held.flatMap(({ filling, count }) => Array.from({ length: count }, () => filling));
    const sheet = { index: sheets + r, transposed: false, strips: list };
    return [{ filling: { level: -1, height: 0, counts, segments: [], sheet }, count: 1 }];
  });
  return [...others, ...gathered];
}

/** Length of the strips on one sheet or rest. */
export function lengthOn(strips: readonly StripCount[], index: number): number {
  return strips.reduce((sum, { filling: { sheet } }) => {
    if (sheet?.index !== index) return sum;
    return sum + sheet.strips.reduce((length, { height }) => length + height, 0);
  }, 0);
}

/** How much longer the rests are made than they are. */
export function overhang(strips: readonly StripCount[], rests: readonly Rest[], sheets: number): number {
  return rests.reduce((sum, { along }, r) => sum + Math.max(0, lengthOn(strips, sheets + r) - along), 0);
}
