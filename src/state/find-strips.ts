import type { InFile } from "../diagnostics/reading.ts";
import type { Diagnostic } from "../diagnostics/types.ts";
import { workClothUnknown, workStripUnknown } from "../diagnostics/work.ts";
import { nth } from "../length/nth.ts";
import type { FabricPlan, Part } from "../plan/types.ts";
import type { What } from "../spec/index.ts";
import { clothName, LENGTH_IN_HAND } from "../stock/index.ts";

/** A strip or lengthwise strip, by the lay it is in and its number there. */
export interface StripPlace {
  lay: number;
  number: number;
}

type Found<T> = { value: T } | { problem: Diagnostic };

/** Strips and lengthwise strips of a part, in cutting order. */
export function numberedParts(part: Part): Part[] {
  return part.number > 0 ? [part] : part.parts.flatMap(numberedParts);
}

const plain = (name: string) =>
  clothName(
    name
      .toLowerCase()
      .replace(/[\s_-]+/g, " ")
      .trim(),
  );

/** Lays by what a maker calls them: `bolt`, `fat quarter`, `fat quarter 2`. */
export function laysCalled({ lays }: FabricPlan, called: string): number[] {
  const cloth = called.replace(/^(?:the|my) /i, "");
  const [, name = cloth, nth] = /^(.+?) (\d+)$/.exec(cloth) ?? [];
  const named = (wanted: string) => lays.flatMap((lay, i) => (plain(lay.name) === plain(wanted) ? [i] : []));
  const all = named(cloth);
  if (all.length > 0) return all;
  const one = nth === undefined ? undefined : named(name)[Number(nth) - 1];
  return one === undefined ? [] : [one];
}

/** The lay that is meant where none is named: the bolt, a length of it in hand, or the only cloth there is. */
export function usualLay({ lays }: FabricPlan): number | null {
  const [bolt = -1, another] = lays.flatMap(({ source }, i) => (source === "bolt" ? [i] : []));
  if (another !== undefined) return null;
  const length = lays.findIndex(({ name }) => name === LENGTH_IN_HAND);
  // Beside a length in hand a bolt is one that is bought on top of it.
  if (bolt >= 0 && length >= 0) return null;
  if (bolt >= 0) return bolt;
  if (length >= 0) return length;
  return lays.length === 1 ? 0 : null;
}

/** Every name that a cloth of the plan can be told by. */
function clothNames({ lays }: FabricPlan): string[] {
  const counts = new Map<string, number>();
  for (const name of lays.map((lay) => clothName(lay.name))) counts.set(name, (counts.get(name) ?? 0) + 1);
  return [...counts].map(([name, count]) => (count === 1 ? name : `${name} 1`));
}

/** The strips that are spoken of, in cutting order; or what is wrong with what is said. */
export function findStrips(
  fabric: FabricPlan,
  what: Exclude<What, { of: "pieces" }>,
  where: InFile,
): Found<StripPlace[]> {
  const { lays, done } = fabric;
  const placesOf = (lay: number) =>
    numberedParts(nth(lays, lay).root).map(({ number }): StripPlace => ({ lay, number }));
  if (what.of === "all" && what.cloth === null) return { value: lays.flatMap((_, lay) => placesOf(lay)) };
  const usual = usualLay(fabric);
  const meant = what.cloth === null ? (usual === null ? [] : [usual]) : laysCalled(fabric, what.cloth);
  if (meant.length === 0) return { problem: workClothUnknown(where, what.cloth ?? "", clothNames(fabric)) };
  if (what.of === "all") return { value: meant.flatMap(placesOf) };
  const [lay, another] = meant;
  // Of several cloths of one name only strips that they all have can be meant without a number.
  if (another !== undefined) return { problem: workClothUnknown(where, "", clothNames(fabric)) };
  const places = placesOf(lay!);
  const wanted = what.of === "strips" ? what.numbers : [what.last];
  const missing = wanted.find((number) => !places.some((place) => place.number === number));
  if (missing !== undefined) {
    const { name } = nth(lays, lay!);
    const of = { cloth: name === "bolt" ? null : name, fabric: fabric.name };
    return { problem: workStripUnknown(where, missing, of, places.length, done !== undefined) };
  }
  return {
    value: places.filter(({ number }) =>
      what.of === "strips" ? what.numbers.includes(number) : number <= what.last,
    ),
  };
}
