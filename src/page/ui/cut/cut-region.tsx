import { useEffect, useState } from "preact/hooks";
import { WORK_NAME } from "../../../planning.ts";
import { saveOther } from "../../files.ts";
import type { MatFabric } from "../../planner/mat.ts";
import type { MatStrip } from "../../planner/mat-parts.ts";
import { tongue, words } from "../../words/index.ts";
import { askMat } from "../actions.ts";
import { awake, useAwake } from "../awake.ts";
import { inkOn, mixed } from "../ink-on.ts";
import { Drawing, Waiting } from "../later-regions.tsx";
import { openFromDisk } from "../opening.ts";
import { Folds, fabricNamed, photoNamed } from "../pile.tsx";
import * as state from "../state.ts";
import { Label, lengthTyped } from "../steps.tsx";
import {
  beginAnew,
  fabricOnMat,
  isPlanningAgain,
  layOnMat,
  sayInBag,
  sayLeft,
  saySpoiled,
  sayStop,
  sayWidth,
  stripOnMat,
  stripsLeft,
  stripsOf,
} from "./at-the-mat.ts";
import { MatDrawing } from "./mat-drawing.tsx";
import { MatFoot } from "./mat-foot.tsx";
import { Changed, Misfit } from "./said-changed.tsx";
import { BagInHand, StripAlone } from "./strip-in-hand.tsx";

/** Fabrics folded on the mat: what is left to cut of each. */
function Folded({ onMat }: { onMat: MatFabric }) {
  return (
    <div class="folded" role="group" aria-label={words.columns.fabric}>
      {state.mat.value?.fabrics.map((fabric) => {
        const amount = state.amounts.value?.fabrics.find((one) => one.fabric === fabric.name);
        const known = fabricNamed(fabric.name) !== null && amount !== undefined;
        return (
          <button
            key={fabric.name}
            type="button"
            aria-pressed={fabric.name === onMat.name}
            onClick={() => layOnMat(fabric.name)}
          >
            {known ? <Folds amount={amount} wide={76} high={6} /> : null}
            <b>{fabric.name}</b>
            <span>{words.stripsLeft(stripsLeft(fabric))}</span>
          </button>
        );
      })}
    </div>
  );
}

/** A length that is said of the fabric, typed. */
function SaidLength({
  label,
  after,
  first,
  say,
}: {
  label: string;
  after: string;
  first: string;
  say(length: string): void;
}) {
  const [typed, setTyped] = useState(first);
  useEffect(() => setTyped(first), [first]);
  return (
    <form
      class="saidlength"
      onSubmit={(event) => {
        event.preventDefault();
        const length = lengthTyped(typed.trim());
        // At the mat a length is said with its unit, whatever the quilt's own is.
        if (length !== null) say(/[a-z"]/i.test(length) ? length : `${length} ${state.model.value.unit}`);
      }}
    >
      <label>
        <span>{label}</span>
        <input value={typed} size={7} onInput={({ currentTarget }) => setTyped(currentTarget.value)} />
        <span>{after}</span>
      </label>
      <button type="submit" class="label" disabled={state.mat.value?.work !== state.work.value}>
        {words.sayIt}
      </button>
    </form>
  );
}

const fromCapital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** `B2` is no new kind of piece: that is said where a strip fills such a bag. */
function furtherLengths(fabric: MatFabric, strip: MatStrip): string[] {
  const bags = new Set(strip.parts.flatMap(({ bag }) => (bag === null ? [] : [bag])));
  return [...bags].flatMap((bag) => {
    const letter = fabric.bags[bag]?.letter ?? "";
    const [, first] = /^(\D+)\d+$/.exec(letter) ?? [];
    return first === undefined ? [] : [words.furtherLength(letter, first)];
  });
}

function InHand({ fabric }: { fabric: MatFabric }) {
  const strip = stripOnMat.value;
  const all = stripsOf(fabric);
  if (strip === null)
    return (
      <>
        <p class="over">{fabric.name}</p>
        <h2>{all.length === 0 ? words.nothingOnMat : words.allCut}</h2>
      </>
    );
  const told = fabric.words.find(({ lay, number }) => lay === strip.lay && number === strip.number);
  const cloth = fabric.lays[strip.lay];
  const of = cloth?.strips.length ?? all.length;
  return (
    <>
      <p class="over">
        {words.stripOf(fabric.name, strip.number, of, cloth?.bolt === true ? "" : (cloth?.name ?? ""))}
      </p>
      <h2>{fromCapital(told?.title ?? strip.width)}</h2>
      {told?.title.includes(tongue.choices.fullWidth) === true ? (
        <p class="quiet">{tongue.cutting.fullWidthMeaning}</p>
      ) : null}
      <StripAlone strip={strip} fabric={fabric} />
      <ul class="gives">
        {told?.gives.map((line) => (
          <li key={line}>{line}</li>
        ))}
        {[...(told?.mind ?? []), ...furtherLengths(fabric, strip)].map((line) => (
          <li key={line} class="mind">
            {line}
          </li>
        ))}
      </ul>
      <div class="row">
        <Label onClick={() => saySpoiled(fabric, strip)}>{words.spoiled}</Label>
        <Label onClick={() => sayStop(fabric)}>{words.stopHere}</Label>
      </div>
    </>
  );
}

function Bags({ fabric }: { fabric: MatFabric }) {
  const bag = state.bagInHand.value;
  const own = bag === null ? undefined : fabric.bags[bag];
  const [count, setCount] = useState("");
  useEffect(() => setCount(""), [bag, fabric.name]);
  return (
    <>
      <h3>{words.bags}</h3>
      <div class="bagrow" role="group" aria-label={words.bags}>
        {fabric.bags.map(({ letter }, i) => (
          <button
            key={letter}
            type="button"
            class="bagbutton"
            aria-pressed={bag === i}
            aria-label={words.bagTitle(letter)}
            onClick={() => (state.bagInHand.value = bag === i ? null : i)}
          >
            {letter}
          </button>
        ))}
      </div>
      {own === undefined ? null : (
        <form
          class="saidlength"
          onSubmit={(event) => {
            event.preventDefault();
            if (/^\d{1,5}$/.test(count.trim()) && Number(count) > 0)
              sayInBag(fabric, own.letter, Number(count));
          }}
        >
          <label>
            <span>{words.inBag(own.letter)}</span>
            <input
              value={count}
              size={5}
              inputMode="numeric"
              onInput={({ currentTarget }) => setCount(currentTarget.value)}
            />
          </label>
          <button type="submit" class="label">
            {words.sayIt}
          </button>
        </form>
      )}
    </>
  );
}

/** What was opened comes into sight, however low it stands. */
function intoSight({ currentTarget }: { currentTarget: HTMLDetailsElement }): void {
  if (currentTarget.open) currentTarget.scrollIntoView({ block: "nearest" });
}

/** What is said less often, and what is taken along. */
function More({ fabric }: { fabric: MatFabric }) {
  const { work } = state;
  return (
    <>
      <details class="notes" onToggle={intoSight}>
        <summary>{words.moreToSay}</summary>
        <Bags fabric={fabric} />
        <SaidLength label={words.lengthLeft} after="" first="" say={(length) => sayLeft(fabric, length)} />
        {fabric.further.length === 0 ? null : (
          <>
            <h3>{words.further}</h3>
            <ul class="gives">
              {fabric.further.map((line) => (
                <li key={line}>{line}</li>
              ))}
            </ul>
          </>
        )}
      </details>
      <details class="notes" onToggle={intoSight}>
        <summary>{words.asPrinted}</summary>
        <Drawing svg={fabric.svg} name={words.drawingOf(fabric.name)} />
      </details>
      <div class="row tight">
        {work.value === "" ? null : (
          <>
            <button
              type="button"
              class="act"
              onClick={() => void saveOther(new Blob([work.value], { type: "text/yaml" }), WORK_NAME)}
            >
              {words.saveWork}
            </button>
            <button type="button" class="act" onClick={beginAnew}>
              {words.anew}
            </button>
          </>
        )}
        <button type="button" class="act" onClick={() => void openFromDisk()}>
          {words.openWork}
        </button>
      </div>
    </>
  );
}

/** The fabric as it is, as it is where it is cut, and what is read on both. */
function coloursOf({ name, colour }: MatFabric): Record<string, string> {
  const cut = mixed(colour, 0.5, "#3c5557");
  const seen = photoNamed(name) ?? colour;
  const halo = inkOn(inkOn(colour));
  return {
    "--fabric": seen,
    "--halo": halo,
    "--oncloth": inkOn(colour),
    "--cut": cut,
    "--oncut": inkOn(cut),
  };
}

const pictured = ({ name }: MatFabric): boolean => photoNamed(name) !== null;

/** The mat: the length unrolled, the strip in hand lit, ticks that are the state of the work, and planning again from there. */
export function CutRegion() {
  const planned = state.planned.value;
  useEffect(() => {
    if (planned && state.mat.value === null) askMat();
  }, [planned]);
  useAwake();
  const fabric = fabricOnMat.value;
  if (fabric === null)
    return (
      <div class="spread">
        <section class="leaf" aria-label={words.cutTitle}>
          <h2>{words.cutTitle}</h2>
          <Waiting />
        </section>
      </div>
    );
  return (
    <>
      <div class={`mat${isPlanningAgain.value ? " stale" : ""}${pictured(fabric) ? " onphoto" : ""}`}>
        <section class="leaf onmat" aria-label={words.cutTitle}>
          <Folded onMat={fabric} />
          <MatDrawing fabric={fabric} style={coloursOf(fabric)} />
        </section>
        <section
          class="leaf atstrip"
          aria-label={words.steps}
          aria-busy={isPlanningAgain.value}
          style={coloursOf(fabric)}
        >
          {isPlanningAgain.value ? <p class="over">{words.again}</p> : null}
          <Misfit />
          <InHand fabric={fabric} />
          <SaidLength
            label={words.myWidth}
            after={words.myWidthUnit}
            first={fabric.width}
            say={(width) => sayWidth(fabric, width)}
          />
          {fabric.narrowest === "" ? null : <p class="quiet">{words.narrowestSaid(fabric.narrowest)}</p>}
          <p class="said">{state.said.value}</p>
          <Changed fabric={fabric} />
          <BagInHand fabric={fabric} />
          <p class="blade">{words.bladeFirst}</p>
          <More fabric={fabric} />
          <p class="quiet">{awake.value ? words.screenOn : words.screenMayDim}</p>
        </section>
      </div>
      <MatFoot fabric={fabric} />
    </>
  );
}
