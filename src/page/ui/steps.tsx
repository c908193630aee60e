import type { ComponentChildren } from "preact";
import { EIGHTH_INCH_RULER, formatLength, QUARTER_CENTIMETRE_RULER } from "../../planning.ts";
import { words } from "../words/en.ts";
import * as state from "./state.ts";

const inches = (): boolean => ["in", "yd"].includes(state.model.value.unit);

/** Marks of the ruler the file is in. */
export const rulerMark = (): number => (inches() ? EIGHTH_INCH_RULER : QUARTER_CENTIMETRE_RULER).mark;

/** A length to read on the page. */
export function lengthSaid(ticks: number): string {
  return formatLength(Math.round(ticks), inches() ? EIGHTH_INCH_RULER : QUARTER_CENTIMETRE_RULER, {
    typeset: true,
  });
}

/** A figure with less and more beside it: by tap or key, nothing by dragging alone. */
export function Stepper({
  what,
  value,
  less,
  more,
}: {
  what: string;
  value: ComponentChildren;
  less: () => void;
  more: () => void;
}) {
  return (
    <span class="stepper" role="group" aria-label={what}>
      <button type="button" class="act" aria-label={words.less(what)} onClick={less}>
        −
      </button>
      <span class="figure">{value}</span>
      <button type="button" class="act" aria-label={words.more(what)} onClick={more}>
        +
      </button>
    </span>
  );
}

/** Fabrics to choose one from, as small swatches with their names. */
export function Label({
  children,
  onClick,
  strong = false,
  pressed,
}: {
  children: ComponentChildren;
  onClick: () => void;
  strong?: boolean;
  pressed?: boolean;
}) {
  return (
    <button
      type="button"
      class={strong ? "label strong" : "label"}
      onClick={onClick}
      {...(pressed === undefined ? {} : { "aria-pressed": pressed })}
    >
      {children}
    </button>
  );
}
