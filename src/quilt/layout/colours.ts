import { colourwayCircular, colourwayUnknown, fabricMissing } from "../../diagnostics/quilts/quilt.ts";
import type { Diagnostic } from "../../diagnostics/types.ts";
import type { BlockSpec, FabricWord, QuiltSpec } from "../../spec/quilt-types.ts";

/** Finds the fabric a word stands for in a block and colourway; null when it has been reported. */
export type FindFabric = (word: FabricWord, block: BlockSpec | null, colourway: string) => string | null;

/**
 * Prepares the finding of fabrics. A word is looked up in the colourway, then in what that colourway is
 * like, then among the block's own roles, then among the fabrics; a role may stand for another role. Each
 * fault is reported once, however often the word is drawn.
 */
export function prepareColours(spec: QuiltSpec, diagnostics: Diagnostic[]): FindFabric {
  const fabrics = new Set(spec.fabrics.map((fabric) => fabric.name));
  const chains = new Map(spec.colourways.map((way) => [way.name, chainOf(spec, way.name, diagnostics)]));
  const reported = new Set<string>();
  const report = (key: string, diagnostic: Diagnostic): null => {
    if (!reported.has(key)) diagnostics.push(diagnostic);
    reported.add(key);
    return null;
  };

  return (word, block, colourway) => {
    const chain = colourway === "" ? [] : chains.get(colourway);
    if (chain === undefined) return null;
    const roles = [...chain, ...(block === null ? [] : [block.roles])];
    const seen = [word.word];
    let current = word;
    for (;;) {
      const meaning = roles.find((map) => Object.hasOwn(map, current.word))?.[current.word];
      // A word that is its own meaning is the fabric of that name.
      if (meaning === undefined || meaning.word === current.word) break;
      if (fabrics.has(meaning.word)) return meaning.word;
      if (seen.includes(meaning.word)) {
        return report(`loop ${meaning.path}`, colourwayCircular(meaning, [...seen, meaning.word]));
      }
      seen.push(meaning.word);
      current = meaning;
    }
    if (fabrics.has(current.word)) return current.word;
    const known = [...fabrics, ...roles.flatMap((map) => Object.keys(map))];
    const name = block === null ? null : block.name;
    return report(
      `missing ${current.path} ${current.word}`,
      fabricMissing(current, current.word, name, known),
    );
  };
}

/** The role maps of a colourway, its own first, then those of what it is like. */
function chainOf(spec: QuiltSpec, name: string, diagnostics: Diagnostic[]): Record<string, FabricWord>[] {
  const maps: Record<string, FabricWord>[] = [];
  const seen: string[] = [];
  let next = name;
  while (next !== "") {
    const way = spec.colourways.find((each) => each.name === next);
    if (way === undefined) {
      const from = spec.colourways.find((each) => each.name === seen.at(-1));
      const where = {
        path: `${from?.path ?? "colourways"}.like`,
        at: from?.at ?? null,
      };
      // Only the one that names the missing colourway reports it, not those further down.
      if (seen.length === 1)
        diagnostics.push(
          colourwayUnknown(
            where,
            next,
            spec.colourways.map((each) => each.name),
          ),
        );
      break;
    }
    if (seen.includes(next)) {
      if (next === name) {
        // Every member of a loop would find it: the first in the file speaks for all.
        const first = spec.colourways.find((each) => seen.includes(each.name));
        if (first?.name === name) diagnostics.push(colourwayCircular(way, [...seen, next]));
      }
      break;
    }
    seen.push(next);
    maps.push(way.roles);
    next = way.like;
  }
  return maps;
}
