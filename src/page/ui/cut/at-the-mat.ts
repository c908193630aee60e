import { computed, effect, signal } from "@preact/signals";
import {
  addEntry,
  beginWork,
  type StripPlace,
  spoiledFact,
  stopFacts,
  tickFacts,
  USUALLY_PLANNED,
  workFacts,
} from "../../../planning.ts";
import type { MatFabric } from "../../planner/mat.ts";
import type { MatStrip } from "../../planner/mat-parts.ts";
import { tongue, words } from "../../words/index.ts";
import { sayOfWork } from "../actions.ts";
import * as state from "../state.ts";

/*
 * What a maker says at the mat, as it goes into the file of the work. Ticks of a fabric are one entry, said again with every
 * tick; whatever else is said closes it, and what is left is planned from there.
 */

interface Ticked {
  fabric: string;
  places: StripPlace[];
}

/** Strips that are ticked, by fabric, in the order the fabrics were first told of. */
const ticks = signal<readonly Ticked[]>([]);

effect(() => {
  const mat = state.mat.value;
  if (mat === null) return;
  ticks.value = mat.ticked.map((name) => {
    const told = mat.fabrics.find((fabric) => fabric.name === name)?.told ?? [];
    return {
      fabric: name,
      places: told.filter(({ cut }) => cut).map(({ lay, number }) => ({ lay, number })),
    };
  });
});

/** The mat is of what was said last: nothing is being planned again but what ticks leave. */
export const isPlanningAgain = signal(false);
effect(() => {
  if (state.mat.value !== null) isPlanningAgain.value = false;
});

const same = (a: StripPlace, b: StripPlace): boolean => a.lay === b.lay && a.number === b.number;

export const isTicked = (fabric: string, place: StripPlace): boolean =>
  ticks.value.some((one) => one.fabric === fabric && one.places.some((each) => same(each, place)));

const placesOf = (fabric: string): readonly StripPlace[] =>
  ticks.value.find((one) => one.fabric === fabric)?.places ?? [];

/** A strip that comes before one that is ticked is off the cloth. */
export const isOff = (fabric: string, { lay, number }: StripPlace): boolean =>
  placesOf(fabric).some((each) => each.lay === lay && each.number > number);

/** The fabric on the mat: the one taken, else the first with something left to cut. */
export const fabricOnMat = computed<MatFabric | null>(() => {
  const all = state.mat.value?.fabrics ?? [];
  const open = all.find((fabric) => stripsLeft(fabric) > 0);
  return all.find(({ name }) => name === state.onMat.value) ?? open ?? all[0] ?? null;
});

export const stripsOf = (fabric: MatFabric): MatStrip[] => fabric.lays.flatMap(({ strips }) => strips);

export const stripsLeft = (fabric: MatFabric): number =>
  stripsOf(fabric).filter((strip) => !isTicked(fabric.name, strip)).length;

/** The strip in hand: the one taken, else the next that is not ticked; null where all are. */
export const stripOnMat = computed<MatStrip | null>(() => {
  const fabric = fabricOnMat.value;
  if (fabric === null) return null;
  const taken = state.strip.value;
  const strips = stripsOf(fabric);
  return (
    (taken === null ? undefined : strips.find((strip) => same(strip, taken))) ??
    strips.find((strip) => !isTicked(fabric.name, strip)) ??
    null
  );
});

export function takeStrip(place: StripPlace | null): void {
  state.strip.value = place === null ? null : { lay: place.lay, number: place.number };
}

export function layOnMat(fabric: string): void {
  state.onMat.value = fabric;
  state.strip.value = null;
  state.bagInHand.value = null;
}

/** How many pieces of a bag are cut: those that lay in it before, and those of strips ticked since. */
export function cutOf(fabric: MatFabric, bag: number): number {
  const now = stripsOf(fabric)
    .filter((strip) => isTicked(fabric.name, strip))
    .flatMap(({ parts }) => parts)
    .reduce((sum, part) => sum + (part.bag === bag ? part.holds : 0), 0);
  return (fabric.bags[bag]?.lay ?? 0) + now;
}

const begun = (): string => {
  const base = state.mat.value?.base ?? "";
  return base === "" ? beginWork(USUALLY_PLANNED, tongue.workFile.about) : base;
};

/** Entries of ticks put behind a text, those of `without` left out. */
function withTicks(text: string, all: readonly Ticked[], without = ""): string {
  return all.reduce((made, { fabric, places }) => {
    const own = state.mat.value?.fabrics.find(({ name }) => name === fabric);
    const facts = own === undefined || fabric === without ? [] : tickFacts(own.cloths, places);
    return own === undefined || facts.length === 0 ? made : addEntry(made, { fabric, plan: own.mark, facts });
  }, text);
}

/** Ticks a strip, or takes its tick away; the next one is then in hand. */
export function tick(fabric: MatFabric, strip: MatStrip): void {
  const { name } = fabric;
  const was = isTicked(name, strip);
  const place = { lay: strip.lay, number: strip.number };
  const places = was ? placesOf(name).filter((each) => !same(each, place)) : [...placesOf(name), place];
  const known = ticks.value.some((one) => one.fabric === name);
  ticks.value = known
    ? ticks.value.map((one) => (one.fabric === name ? { ...one, places } : one))
    : [...ticks.value, { fabric: name, places }];
  const nothing = ticks.value.every((one) => one.places.length === 0);
  const base = state.mat.value?.base ?? "";
  const text = nothing ? base : withTicks(begun(), ticks.value);
  takeStrip(was ? place : null);
  state.bagInHand.value = null;
  sayOfWork(text, was ? words.stripNotCut(strip.number) : words.stripCut(strip.number, stripsLeft(fabric)));
}

/** Something that changes the plan of a fabric: said now, with what is ticked of it, and planned again at once. */
function close(fabric: MatFabric, facts: readonly string[], say: string, apart = false): void {
  const { name, mark, restMark, cloths } = fabric;
  const own = tickFacts(cloths, placesOf(name));
  const entry = (text: string): string => {
    if (!apart) return addEntry(text, { fabric: name, plan: mark, facts });
    const ticked = own.length === 0 ? text : addEntry(text, { fabric: name, plan: mark, facts: own });
    return addEntry(ticked, { fabric: name, plan: restMark, facts });
  };
  // What is ticked of other fabrics stays as it is, unless this changes what is cut of them.
  const first = withTicks(entry(begun()), ticks.value, name);
  const last = entry(withTicks(begun(), ticks.value, name));
  isPlanningAgain.value = true;
  state.strip.value = null;
  state.bagInHand.value = null;
  sayOfWork(first, say, last);
}

export function sayWidth(fabric: MatFabric, width: string): void {
  // Strips that are ticked lie cut whole, however wide the rest is.
  close(fabric, [workFacts.wide(width)], words.widthSaid(fabric.name, width), true);
}

export function saySpoiled(fabric: MatFabric, strip: MatStrip): void {
  const facts = [
    ...tickFacts(
      fabric.cloths,
      placesOf(fabric.name).filter((each) => !same(each, strip)),
    ),
    spoiledFact(fabric.cloths, strip),
  ];
  close(fabric, facts, words.spoiledSaid(strip.number));
}

export function sayStop(fabric: MatFabric): void {
  const facts = stopFacts(fabric.cloths, placesOf(fabric.name));
  if (facts.length === 0) {
    state.said.value = words.noneTicked;
    return;
  }
  close(fabric, facts, words.stoppedSaid(fabric.name));
}

export function sayLeft(fabric: MatFabric, length: string): void {
  const facts = [...tickFacts(fabric.cloths, placesOf(fabric.name)), workFacts.left(length)];
  close(fabric, facts, words.leftSaid(fabric.name, length));
}

export function sayInBag(fabric: MatFabric, letter: string, count: number): void {
  const facts = [...tickFacts(fabric.cloths, placesOf(fabric.name)), workFacts.inBag(count, letter)];
  close(fabric, facts, words.inBagSaid(letter, count));
}

/** As if nothing had been said. */
export function beginAnew(): void {
  isPlanningAgain.value = true;
  state.strip.value = null;
  sayOfWork("", words.anewSaid);
}
