import { oracleForNested } from "../nested/oracle-nested.ts";
import { fitsRun, givenByEnd, type Kind } from "../problem/reduce.ts";
import { addFree, addOnce, bundles } from "./knapsack.ts";
import {
  countKinds,
  type Filling,
  type ListingLimit,
  plainStarters,
  type Segment,
  type StripOracle,
  stepCounter,
  type ValueFloor,
} from "./oracle.ts";
import { lastAtMost, normalPositions, type Positions, stepBack } from "./positions.ts";

/**
 * Fillings of strips-2: segments side by side, one item each. In a strip of height H a kind has one useful
 * lie, the narrowest that is no higher than H; heights other than item heights are never needed.
 */
export function oracleForTwo(kinds: readonly Kind[], run: number): StripOracle {
  if (kinds.some((kind) => kind.nested !== undefined)) return oracleForNested(kinds, run);
  const fitting = kinds.flatMap((kind) => kind.lies.filter((lie) => lie.width <= run));
  const runs = kinds.flatMap((kind, k) =>
    kind.run !== undefined && fitsRun(kind, run) ? [{ k, run: kind.run }] : [],
  );
  const heights = [
    ...new Set([...fitting, ...runs.map((each) => each.run)].map(({ height }) => height)),
  ].sort((a, b) => a - b);
  const positions: Positions = normalPositions(
    fitting.map((lie) => lie.width),
    run,
  );
  const backs = new Map<number, Int32Array>();
  const backFor = (width: number): Int32Array => {
    let back = backs.get(width);
    if (back === undefined) {
      back = stepBack(positions, width);
      backs.set(width, back);
    }
    return back;
  };
  /** lieAt[level][kind]: index of the useful lie, or -1. */
  const lieAt = heights.map((height) =>
    kinds.map((kind) => kind.lies.findIndex((lie) => lie.height <= height && lie.width <= run)),
  );
  const size = positions.sums.length;

  const add = (table: Float64Array, kind: number, width: number, price: number, cap: number): void => {
    if (price <= 0 || cap <= 0) return;
    const back = backFor(width);
    if (cap >= Math.floor(run / width)) addFree(table, back, price, null);
    else
      for (const bundle of bundles(kind, cap))
        addOnce(table, backFor(width * bundle.copies), price * bundle.copies, null);
  };

  /** Runs that what is left of a strip of each level may be joined into. */
  const runsAt = heights.map((height) => runs.filter((each) => each.run.height === height));

  /** The best end of a strip at these prices: which run, and the position it begins at. */
  const bestEnd = (
    level: number,
    table: Float64Array,
    prices: Float64Array,
    caps: readonly number[],
  ): { value: number; kind: number; at: number } => {
    const best = { value: table[size - 1]!, kind: -1, at: size - 1 };
    for (const { k, run: joined } of runsAt[level]!) {
      const cap = caps[k]!;
      if (prices[k]! <= 0 || cap <= 0) continue;
      for (let at = 0; at < size; at++) {
        const gives = givenByEnd(joined, run - positions.sums[at]!);
        if (gives === 0) break;
        const value = table[at]! + prices[k]! * Math.min(cap, gives);
        if (value > best.value) Object.assign(best, { value, kind: k, at });
      }
    }
    return best;
  };

  const values = (
    prices: Float64Array,
    caps: readonly number[],
    levels?: readonly number[],
  ): Float64Array => {
    const result = new Float64Array(heights.length);
    const wanted = levels ?? heights.map((_, level) => level);
    let table = new Float64Array(size);
    let before: number[] | null = null;
    for (const level of wanted) {
      const lies = lieAt[level]!;
      const grown: number[] | null = before;
      // A narrower lie replaces the wider one, so the table is built afresh; otherwise it only grows.
      const fresh = grown === null || lies.some((lie, k) => grown[k]! >= 0 && grown[k] !== lie);
      if (fresh) table = new Float64Array(size);
      for (let k = 0; k < kinds.length; k++) {
        const lie = lies[k]!;
        if (lie < 0 || (!fresh && grown![k]! >= 0)) continue;
        add(table, k, kinds[k]!.lies[lie]!.width, prices[k]!, caps[k]!);
      }
      result[level] =
        runsAt[level]!.length === 0 ? table[size - 1]! : bestEnd(level, table, prices, caps).value;
      before = lies;
    }
    return result;
  };

  const filling = (level: number, prices: Float64Array, caps: readonly number[]): Filling => {
    const lies = lieAt[level]!;
    const table = new Float64Array(size);
    const layers: { kind: number; copies: number; free: boolean; taken: Uint8Array; back: Int32Array }[] = [];
    for (let k = 0; k < kinds.length; k++) {
      const lie = lies[k]!;
      const price = prices[k]!;
      const cap = caps[k]!;
      if (lie < 0 || price <= 0 || cap <= 0) continue;
      const width = kinds[k]!.lies[lie]!.width;
      const most = Math.floor(run / width);
      const free = cap >= most;
      for (const bundle of free ? [{ thing: k, copies: 1 }] : bundles(k, cap)) {
        const taken = new Uint8Array(size);
        const back = backFor(width * bundle.copies);
        if (free) addFree(table, back, price, taken);
        else addOnce(table, back, price * bundle.copies, taken);
        layers.push({ kind: k, copies: bundle.copies, free, taken, back });
      }
    }
    const segments: Segment[] = [];
    const joined = bestEnd(level, table, prices, caps);
    let { at } = joined;
    for (let l = layers.length - 1; l >= 0; l--) {
      const layer = layers[l]!;
      const lie = lies[layer.kind]!;
      const width = kinds[layer.kind]!.lies[lie]!.width;
      while (layer.taken[at] === 1) {
        for (let c = 0; c < layer.copies; c++) segments.push({ width, stack: [{ kind: layer.kind, lie }] });
        at = layer.back[at]!;
        if (!layer.free) break;
      }
    }
    const filling = { level, height: heights[level]!, counts: countKinds(segments, kinds.length), segments };
    return joined.kind < 0 ? filling : withEnd(filling, joined.kind);
  };

  /** The same with all that is left of the strip joined into a run. */
  const withEnd = (filling: Filling, kind: number): Filling => {
    const length = filling.segments.reduce((left, { width }) => left - width, run);
    const counts = filling.counts.slice();
    counts[kind] = givenByEnd(kinds[kind]!.run!, length);
    return { ...filling, counts, end: { kind, length } };
  };

  const fillings = (
    level: number,
    floors: readonly ValueFloor[],
    caps: readonly number[],
    limit: ListingLimit,
  ): Filling[] | null => {
    const lies = lieAt[level]!;
    const order = kinds
      .map((kind, k) => {
        const lie = lies[k]!;
        const width = lie < 0 ? 0 : kind.lies[lie]!.width;
        const segment: Segment = { width, stack: [{ kind: k, lie }] };
        return { k, lie, width, segment };
      })
      .filter(({ k, lie }) => lie >= 0 && caps[k]! > 0)
      .sort((a, b) => b.width - a.width || a.k - b.k);
    // rests[f][d]: best value of kinds d, d+1, ... per position, caps ignored: never too low.
    const rests = floors.map(({ prices }) => {
      const rest: Float64Array[] = [new Float64Array(size)];
      for (let d = order.length - 1; d >= 0; d--) {
        const table = rest[0]!.slice();
        addFree(table, backFor(order[d]!.width), prices[order[d]!.k]!, null);
        rest.unshift(table);
      }
      return rest;
    });
    const joinable = runsAt[level]!.filter(({ k }) => caps[k]! > 0);
    /** The same when what is left over may be joined into a run as well. */
    const withRuns = rests.map((rest, f) => {
      const { prices } = floors[f]!;
      const most = joinable.reduce((best, { k }) => Math.max(best, prices[k]!), 0);
      if (most === 0) return { most, rest };
      return {
        most,
        rest: rest.map((table) => {
          const grown = table.slice();
          for (let at = 1; at < size; at++)
            grown[at] = Math.max(
              grown[at]!,
              grown[at - 1]! + most * (positions.sums[at]! - positions.sums[at - 1]!),
            );
          return grown;
        }),
      };
    });
    const found: Filling[] = [];
    const counts = new Array<number>(kinds.length).fill(0);
    const tired = stepCounter(limit, 50);
    const worth = floors.map(() => 0);
    const plain = (): Filling => {
      const segments: Segment[] = [];
      for (const { k, segment } of order) for (let c = counts[k]!; c > 0; c--) segments.push(segment);
      return { level, height: heights[level]!, counts: counts.slice(), segments };
    };
    const visit = (d: number, room: number): boolean => {
      if (tired()) return false;
      if (d === order.length) {
        for (const { k, run: joined } of joinable) {
          const gives = givenByEnd(joined, room);
          const held = Math.min(caps[k]!, gives);
          if (gives === 0 || floors.some(({ prices, floor }, f) => worth[f]! + held * prices[k]! < floor))
            continue;
          found.push(withEnd(plain(), k));
          if (found.length > limit.most) return false;
        }
        if (joinable.length > 0 && floors.some(({ floor }, f) => worth[f]! < floor)) return true;
        if (order.some(({ k, width }) => counts[k]! < caps[k]! && width <= room)) return true;
        found.push(plain());
        return found.length <= limit.most;
      }
      const { k, width } = order[d]!;
      for (let c = Math.min(caps[k]!, Math.floor(room / width)); c >= 0; c--) {
        const left = room - c * width;
        const at = lastAtMost(positions, left);
        if (
          floors.some(({ prices, floor }, f) => {
            const { most, rest } = withRuns[f]!;
            const beyond = rest[d + 1]![at]! + most * (left - positions.sums[at]!);
            return worth[f]! + c * prices[k]! + beyond < floor;
          })
        )
          continue;
        counts[k] = c;
        floors.forEach(({ prices }, f) => {
          worth[f]! += c * prices[k]!;
        });
        const going = visit(d + 1, left);
        floors.forEach(({ prices }, f) => {
          worth[f]! -= c * prices[k]!;
        });
        counts[k] = 0;
        if (!going) return false;
      }
      return true;
    };
    return visit(0, run) ? found : null;
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
