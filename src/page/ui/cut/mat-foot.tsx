import { useEffect, useRef } from "preact/hooks";
import type { MatFabric } from "../../planner/mat.ts";
import { words } from "../../words/index.ts";
import * as state from "../state.ts";
import { isTicked, stripOnMat, stripsOf, takeStrip, tick } from "./at-the-mat.ts";
import { givesOf, stateWord } from "./mat-drawing.tsx";

/** Every strip as a button: the sure way to one. */
function StripLine({ fabric }: { fabric: MatFabric }) {
  const line = useRef<HTMLDivElement>(null);
  const now = stripOnMat.value;
  useEffect(() => {
    const box = line.current;
    const held = box?.querySelector<HTMLElement>('[aria-pressed="true"]');
    if (box == null || held == null) return;
    const at = held.offsetLeft - box.offsetLeft;
    if (at < box.scrollLeft || at + held.offsetWidth > box.scrollLeft + box.clientWidth)
      box.scrollLeft = at - box.clientWidth / 3;
  }, [now?.lay, now?.number, fabric.name]);
  return (
    <div ref={line} class="stripline" role="group" aria-label={words.stripLine}>
      {stripsOf(fabric).map((strip) => {
        const cut = isTicked(fabric.name, strip);
        const held = now !== null && now.lay === strip.lay && now.number === strip.number;
        return (
          <button
            key={`${strip.lay}:${strip.number}`}
            type="button"
            class={cut ? "done" : ""}
            aria-pressed={held}
            onClick={() => {
              takeStrip(strip);
              state.bagInHand.value = null;
            }}
          >
            <span class="heard">{words.stripNumber(strip.number)} </span>
            <span class="no" aria-hidden="true">
              {cut ? "✓" : strip.number}
            </span>
            <span>{strip.width.replace(/ .*$/, "")}</span>
            <span class="heard">
              {" "}
              {[...givesOf(fabric, strip), stateWord(fabric, strip)].filter((one) => one !== "").join(", ")}
            </span>
          </button>
        );
      })}
    </div>
  );
}

/** The tick of the strip in hand. It has a place of its own, so that it is where it was however much is said of a strip. */
function TickIt({ fabric }: { fabric: MatFabric }) {
  const strip = stripOnMat.value;
  if (strip === null) return <p class="tickit none">{words.allCut}</p>;
  const cut = isTicked(fabric.name, strip);
  return (
    <button type="button" class="label strong tickit" aria-pressed={cut} onClick={() => tick(fabric, strip)}>
      <span class="box" aria-hidden="true">
        {cut ? "✓" : ""}
      </span>
      {words.stripIsCut(strip.number)}
    </button>
  );
}

/** At the foot, always in sight and always there: the tick of the strip in hand, and all strips. */
export function MatFoot({ fabric }: { fabric: MatFabric }) {
  return (
    <div class="matfoot">
      <TickIt fabric={fabric} />
      <StripLine fabric={fabric} />
    </div>
  );
}
