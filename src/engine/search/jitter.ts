/**
 * Seeded small changes of prices, so that a greedy filling can be tried many times and differently: the
 * same seed always gives the same prices (mulberry32 generator, common practice).
 */
export function jitteredPrices(prices: Float64Array, seed: number, spread: number): Float64Array {
  const random = generator(seed);
  return prices.map((price) => Math.max(1, Math.round(price * (1 - spread + 2 * spread * random()))));
}

/** A small seeded generator of numbers from 0 up to 1. */
export function generator(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t = (t + Math.imul(t ^ (t >>> 7), t | 61)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}
