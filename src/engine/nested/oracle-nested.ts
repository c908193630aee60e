import {
  countKinds,
  endGives,
  type Filling,
  type ListingLimit,
  type Placed,
  plainStarters,
  type Segment,
  type StripOracle,
  stepCounter,
  type ValueFloor,
} from "../oracles/oracle.ts";
import { lastAtMost, normalPositions } from "../oracles/positions.ts";
import { fitsRun, givenByEnd, type Kind } from "../problem/reduce.ts";
import { addThing, bestCount, stepsOver, type Thing, thingLength, thingsOf } from "./things.ts";

/**
 * Fillings of strips-2 where some kinds are shapes that nest: rectangles one by one, and of every lie of a shape one run.
 * A strip holds at most one run of each lie, since two take no less than one of as many. Heights other than those of
 * lies are never needed.
 */
export function oracleForNested(kinds: readonly Kind[], run: number): StripOracle {
  const joins = kinds.flatMap((kind, k) =>
    kind.run !== undefined && fitsRun(kind, run) ? [{ k, run: kind.run }] : [],
  );
  const fitting = kinds.flatMap((kind) => kind.lies.filter((lie) => lie.width <= run));
  const heights = [
    ...new Set([...fitting.map(({ height }) => height), ...joins.map((each) => each.run.height)]),
  ].sort((a, b) => a - b);
  const things = heights.map((height) => thingsOf(kinds, height, run));
  const everything = [
    ...new Map(things.flat().map((thing) => [`${thing.kind} ${thing.lie}`, thing])).values(),
  ];
  const positions = normalPositions(
    everything.flatMap((thing) =>
      thing.advances === null
        ? [thing.width]
        : Array.from({ length: thing.most }, (_, n) => thingLength(thing, n + 1)),
    ),
    run,
  );
  const { sums } = positions;
  const size = sums.length;
  const over = stepsOver(positions);
  const joinsAt = heights.map((height) => joins.filter((each) => each.run.height === height));

  /** The table of best values with everything that pays, and the tables before each thing came in. */
  const fill = (
    level: number,
    prices: Float64Array,
    caps: readonly number[],
    before: { thing: Thing; table: Float64Array }[] | null,
  ): Float64Array => {
    let table: Float64Array = new Float64Array(size);
    for (const thing of things[level]!) {
      const price = prices[thing.kind]!;
      const most = Math.min(thing.most, caps[thing.kind]!);
      if (price <= 0 || most <= 0) continue;
      if (before !== null) before.push({ thing, table });
      table = addThing(table, thing, price, most, over);
    }
    return table;
  };

  /** The best end of a strip at these prices: which run it is joined into, and the position it begins at. */
  const bestEnd = (level: number, table: Float64Array, prices: Float64Array, caps: readonly number[]) => {
    let best = { value: table[size - 1]!, kind: -1, at: size - 1 };
    for (const { k, run: joined } of joinsAt[level]!)
      for (let at = 0; at < size && prices[k]! > 0; at++) {
        const gives = Math.min(caps[k]!, givenByEnd(joined, run - sums[at]!));
        if (gives <= 0) break;
        const value = table[at]! + prices[k]! * gives;
        if (value > best.value) best = { value, kind: k, at };
      }
    return best;
  };

  const values = (
    prices: Float64Array,
    caps: readonly number[],
    levels?: readonly number[],
  ): Float64Array => {
    const result = new Float64Array(heights.length);
    for (const level of levels ?? heights.map((_, index) => index))
      result[level] = bestEnd(level, fill(level, prices, caps, null), prices, caps).value;
    return result;
  };

  const filling = (level: number, prices: Float64Array, caps: readonly number[]): Filling => {
    const before: { thing: Thing; table: Float64Array }[] = [];
    const table = fill(level, prices, caps, before);
    const joined = bestEnd(level, table, prices, caps);
    const taken: { thing: Thing; count: number }[] = [];
    let { at } = joined;
    let after = table;
    for (const { thing, table: earlier } of before.reverse()) {
      const most = Math.min(thing.most, caps[thing.kind]!);
      const count = bestCount(earlier, after[at]!, thing, prices[thing.kind]!, most, at, over);
      if (count > 0) {
        taken.push({ thing, count });
        at = over(thingLength(thing, count))[at]!;
      }
      after = earlier;
    }
    const plain = fillingOf(level, taken.reverse());
    return joined.kind < 0 ? plain : withEnd(plain, joined.kind);
  };

  const fillingOf = (level: number, taken: readonly { thing: Thing; count: number }[]): Filling => {
    const segments = taken.flatMap(({ thing, count }): Segment[] => {
      const placed: Placed = { kind: thing.kind, lie: thing.lie };
      if (thing.advances === null)
        return Array.from({ length: count }, () => ({ width: thing.width, stack: [placed] }));
      return [{ width: thingLength(thing, count), stack: Array.from({ length: count }, () => placed) }];
    });
    return { level, height: heights[level]!, counts: countKinds(segments, kinds.length), segments };
  };

  /** The same with all that is left of the strip joined into a run. */
  const withEnd = (filling: Filling, kind: number): Filling => {
    const end = { kind, length: filling.segments.reduce((left, { width }) => left - width, run) };
    const counts = filling.counts.slice();
    counts[kind] = endGives(kinds, end);
    return { ...filling, counts, end };
  };

  const fillings = (
    level: number,
    floors: readonly ValueFloor[],
    caps: readonly number[],
    limit: ListingLimit,
  ): Filling[] | null => {
    const order = things[level]!.filter(({ kind }) => caps[kind]! > 0);
    const joinable = joinsAt[level]!.filter(({ k }) => caps[k]! > 0);
    // beyond[f][d]: the most that things d, d + 1 ... are worth per position, caps ignored: never too low.
    const beyond = floors.map(({ prices }) => {
      const most = joinable.reduce((best, { k }) => Math.max(best, prices[k]!), 0);
      const tables: Float64Array[] = [new Float64Array(size)];
      for (let d = order.length - 1; d >= 0; d--) {
        const thing = order[d]!;
        const price = prices[thing.kind]!;
        tables.unshift(price > 0 ? addThing(tables[0]!, thing, price, thing.most, over) : tables[0]!);
      }
      const joined = most > 0 ? tables.map((table) => grownBy(table, most)) : tables;
      return (d: number, left: number): number => {
        const at = lastAtMost(positions, left);
        return joined[d]![at]! + most * (left - sums[at]!);
      };
    });
    const found = new Map<string, Filling>();
    const counts = new Array<number>(kinds.length).fill(0);
    const chosen = order.map(() => 0);
    const tired = stepCounter(limit, 50);
    const worth = floors.map(() => 0);
    const current = (): Filling =>
      fillingOf(
        level,
        order.flatMap((thing, d) => (chosen[d]! > 0 ? [{ thing, count: chosen[d]! }] : [])),
      );
    const keep = (filling: Filling): boolean => {
      const key = `${filling.end?.kind ?? ""}|${filling.counts.join(",")}`;
      if (!found.has(key)) found.set(key, filling);
      return found.size <= limit.most;
    };
    const finish = (room: number): boolean => {
      for (const { k, run: joined } of joinable) {
        const gives = givenByEnd(joined, room);
        const held = Math.min(caps[k]!, gives);
        if (gives === 0 || floors.some(({ prices, floor }, f) => worth[f]! + held * prices[k]! < floor))
          continue;
        if (!keep(withEnd(current(), k))) return false;
      }
      if (floors.some(({ floor }, f) => worth[f]! < floor)) return true;
      const more = order.some(
        (thing, d) =>
          counts[thing.kind]! < caps[thing.kind]! &&
          chosen[d]! < thing.most &&
          thingLength(thing, chosen[d]! + 1) - thingLength(thing, chosen[d]!) <= room,
      );
      return more || keep(current());
    };
    const visit = (d: number, room: number): boolean => {
      if (tired()) return false;
      if (d === order.length) return finish(room);
      const thing = order[d]!;
      const { kind } = thing;
      const most = Math.min(thing.most, caps[kind]! - counts[kind]!);
      for (let count = most; count >= 0; count--) {
        const left = room - thingLength(thing, count);
        if (left < 0) continue;
        if (
          floors.some(
            ({ prices, floor }, f) => worth[f]! + count * prices[kind]! + beyond[f]!(d + 1, left) < floor,
          )
        )
          continue;
        const add = (sign: number) => {
          chosen[d] = sign > 0 ? count : 0;
          counts[kind]! += sign * count;
          floors.forEach(({ prices }, f) => {
            worth[f]! += sign * count * prices[kind]!;
          });
        };
        add(1);
        const going = visit(d + 1, left);
        add(-1);
        if (!going) return false;
      }
      return true;
    };
    return visit(0, run) ? [...found.values()] : null;
  };

  /** What a table is worth where every step of length left over is worth `most` as well. */
  const grownBy = (table: Float64Array, most: number): Float64Array => {
    const grown = table.slice();
    for (let at = 1; at < size; at++)
      grown[at] = Math.max(grown[at]!, grown[at - 1]! + most * (sums[at]! - sums[at - 1]!));
    return grown;
  };

  const oracle: StripOracle = {
    kinds,
    run,
    heights,
    stripLevels: heights.length,
    listedTo: Infinity,
    values,
    filling,
    starters: (caps) => plainStarters(oracle, caps),
    fillings,
    tallRate: () => null,
  };
  return oracle;
}
