import type { Words } from "../../words/index.ts";

/** The words for paper that goes to others: nothing in it speaks of the file a plan was made from, or of proofs. */
export function wordsForMakers(words: Words): Words {
  const { cutting, finishing, making, units } = words.forMakers;
  return {
    ...words,
    cutting: { ...words.cutting, ...cutting },
    finishing: { ...words.finishing, ...finishing },
    making: { ...words.making, ...making },
    units: { ...words.units, ...units },
  };
}
