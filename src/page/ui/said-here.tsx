import { signal } from "@preact/signals";
import { useLayoutEffect, useRef } from "preact/hooks";
import { fileRefused } from "./opening.ts";
import * as state from "./state.ts";

/** Where the hand is: the thing pressed or typed in last, and whether it is a drawing with a line of its own below. */
interface Hand {
  left: number;
  top: number;
  bottom: number;
  onPaper: boolean;
}

const hand = signal<Hand | null>(null);
/** The sentence that stands at the hand; empty once the hand has gone on. */
const here = signal("");

/** Regions that have a line for what is said in them. */
const OWN_LINE = ".paper, .photobox, .mat, .tableau, .book";

/** What was said of the drawing: it stays until the next is said, so that nothing moves under a hand that presses. */
const ofPaper = signal("");
export const saidOnPaper = (): string => ofPaper.value;

function follow({ target }: Event): void {
  if (!(target instanceof Element)) return;
  at = target.closest("button, input, summary, a, .paper, .photobox") ?? target;
  look();
}

let at: Element | null = null;

/** Where the thing in hand is now; one that is gone leaves its place. */
function look(): void {
  if (at?.isConnected !== true) return;
  const { left, top, bottom } = at.getBoundingClientRect();
  hand.value = { left, top, bottom, onPaper: at.closest(OWN_LINE) !== null };
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

/** What was said last, at the hand; it lies over the page, takes no tap and moves nothing. */
export function SaidHere() {
  const box = useRef<HTMLParagraphElement>(null);
  const sentence = here.value;
  const at = hand.value;
  useLayoutEffect(() => {
    const own = box.current;
    if (own === null || at === null) return;
    const { width, height } = own.getBoundingClientRect();
    const below = at.bottom + 6 + height < window.innerHeight;
    own.style.left = `${Math.max(8, Math.min(at.left, window.innerWidth - width - 8))}px`;
    own.style.top = `${Math.max(8, below ? at.bottom + 6 : at.top - height - 6)}px`;
  }, [sentence, at]);
  if (sentence === "" || at === null || sentence === fileRefused.value) return null;
  return (
    <p ref={box} class="saidhere" aria-hidden="true">
      {sentence}
    </p>
  );
}
