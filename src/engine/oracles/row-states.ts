/**
 * What rows can hold, each set of counts once, in flat tables: the listings of a search make millions of them, and
 * an object for each would cost more than the work on it.
 */
export interface RowStates {
  /** How many there are. State 0 is the empty row. */
  size(): number;
  room(state: number): number;
  /** What it is worth at one of the prices. */
  value(state: number, at: number): number;
  count(state: number, kind: number): number;
  /** Type chosen last and the state before it; -1 for the empty row. */
  type(state: number): number;
  before(state: number): number;
  /**
   * The state that comes of adding `gain` of the kinds `held` to `from`. Of states with equal counts the one with
   * most room is kept; -1 when there is one already with as much.
   */
  grow(from: number, held: readonly number[], gain: readonly number[], room: number, type: number): number;
}

/**
 * A multiplier for each kind, so that counts scatter over the table. Fixed, so that the table is the same every time;
 * powers of one odd number, as multiples of one would let sums of counts fall together.
 */
function multipliers(kinds: number): Int32Array {
  const list = new Int32Array(kinds);
  for (let k = 0, power = 0x9e3779b1 | 0; k < kinds; k++, power = Math.imul(power, 0x2c1b3c6d))
    list[k] = power;
  return list;
}

function longer<T extends Int32Array | Float64Array>(old: T, made: T): T {
  made.set(old);
  return made;
}

/** Open addressing of so many states by their hashes: one more than a state, 0 where free. */
function placed(hashes: Int32Array, size: number, length: number): Int32Array<ArrayBuffer> {
  const places = new Int32Array(length);
  const mask = length - 1;
  for (let state = 0; state < size; state++) {
    const hash = hashes[state]!;
    let at = (hash ^ (hash >>> 15)) & mask;
    while (places[at] !== 0) at = (at + 1) & mask;
    places[at] = state + 1;
  }
  return places;
}

/** Starts with the empty row of length `run`. Each of `prices` (one at least) says what one of each kind is worth. */
export function rowStates(prices: readonly Float64Array[], run: number): RowStates {
  const kinds = prices[0]!.length;
  const several = prices.length;
  const times = multipliers(kinds);
  let capacity = 256;
  let counts = new Int32Array(capacity * kinds);
  let rooms = new Float64Array(capacity);
  let values = new Float64Array(capacity * several);
  let types = new Int32Array(capacity);
  let befores = new Int32Array(capacity);
  let hashes = new Int32Array(capacity);
  /** Twice as many places as states at least. */
  let places = new Int32Array(2 * capacity);
  let size = 1;
  const wanted = new Int32Array(kinds);
  [rooms[0], types[0], befores[0]] = [run, -1, -1];

  const place = (hash: number): number => {
    const mask = places.length - 1;
    let at = (hash ^ (hash >>> 15)) & mask;
    for (; places[at] !== 0; at = (at + 1) & mask) {
      const state = places[at]! - 1;
      if (hashes[state] !== hash) continue;
      let k = 0;
      while (k < kinds && counts[state * kinds + k] === wanted[k]) k++;
      if (k === kinds) break;
    }
    return at;
  };
  places[place(0)] = 1;

  const enlarge = (): void => {
    capacity *= 2;
    counts = longer(counts, new Int32Array(capacity * kinds));
    rooms = longer(rooms, new Float64Array(capacity));
    values = longer(values, new Float64Array(capacity * several));
    types = longer(types, new Int32Array(capacity));
    befores = longer(befores, new Int32Array(capacity));
    hashes = longer(hashes, new Int32Array(capacity));
    places = placed(hashes, size, 2 * capacity);
  };

  return {
    size: () => size,
    room: (state) => rooms[state]!,
    value: (state, at) => values[state * several + at]!,
    count: (state, kind) => counts[state * kinds + kind]!,
    type: (state) => types[state]!,
    before: (state) => befores[state]!,
    grow(from, held, gain, room, type) {
      let hash = hashes[from]!;
      for (let k = 0; k < kinds; k++) wanted[k] = counts[from * kinds + k]!;
      for (const k of held) {
        wanted[k]! += gain[k]!;
        hash = (hash + Math.imul(gain[k]!, times[k]!)) | 0;
      }
      const at = place(hash);
      let state = places[at]! - 1;
      if (state >= 0) {
        if (rooms[state]! >= room) return -1;
      } else {
        state = size++;
        places[at] = size;
        counts.set(wanted, state * kinds);
        hashes[state] = hash;
        for (let p = 0; p < several; p++) {
          let value = values[from * several + p]!;
          for (const k of held) value += gain[k]! * prices[p]![k]!;
          values[state * several + p] = value;
        }
      }
      // What was reached by way of this state stays right: it has the same counts, and no less room.
      rooms[state] = room;
      types[state] = type;
      befores[state] = from;
      if (size === capacity) enlarge();
      return state;
    },
  };
}
