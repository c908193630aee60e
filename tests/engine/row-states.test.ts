import fc from "fast-check";
import { expect, test } from "vitest";
import { rowStates } from "../../src/engine/oracles/row-states.ts";

test("the table keeps, of equal counts, the one with most room, as a plain map does", () => {
  const move = fc.record({
    from: fc.nat(),
    kind: fc.nat(2),
    copies: fc.integer({ min: 1, max: 3 }),
    width: fc.nat(9),
  });
  fc.assert(
    fc.property(fc.array(move, { maxLength: 900 }), (moves) => {
      const prices = [Float64Array.of(5, 7, 11), Float64Array.of(13, 2, 1)];
      const states = rowStates(prices, 10_000);
      const known = new Map([["0,0,0", 10_000]]);
      const countsOf = (state: number) => [0, 1, 2].map((kind) => states.count(state, kind));
      for (const { from, kind, copies, width } of moves) {
        const start = from % states.size();
        const gain = [0, 0, 0];
        gain[kind] = copies;
        const counts = countsOf(start).map((count, k) => count + gain[k]!);
        const room = states.room(start) - width;
        const before = known.get(counts.join());
        const state = states.grow(start, [kind], gain, room, kind);
        expect(state < 0).toBe(before !== undefined && before >= room);
        if (state < 0) continue;
        known.set(counts.join(), room);
        expect(countsOf(state)).toEqual(counts);
        prices.forEach((price, p) => {
          expect(states.value(state, p)).toBe(counts.reduce((sum, count, k) => sum + count * price[k]!, 0));
        });
        expect([states.before(state), states.type(state)]).toEqual([start, kind]);
      }
      expect(states.size()).toBe(known.size);
      for (let state = 0; state < states.size(); state++)
        expect(states.room(state)).toBe(known.get(countsOf(state).join()));
    }),
    { seed: 11, numRuns: 40 },
  );
});
