import { formatLength, roomToMark } from "../../length/index.ts";
import type { Plan } from "../../plan/types.ts";
import type { Change } from "../../state/index.ts";
import { goOnWords } from "./go-on-words.ts";
import { ranges } from "./instructions.ts";

function changeLines(change: Change, { ruler, said = [] }: Plan, last: boolean): string[] {
  const { cut, lost, served, taken, width, wider, letters, still, more } = change;
  const facts = said.findLast(({ fabric }) => fabric === change.fabric)?.facts ?? [];
  const length = (ticks: number) => formatLength(roomToMark(ticks, ruler), ruler);
  const lines = [
    ...(last && facts.length > 0 ? [goOnWords.said(facts)] : []),
    ...(width === null ? [] : [goOnWords.width(length(width.now), length(width.planned))]),
    ...(wider === null ? [] : [goOnWords.wider(length(wider.measured), length(wider.kept))]),
    ...taken.map(({ numbers, cloth, as }) =>
      goOnWords.taken(ranges(numbers), numbers.length === 1, cloth === "bolt" ? "" : cloth, as),
    ),
    goOnWords.cut(cut),
    ...(lost.length === 0 ? [] : [goOnWords.lost(lost)]),
    ...served.map((each) => goOnWords.served(each)),
    ...(letters.more.length === 0 ? [] : [goOnWords.more(letters.more)]),
    ...(letters.gone.length === 0 ? [] : [goOnWords.gone(letters.gone)]),
    still === 0
      ? goOnWords.allCut
      : goOnWords.still(still, more === null ? goOnWords.enough : goOnWords.buy(more)),
  ];
  return [change.fabric, ...lines.map((line) => `  ${line}`), ""];
}

/** What has changed in a plan that was gone on with, fabric by fabric. */
export function goneOnList(plan: Plan, changes: readonly Change[]): string {
  const lines = changes.flatMap((change, i) => {
    const isLast = changes.findLastIndex(({ fabric }) => fabric === change.fabric) === i;
    return changeLines(change, plan, isLast);
  });
  const told = lines.length === 0 ? [goOnWords.nothing, ""] : lines;
  return [goOnWords.title(plan.name), "", ...told].join("\n");
}
