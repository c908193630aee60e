import type { HeapRecord, PatchRecord, StepRecord } from "../../cutlist/record/unit-record.ts";
import type { Words } from "../../words/index.ts";
import { indented, measured } from "./making-lines.ts";
import { headsOf, pressLine, type Telling } from "./unit-telling.ts";

type Join = Extract<StepRecord, { do: "join" }>;

/** From so many joinings on, what is alike in them is said once before them. */
const MANY = 3;

/** A patch by the bag it comes out of: `A (hens)`, with the half and how its print lies where that matters. */
function patchTold({ from, letters, fabric, up }: PatchRecord, tell: Telling, words: Words): string {
  const heads = headsOf(up, fabric, tell, words);
  const told = tell.grouped ? "" : fabric;
  if (from.length === 0) return words.units.patch(letters.join("/"), told, heads);
  const sources = from.map(({ letter, part, count }) => ({ letter, part, count }));
  return words.units.patchFrom(sources, told, heads, up !== null);
}

/** A segment of a strip set by the number of its set; null for anything else. */
function segmentTold(part: string, tell: Telling, words: Words): string | null {
  const set = tell.unit.stripSets.find(
    ({ name }) => part.startsWith(name) && /^\d+$/.test(part.slice(name.length)),
  );
  if (set === undefined) return null;
  const place = Number(part.slice(set.name.length)) - 1;
  return words.units.segment(setNumber(set.name), set.turned[place] === true);
}

/** Sets are numbered: their letters in the record would be taken for bags. */
export function setNumber(name: string): number {
  return name.charCodeAt(0) - "A".charCodeAt(0) + 1;
}

function partTold(
  part: string,
  patches: ReadonlyMap<string, PatchRecord>,
  tell: Telling,
  words: Words,
): string {
  const patch = patches.get(part);
  if (patch !== undefined) return patchTold(patch, tell, words);
  return segmentTold(part, tell, words) ?? words.unitNames.part(part);
}

const sizeOf = (step: Join, tell: Telling): string => (step.size === null ? "" : tell.size(step.size));

/** `K (light) on its right`: one patch more on what was made before; null where it is another kind of joining. */
function addedTold(
  step: Join,
  before: string | null,
  patches: ReadonlyMap<string, PatchRecord>,
  tell: Telling,
  words: Words,
): string | null {
  const [a = "", b = "", more] = step.parts;
  if (more !== undefined || step.way === "edge" || step.setIn === true) return null;
  const added = a === before ? b : b === before ? a : null;
  if (added === null) {
    if (before !== null) return null;
    return words.units.begin(partTold(a, patches, tell, words), partTold(b, patches, tell, words), step.way);
  }
  const side = step.way === "across" ? (added === a ? "left" : "right") : added === a ? "top" : "bottom";
  return words.units.added(partTold(added, patches, tell, words), side);
}

/** Patches put on one after another round what is there: told shortly, what is alike once. */
function roundLines(
  steps: readonly Join[],
  before: string | null,
  patches: ReadonlyMap<string, PatchRecord>,
  tell: Telling,
  words: Words,
): string[] | null {
  if (steps.length < MANY) return null;
  const lines = steps.map((step, i) => {
    const told = addedTold(step, i === 0 ? before : (steps[i - 1]?.makes ?? null), patches, tell, words);
    return told === null ? null : words.units.sized(told, sizeOf(step, tell), step.level === true);
  });
  const presses = new Set(steps.map((step) => pressLine(step, tell, words).join(" ")));
  const [press = ""] = presses;
  if (presses.size !== 1 || lines.some((line) => line === null)) return null;
  return [words.units.oneByOne(press), ...indented(lines.filter((line) => line !== null))];
}

/**
 * A run of joinings in the order of sewing, each with its size and its pressing.
 * @param before what was joined last before them; null for nothing
 */
export function joinLines(
  steps: readonly Join[],
  before: string | null,
  heap: HeapRecord | undefined,
  tell: Telling,
  words: Words,
): string[] {
  const patches = new Map((heap?.patches ?? []).map((patch) => [patch.spot, patch]));
  const round = roundLines(steps, before, patches, tell, words);
  if (round !== null) return round;
  return runsOf(steps, tell, words).flatMap((run) =>
    run.length < MANY
      ? run.flatMap((step) => stepTold(step, patches, tell, words))
      : edgeLines(run, patches, tell, words),
  );
}

/** Joinings on slanting edges that are sewn and pressed alike, one after another. */
function runsOf(steps: readonly Join[], tell: Telling, words: Words): Join[][] {
  const runs: Join[][] = [];
  const key = (step: Join): string => JSON.stringify([step.setIn === true, pressLine(step, tell, words)]);
  for (const step of steps) {
    const run = runs.at(-1);
    const last = run?.[0];
    if (last !== undefined && step.way === "edge" && last.way === "edge" && key(last) === key(step))
      run?.push(step);
    else runs.push([step]);
  }
  return runs;
}

function cornersTold(step: Join, tell: Telling): { across: string; down: string }[] {
  return (step.corners ?? []).map(({ x, y }) => ({
    across: measured(x, tell.plan),
    down: measured(y, tell.plan),
  }));
}

function edgePart(
  part: string,
  patches: ReadonlyMap<string, PatchRecord>,
  tell: Telling,
  words: Words,
): string {
  const told = partTold(part, patches, tell, words);
  return patches.has(part) ? words.units.spot(part, told) : told;
}

function edgeLines(
  run: readonly Join[],
  patches: ReadonlyMap<string, PatchRecord>,
  tell: Telling,
  words: Words,
): string[] {
  const [first] = run;
  if (first === undefined) return [];
  const items = run.map((step) =>
    words.units.edgePair(
      step.parts.map((part) => edgePart(part, patches, tell, words)),
      step.makes === "unit" ? "" : words.unitNames.part(step.makes),
      cornersTold(step, tell),
    ),
  );
  const press = pressLine(first, tell, words).join(" ");
  return [words.units.edgeByEdge(first.setIn === true, press), ...indented(items)];
}

function stepTold(
  step: Join,
  patches: ReadonlyMap<string, PatchRecord>,
  tell: Telling,
  words: Words,
): string[] {
  const parts = step.parts.map((part) => {
    // Along a slanting edge the side each lies on cannot be read off the order.
    return step.way === "edge" ? edgePart(part, patches, tell, words) : partTold(part, patches, tell, words);
  });
  const makes = step.makes === "unit" ? "" : words.unitNames.part(step.makes);
  const corners = cornersTold(step, tell);
  return [
    words.units.join(parts, step.way, makes, step.setIn === true, corners),
    ...(step.level === true ? [words.units.level] : []),
    ...pressLine(step, tell, words),
    ...(step.size === null || step.makes === "unit" ? [] : [words.units.measures(tell.size(step.size))]),
  ];
}
