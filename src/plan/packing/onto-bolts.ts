import type { PackingResult, Section } from "../../engine/types.ts";
import { nth } from "../../length/nth.ts";
import type { Ticks } from "../../length/types.ts";
import {
  type BoltLength,
  beforeWashing,
  leastPurchase,
  mostOfBolt,
  passesBolt,
  purchaseFor,
  purchaseOfLengths,
  type SoldCloth,
} from "../../stock/index.ts";

/** Cuts of one length of the bolt, and how much of it they take. */
export interface OnBolt {
  sections: Section[];
  used: Ticks;
}

/** Most ways of filling one bolt that are gone on from, and in all. */
const MOST_WAYS = 5;
const MOST_TRIES = 60;

/** Most lengths a subset of strips is looked for among; finer measures are rounded up to these. */
const MOST_SUMS = 20_000;

/** Whether a part of a packing is longer than a bolt, so that it has to be packed otherwise. */
export function tooLongForBolt(fabric: SoldCloth, result: PackingResult): boolean {
  const most = mostOfBolt(fabric);
  if (most === null || !passesBolt(fabric, purchaseFor(fabric, result.rollLength).length)) return false;
  return sectionsOf(result).some((section) => alongOf(section) > most - fabric.spare);
}

/**
 * The strips and lengthwise sections of a packing, dealt out to as many bolts as it takes, the fullest first; the last
 * has room for the spare. One list where one bolt is long enough. In the order of cutting where that is the least to
 * buy, else the strips are dealt out so that fewer bolts, then less of them, are bought.
 * @throws Error when a part is longer than a bolt: it has to be packed otherwise first.
 */
export function ontoBolts(fabric: SoldCloth, result: PackingResult): OnBolt[] {
  const sections = sectionsOf(result);
  const used = result.rollLength;
  const most = mostOfBolt(fabric);
  if (used === 0) return [];
  if (most === null || !passesBolt(fabric, purchaseFor(fabric, used).length)) return [{ sections, used }];
  const tallestFirst = sections.slice().sort((a, b) => alongOf(b) - alongOf(a));
  if (alongOf(nth(tallestFirst, 0)) > most - fabric.spare)
    throw new Error("a part of the plan is longer than a bolt");
  const plain = inOrder(tallestFirst, most, fabric.spare);
  const least = leastPurchase(fabric, used);
  if (bought(fabric, plain) === least) return plain;
  const fewest = Math.ceil((used + fabric.spare) / most);
  for (let bolts = fewest; bolts <= plain.length; bolts++) {
    const found = ontoSo(fabric, tallestFirst, bolts, { left: MOST_TRIES });
    if (found !== null && bought(fabric, found) < bought(fabric, plain)) return fullestFirst(found);
  }
  return plain;
}

/** What is bought of a fabric for a packing, bolt by bolt. Null where nothing is. */
export function purchaseOf(
  fabric: SoldCloth,
  bolts: readonly OnBolt[],
): ReturnType<typeof purchaseFor> | null {
  if (bolts.length === 0) return null;
  return purchaseOfLengths(
    fabric,
    bolts.map(({ used }) => used),
  );
}

/** The lengths to ask for: one, or one of each bolt. */
export function lengthsOf(purchase: {
  length: Ticks;
  text: string;
  needed: Ticks;
  lengths?: BoltLength[];
}): BoltLength[] {
  const { length, text, needed, lengths } = purchase;
  return lengths ?? [{ length, text, needed }];
}

/** The last keeps its place: it has room for the spare. */
function fullestFirst(bolts: readonly OnBolt[]): OnBolt[] {
  return [...bolts.slice(0, -1).sort((a, b) => b.used - a.used), ...bolts.slice(-1)];
}

function bought(fabric: SoldCloth, bolts: readonly OnBolt[]): Ticks {
  return purchaseOf(fabric, bolts)?.length ?? 0;
}

function sectionsOf({ layouts }: PackingResult): Section[] {
  return layouts.flatMap(({ stock, count, sections }) =>
    stock === "roll" ? sections.map((section) => ({ ...section, count: section.count * count })) : [],
  );
}

function alongOf(section: Section): Ticks {
  return section.kind === "bands" ? section.along : section.column.along;
}

/** One after another as they are cut; the last bolt is the one with the spare. */
function inOrder(all: readonly Section[], most: Ticks, spare: Ticks): OnBolt[] {
  const bolts: OnBolt[] = [];
  let left = all.slice();
  while (lengthOf(left) + spare > most) {
    // At least one strip stays for the last bolt.
    let room = Math.min(most, lengthOf(left) - 1);
    let open = true;
    const counts = left.map((section) => {
      const count = open ? Math.min(section.count, Math.floor(room / alongOf(section))) : 0;
      // What follows is cut from the next bolt, so that strips of one width stay together.
      open &&= count === section.count;
      room -= count * alongOf(section);
      return count;
    });
    bolts.push(of(left, counts));
    left = without(left, counts);
  }
  return fullestFirst([...bolts, { sections: left, used: lengthOf(left) }]);
}

/**
 * The least to buy from so many bolts: whatever sums of strips the next may hold, those first that the shop rounds up
 * least; of the last two bolts every sum is tried. Null where they do not hold all, or no way was found.
 */
function ontoSo(
  fabric: SoldCloth,
  all: readonly Section[],
  bolts: number,
  tries: { left: number },
): OnBolt[] | null {
  const most = mostOfBolt(fabric)!;
  const whole = lengthOf(all);
  const table = sumsOf(all, Math.min(most, whole - 1));
  const rest = (bolts - 1) * most - fabric.spare;
  const bare = { ...fabric, spare: 0 };
  const lost = (sum: Ticks) => purchaseFor(bare, sum).length - beforeWashing(sum, fabric.shrinkAlong);
  const ways = table.sums
    .filter((sum) => whole - sum <= rest)
    .map((sum) => ({
      sum,
      rank: bolts === 2 ? purchaseFor(bare, sum).length + purchaseFor(fabric, whole - sum).length : lost(sum),
    }))
    .sort((a, b) => a.rank - b.rank || b.sum - a.sum);
  let best: OnBolt[] | null = null;
  const least = leastPurchase(fabric, whole);
  for (const { sum } of ways.slice(0, bolts === 2 ? 1 : MOST_WAYS)) {
    if (--tries.left < 0) break;
    const counts = table.countsOf(sum);
    const left = without(all, counts);
    const others =
      bolts === 2 ? [{ sections: left, used: lengthOf(left) }] : ontoSo(fabric, left, bolts - 1, tries);
    if (others === null) continue;
    const found = [of(all, counts), ...others];
    if (best === null || bought(fabric, found) < bought(fabric, best)) best = found;
    if (bought(fabric, best) === least) break;
  }
  return best;
}

function without(sections: readonly Section[], counts: readonly number[]): Section[] {
  return sections.flatMap((section, i) => {
    const count = section.count - nth(counts, i);
    return count === 0 ? [] : [{ ...section, count }];
  });
}

function of(sections: readonly Section[], counts: readonly number[]): OnBolt {
  const taken = sections.flatMap((section, i) =>
    nth(counts, i) > 0 ? [{ ...section, count: nth(counts, i) }] : [],
  );
  return { sections: taken, used: lengthOf(taken) };
}

function lengthOf(sections: readonly Section[]): Ticks {
  return sections.reduce((sum, section) => sum + alongOf(section) * section.count, 0);
}

/** Every length that some of the strips make together within the room, and how many of each kind make it. */
function sumsOf(
  sections: readonly Section[],
  room: Ticks,
): { sums: Ticks[]; countsOf(sum: Ticks): number[] } {
  const along = sections.map(alongOf);
  const step = Math.max(along.reduce(divisor, 0), Math.ceil(room / MOST_SUMS));
  const size = Math.floor(room / step);
  const high = along.map((own) => Math.ceil(own / step));
  /** The kind that reaches a sum first, and how many of it that takes; -1 where nothing does. */
  const by = new Int32Array(size + 1).fill(-1);
  const times = new Int32Array(size + 1);
  sections.forEach((section, i) => {
    for (let sum = nth(high, i); sum <= size; sum++) {
      const before = sum - nth(high, i);
      if (by[sum] !== -1 || (before > 0 && by[before] === -1)) continue;
      const used = before > 0 && by[before] === i ? nth(times, before) : 0;
      if (used >= section.count) continue;
      by[sum] = i;
      times[sum] = used + 1;
    }
  });
  const countsAt = (at: number): number[] => {
    const counts = sections.map(() => 0);
    for (let sum = at; sum > 0; sum -= nth(high, nth(by, sum))) counts[nth(by, sum)]!++;
    return counts;
  };
  const exactly = (at: number): Ticks =>
    step * nth(high, 0) === nth(along, 0) && high.every((own, i) => own * step === nth(along, i))
      ? at * step
      : countsAt(at).reduce((sum, count, i) => sum + count * nth(along, i), 0);
  const found = new Map<Ticks, number>();
  for (let at = 1; at <= size; at++) if (by[at] !== -1) found.set(exactly(at), at);
  return { sums: [...found.keys()], countsOf: (sum) => countsAt(found.get(sum)!) };
}

function divisor(a: number, b: number): number {
  return b === 0 ? a : divisor(b, a % b);
}
