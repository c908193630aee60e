import type { Plan } from "../../plan/types.ts";
import type { Words } from "../../words/index.ts";

const PARTS = { "once-diagonal": 2, "twice-diagonal": 4, none: 1, template: 1 } as const;

/**
 * Halves and quarters that the units do not use, bag by bag: squares are cut whole, and a print may leave the other
 * half over. Empty where none is.
 */
export function partsOver(plan: Plan, words: Words): string[] {
  const { making, kits = 1 } = plan;
  // The paper speaks of one quilt, the pieces are for all.
  const used = new Map<string, number>();
  for (const { heaps } of making?.units ?? [])
    for (const { patches } of heaps)
      for (const { from } of patches)
        for (const { letter, part, count } of from)
          if (part !== "whole" && part !== "template") used.set(letter, (used.get(letter) ?? 0) + count);
  const over = plan.fabrics.flatMap(({ name, pieces }) =>
    pieces.flatMap(({ letter, subcut, count }) => {
      const parts = PARTS[subcut];
      const rest = Math.floor((parts * count) / kits) - (used.get(letter) ?? 0);
      return parts === 1 || !used.has(letter) || rest <= 0
        ? []
        : [words.units.over(rest, parts, words.units.bag(letter, name))];
    }),
  );
  return over.length === 0 ? [] : [words.units.allOver(over)];
}

/** Pieces that the maker's file lists by themselves: cut with the rest, and sewn by no step here. */
export function ownPieces(plan: Plan, words: Words): string[] {
  const { kits = 1 } = plan;
  const own = plan.fabrics.flatMap(({ name, pieces }) =>
    pieces.flatMap(({ letter, uses }) => {
      const count = uses.reduce((sum, use) => sum + (use.own === true ? use.count : 0), 0) / kits;
      return count === 0 ? [] : [words.units.ownPieces(count, words.units.bag(letter, name))];
    }),
  );
  return own.length === 0 ? [] : [words.units.allOwn(own)];
}
