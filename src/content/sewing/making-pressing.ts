import { formatLength, type Ticks } from "../../length/index.ts";
import type { Pressing } from "../../making/types.ts";
import type { Plan } from "../../plan/types.ts";
import type { Words } from "../../words/index.ts";
import { indented } from "./making-lines.ts";

/** Un-nested places told in words; the drawing shows all. */
const MOST_TOLD = 12;
/** Thick places told in words. */
const MOST_THICK = 6;
/** Groups of pinning places told one by one; more are told by where they begin. */
const MOST_ROUNDS = 6;

export function designName(plan: Plan, design: number): string {
  const { name = "", colourway = "" } = plan.top?.designs[design] ?? {};
  return colourway === "" ? name : `${name} ${colourway}`;
}

/** Which places to pin first along the long seams, seams with like places told together. */
export function pinLines({ pins, lines }: Pressing, words: Words): string[] {
  if (pins.length === 0) return [];
  const alike = new Map<string, { rows: number[]; count: number; order: number[][] }>();
  for (const { row, places, order } of pins) {
    const key = JSON.stringify([places.length, order]);
    const group = alike.get(key) ?? { rows: [], count: places.length, order };
    group.rows.push(row);
    alike.set(key, group);
  }
  const told = [...alike.values()].map(({ rows, count, order }) =>
    words.making.pinSeam(
      rows,
      count,
      order.length > MOST_ROUNDS ? order.slice(0, 1) : order,
      order.length > MOST_ROUNDS,
      lines,
    ),
  );
  return [words.making.pinTitle(lines), ...indented(told)];
}

/** How thick the top gets, and where thicker than wanted. */
function bulkLines({ bulk }: Pressing, plan: Plan, words: Words): string[] {
  const { limit, most, places, atMost, over, overCount, proven } = bulk;
  if (places === 0) return [];
  const say = (value: Ticks): string =>
    formatLength(Math.round(value / plan.ruler.mark) * plan.ruler.mark, plan.ruler);
  // Places alike are told together.
  const alike = new Map<string, typeof over>();
  for (const place of over.slice(0, MOST_THICK)) {
    const key = `${place.layers} ${place.opened}`;
    alike.set(key, [...(alike.get(key) ?? []), place]);
  }
  const told = [...alike.values()].map((places) => {
    const [{ layers, opened }] = places as [(typeof over)[number]];
    const at = places.map(({ x, y }) => ({ x: say(x), y: say(y) }));
    return words.making.thickAt(at, layers, opened < layers ? opened : null);
  });
  if (overCount > MOST_THICK) told.push(words.making.moreThick(overCount - MOST_THICK));
  return [
    words.making.bulk(most, atMost, places, proven),
    ...(overCount === 0
      ? [words.making.thinEnough(limit)]
      : [words.making.tooThick(limit, plan.ruler.unit === "in"), ...indented(told)]),
  ];
}

/** What the steps have said of pressing, as a whole: how many places nest, those that do not, and bulk. */
export function pressingLines(pressing: Pressing, plan: Plan, words: Words): string[] {
  const { junctions, open, proven, variants, alike } = pressing;
  const length = (value: Ticks): string => formatLength(value, plan.ruler);
  const places = open.slice(0, MOST_TOLD).map(({ x, y }) => words.making.openAt(length(x), length(y)));
  if (open.length > MOST_TOLD) places.push(words.making.more(open.length - MOST_TOLD));
  const nest =
    junctions === 0
      ? [words.making.noJunctions]
      : open.length === 0
        ? [words.making.nestAll(junctions)]
        : [words.making.nestSome(junctions, open.length, proven), ...indented(places)];
  return [
    words.making.pressOverview,
    ...(variants === 2 ? [words.making.variants(alike.open)] : []),
    ...nest,
    ...bulkLines(pressing, plan, words),
  ];
}
