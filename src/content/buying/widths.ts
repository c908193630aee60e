import type { WidthTried } from "../../choices/other-width.ts";
import { formatLength, roomToMark } from "../../length/index.ts";
import type { Plan } from "../../plan/types.ts";
import type { Words } from "../../words/index.ts";
import { alignedLines } from "../lines/table.ts";
import { boughtWords, currencyOf } from "./bought.ts";
import { money } from "./money.ts";

/** What another width of fabric changes, fabric by fabric. */
export function widthsList(plan: Plan, rows: readonly WidthTried[], words: Words): string {
  const { title, columns, same, changed } = words.choices.widths;
  const said = (usable: number) => formatLength(roomToMark(usable, plan.ruler), plan.ruler);
  const lines = alignedLines(
    columns.map((heading, i) => ({ heading, align: i === 1 || i === 3 ? "right" : "left" })),
    rows.map(({ fabric, filed, tried, more, text, cost }) => {
      const price = cost === null || cost === 0 ? "" : money(Math.abs(cost), currencyOf(tried), plan.ruler);
      return [
        fabric,
        said(filed.usable),
        boughtWords(filed, plan.ruler, words),
        said(tried.usable),
        boughtWords(tried, plan.ruler, words),
        more === 0 && (cost ?? 0) === 0
          ? same
          : changed(text, more === 0 ? (cost ?? 0) > 0 : more > 0, price),
      ];
    }),
  );
  return [title(plan.name), "", ...lines, ""].join("\n");
}
