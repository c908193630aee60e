import { signal } from "@preact/signals";
import { useLayoutEffect, useRef } from "preact/hooks";
import { fileRefused } from "./opening.ts";
import * as state from "./state.ts";

/** Where the hand is: the thing pressed or typed in last, and whether it is a drawing with a line of its own below. */
interface Hand {
  left: number;
  right: number;
  top: number;
  bottom: number;
  onPaper: boolean;
}

const hand = signal<Hand | null>(null);
/** The sentence that stands at the hand; empty once the hand has gone on. */
const here = signal("");

/** Regions that have a line for what is said in them. */
const OWN_LINE = ".paper, .photobox, .mat, .matfoot, .tableau, .book";

/** What was said of the drawing: it stays until the next is said, so that nothing moves under a hand that presses. */
const ofPaper = signal("");
export const saidOnPaper = (): string => ofPaper.value;

function follow({ target }: Event): void {
  if (!(target instanceof Element)) return;
  const now = target.closest("button, input, summary, a, .paper, .photobox") ?? target;
  // What chooses a file is seen by nobody: the hand is still where it asked for one.
  if (now.getClientRects().length === 0) return;
  at = now;
  look();
}

let at: Element | null = null;

/** Where the thing in hand is now; one that is gone leaves its place. */
function look(): void {
  if (at?.isConnected !== true) return;
  const { left, right, top, bottom } = at.getBoundingClientRect();
  const now = hand.peek();
  if (now !== null && now.left === left && now.right === right && now.top === top && now.bottom === bottom)
    return;
  hand.value = { left, right, top, bottom, onPaper: at.closest(OWN_LINE) !== null };
}

/** Follows the hand from now on. What is said stands until the hand does something else. */
export function followHand(): void {
  const leave = () => {
    here.value = "";
  };
  for (const kind of ["pointerdown", "keydown"] as const)
    document.addEventListener(
      kind,
      (event) => {
        leave();
        follow(event);
      },
      true,
    );
  // What is typed counts when the field is left, and the hand is on the next thing by then.
  document.addEventListener("change", follow, true);
  document.addEventListener("scroll", look, true);
  state.said.subscribe((sentence) => {
    const elsewhere = hand.value?.onPaper === false;
    here.value = elsewhere ? sentence : "";
    ofPaper.value = elsewhere ? "" : sentence;
  });
}

/** How much of what can be pressed or typed in a box would lie on, in square pixels. */
function covered(box: { left: number; top: number; width: number; height: number }): number {
  let sum = 0;
  for (const one of document.querySelectorAll("button, input, select, textarea, summary, a")) {
    const { left, right, top, bottom } = one.getBoundingClientRect();
    const wide = Math.min(right, box.left + box.width) - Math.max(left, box.left);
    const high = Math.min(bottom, box.top + box.height) - Math.max(top, box.top);
    if (wide > 0 && high > 0) sum += wide * high;
  }
  return sum;
}

const GAP = 6;

/** Beside the thing in hand, where the sentence covers least of what the hand may want next: below it if it can. */
function placeFor(at: Hand, { width, height }: DOMRect): { left: number; top: number } {
  const within = (value: number, most: number) => Math.max(8, Math.min(value, most - 8));
  const level = within((at.top + at.bottom - height) / 2, window.innerHeight - height);
  const beside = within(at.left, window.innerWidth - width);
  const places = [
    { left: beside, top: at.bottom + GAP },
    { left: beside, top: at.top - height - GAP },
    { left: at.right + GAP, top: level },
    { left: at.left - width - GAP, top: level },
  ].filter(
    ({ left, top }) =>
      left >= 8 &&
      left + width <= window.innerWidth - 8 &&
      top >= 8 &&
      top + height <= window.innerHeight - 8,
  );
  const free = places.map((place) => covered({ ...place, width, height }));
  return (
    places[free.indexOf(Math.min(...free))] ?? {
      left: beside,
      top: within(at.bottom + GAP, window.innerHeight - height),
    }
  );
}

/** What was said last, at the hand; it lies over the page, takes no tap and moves nothing. */
export function SaidHere() {
  const box = useRef<HTMLParagraphElement>(null);
  const sentence = here.value;
  const at = hand.value;
  useLayoutEffect(() => {
    const own = box.current;
    if (own === null || at === null) return;
    const { left, top } = placeFor(at, own.getBoundingClientRect());
    own.style.left = `${left}px`;
    own.style.top = `${top}px`;
    // What was pressed may have moved, as when a list above it grew.
    const frame = requestAnimationFrame(look);
    return () => cancelAnimationFrame(frame);
  }, [sentence, at]);
  const away = at === null || at.bottom < 0 || at.top > window.innerHeight;
  if (sentence === "" || away || sentence === fileRefused.value) return null;
  return (
    <p ref={box} class="saidhere" aria-hidden="true">
      {sentence}
    </p>
  );
}
