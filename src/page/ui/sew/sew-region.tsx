import { useEffect, useRef, useState } from "preact/hooks";
import type { SewStep, SewUnit } from "../../planner/sewing.ts";
import type { TakenBag } from "../../planner/taken-bags.ts";
import { words } from "../../words/index.ts";
import { seeWaysOf } from "../actions.ts";
import { useAwake } from "../awake.ts";
import { Drawing, useShown, Waiting } from "../later-regions.tsx";
import { photoNamed } from "../pile.tsx";
import * as state from "../state.ts";
import { Stepper } from "../steps.tsx";
import { Pressing } from "./press-picture.tsx";
import {
  canStep,
  goToStop,
  isDone,
  madeInShort,
  madeOf,
  picturesIn,
  type Stop,
  setMade,
  sewingShown,
  step,
  stopNow,
  stops,
} from "./sew-stops.ts";

const shortTitle = (stop: Stop): string => (stop.kind === "unit" ? stop.unit.short : stop.group.short);

/** How many of it are made, in short. */
function Made({ stop }: { stop: Stop }) {
  const { kind, made, of } = madeInShort(stop);
  if (of === 0) return null;
  const told =
    kind === "done" ? words.allMade(of) : kind === "made" ? words.makeOf(made, of) : words.stepsOf(made, of);
  return <span class="quiet made">{told}</span>;
}

function List() {
  const now = stopNow.value;
  const [wide] = useState(() => window.matchMedia("(min-width: 60rem)").matches);
  return (
    <details class="notes sewlist" open={wide}>
      <summary>{words.sewList}</summary>
      <ol>
        {stops.value.map((stop) => (
          <li key={stop.id} class={stop.kind === "unit" ? "ofblock" : ""}>
            <button
              type="button"
              class="act"
              aria-current={stop === now ? "step" : undefined}
              onClick={() => goToStop(stop)}
            >
              {shortTitle(stop)}
            </button>
            <Made stop={stop} />
          </li>
        ))}
      </ol>
    </details>
  );
}

/** What a step is called before it is told: `Row 1`, `U1`. */
const calledShort = (title: string): string => title.split(": ")[0] ?? title;

/** How many of one thing are made: one by one, or all at once. */
function Count({ of }: { of: SewStep }) {
  const made = madeOf(of);
  if (of.count === 1)
    return (
      <button
        type="button"
        class="label donebox"
        aria-pressed={made >= 1}
        aria-label={`${words.isDone}: ${of.title}`}
        onClick={() => setMade(of, made >= 1 ? 0 : 1)}
      >
        <span class="box" aria-hidden="true">
          {made >= 1 ? "✓" : ""}
        </span>
      </button>
    );
  return (
    <span class="count">
      <Stepper
        what={words.madeLabel(calledShort(of.title))}
        value={words.makeOf(made, of.count)}
        less={() => setMade(of, made - 1)}
        more={() => setMade(of, made + 1)}
      />
      <button
        type="button"
        class="act"
        aria-pressed={made >= of.count}
        onClick={() => setMade(of, made >= of.count ? 0 : of.count)}
      >
        {words.makeAll(of.count)}
      </button>
    </span>
  );
}

function Table({ table }: { table: NonNullable<SewStep["table"]> }) {
  return (
    <div class="tablebox" tabIndex={0}>
      <table class="sewtable">
        <thead>
          <tr>
            {table.headings.map((heading) => (
              <th key={heading} scope="col">
                {heading}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {table.rows.map((row) => (
            <tr key={row.join()}>
              {row.map((cell, i) => (
                <td key={i}>{cell}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

function Bags({ bags, title }: { bags: readonly TakenBag[]; title: string }) {
  return (
    <div class="takebags">
      <h3>{title}</h3>
      <ul>
        {bags.map(({ letter, fabric, size, colour, perSet }) => (
          <li key={letter}>
            <span class="bigbag">{letter}</span>
            <span>
              <svg class="swatch" width="22" height="22" aria-hidden="true">
                <rect class="hair" x=".5" y=".5" width="21" height="21" fill={photoNamed(fabric) ?? colour} />
              </svg>{" "}
              {size === "" ? fabric : words.bagHolds(fabric, size)}
              {perSet === 0 ? null : <span class="quiet"> {words.perSet(perSet)}</span>}
            </span>
          </li>
        ))}
      </ul>
    </div>
  );
}

/** Where a print has an up, steps tell where its heads point: that word is not told by itself. */
function AboutHeads() {
  const told = sewingShown.value?.aboutHeads ?? "";
  return told === "" ? null : <p class="quiet">{told}</p>;
}

/** The picture in hand, large, with its step in words. */
function BigPicture({ now }: { now: SewUnit["pictures"][number] }) {
  return (
    <figure class="bigstep" aria-describedby="stepwords">
      <div class="printed" dangerouslySetInnerHTML={{ __html: now.svg }} />
      <figcaption aria-live="polite">
        {now.number === "" ? null : <span class="no">{now.number}</span>}{" "}
        {now.says.charAt(0).toUpperCase() + now.says.slice(1)}
        {now.heading === "" ? null : <span class="quiet"> {now.heading}</span>}
      </figcaption>
      <div id="stepwords" class="stepwords">
        {now.words.map((line, i) => (
          <p key={i}>{line.trim()}</p>
        ))}
      </div>
    </figure>
  );
}

/** All pictures of a unit by their words, each to be taken in hand. */
function PictureList({ stop, at }: { stop: Stop & { kind: "unit" }; at: number }) {
  const { pictures } = stop.unit;
  if (pictures.length < 2) return null;
  return (
    <ol class="small" aria-label={words.pictureOf(at + 1, pictures.length)}>
      {pictures.map((picture, i) => (
        <li key={i}>
          <button
            type="button"
            class="act"
            aria-current={i === at ? "step" : undefined}
            onClick={() => goToStop(stop, i)}
          >
            {picture.number === "" ? "✓" : picture.number} {picture.says}
          </button>
        </li>
      ))}
    </ol>
  );
}

function UnitStop({ stop }: { stop: Stop & { kind: "unit" } }) {
  const { pictures, blocks, step: told } = stop.unit;
  const at = Math.min(state.sewn.value.picture, Math.max(0, pictures.length - 1));
  const now = pictures[at];
  const sewing = sewingShown.value;
  const names = blocks.map((b) => sewing?.blocks[b]?.short ?? "");
  return (
    <>
      <p class="over">{words.unitOf(names)}</p>
      <h2>{stop.title}</h2>
      {stop.unit.kind === "" || state.forClass.value ? null : (
        <button type="button" class="act" onClick={() => seeWaysOf(stop.unit.kind)}>
          {words.otherWays}
        </button>
      )}
      <div class="sewing">
        {now === undefined ? null : <BigPicture now={now} />}
        <div class="beside">
          <Bags bags={stop.unit.bags} title={words.takeBags} />
          {told.table === null ? null : <Table table={told.table} />}
          <p class="sewcount">
            <Count of={told} />
          </p>
          <PictureList stop={stop} at={at} />
          <AboutHeads />
        </div>
      </div>
      <details class="notes" open={pictures.length === 0}>
        <summary>{words.inWords}</summary>
        <ol class="sewwords">
          {told.details.map((line, i) => (
            <li key={i}>{line}</li>
          ))}
        </ol>
      </details>
      {pictures.length === 0 || sewing === null ? null : (
        <details class="notes">
          <summary>{words.signs}</summary>
          <Drawing svg={sewing.key} name={words.signs} />
        </details>
      )}
    </>
  );
}

type GroupOnly = Exclude<Stop, { kind: "unit" }>;

/** A block set apart with its bags, or rows; and how they are pressed. */
function GroupPictures({ stop }: { stop: GroupOnly }) {
  const { group } = stop;
  const at = Math.min(state.sewn.value.picture, Math.max(0, group.presses.length - 1));
  const press = group.presses[at];
  return (
    <div class={stop.kind === "blocks" ? "ofgroup ofblocks" : "ofgroup"}>
      {press === undefined ? null : (
        <div>
          <h3>
            {words.pressName(press.name, press.count)}
            {group.presses.length < 2 ? null : (
              <span class="quiet"> {words.pressOf(at + 1, group.presses.length)}</span>
            )}
          </h3>
          <Pressing picture={press} />
          <p class="quiet">{words.seamHelp}</p>
        </div>
      )}
      <div class="apart">
        {group.pictures.map((svg, i) => (
          <Drawing key={i} svg={svg} name={stop.title} />
        ))}
        {group.bags.length === 0 ? null : <Bags bags={group.bags} title={words.bags} />}
      </div>
    </div>
  );
}

function GroupSteps({ steps }: { steps: readonly SewStep[] }) {
  return (
    <ul class="sewsteps">
      {steps.map((one) => (
        <li key={one.id} class={madeOf(one) >= one.count ? "done" : ""}>
          <Count of={one} />
          <div>
            <p>{one.title}</p>
            {one.details.map((line, i) => (
              <p key={i} class="quiet">
                {line}
              </p>
            ))}
            {one.table === null ? null : <Table table={one.table} />}
          </div>
        </li>
      ))}
    </ul>
  );
}

function GroupStop({ stop }: { stop: GroupOnly }) {
  const { group } = stop;
  const pictured = group.presses.length > 0 || group.pictures.length > 0;
  const units = stops.value.filter(
    (one) => one.kind === "unit" && one.unit.blocks.some((b) => sewingShown.value?.blocks[b] === group),
  );
  return (
    <>
      <p class="over">{words.partTitles[stop.kind]}</p>
      <h2>{stop.title}</h2>
      {units.length === 0 ? null : (
        <div class="row">
          <span class="quiet">{words.itsUnits}</span>
          {units.map((unit) => (
            <button key={unit.id} type="button" class="label" onClick={() => goToStop(unit)}>
              {shortTitle(unit)} <Made stop={unit} />
            </button>
          ))}
        </div>
      )}
      <div class={pictured ? "sewing" : ""}>
        {pictured ? <GroupPictures stop={stop} /> : null}
        <div class="beside">
          <GroupSteps steps={group.steps} />
          {stop.kind === "finishing" ? null : <AboutHeads />}
          {stop.kind !== "blocks"
            ? null
            : sewingShown.value?.aboutBlocks.map((line) => (
                <p key={line} class="quiet">
                  {line}
                </p>
              ))}
        </div>
      </div>
    </>
  );
}

/** The sewing: blocks open into units, units into pictures of their steps, then rows, borders and what finishes the quilt. */
export function SewRegion() {
  const shown = useShown("sewing");
  const work = useRef<HTMLElement>(null);
  useAwake();
  const stop = stopNow.value;
  useEffect(() => {
    const keys = (event: KeyboardEvent) => {
      const at = event.target as HTMLElement;
      if (event.altKey || event.ctrlKey || event.metaKey || /^(INPUT|TEXTAREA)$/.test(at.tagName)) return;
      if (at.isContentEditable || at.closest?.(".dots, .pressing figcaption")) return;
      if (event.key === "ArrowRight") step(1);
      else if (event.key === "ArrowLeft") step(-1);
    };
    document.addEventListener("keydown", keys);
    return () => document.removeEventListener("keydown", keys);
  }, []);
  if (shown === null || stop === null)
    return (
      <div class="spread">
        <section class="leaf" aria-label={words.sewTitle}>
          <h2>{words.sewTitle}</h2>
          {shown !== null && shown.sewing === null ? <p>{words.noSewing}</p> : <Waiting />}
        </section>
      </div>
    );
  const pictures = picturesIn(stop);
  const all = stops.value;
  return (
    <>
      <div class="spread sew">
        <section class="leaf sewnav" aria-label={words.sewList}>
          <List />
        </section>
        <section ref={work} class="leaf sewwork" aria-label={words.sewTitle}>
          {stop.kind === "unit" ? <UnitStop stop={stop} /> : <GroupStop stop={stop} />}
          {all.every(isDone) ? <p class="said">{words.allSewn}</p> : null}
        </section>
      </div>
      <div class="backnext">
        <button type="button" class="label" disabled={!canStep(-1)} onClick={() => step(-1)}>
          {words.back}
        </button>
        <span class="quiet">
          {pictures > 1 ? (
            <b>{words.pictureOf(Math.min(state.sewn.value.picture, pictures - 1) + 1, pictures)}</b>
          ) : null}
          <span>{words.stopOf(all.indexOf(stop) + 1, all.length)}</span>
        </span>
        <button type="button" class="label strong" disabled={!canStep(1)} onClick={() => step(1)}>
          {words.next}
        </button>
      </div>
    </>
  );
}
