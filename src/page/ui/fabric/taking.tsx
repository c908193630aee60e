import { signal } from "@preact/signals";
import type { VNode } from "preact";
import { useLayoutEffect, useRef, useState } from "preact/hooks";
import { words } from "../../words/index.ts";
import { edit, undo } from "../actions.ts";
import * as state from "../state.ts";
import { Label } from "../steps.tsx";
import { changesSaid } from "./amount-lines.ts";
import { toldAtTheMat } from "./told-at-the-mat.ts";

/** What was taken last, and the text with it: as long as that stands it is told where it was taken. */
type Where = "choices" | "savings";
const last = signal<{ text: string; label: string; where: Where } | null>(null);

/**
 * A way, a turning or a saving taken with one tap. Where strips are cut already, the tap asks first, below it, and a second
 * tap on the same place only takes the question back.
 */
export function useTaking(label: string, text: string, where: Where): { button: VNode; asked: VNode | null } {
  const [asks, setAsks] = useState(false);
  const told = toldAtTheMat(state.work.value);
  const take = () => {
    setAsks(false);
    if (edit(() => text, told.length === 0 ? words.took(label) : words.tookAside(label, told)))
      last.value = { text: state.text.value, label, where };
  };
  return {
    button: (
      <button
        type="button"
        class="act"
        aria-label={words.takeWay(label)}
        {...(told.length === 0 ? {} : { "aria-expanded": asks })}
        onClick={() => (told.length === 0 ? take() : setAsks(!asks))}
      >
        {words.take}
      </button>
    ),
    asked: !asks ? null : (
      <div class="asked" role="alert">
        <p>{words.putsAside(told)}</p>
        <div class="row tight">
          <Label strong onClick={take}>
            {words.takeAllTheSame}
          </Label>
          <Label onClick={() => setAsks(false)}>{words.leaveIt}</Label>
        </div>
      </div>
    ),
  };
}

/** What was taken just now, what it did to the amounts, and the way back: where the hand is. */
export function JustTaken({ where }: { where: Where }) {
  const box = useRef<HTMLDivElement>(null);
  const now = last.value;
  const there = now !== null && now.where === where && now.text === state.text.value;
  // The list that was taken from is gone, and the page is shorter.
  useLayoutEffect(() => {
    if (there) box.current?.scrollIntoView({ block: "nearest" });
  }, [there]);
  if (!there) return null;
  return (
    <div ref={box} class="row justtaken">
      <span>
        {words.took(now.label)} <span class="quiet">{changesSaid()}</span>
      </span>
      <Label onClick={undo}>{words.undo}</Label>
    </div>
  );
}
