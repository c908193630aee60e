import type { ComponentChildren } from "preact";
import { lengthText } from "../../edits/block-edits.ts";
import { ticksOf } from "../../edits/model.ts";
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

/** A length as it was typed: in the file's measure, to the mark of its ruler where it lies on one; null where it is none. */
export function lengthTyped(wish: string): string | null {
  const { unit } = state.model.value;
  const ticks = ticksOf(wish, unit);
  if (ticks === null) {
    state.said.value = words.noLength(wish);
    return null;
  }
  return ticks % rulerMark() === 0 ? lengthText(ticks, state.model.value) : wish;
}

/** Two lengths typed as `6 x 3`, or one for both. */
export function sizeTyped(wish: string): string | null {
  const all = wish.split(/\s*(?:x|×|by)\s*/i).map(lengthTyped);
  return all.length > 2 || all.some((one) => one === null) ? null : all.join(" x ");
}

/** A figure with less and more beside it: by tap or key, nothing by dragging alone. */
export function Stepper({
  what,
  value,
  typed,
  less,
  more,
}: {
  what: string;
  value: ComponentChildren;
  /** The figure can be typed too; what is said of it stands behind. */
  typed?: { now: string; after?: string; take(wish: string): void };
  less: () => void;
  more: () => void;
}) {
  return (
    <span class="stepper" role="group" aria-label={what}>
      <button type="button" class="act" aria-label={words.less(what)} onClick={less}>
        −
      </button>
      <span class="figure">
        {typed === undefined ? (
          value
        ) : (
          <>
            <input
              class="nameinput size"
              aria-label={what}
              value={typed.now}
              size={Math.max(4, typed.now.length)}
              onChange={({ currentTarget }) => {
                typed.take(currentTarget.value.trim());
                currentTarget.value = typed.now;
              }}
            />
            {typed.after}
          </>
        )}
      </span>
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
