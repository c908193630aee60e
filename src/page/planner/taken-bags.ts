import { type Plan, pieceFacts, typeset } from "../../planning.ts";
import { tongue } from "../words/index.ts";

type Making = NonNullable<Plan["making"]>;

/** A bag to take pieces from. */
export interface TakenBag {
  letter: string;
  fabric: string;
  /** Size of a piece in it, as it is cut. */
  size: string;
  colour: string;
  /** How many for each set; 0 where that differs. */
  perSet: number;
}

const sizesOf = (plan: Plan): Map<string, string> =>
  new Map(
    plan.fabrics.flatMap((fabric) =>
      pieceFacts(fabric, plan, tongue).map(({ letter, size }) => [letter, typeset(size)]),
    ),
  );

/** Every bag that the patches of a block come out of, in the order of the letters. */
export function blockBags(design: number, making: Making, plan: Plan): TakenBag[] {
  const letters = new Set(
    making.blocks
      .filter((block) => block.design === design)
      .flatMap(({ units }) => units)
      .flatMap((place) => (place === null ? [] : [making.units[place.unit]?.heaps[place.heap]]))
      .flatMap((heap) => heap?.patches.flatMap((patch) => patch.letters) ?? []),
  );
  const sizes = sizesOf(plan);
  return plan.fabrics.flatMap(({ name, colour, pieces }) =>
    pieces
      .filter(({ letter }) => letters.has(letter))
      .map(({ letter }) => ({ letter, fabric: name, size: sizes.get(letter) ?? "", colour, perSet: 0 })),
  );
}

/** The bags that units sewn alike take pieces from, in the order in which they are taken. */
export function takenBags(units: Making["units"], plan: Plan): TakenBag[] {
  const { fabrics } = plan;
  const sizes = sizesOf(plan);
  const found = new Map<string, TakenBag>();
  for (const { batches, heaps, stripSets } of units) {
    const own = new Map<string, TakenBag>();
    const add = (letter: string | null, fabric: string, perSet: number): void => {
      if (letter === null || letter === "") return;
      const bag = own.get(letter);
      const colour = fabrics.find(({ name }) => name === fabric)?.colour ?? "#ffffff";
      const size = sizes.get(letter) ?? "";
      if (bag === undefined) own.set(letter, { letter, fabric, size, colour, perSet });
      else bag.perSet += perSet;
    };
    for (const { laid } of batches)
      for (const { letter, fabric } of laid) add(letter, fabric, batches.length === 1 ? 1 : 0);
    for (const { strips } of stripSets)
      for (const { letter, lastLetter, fabric } of strips) {
        add(letter, fabric, 0);
        add(lastLetter, fabric, 0);
      }
    for (const { patches } of heaps)
      for (const { letters, fabric } of patches) for (const letter of letters) add(letter, fabric, 0);
    for (const bag of own.values()) {
      // Where units alike take unlike numbers of one bag, the words below tell each.
      const other = found.get(bag.letter);
      const perSet = other === undefined || other.perSet === bag.perSet ? bag.perSet : 0;
      found.set(bag.letter, { ...bag, perSet });
    }
  }
  return [...found.values()];
}
