import type { StripSetRecord } from "../../cutlist/record/unit-record.ts";
import { formatCut, formatLength } from "../../length/index.ts";
import type { Words } from "../../words/index.ts";
import { aboutLength } from "../lengths.ts";
import { setNumber } from "./unit-joins.ts";
import { bagTold, headsOf, type Telling } from "./unit-telling.ts";

/** One strip set: its strips in order, how many sets and how long, and what is cut from them. */
export function stripSetLines(set: StripSetRecord, tell: Telling, words: Words): string[] {
  const { ruler } = tell.plan;
  const strips = set.strips.map(({ letter, lastLetter, fabric, up }) => {
    const letters = [...new Set([letter, lastLetter].filter((each) => each !== null))].join("/");
    const heads = headsOf(up, fabric, tell, words);
    return `${bagTold(letters, fabric, tell, words)}${heads === "" ? "" : `, ${heads}`}`;
  });
  const short = set.lastLength > 0 ? 1 : 0;
  const longer = set.strips.flatMap(({ letter, fabric, beyond }) =>
    letter === null || beyond <= 0 ? [] : [words.units.bag(letter, fabric)],
  );
  return [
    words.units.stripSet(setNumber(set.name), strips),
    words.units.setCount(
      set.fullSets,
      formatLength(set.fullLength, ruler),
      short,
      short === 0 ? "" : formatCut(set.lastLength, ruler),
      aboutLength(set.height, tell.plan, words),
    ),
    ...[...new Set(longer)].map((bag) => words.units.longerStrips(bag, formatLength(set.fullLength, ruler))),
    words.units.segments({
      count: set.segments,
      width: formatCut(set.segment, ruler),
      perSet: set.perFullSet,
      fromLast: set.fromLast,
      full: set.fullSets,
      number: setNumber(set.name),
      used: set.segmentsPerUnit,
    }),
  ];
}
