import { formatSize } from "../length/index.ts";
import type { Ruler, Ticks } from "../length/types.ts";
import { type FixedPiece, LENGTH_IN_HAND, type LengthInHand } from "../plan/index.ts";
import type { FabricPlan, FixedStock, Lay } from "../plan/types.ts";
import { numberedParts } from "./find-strips.ts";
import { type Cutting, type Rectangle, restsOf } from "./rests.ts";
import { isFullWidth, type Work } from "./take-stock.ts";

/** Cloth there is of a fabric once some of it is cut. */
export interface ClothThere {
  /** Rests of what is cut, and cloth of fixed sizes that is still whole. */
  cloth: FixedPiece[];
  /** What is left of the bolt; null when there is none of it. */
  roll: LengthInHand | null;
}

/** The name of a rest, one of several of a size included. */
const REST = / rest(?: \(\d+\))?$/;

const SQUARE = { across: 0, along: 0 };

/** A rest by its size: what is cut already is used up before anything else. */
export function restPiece({ across, along }: Rectangle, count: number, ruler: Ruler): FixedPiece {
  const name = `${formatSize(across, along, ruler)} rest`;
  return { name, across, along, available: count, from: "to-hand", begun: true, squareUp: SQUARE };
}

/** What is there of a fabric after the work that is told of, by the plan it was done from. */
export function clothInHand(fabric: FabricPlan, work: Work, ruler: Ruler): ClothThere {
  const { lays } = fabric;
  const rests: Rectangle[] = [];
  const cloth: FixedPiece[] = [];
  const rolls: { length: LengthInHand; bolt: boolean }[] = [];
  const begun = new Map<string, number>();
  lays.forEach((lay, l) => {
    const kind = stockOf(fabric, lay);
    const isRoll = lay.source === "bolt" || lay.name === LENGTH_IN_HAND;
    const untouched = work.strips[l]!.size === 0;
    if (!untouched) begun.set(lay.name, (begun.get(lay.name) ?? 0) + 1);
    if (untouched && !isRoll) return;
    const straighten = lay.source === "bolt" ? fabric.straighten : (kind?.squareUp?.along ?? 0);
    const left = untouched
      ? { rests: [], remaining: lay.along, straighten }
      : { ...cutFrom(fabric, lay, work, l), straighten: 0 };
    rests.push(...left.rests);
    if (isRoll) {
      rolls.push({
        length: { length: left.remaining, straighten: left.straighten },
        bolt: lay.source === "bolt",
      });
    } else if (left.remaining > 0) cloth.push(remainder(lay, kind, left.remaining, ruler));
  });
  for (const kind of [...(fabric.stock ?? []), ...(fabric.done?.kept ?? [])])
    cloth.push(...stillWhole(fabric, kind, begun.get(kind.name) ?? 0, work, ruler));
  for (const { count, ...rectangle } of work.besides) cloth.push(restPiece(rectangle, count, ruler));
  rolls.sort((a, b) => Number(b.bolt) - Number(a.bolt));
  const [first = null, ...others] = rolls;
  const roll = work.left === null ? (first?.length ?? null) : measured(fabric, first?.length ?? null, work.left);
  for (const { length } of others) cloth.push(...shorter(work.width, length));
  return {
    cloth: [...gathered(rests).map((rest) => restPiece(rest, rest.count, ruler)), ...cloth],
    roll: roll === null || roll.length <= roll.straighten ? null : roll,
  };
}

function measured({ straighten }: FabricPlan, roll: LengthInHand | null, length: Ticks): LengthInHand {
  return { length, straighten: roll?.straighten ?? straighten };
}

function shorter(width: Ticks, { length, straighten }: LengthInHand): FixedPiece[] {
  if (length <= straighten) return [];
  const squareUp = { across: 0, along: straighten };
  return [{ name: "shorter length", across: width, along: length, available: 1, from: "to-hand", squareUp }];
}

function stockOf({ stock = [] }: FabricPlan, lay: Lay): FixedStock | null {
  return lay.source === "bolt" ? null : (stock.find(({ name }) => name === lay.name) ?? null);
}

/** What a lay that is cut into leaves: rests of its strips, and how much of it is uncut. */
function cutFrom(
  fabric: FabricPlan,
  lay: Lay,
  work: Work,
  index: number,
): { rests: Rectangle[]; remaining: Ticks } {
  const states = work.strips[index]!;
  const strips = numberedParts(lay.root);
  const lost = stockOf(fabric, lay)?.squareUp ?? SQUARE;
  const width = isFullWidth(fabric, lay) ? work.width : lay.across;
  const upright = lay.root.cut === "along";
  const cutting: Cutting = {
    told: work.told,
    spoiled: new Set(strips.filter(({ number }) => states.get(number) === "spoiled")),
    planned: { across: lay.across, along: lay.along },
    // The side of the first cut is straight by now; the ends of strips are not.
    ends: {
      across: upright ? width : width - lost.across,
      along: upright ? lay.along - lost.along : lay.along,
    },
  };
  const rests: Rectangle[] = [];
  let remaining = 0;
  for (const part of lay.root.parts) {
    if (part.role === "straightening") continue;
    const touched = numberedParts(part).some(({ number }) => states.has(number));
    if (touched) rests.push(...restsOf(part, cutting));
    else remaining += upright ? part.across : part.along;
  }
  return { rests, remaining };
}

/** What is left of a fat quarter or scrap: straight where strips came off, and as it was on the other sides. */
function remainder(lay: Lay, kind: FixedStock | null, size: Ticks, ruler: Ruler): FixedPiece {
  const upright = lay.root.cut === "along";
  const across = upright ? size : lay.across;
  const along = upright ? lay.along : size;
  const lost = kind?.squareUp ?? SQUARE;
  const squareUp = { across: upright ? 0 : lost.across, along: upright ? lost.along : 0 };
  return { ...restPiece({ across, along }, 1, ruler), squareUp };
}

/** Cloth of a kind that is not cut into; of what is sold ready cut, what was bought of it and what more there is to buy. */
function stillWhole(
  fabric: FabricPlan,
  kind: FixedStock,
  begun: number,
  work: Work,
  ruler: Ruler,
): FixedPiece[] {
  if (kind.name === LENGTH_IN_HAND) return [];
  const { name, along, trim, strip, squareUp, from, available, used, price } = kind;
  const across = kind.across === fabric.usable ? work.width : kind.across;
  const plain = { across, along, trim, strip, ...(squareUp === undefined ? {} : { squareUp }) };
  const there = (from === "shop" ? used : available) - begun;
  if (REST.test(name)) {
    const rest = restPiece({ across, along }, there, ruler);
    return there > 0 ? [{ ...rest, ...(squareUp === undefined ? {} : { squareUp }) }] : [];
  }
  const own: FixedPiece = {
    ...plain,
    name: from === "shop" ? name.replace(/^bought /, "") : name,
    available: there,
    from: from === "shop" ? "to-hand" : from,
  };
  const offered = fabric.mix === undefined || from !== "shop" ? 0 : available - used;
  const more: FixedPiece = { ...plain, name, available: offered, from: "shop", price };
  return [...(there > 0 ? [own] : []), ...(offered > 0 ? [more] : [])];
}

function gathered(rests: readonly Rectangle[]): (Rectangle & { count: number })[] {
  const found = new Map<string, Rectangle & { count: number }>();
  for (const { across, along } of rests) {
    const key = `${across} ${along}`;
    found.set(key, { across, along, count: (found.get(key)?.count ?? 0) + 1 });
  }
  return [...found.values()];
}

/** Whether all that was said is that strips are cut as planned: then the rest of the plan stands. */
export function wentAsPlanned(fabric: FabricPlan, work: Work): boolean {
  const states = work.strips.flatMap((strips) => [...strips.values()]);
  return (
    work.width === fabric.usable &&
    work.left === null &&
    work.besides.length === 0 &&
    work.lost.every((count) => count === 0) &&
    states.every((state) => state === "cut")
  );
}

