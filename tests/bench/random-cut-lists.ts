import type { PackingItem, PackingProblem, SheetStock } from "../../src/engine/types.ts";
import { Dice } from "../engine/exact/random-problems.ts";

/** Usable widths met in shops, in eighths of an inch and in half centimetres (common practice, no source). */
const WIDTHS = [320, 336, 344, 352, 864, 212, 220, 280];

/**
 * The random cut list of a seed: mostly what quilts ask for, and now and then what nobody would ask for,
 * such as pieces that cannot fit, one giant count, a roll one step wide or scraps that are too few.
 */
export function randomCutList(seed: number): PackingProblem {
  const dice = new Dice(Math.imul(seed, 2654435761));
  const style = dice.chance(1, 2) ? "strips-2" : "strips-3";
  const width = dice.chance(1, 12) ? dice.between(1, 40) : WIDTHS[dice.between(0, WIDTHS.length - 1)]!;
  const odd = dice.chance(1, 10);
  const items = randomPieces(dice, width, odd);
  const kind = dice.between(1, 10);
  if (kind <= 7) {
    const available = dice.chance(1, 6) ? dice.between(1, width * 3) : null;
    const roll = { width, available, costPerLength: dice.chance(1, 8) ? dice.between(1, 9) : 1 };
    return { style, items: withBands(dice, items, width), roll, sheets: [] };
  }
  const sheets = randomSheets(dice, width);
  if (kind < 10) return { style, items, roll: null, sheets };
  // What is to be paid for beside a roll is chosen by aims, not packed.
  const free = sheets.map((sheet) => ({ ...sheet, cost: 0 }));
  return { style, items, roll: { width, available: null, costPerLength: dice.between(1, 3) }, sheets: free };
}

function randomPieces(dice: Dice, width: number, odd: boolean): PackingItem[] {
  const sizes = dice.chance(1, 5) ? dice.between(6, 14) : dice.between(1, 5);
  const items: PackingItem[] = [];
  for (let size = 0; size < sizes; size++) {
    const side = (): number => {
      if (odd && dice.chance(1, 4)) return dice.between(1, Math.ceil(width * 1.2));
      return dice.between(Math.min(8, Math.ceil(width / 4)), Math.max(1, Math.ceil(width / 3)));
    };
    const across = side();
    const along = dice.chance(1, 2) ? across : side();
    const demand = odd && dice.chance(1, 4) ? dice.between(1000, 200_000) : dice.between(1, 120);
    items.push({ across, along, demand, turnable: dice.chance(3, 4), place: "strips" });
  }
  if (dice.chance(1, 3)) {
    const along = dice.between(1, Math.max(1, Math.ceil(width / 8)));
    items.push({ across: width, along, demand: dice.between(2, 10), turnable: false, place: "strips" });
  }
  return items;
}

/** Sometimes two to four long borders that must or may be cut lengthwise. */
function withBands(dice: Dice, items: PackingItem[], width: number): PackingItem[] {
  if (!dice.chance(1, 6)) return items;
  const border: PackingItem = {
    across: dice.between(1, Math.max(1, Math.ceil(width / 8))),
    along: dice.between(width, width * 2),
    demand: dice.between(2, 4),
    turnable: false,
    place: dice.chance(1, 2) ? "bands" : "either",
  };
  return [...items, border];
}

function randomSheets(dice: Dice, width: number): SheetStock[] {
  const kinds = dice.chance(1, 2) ? 1 : dice.between(2, 10);
  return Array.from({ length: kinds }, (): SheetStock => {
    const across = dice.between(Math.ceil(width / 4), width);
    const along = dice.between(Math.ceil(width / 8), width);
    const available = kinds === 1 && dice.chance(2, 3) ? null : dice.between(1, kinds === 1 ? 40 : 2);
    return {
      across,
      along,
      available,
      cost: dice.chance(1, 2) ? 1 : across * along,
      firstCut: dice.chance(1, 4) ? "across" : "either",
    };
  });
}
