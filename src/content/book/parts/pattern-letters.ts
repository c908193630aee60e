import type { FabricPlan, Plan } from "../../../plan/types.ts";
import type { Words } from "../../../words/index.ts";

type Piece = FabricPlan["pieces"][number];

const useOf = ({ uses, label }: Piece): string =>
  label !== "" ? label : JSON.stringify(uses[0]?.purpose ?? null);

/** Whether two pieces of one fabric may lie in one bag: cut to one size, and then cut further alike. */
const alike = (a: Piece, b: Piece): boolean =>
  a.along === b.along &&
  a.fullWidth === b.fullWidth &&
  (a.fullWidth || a.across === b.across) &&
  a.subcut === b.subcut &&
  a.turnable === b.turnable;

/**
 * The sizes of a pattern with one letter for one bag in all of them: a letter is one fabric, cut to one size, whatever
 * size is made. The first plan keeps its letters, since it is the one shown step by step; what only another size has
 * is called by a starred letter that nothing else has.
 */
export function letteredAlike(plans: readonly Plan[], words: Words): Plan[] {
  const { star } = words.book.pattern.cutting;
  const [main, ...others] = plans;
  if (main === undefined) return [];
  const bags = new Map<string, { piece: Piece; letter: string }[]>();
  const used = new Set<string>();
  const bagsOf = (fabric: string): { piece: Piece; letter: string }[] => {
    const own = bags.get(fabric) ?? [];
    bags.set(fabric, own);
    return own;
  };
  for (const { name, pieces } of main.fabrics)
    for (const piece of pieces) {
      bagsOf(name).push({ piece, letter: piece.letter });
      used.add(piece.letter);
    }
  /** A letter that no bag has: that of the same use in the first size, starred until it is free. */
  const another = (fabric: string, piece: Piece): string => {
    const near = bagsOf(fabric).find((bag) => useOf(bag.piece) === useOf(piece));
    let letter = (near?.letter ?? piece.letter).replaceAll(star, "");
    while (used.has(letter) || !letter.includes(star)) letter += star;
    used.add(letter);
    return letter;
  };
  const relettered = (fabric: FabricPlan): FabricPlan => {
    const own = bagsOf(fabric.name);
    const taken = new Set<object>();
    const letters = new Map<Piece, string>();
    const find = (fits: (bag: Piece, piece: Piece) => boolean): void => {
      for (const piece of fabric.pieces) {
        if (letters.has(piece)) continue;
        const bag = own.find((each) => !taken.has(each) && fits(each.piece, piece));
        if (bag === undefined) continue;
        taken.add(bag);
        letters.set(piece, bag.letter);
      }
    };
    find((bag, piece) => alike(bag, piece) && useOf(bag) === useOf(piece));
    find(alike);
    for (const piece of fabric.pieces) {
      if (letters.has(piece)) continue;
      const letter = another(fabric.name, piece);
      letters.set(piece, letter);
      own.push({ piece, letter });
    }
    return {
      ...fabric,
      pieces: fabric.pieces.map((piece) => ({ ...piece, letter: letters.get(piece) ?? piece.letter })),
    };
  };
  return [main, ...others.map((plan) => ({ ...plan, fabrics: plan.fabrics.map(relettered) }))];
}
