import { computed } from "@preact/signals";
import type { SewGroup, Sewing, SewStep, SewUnit } from "../../planner/sewing.ts";
import { sew } from "../actions.ts";
import * as state from "../state.ts";

/** One stop on the way through the sewing: units that are sewn alike, or a group of things done one after another. */
export type Stop =
  | { kind: "unit"; id: string; title: string; unit: SewUnit; steps: SewStep[] }
  | {
      kind: "blocks" | "rows" | "borders" | "finishing";
      id: string;
      title: string;
      group: SewGroup;
      steps: SewStep[];
    };

/** Every stop in the order of work: the units of a block before the block. */
function stopsOf(sewing: Sewing): Stop[] {
  const unitStop = (unit: SewUnit): Stop => ({
    kind: "unit",
    id: unit.step.id,
    title: unit.step.title,
    unit,
    steps: [unit.step],
  });
  const groupStop = (kind: "blocks" | "rows" | "borders" | "finishing", group: SewGroup): Stop => ({
    kind,
    id: `${kind} ${group.title}`,
    title: group.title,
    group,
    steps: group.steps,
  });
  const told = new Set<SewUnit>();
  const stops: Stop[] = [];
  for (const [b, group] of sewing.blocks.entries()) {
    for (const unit of sewing.units)
      if (unit.blocks.includes(b) && !told.has(unit)) {
        told.add(unit);
        stops.push(unitStop(unit));
      }
    stops.push(groupStop("blocks", group));
  }
  const others = sewing.units.filter((unit) => !told.has(unit)).map(unitStop);
  return [
    ...others,
    ...stops,
    ...sewing.rows.map((group) => groupStop("rows", group)),
    ...sewing.borders.map((group) => groupStop("borders", group)),
    ...sewing.finishing.map((group) => groupStop("finishing", group)),
  ];
}

export const sewingShown = computed<Sewing | null>(() =>
  state.shown.value?.what === "sewing" ? state.shown.value.sewing : null,
);

export const stops = computed<Stop[]>(() => (sewingShown.value === null ? [] : stopsOf(sewingShown.value)));

/** The stop one is at: where she was, else the first that is not done. */
export const stopNow = computed<Stop | null>(() => {
  const all = stops.value;
  return (
    all.find(({ id }) => id === state.sewn.value.stop) ?? all.find((stop) => !isDone(stop)) ?? all[0] ?? null
  );
});

export const madeOf = ({ id }: SewStep): number => state.sewn.value.made[id] ?? 0;

export const isDone = ({ steps }: Stop): boolean => steps.every((step) => madeOf(step) >= step.count);

/**
 * How far a stop is: units and blocks by how many there are, what is done once by its steps. A block is one when its last
 * step is done, whatever was ticked of its rows.
 */
export function madeInShort(stop: Pick<Stop, "kind" | "steps">): {
  kind: "done" | "made" | "steps";
  made: number;
  of: number;
} {
  const { steps } = stop;
  const last = steps.at(-1);
  if (last === undefined) return { kind: "steps", made: 0, of: 0 };
  const counted =
    stop.kind === "unit" || (stop.kind === "blocks" && steps.every(({ count }) => count === last.count));
  if (steps.every((step) => madeOf(step) >= step.count))
    return { kind: "done", made: counted ? last.count : 1, of: counted ? last.count : 1 };
  if (counted) return { kind: "made", made: madeOf(last), of: last.count };
  return { kind: "steps", made: steps.filter((step) => madeOf(step) >= step.count).length, of: steps.length };
}

export function setMade(step: SewStep, count: number): void {
  const made = { ...state.sewn.value.made, [step.id]: Math.max(0, Math.min(step.count, count)) };
  sew({ made });
}

/** How many pictures a stop is gone through in; at least one. */
export const picturesIn = (stop: Stop): number =>
  stop.kind === "unit" ? Math.max(1, stop.unit.pictures.length) : Math.max(1, stop.group.presses.length);

export function goToStop(stop: Stop, picture = 0): void {
  sew({ stop: stop.id, picture });
}

/** On by a picture, and from the last one to what comes after; back likewise. */
export function step(by: 1 | -1): void {
  const stop = stopNow.value;
  if (stop === null) return;
  const picture = state.sewn.value.picture + by;
  if (picture >= 0 && picture < picturesIn(stop)) {
    sew({ stop: stop.id, picture });
    return;
  }
  const other = stops.value[stops.value.indexOf(stop) + by];
  if (other !== undefined) goToStop(other, by > 0 ? 0 : picturesIn(other) - 1);
}

export const canStep = (by: 1 | -1): boolean => {
  const stop = stopNow.value;
  if (stop === null) return false;
  const picture = state.sewn.value.picture + by;
  return (
    (picture >= 0 && picture < picturesIn(stop)) || stops.value[stops.value.indexOf(stop) + by] !== undefined
  );
};
