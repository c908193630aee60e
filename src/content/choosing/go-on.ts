import { formatLength, roomToMark } from "../../length/index.ts";
import type { Plan } from "../../plan/types.ts";
import type { Change } from "../../state/index.ts";
import type { Words } from "../../words/index.ts";

import { ranges } from "../cutting/instructions.ts";

function changeLines(change: Change, { ruler, said = [] }: Plan, last: boolean, words: Words): string[] {
  const { cut, lost, served, taken, width, wider, letters, still, more } = change;
  const facts = said.findLast(({ fabric }) => fabric === change.fabric)?.facts ?? [];
  const length = (ticks: number) => formatLength(roomToMark(ticks, ruler), ruler);
  const lines = [
    ...(last && facts.length > 0 ? [words.goOn.said(facts)] : []),
    ...(width === null ? [] : [words.goOn.width(length(width.now), length(width.planned))]),
    ...(wider === null ? [] : [words.goOn.wider(length(wider.measured), length(wider.kept))]),
    ...taken.map(({ numbers, cloth, as }) =>
      words.goOn.taken(ranges(numbers, words), numbers.length === 1, cloth === "bolt" ? "" : cloth, as),
    ),
    words.goOn.cut(cut),
    ...(lost.length === 0 ? [] : [words.goOn.lost(lost)]),
    ...served.map((each) => words.goOn.served(each)),
    ...(letters.more.length === 0 ? [] : [words.goOn.more(letters.more)]),
    ...(letters.gone.length === 0 ? [] : [words.goOn.gone(letters.gone)]),
    still === 0
      ? words.goOn.allCut
      : words.goOn.still(still, more === null ? words.goOn.enough : words.goOn.buy(more)),
  ];
  return [change.fabric, ...lines.map((line) => `  ${line}`), ""];
}

/** What has changed in a plan that was gone on with, fabric by fabric. */
export function goneOnList(plan: Plan, changes: readonly Change[], words: Words): string {
  const lines = changes.flatMap((change, i) => {
    const isLast = changes.findLastIndex(({ fabric }) => fabric === change.fabric) === i;
    return changeLines(change, plan, isLast, words);
  });
  const told = lines.length === 0 ? [words.goOn.nothing, ""] : lines;
  return [words.goOn.title(plan.name), "", ...told].join("\n");
}
