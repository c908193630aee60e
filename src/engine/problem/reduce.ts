import { isPlain, type Nest, nestArea, nestFault } from "../nested/nest.ts";
import type { PackingItem, PackingProblem } from "../types.ts";
import { sum } from "./counts.ts";

/**
 * A size to cut in the reduced problem. Items of one size (up to a quarter-turn, where turning is allowed)
 * are one kind, and all lengths are divided by their greatest common divisor.
 */
export interface Kind {
  /** The ways it may lie: width along the strip, height square to it. One or two, narrowest first. */
  lies: Lie[];
  demand: number;
  /** Where its items may be cut: see `PackingItem.place`. */
  place: PackingItem["place"];
  /** The problem's items it stands for, in their order. */
  sources: Source[];
  /**
   * Strips joined end to end. It then has no lies, and its demand is what the sources must give beyond what joining
   * them takes: `length - loss`, where each gives its length less `loss`.
   */
  run?: RunKind;
  /** A shape: each of its lies is that of a run, and these are its lies where strips run the other way. */
  nested?: { otherLies: Lie[] };
}

export interface RunKind {
  height: number;
  loss: number;
  leastEnd: number;
}

/** Least area that one of a kind takes; of a run, one step of its demand. */
export function areaOfOne({ lies, run, nested }: Pick<Kind, "lies" | "run" | "nested">): number {
  if (run !== undefined) return run.height;
  // On a sheet its strips may run the other way, where a shape may stand closer.
  return [...lies, ...(nested?.otherLies ?? [])].reduce(
    (least, { width, height, advances }) =>
      Math.min(least, advances === undefined ? width * height : nestArea(height, advances)),
    Infinity,
  );
}

/** Least area that all that is wanted of the kinds takes. */
export function areaOf(kinds: readonly Kind[]): number {
  return sum(kinds, (kind) => areaOfOne(kind) * kind.demand);
}

/** What the rest of a strip gives to a run, or 0 when it is too short to be joined. */
export function givenByEnd({ loss, leastEnd }: RunKind, length: number): number {
  return length < leastEnd ? 0 : Math.max(0, length - loss);
}

/** A strip so long can hold one of the kind, in some lie or as a part of the run. */
export function fitsRun({ lies, run }: Pick<Kind, "lies" | "run">, length: number): boolean {
  if (run !== undefined) return givenByEnd(run, length) > 0;
  return lies.some(({ width }) => width <= length);
}

export interface Lie {
  width: number;
  height: number;
  /** Turned relative to the first source item. */
  turned: boolean;
  /** Of a shape that nests: how much further the next of a run begins; `width` is then what a run of one takes. */
  advances?: readonly number[];
}

interface Source {
  item: number;
  demand: number;
  /** The source item's `across` is the first source's `along`. */
  swapped: boolean;
}

/** Greatest common divisor of two whole numbers. */
export function gcd(a: number, b: number): number {
  while (b > 0) {
    const rest = a % b;
    a = b;
    b = rest;
  }
  return a;
}

/**
 * Gathers items into kinds, lying as on a roll. Kinds are sorted by size so that the order of the items never
 * changes a plan.
 */
export function gatherKinds(items: readonly PackingItem[]): Kind[] {
  const byKey = new Map<string, { item: PackingItem; sources: Source[] }>();
  items.forEach((item, index) => {
    if (item.run !== undefined) {
      byKey.set(`run ${index}`, { item, sources: [{ item: index, demand: 1, swapped: false }] });
      return;
    }
    if (item.demand === 0) return;
    if (item.nest !== undefined) {
      byKey.set(`nest ${index}`, { item, sources: [{ item: index, demand: item.demand, swapped: false }] });
      return;
    }
    const square = item.across === item.along;
    const turnable = item.turnable && !square;
    const short = Math.min(item.across, item.along);
    const long = Math.max(item.across, item.along);
    const key = `${item.place}:${turnable ? `t${short}x${long}` : `f${item.across}x${item.along}`}`;
    const entry = byKey.get(key);
    if (entry === undefined) {
      byKey.set(key, {
        item: { ...item, turnable },
        sources: [{ item: index, demand: item.demand, swapped: false }],
      });
    } else {
      entry.sources.push({
        item: index,
        demand: item.demand,
        swapped: turnable && item.across !== entry.item.across,
      });
    }
  });
  const kinds = [...byKey.values()].map(({ item, sources }): Kind => {
    if (item.run !== undefined) {
      const { length, loss, leastEnd } = item.run;
      const run = { height: item.along, loss, leastEnd };
      return { lies: [], demand: Math.max(1, length - loss), place: "strips", sources, run };
    }
    if (item.nest !== undefined && isPlain(item.nest)) {
      const lies = nestLies(item.nest.across).map(({ advances: _, ...lie }) => lie);
      return { lies, demand: item.demand, place: "strips", sources };
    }
    if (item.nest !== undefined) {
      const nested = { otherLies: nestLies(item.nest.along) };
      return { lies: nestLies(item.nest.across), demand: item.demand, place: "strips", sources, nested };
    }
    const upright = { width: item.across, height: item.along, turned: false };
    const lies: Lie[] = [upright];
    if (item.turnable) lies.push({ width: upright.height, height: upright.width, turned: true });
    lies.sort((p, q) => p.width - q.width);
    const demand = sum(sources, (source) => source.demand);
    return { lies, demand, place: item.place, sources };
  });
  return kinds.sort(compareKinds);
}

function nestLies(lies: Nest["across"]): Lie[] {
  return lies
    .map(({ turned, height, first, advances }) => ({ width: first, height, turned, advances }))
    .sort((p, q) => p.width - q.width || p.height - q.height);
}

/** The same kinds, in the same order, as they lie where strips run along the sheet. */
export function transposeKinds(kinds: readonly Kind[]): Kind[] {
  // A run is joined from strips across the cloth only.
  return kinds.map(({ run: _, ...kind }) => {
    if (kind.nested !== undefined)
      return { ...kind, lies: kind.nested.otherLies, nested: { otherLies: kind.lies } };
    return {
      ...kind,
      lies: kind.lies
        .map((lie) => ({ width: lie.height, height: lie.width, turned: lie.turned }))
        .sort((p, q) => p.width - q.width),
    };
  });
}

const PLACES: readonly PackingItem["place"][] = ["bands", "either", "strips"];

/** Of a shape that fits strips of the other direction only. */
const NO_LIE: Lie = { width: 0, height: 0, turned: false };

/** Largest first: by the longer side, then the shorter, fixed kinds before free ones. */
function compareKinds(p: Kind, q: Kind): number {
  const [a, b] = [p, q].map(({ lies, run, demand }) =>
    run === undefined ? (lies[0] ?? NO_LIE) : { width: demand, height: run.height },
  ) as [Lie, Lie];
  return (
    Number(q.run !== undefined) - Number(p.run !== undefined) ||
    Number(q.nested !== undefined) - Number(p.nested !== undefined) ||
    Math.max(b.width, b.height) - Math.max(a.width, a.height) ||
    Math.min(b.width, b.height) - Math.min(a.width, a.height) ||
    p.lies.length - q.lies.length ||
    b.width - a.width ||
    PLACES.indexOf(p.place) - PLACES.indexOf(q.place)
  );
}

/**
 * Checks that a problem is one the engine can count exactly.
 * @throws RangeError naming the first field that is not a whole number in range: a caller's fault.
 */
export function checkProblem(problem: PackingProblem): void {
  const whole = (value: number, least: number, field: string) => {
    if (!Number.isSafeInteger(value) || value < least)
      throw new RangeError(
        `packing problem: ${field} is ${value}, expected a whole number of at least ${least}`,
      );
  };
  let area = 0;
  problem.items.forEach((item, i) => {
    whole(item.across, 1, `items[${i}].across`);
    whole(item.along, 1, `items[${i}].along`);
    whole(item.demand, 0, `items[${i}].demand`);
    const fault = item.nest === undefined ? null : nestFault(item.nest);
    if (fault !== null) throw new RangeError(`packing problem: items[${i}].nest has ${fault}`);
    if (item.nest !== undefined && (problem.style !== "strips-2" || item.place !== "strips"))
      throw new RangeError(`packing problem: items[${i}].nest is cut in strips of strips-2 only`);
    if (item.run !== undefined) {
      whole(item.run.length, 1, `items[${i}].run.length`);
      whole(item.run.loss, 0, `items[${i}].run.loss`);
      whole(item.run.leastEnd, 1, `items[${i}].run.leastEnd`);
    }
    area += (item.run === undefined ? item.across * item.demand : item.run.length) * item.along;
  });
  if (problem.roll !== null) {
    whole(problem.roll.width, 1, "roll.width");
    whole(problem.roll.costPerLength, 0, "roll.costPerLength");
    if (problem.roll.available !== null) whole(problem.roll.available, 0, "roll.available");
  }
  problem.sheets.forEach((sheet, i) => {
    whole(sheet.across, 1, `sheets[${i}].across`);
    whole(sheet.along, 1, `sheets[${i}].along`);
    whole(sheet.cost, 0, `sheets[${i}].cost`);
    if (sheet.available !== null) whole(sheet.available, 0, `sheets[${i}].available`);
  });
  whole(area, 0, "total area");
}
