import type { CuttingStyle, PackingItem, PackingProblem, SheetStock } from "../../../src/engine/types.ts";

/** A seeded source of whole numbers (the 32-bit mixing generator of common practice, no source). */
export class Dice {
  private state: number;

  constructor(seed: number) {
    this.state = seed >>> 0;
  }

  /** A whole number from `low` to `high`, both included. */
  between(low: number, high: number): number {
    this.state = (this.state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(this.state ^ (this.state >>> 15), this.state | 1);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61)) ^ mixed;
    const fraction = ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
    return low + Math.floor(fraction * (high - low + 1));
  }

  /** True `times` in `of` throws. */
  chance(times: number, of: number): boolean {
    return this.between(1, of) <= times;
  }
}

/** What a random problem may look like. */
export interface ProblemShape {
  style: CuttingStyle;
  sizes: readonly [least: number, most: number];
  /** Copies of one size. */
  copies: readonly [least: number, most: number];
  /** Copies of all sizes together, at most. */
  pieces: number;
  /** Width of the roll, or the longest side of a sheet. */
  width: readonly [least: number, most: number];
}

function randomItems(dice: Dice, shape: ProblemShape, width: number, height: number): PackingItem[] {
  const items: PackingItem[] = [];
  let left = shape.pieces;
  const sizes = dice.between(shape.sizes[0], shape.sizes[1]);
  for (let size = 0; size < sizes && left > 0; size++) {
    const demand = Math.min(left, dice.between(shape.copies[0], shape.copies[1]));
    left -= demand;
    const across = dice.between(1, Math.max(1, dice.chance(1, 8) ? width : Math.ceil((width * 2) / 3)));
    const along = dice.between(1, height);
    items.push({ across, along, demand, turnable: dice.chance(2, 3), place: "strips" });
  }
  return items;
}

/** A roll with no end; pieces up to the width across, up to somewhat more than the width along. */
export function randomRoll(seed: number, shape: ProblemShape): PackingProblem {
  const dice = new Dice(seed);
  const width = dice.between(shape.width[0], shape.width[1]);
  const items = randomItems(dice, shape, width, Math.ceil(width * 0.7));
  return {
    style: shape.style,
    items,
    roll: { width, available: null, costPerLength: 1 },
    sheets: [],
  };
}

/** A roll, and pieces that may or must be cut in lengthwise bands. */
export function randomBandRoll(seed: number, shape: ProblemShape): PackingProblem {
  const problem = randomRoll(seed, shape);
  const dice = new Dice(seed ^ 0x5bd1e995);
  const width = problem.roll!.width;
  const items = problem.items.map((item, number): PackingItem => {
    if (number === 0) {
      const across = dice.between(1, Math.ceil(width / 4));
      const along = dice.between(Math.ceil(width / 2), width * 2);
      const place = dice.chance(1, 2) ? "bands" : "either";
      return { ...item, across, along, turnable: false, place, demand: Math.min(item.demand, 3) };
    }
    return dice.chance(1, 3) ? { ...item, place: "either" } : item;
  });
  return { ...problem, items };
}

/** A roll with bands, and a few sheets beside it that cost nothing or little. */
export function randomBandRollAndSheets(seed: number, shape: ProblemShape): PackingProblem {
  const problem = randomBandRoll(seed, shape);
  const dice = new Dice(seed ^ 0x2545f491);
  const width = problem.roll!.width;
  const priced = dice.chance(1, 3);
  const sheets = Array.from({ length: dice.between(1, 2) }, (): SheetStock => {
    const across = dice.between(1, width);
    const along = dice.between(Math.ceil(width / 2), 2 * width);
    const firstCut = dice.chance(1, 4) ? "none" : dice.chance(1, 2) ? "across" : "either";
    return {
      across,
      along,
      available: dice.between(1, 2),
      cost: priced ? dice.between(0, width) : 0,
      firstCut,
    };
  });
  return { ...problem, sheets };
}

/** A roll with one or two runs to be joined, and now and then strips that are cut already. */
export function randomJoinedRoll(seed: number, shape: ProblemShape): PackingProblem {
  const problem = randomRoll(seed, shape);
  const dice = new Dice(seed ^ 0x1b873593);
  const { width } = problem.roll!;
  const heights = problem.items.flatMap(({ across, along }) => [across, along]);
  const runs = Array.from({ length: dice.between(1, 2) }, (): PackingItem => {
    const along = dice.chance(2, 3) ? heights[dice.between(0, heights.length - 1)]! : dice.between(1, width);
    const loss = dice.between(0, Math.floor(width / 4));
    const run = { length: loss + dice.between(1, 5 * width), loss, leastEnd: dice.between(1, width) };
    return { across: width, along, demand: 1, turnable: false, place: "strips", run };
  });
  const sheets = dice.chance(1, 3)
    ? [
        {
          across: dice.between(Math.ceil(width / 2), width + 4),
          along: dice.between(1, width),
          available: dice.between(1, 3),
          cost: 0,
          firstCut: "none" as const,
        },
      ]
    : [];
  return { ...problem, items: [...problem.items, ...runs], sheets };
}

/** Sheets of up to three kinds with costs; enough of the biggest for everything that fits at all. */
export function randomSheets(seed: number, shape: ProblemShape): PackingProblem {
  const dice = new Dice(seed);
  const sheets: SheetStock[] = [];
  const kinds = dice.between(1, 3);
  for (let kind = 0; kind < kinds; kind++) {
    const across = dice.between(shape.width[0], shape.width[1]);
    const along = dice.between(shape.width[0], shape.width[1]);
    sheets.push({
      across,
      along,
      available: kind === 0 ? (dice.chance(1, 2) ? null : dice.between(1, 4)) : dice.between(1, 2),
      cost: dice.chance(1, 3) ? 1 : across * along,
      firstCut: dice.chance(1, 3) ? "across" : "either",
    });
  }
  const items = randomItems(dice, shape, sheets[0]!.across, sheets[0]!.along);
  return { style: shape.style, items, roll: null, sheets };
}
