import { formatMeasure, typeset } from "../../../planning.ts";
import { bySaving } from "../../../savings/index.ts";
import type { Amount } from "../../planner/amounts.ts";
import type { FoundSaving } from "../../planner/messages.ts";
import { tongue, words, written } from "../../words/index.ts";
import { lookForSavings } from "../actions.ts";
import * as state from "../state.ts";
import { Label } from "../steps.tsx";
import { amountText } from "./amount-lines.ts";
import { JustTaken, useTaking } from "./taking.tsx";

/** A figure and its measure stay on one line. */
const unbroken = (amount: string): string => amount.replaceAll(" ", "\u00a0");

/** What is then bought of the fabrics that change. */
function thenBuys({ amounts, difference }: FoundSaving): string {
  return difference.fabrics
    .map((name) => {
      const amount = amounts.fabrics.find(({ fabric }) => fabric === name);
      return `${name} ${unbroken(amount === undefined ? words.nothingToBuy : amountText(amount))}`;
    })
    .join(", ");
}

function SavingLine({ saving, unit }: { saving: FoundSaving; unit: Amount["unit"] }) {
  const { change, text, difference } = saving;
  const label = typeset(tongue.changeSaid(change));
  const length = formatMeasure(Math.abs(difference.length), unit, { typeset: true, ...written });
  const { button, asked } = useTaking(label, text, "savings");
  return (
    <li>
      <b class="amount">{difference.length > 0 ? words.changeMore(length) : words.changeLess(length)}</b>
      <span>
        {label} <span class="quiet">{thenBuys(saving)}</span>
      </span>
      {button}
      {asked}
    </li>
  );
}

/** Changes that buy less, each really planned and taken with one tap; the command `savings` lists the same. */
export function SavingsList() {
  const now = state.savings.value;
  const unit = state.amounts.value?.fabrics[0]?.unit ?? "yd";
  // Until all are found each goes behind the others, so that none slips away under the hand.
  const found = now?.finished
    ? [...now.found].sort((a, b) => bySaving(a.difference, b.difference))
    : (now?.found ?? []);
  return (
    <>
      <h3>{words.whatWouldSave}</h3>
      <p class="hint">{words.hints.savings}</p>
      <Label onClick={lookForSavings}>{words.tryWays}</Label>
      {now === null ? <JustTaken where="savings" /> : null}
      <p class="quiet saves" role="status">
        {now === null
          ? words.notTried
          : !now.finished
            ? words.trying(now.done, now.of)
            : found.length === 0
              ? words.nothingSaves
              : words.savesFound(found.length)}
      </p>
      <ul class="savings">
        {found.map((saving) => (
          <SavingLine key={saving.key} saving={saving} unit={unit} />
        ))}
      </ul>
    </>
  );
}
