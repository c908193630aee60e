import type { Words } from "../../words/index.ts";

/**
 * The words of a paper for those who do not have the file: a pattern, the sheet of a class, what lies in a kit. They tell
 * neither what the file leaves open nor how far a plan is proved.
 */
export function forMakers(words: Words): Words {
  const { anyBacking, anyWadding, noBinding, bindingToo, thinEnough, tooThick, allOwn } = words.makers;
  const { making } = words;
  return {
    ...words,
    cutting: { ...words.cutting, bindingToo },
    finishing: { ...words.finishing, anyBacking, anyWadding, noBinding },
    making: {
      ...making,
      thinEnough,
      tooThick,
      nestSome: (junctions, open) => making.nestSome(junctions, open, false),
      // How its author might divide the block otherwise is nothing to its reader.
      partial: (name) => making.partial(name, []),
      bulk: (most, atMost, places) => making.bulk(most, atMost, places, false),
      quilting: (by, lines, spacing) => making.quilting(by, lines, spacing, true),
    },
    units: { ...words.units, allOwn },
  };
}
