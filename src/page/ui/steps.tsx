import type { ComponentChildren } from "preact";
import { lengthText } from "../../edits/block-edits.ts";
import { ticksOf } from "../../edits/model.ts";
import {
  EIGHTH_INCH_RULER,
  formatLength,
  nearestMark,
  QUARTER_CENTIMETRE_RULER,
  TICKS_PER,
  typeset,
} from "../../planning.ts";
import { words, written } from "../words/index.ts";
import { Field } from "./field.tsx";
import * as state from "./state.ts";

const inches = (): boolean => ["in", "yd"].includes(state.model.value.unit);

/** Marks of the ruler the file is in. */
export const rulerMark = (): number => (inches() ? EIGHTH_INCH_RULER : QUARTER_CENTIMETRE_RULER).mark;

const ruler = () => ({ ...(inches() ? EIGHTH_INCH_RULER : QUARTER_CENTIMETRE_RULER), ...written });

/** The mark nearest to a length, never none at all, and whether it is the length itself. */
function nearest(ticks: number): { ticks: number; exact: boolean } {
  const whole = Math.round(ticks);
  const { mark } = ruler();
  return whole > 0 && whole < mark ? { ticks: mark, exact: false } : nearestMark(whole, ruler());
}

/** A length to read on the page: one off the marks is told as about the nearest, as in print. */
export function lengthSaid(ticks: number): string {
  const near = nearest(ticks);
  const said = formatLength(near.ticks, ruler(), { typeset: true });
  return near.exact ? said : words.about(said);
}

/** The same without its measure and without saying that it is about so long: for the numbers of a ruler. */
export const lengthNumber = (ticks: number): string =>
  formatLength(nearest(ticks).ticks, ruler(), { typeset: true, unit: false });

/** A size to read, across first. */
export function sizeSaid(across: number, down: number): string {
  const said = `${lengthNumber(across)} × ${formatLength(nearest(down).ticks, ruler(), { typeset: true })}`;
  return nearest(across).exact && nearest(down).exact ? said : words.about(said);
}

/** Parts of an inch a maker writes though no ruler has them: a third of a foot, a seventh of a block. */
const PARTS = [3, 5, 6, 7, 9, 10, 12];

/** A length in a field to be typed in: as a fraction where it is a plain one, so that what was typed is what is read. */
export function lengthHeld(ticks: number): string {
  if (!inches() || nearest(ticks).exact) return lengthSaid(ticks);
  const inch = TICKS_PER.in;
  const whole = Math.floor(ticks / inch);
  for (const of of PARTS) {
    const part = Math.round(((ticks - whole * inch) / inch) * of);
    if (part > 0 && part < of && Math.abs(whole * inch + (part * inch) / of - ticks) < 1)
      return typeset(`${whole === 0 ? "" : `${whole} `}${part}/${of} in`);
  }
  return lengthSaid(ticks);
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

/** A field for a length: what it holds, and what is done with one that is typed and can be read. */
export function lengthField(
  ticks: number,
  use: (made: string) => void,
): { now: string; take(wish: string): void } {
  return {
    now: lengthHeld(ticks),
    take(wish) {
      const made = lengthTyped(wish);
      if (made !== null) use(made);
    },
  };
}

/** A whole number typed, from 1 to the most there may be; null, and said, where it is none. */
export function countTyped(wish: string, most: number): number | null {
  const count = /^\d{1,4}$/.test(wish) ? Number(wish) : 0;
  if (count >= 1 && count <= most) return count;
  state.said.value = words.noCount(wish, most);
  return null;
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
            <Field
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
