import { formatMeasure } from "../../length/index.ts";
import { nth } from "../../length/nth.ts";
import type { FabricPlan } from "../../plan/types.ts";
import type { Savings } from "../../savings/try-ideas.ts";
import type { Words } from "../../words/index.ts";
import { alignedLines } from "../lines/table.ts";
import { boughtWords, currencyOf } from "./bought.ts";
import { money } from "./money.ts";

/** What would save on a file: a line for each change, the greatest saving first, numbered as `--take` counts. */
export function savingsList({ plan, savings, tried }: Savings, file: string, words: Words): string {
  const { decimal, language } = plan.ruler;
  const lines = alignedLines(
    words.savings.columns.map((heading, i) => ({ heading, align: i < 2 ? "right" : "left" })),
    savings.map(({ idea, bought, difference }, i) => {
      const then = bought[0]?.plan.fabrics ?? [];
      const bill = difference.cost ?? 0;
      const unit = (then[0] ?? plan.fabrics[0])?.sold.unit ?? "in";
      const length = formatMeasure(Math.abs(difference.length), unit, { decimal, language });
      return [
        String(i + 1),
        [
          ...(bill < 0
            ? [money(-bill, currencyOf(first(plan.fabrics, difference.fabrics)), plan.ruler)]
            : []),
          ...(difference.length < 0 ? [length] : []),
          ...(difference.length > 0 ? [words.savings.more(length)] : []),
        ].join(words.savings.and),
        words.changeSaid(idea.change),
        difference.fabrics
          .map((name) => {
            const fabric = then.find((one) => one.name === name);
            return `${name} ${fabric === undefined ? words.savings.noLess : boughtWords(fabric, plan.ruler, words)}`;
          })
          .join(words.savings.and),
      ];
    }),
  );
  const told =
    savings.length === 0
      ? [words.savings.none(tried)]
      : [...lines, "", words.savings.tried(tried), words.savings.take(file)];
  return [words.savings.title(plan.name), "", ...told, ""].join("\n");
}

function first(fabrics: readonly FabricPlan[], names: readonly string[]): FabricPlan {
  return fabrics.find(({ name }) => name === names[0]) ?? nth(fabrics, 0);
}
