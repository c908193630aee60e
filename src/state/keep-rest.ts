import { nth } from "../length/nth.ts";
import {
  asStock,
  type FixedPiece,
  gatherPlaced,
  layOfRest,
  listLeftovers,
  listSteps,
  orderCuts,
  type PlanSettings,
  sumWaste,
} from "../plan/index.ts";
import type { FabricPlan, FixedStock, Lay, Part } from "../plan/types.ts";
import { LENGTH_IN_HAND } from "../stock/index.ts";
import { cutFrom, isRoll, remainder, restPieces, stillWhole, stockOf, tookOf } from "./cloth-in-hand.ts";
import { numberedParts } from "./find-strips.ts";
import type { Work } from "./take-stock.ts";

/** Whether all that was said is that whole strips are cut as planned: then the rest of the plan stands. */
function wentAsPlanned({ lays, usable }: FabricPlan, work: Work): boolean {
  const plain =
    work.width === usable &&
    work.left === null &&
    work.besides.length === 0 &&
    work.lost.every((count) => count === 0);
  const begun = lays.filter((lay, l) => nth(work.strips, l).size > 0 || !isRoll(lay));
  const rolls = lays.filter(isRoll);
  return (
    plain &&
    begun.length > 0 &&
    rolls.length < 2 &&
    lays.every(({ root }, l) => {
      const states = nth(work.strips, l);
      if (![...states.values()].every((state) => state === "cut")) return false;
      return root.parts.every((part) => {
        const numbers = numberedParts(part).map(({ number }) => number);
        const cut = numbers.filter((number) => states.has(number));
        return cut.length === 0 || cut.length === numbers.length;
      });
    })
  );
}

/** A lay that is still to cut, and the cloth it is now. */
interface Left {
  lay: Lay;
  parts: Part[];
  cloth: FixedPiece;
}

/** What is still to cut of a lay; null when nothing is. */
function leftOf(
  fabric: FabricPlan,
  lay: Lay,
  work: Work,
  index: number,
  ruler: PlanSettings["ruler"],
): Left | null {
  const states = nth(work.strips, index);
  const begun = states.size > 0;
  const parts = lay.root.parts.filter((part) => {
    if (part.role === "straightening") return !begun;
    return !numberedParts(part).some(({ number }) => states.has(number));
  });
  if (!parts.some((part) => numberedParts(part).length > 0)) return null;
  const kind = stockOf(fabric, lay);
  if (isRoll(lay)) {
    const along = parts.reduce((sum, part) => sum + part.along, 0);
    const straighten = begun ? 0 : lay.source === "bolt" ? fabric.straighten : (kind?.squareUp?.along ?? 0);
    const squareUp = { across: 0, along: straighten };
    return {
      lay,
      parts,
      cloth: { name: LENGTH_IN_HAND, across: lay.across, along, available: 1, from: "to-hand", squareUp },
    };
  }
  if (begun) {
    const size = parts.reduce((sum, part) => sum + (lay.root.cut === "along" ? part.across : part.along), 0);
    return { lay, parts, cloth: remainder(fabric, lay, size, work, ruler) };
  }
  const [whole] = kind === null ? [] : stillWhole(fabric, { ...kind, available: 1, used: 1 }, 0, work, ruler);
  return whole === undefined ? null : { lay, parts, cloth: whole };
}

/**
 * The plan of a fabric of which whole strips are cut as planned: what is left of it stands as it was. Null when it has to
 * be planned again.
 */
export function keepRest(
  fabric: FabricPlan,
  work: Work,
  bought: readonly string[],
  settings: PlanSettings,
  kits: number,
): FabricPlan | null {
  if (!wentAsPlanned(fabric, work)) return null;
  const { ruler, keepFrom } = settings;
  const { lays, pieces } = fabric;
  const left = lays.flatMap((lay, l) => leftOf(fabric, lay, work, l, ruler) ?? []);
  const laid = new Map<string, number>();
  for (const { name } of lays) laid.set(name, (laid.get(name) ?? 0) + 1);
  const others = [
    ...lays.flatMap((lay, l) => {
      if (nth(work.strips, l).size === 0) return [];
      const { rests, remaining } = cutFrom(fabric, lay, work, l);
      const isLeft = left.some((one) => one.lay === lay);
      const end = isLeft || remaining === 0 ? [] : [remainder(fabric, lay, remaining, work, ruler)];
      return [...restPieces(rests, ruler), ...end];
    }),
    ...[...(fabric.stock ?? []), ...(fabric.done?.kept ?? [])].flatMap((kind) =>
      stillWhole(fabric, kind, laid.get(kind.name) ?? 0, work, ruler),
    ),
  ];
  const { kinds, kindOf } = gatherPlaced([...left.map(({ cloth }) => cloth), ...others]);
  const next = left.map(({ lay, parts }, i) => layOfRest(lay, parts, nth(kinds, nth(kindOf, i)).name));
  const used = kinds.map((_, k) => left.filter((_, i) => kindOf[i] === k).length);
  const asCloth = (kind: FixedPiece, k: number): FixedStock => asStock(kind, nth(used, k));
  const stock = kinds.map(asCloth);
  const { mix: _mix, kitShares: _shares, stock: _stock, ...same } = fabric;
  const taken = stock.filter((kind) => kind.used > 0);
  return {
    ...same,
    lays: next,
    ...(taken.length === 0 ? {} : { stock: taken }),
    purchase: null,
    bound: {
      ...{ used: 0, least: 0, style: fabric.bound.style },
      ...{ lengthProven: true, purchaseProven: true, ruleOfThumb: 0 },
    },
    steps: listSteps(next, settings),
    cuts: orderCuts(next),
    waste: sumWaste(next, pieces, null),
    leftovers: listLeftovers(next, pieces, keepFrom, kits),
    sturdiness: { narrowestUsable: null, spareLength: 0 },
    done: {
      cut: [...work.bags],
      bought: [...bought],
      kept: stock.filter((kind) => kind.used === 0),
      took: tookOf(fabric, work),
    },
  };
}
