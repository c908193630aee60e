import { formatSize } from "../length/index.ts";
import { nth } from "../length/nth.ts";
import type { Ruler, Ticks } from "../length/types.ts";
import type { FixedPiece, LengthInHand } from "../plan/index.ts";
import type { FabricPlan, FixedStock, Lay } from "../plan/types.ts";
import { clothName, LENGTH_IN_HAND, restName, SHORTER_LENGTH } from "../stock/index.ts";
import { numberedParts } from "./find-strips.ts";
import { type Cutting, type Rectangle, restsOf } from "./rests.ts";
import { isAtEdge, type Work, widthOfLay } from "./take-stock.ts";

/** Cloth there is of a fabric once some of it is cut. */
export interface ClothThere {
  /** Rests of what is cut, and cloth of fixed sizes that is still whole. */
  cloth: FixedPiece[];
  /** What is left of the bolt; null when there is none of it. */
  roll: LengthInHand | null;
}

const SQUARE = { across: 0, along: 0 };

/** A rest by its size: what is cut already is used up before anything else. */
export function restPiece({ across, along, atEdge }: Rectangle, count: number, ruler: Ruler): FixedPiece {
  const name = restName(formatSize(across, along, ruler));
  const edge = atEdge === true ? { atEdge } : {};
  return { name, across, along, available: count, from: "to-hand", begun: true, ...edge, squareUp: SQUARE };
}

/** Rests, equal ones together. */
export function restPieces(rests: readonly Rectangle[], ruler: Ruler): FixedPiece[] {
  return gathered(rests).map((rest) => restPiece(rest, rest.count, ruler));
}

/** A bolt, or a length of it in hand. */
export function isRoll({ source, name }: Lay): boolean {
  return source === "bolt" || name === LENGTH_IN_HAND;
}

/** Cloth of the drawer that is cut into by now. */
export function tookOf(fabric: FabricPlan, work: Work): { across: Ticks; along: Ticks; count: number }[] {
  const now = fabric.lays.flatMap((lay, l) =>
    nth(work.strips, l).size > 0 && stockOf(fabric, lay)?.from === "stash" ? [lay] : [],
  );
  return gathered([
    ...(fabric.done?.took ?? []).flatMap(({ count, ...size }) => Array.from({ length: count }, () => size)),
    ...now,
  ]);
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
    const untouched = nth(work.strips, l).size === 0;
    if (!untouched) begun.set(lay.name, (begun.get(lay.name) ?? 0) + 1);
    if (untouched && !isRoll(lay)) return;
    const straighten = lay.source === "bolt" ? fabric.straighten : (kind?.squareUp?.along ?? 0);
    const left = untouched
      ? { rests: [], remaining: lay.along, straighten }
      : { ...cutFrom(fabric, lay, work, l), straighten: 0 };
    rests.push(...left.rests);
    if (isRoll(lay)) {
      rolls.push({
        length: { length: left.remaining, straighten: left.straighten },
        bolt: lay.source === "bolt",
      });
    } else if (left.remaining > 0) cloth.push(remainder(fabric, lay, left.remaining, work, ruler));
  });
  for (const kind of [...(fabric.stock ?? []), ...(fabric.done?.kept ?? [])])
    cloth.push(...stillWhole(fabric, kind, begun.get(kind.name) ?? 0, work, ruler));
  for (const { count, ...rectangle } of work.besides) cloth.push(restPiece(rectangle, count, ruler));
  // Of several bolts the longest rest is planned on first, as a bolt; the others are lengths beside it.
  rolls.sort((a, b) => Number(b.bolt) - Number(a.bolt) || b.length.length - a.length.length);
  const [first = null, ...others] = rolls;
  const roll =
    work.left === null ? (first?.length ?? null) : measured(fabric, first?.length ?? null, work.left);
  for (const { length } of others) cloth.push(...shorter(work.width, length));
  return {
    cloth: [...restPieces(rests, ruler), ...cloth],
    roll: roll === null || roll.length <= roll.straighten ? null : roll,
  };
}

function measured({ straighten }: FabricPlan, roll: LengthInHand | null, length: Ticks): LengthInHand {
  return { length, straighten: roll?.straighten ?? straighten };
}

function shorter(width: Ticks, { length, straighten }: LengthInHand): FixedPiece[] {
  if (length <= straighten) return [];
  const squareUp = { across: 0, along: straighten };
  return [{ name: SHORTER_LENGTH, across: width, along: length, available: 1, from: "to-hand", squareUp }];
}

/** The kind of cloth that a lay is of; null for the bolt. */
export function stockOf({ stock = [] }: FabricPlan, lay: Lay): FixedStock | null {
  return lay.source === "bolt" ? null : (stock.find(({ name }) => name === lay.name) ?? null);
}

/** What a lay that is cut into leaves: rests of its strips, and how much of it is uncut. */
export function cutFrom(
  fabric: FabricPlan,
  lay: Lay,
  work: Work,
  index: number,
): { rests: Rectangle[]; remaining: Ticks } {
  const states = nth(work.strips, index);
  const strips = numberedParts(lay.root);
  const lost = stockOf(fabric, lay)?.squareUp ?? SQUARE;
  const width = widthOfLay(fabric, lay, work);
  const upright = lay.root.cut === "along";
  const cutting: Cutting = {
    told: work.told,
    spoiled: new Set(strips.filter(({ number }) => states.get(number) === "spoiled")),
    off: new Set(strips.filter(({ number }) => states.get(number) === "cut-off")),
    planned: { across: lay.across, along: lay.along },
    // The side of the first cut is straight by now; the ends of strips are not.
    ends: {
      across: upright ? width : width - lost.across,
      along: upright ? lay.along - lost.along : lay.along,
    },
    atEdge: isAtEdge(fabric, lay),
  };
  const rests: Rectangle[] = [];
  let remaining = 0;
  for (const part of lay.root.parts) {
    if (part.role === "straightening") continue;
    const touched = numberedParts(part).some(({ number }) => states.has(number));
    if (touched) rests.push(...restsOf(part, cutting));
    else remaining += upright ? part.across : part.along;
  }
  // Of what stands uncut beside lengthwise strips the last ends where the cloth does.
  return {
    rests,
    remaining: upright && remaining > 0 ? Math.max(0, remaining + width - lay.across) : remaining,
  };
}

/** What is left of a fat quarter or scrap: straight where strips came off, and as it was on the other sides. */
export function remainder(fabric: FabricPlan, lay: Lay, size: Ticks, work: Work, ruler: Ruler): FixedPiece {
  const upright = lay.root.cut === "along";
  const across = upright ? size : widthOfLay(fabric, lay, work);
  const along = upright ? lay.along : size;
  const lost = stockOf(fabric, lay)?.squareUp ?? SQUARE;
  const squareUp = { across: upright ? 0 : lost.across, along: upright ? lost.along : 0 };
  const edge = isAtEdge(fabric, lay) ? { atEdge: true as const } : {};
  return { ...restPiece({ across, along, ...edge }, 1, ruler), squareUp };
}

/** Cloth of a kind that is not cut into; of what is sold ready cut, what was bought of it. */
export function stillWhole(
  fabric: FabricPlan,
  kind: FixedStock,
  begun: number,
  work: Work,
  ruler: Ruler,
): FixedPiece[] {
  if (kind.name === LENGTH_IN_HAND) return [];
  const { name, along, trim, strip, squareUp, from, available, used, atEdge } = kind;
  const isWide = atEdge === true || kind.across === fabric.usable;
  const across = isWide ? kind.across + work.width - fabric.usable : kind.across;
  if (across <= 0) return [];
  const plain = { across, along, trim, strip, ...(squareUp === undefined ? {} : { squareUp }) };
  const there = (from === "shop" ? used : available) - begun;
  if (kind.begun === true) {
    const rest = restPiece({ across, along, ...(atEdge === true ? { atEdge } : {}) }, there, ruler);
    return there > 0 ? [{ ...rest, ...(squareUp === undefined ? {} : { squareUp }) }] : [];
  }
  const own: FixedPiece = {
    ...plain,
    name: from === "shop" ? clothName(name) : name,
    available: there,
    from: from === "shop" ? "to-hand" : from,
  };
  return there > 0 ? [own] : [];
}

function gathered(rests: readonly Rectangle[]): (Rectangle & { count: number })[] {
  const found = new Map<string, Rectangle & { count: number }>();
  for (const { across, along, atEdge } of rests) {
    const key = `${across} ${along} ${atEdge === true}`;
    const rest = { across, along, ...(atEdge === true ? { atEdge } : {}) };
    found.set(key, { ...rest, count: (found.get(key)?.count ?? 0) + 1 });
  }
  return [...found.values()];
}
