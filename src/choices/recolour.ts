import type { FabricWord, QuiltColourway, QuiltSpec } from "../spec/index.ts";

const isWord = (value: object): value is FabricWord =>
  "word" in value && "path" in value && "at" in value && typeof value.word === "string";

/** The same value with words for fabrics changed, however deep they stand. */
function reworded<T>(value: T, swap: (word: string) => string): T {
  if (Array.isArray(value)) return value.map((each) => reworded(each, swap)) as T;
  if (typeof value !== "object" || value === null) return value;
  if (isWord(value)) return { ...value, word: swap(value.word) };
  return Object.fromEntries(Object.entries(value).map(([key, each]) => [key, reworded(each, swap)])) as T;
}

/** The quilt with fabrics of it in the place of others, all at once: two may change places. */
export function inColourway(spec: QuiltSpec, { swaps }: QuiltColourway): QuiltSpec {
  const to = new Map(swaps.map((each) => [each.from.word, each.to.word]));
  const swap = (word: string): string => to.get(word) ?? word;
  const { fabrics, class: _class, pattern, ruler, assumptions, ...design } = spec;
  return {
    ...spec,
    ...reworded(design, swap),
    // What the maker adds of a fabric is added of the one in its place.
    fabrics: fabrics.map((fabric) => ({
      ...fabric,
      pieces: fabrics.flatMap(({ name, pieces }) => (swap(name) === fabric.name ? pieces : [])),
    })),
  };
}
