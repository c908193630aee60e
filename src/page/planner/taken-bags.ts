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

/** What is known of every bag of a plan, in the order of the letters. */
export type BagFacts = ReadonlyMap<string, Omit<TakenBag, "perSet">>;

/** Fabric and size of every bag: worked out once for all that take from them. */
export function bagFacts(plan: Plan): BagFacts {
  return new Map(
    plan.fabrics.flatMap((fabric) =>
      pieceFacts(fabric, plan, tongue).map(({ letter, size }) => [
        letter,
        { letter, fabric: fabric.name, size: typeset(size), colour: fabric.colour },
      ]),
    ),
  );
}

/** Every bag of some letters, in the order of the letters. */
export const bagsNamed = (letters: ReadonlySet<string>, facts: BagFacts): TakenBag[] =>
  [...facts.values()].filter(({ letter }) => letters.has(letter)).map((bag) => ({ ...bag, perSet: 0 }));

/** The bags that units sewn alike take pieces from, in the order in which they are taken. */
export function takenBags(units: Making["units"], { fabrics }: Plan, facts: BagFacts): TakenBag[] {
  const found = new Map<string, TakenBag>();
  for (const { batches, heaps, stripSets } of units) {
    const own = new Map<string, TakenBag>();
    const add = (letter: string | null, fabric: string, perSet: number): void => {
      if (letter === null || letter === "") return;
      const bag = own.get(letter);
      const colour = fabrics.find(({ name }) => name === fabric)?.colour ?? "#ffffff";
      const size = facts.get(letter)?.size ?? "";
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
