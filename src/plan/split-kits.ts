import { atMost, hasPlan } from "../engine/index.ts";
import type { PackingProblem, PackingResult, SearchLimits, StripSection } from "../engine/types.ts";
import { nth } from "../length/nth.ts";
import { usableWidth } from "../stock/index.ts";
import type { Chosen } from "./choose-cut-lists.ts";
import type { KitShare } from "./kit-types.ts";
import { buildLay, cuttingOf, laidItems } from "./lays/build-lay.ts";
import { tableOf } from "./lays/flag-steps.ts";
import { everyPart, likeness } from "./lays/parts.ts";
import { limitOnBolts } from "./packing/ease-work.ts";
import type { PlanSettings, Solve } from "./request.ts";
import type { Lay } from "./types.ts";

/** Kits cut from whole strips together: the layouts of a batch, group after group. */
export interface Split {
  result: PackingResult;
  /** For each group the packing of its own strips, and how many kits it holds. */
  groups: { kits: number; result: PackingResult }[];
}

/** Group sizes looked at, smallest first. */
const MOST_SIZES = 6;
/** Group sizes tried where the number of kits has few divisors. */
const PLAIN_SIZES = [2, 3, 4, 6];
/** Most work for one group: what is not found by then is not split so. */
const EFFORT = 40;
/** A split may cut this share more strips than the batch as a whole, and one. */
const MORE_STRIPS = 0.1;

/** A fabric whose kits are still to be split, and its groups packed so far by size. */
interface Open {
  index: number;
  chosen: Chosen;
  batch: PackingResult;
  /** Most length the purchase of the batch gives. */
  limit: number;
  packed: Map<number, PackingResult>;
}

/**
 * The smallest groups of kits that can each be cut from whole strips of their own without buying more than the batch
 * needs anyway. Null for a fabric where no such group is found, or whose strips do not come off a bolt alone. The
 * answers are plans of the same problem, checked like any other; nothing is claimed of groups that were not found.
 * Fabrics take each size of group together.
 */
export async function splitKits(
  batches: readonly { chosen: Chosen; eased: PackingResult }[],
  kits: number,
  settings: PlanSettings,
  limits: SearchLimits,
  solve: Solve,
): Promise<(Split | null)[]> {
  const { prefer } = settings;
  const table = tableOf(settings);
  const small = atMost(limits, EFFORT);
  const splits: (Split | null)[] = batches.map(() => null);
  const open = batches.flatMap(({ chosen, eased: batch }, index): Open[] =>
    isStripsOnly(chosen.problem, batch)
      ? [{ index, chosen, batch, limit: limitOf(chosen, batch), packed: new Map() }]
      : [],
  );
  const share = ({ limit }: Open, size: number) => Math.floor((limit * size) / kits);
  for (const size of groupSizes(kits)) {
    const sizes = kits % size === 0 ? [size] : [size, kits % size];
    const still = open.filter(({ index }) => splits[index] === null);
    const asked = still.flatMap((one) =>
      sizes.filter((some) => !one.packed.has(some)).map((some) => ({ one, some })),
    );
    if (asked.length === 0) continue;
    const problems = asked.map(({ one, some }) => forSome(one.chosen.problem, some, kits));
    const found = await solve(
      asked.map(({ one, some }, i) => {
        return { kind: "pack", problem: nth(problems, i), limits: { ...small, target: share(one, some) } };
      }),
    );
    // What already takes too much cloth need not be made easy to cut.
    const fits = asked.map(({ one, some }, i) => {
      return hasPlan(nth(found, i)) && nth(found, i).rollLength <= share(one, some);
    });
    const fitting = asked.map((_, i) => i).filter((i) => fits[i]);
    const eased = await solve(
      fitting.map((i) => {
        const { one, some } = nth(asked, i);
        const result = nth(found, i);
        const lengthLimit = prefer === "simple" ? share(one, some) : result.rollLength;
        return { kind: "lessen-work", table, problem: nth(problems, i), result, lengthLimit, limits: small };
      }),
    );
    fitting.forEach((i, at) => {
      const { one, some } = nth(asked, i);
      one.packed.set(some, nth(eased, at));
    });
    for (const one of still) splits[one.index] = splitInto(one, size, kits);
  }
  return splits;
}

/** Divisors of the number of kits, and a few more where it has hardly any; never the whole batch. */
function groupSizes(kits: number): number[] {
  const all = Array.from({ length: Math.floor(kits / 2) }, (_, i) => i + 1);
  const divisors = all.filter((size) => kits % size === 0);
  const more = divisors.length > 2 ? [] : PLAIN_SIZES.filter((size) => 2 * size <= kits);
  return [...new Set([...divisors, ...more])].sort((a, b) => a - b).slice(0, MOST_SIZES);
}

/** The same question for so many kits; what may lie either way must come from strips, as in the batch. */
function forSome(problem: PackingProblem, size: number, kits: number): PackingProblem {
  return {
    ...problem,
    items: problem.items.map((item) => ({ ...item, demand: (item.demand / kits) * size, place: "strips" })),
  };
}

function isStripsOnly({ sheets, roll, items }: PackingProblem, { layouts }: PackingResult): boolean {
  const strips = layouts.every(({ sections }) => sections.every(({ kind }) => kind === "strips"));
  return roll !== null && sheets.length === 0 && strips && items.every(({ place }) => place !== "bands");
}

/** Most length the purchase of the batch gives. */
function limitOf({ cutList: { fabric } }: Chosen, batch: PackingResult): number {
  return Math.max(batch.rollLength, limitOnBolts(fabric, batch));
}

/** The batch as groups of so many kits, the last of them smaller where they do not come out even; null if it costs. */
function splitInto({ batch, limit, packed }: Open, size: number, kits: number): Split | null {
  const times = Math.floor(kits / size);
  const rest = kits - times * size;
  const group = packed.get(size);
  const last = rest === 0 ? null : packed.get(rest);
  if (group === undefined || last === undefined) return null;
  const length = times * group.rollLength + (last?.rollLength ?? 0);
  const strips = times * stripsIn(group) + (last === null ? 0 : stripsIn(last));
  if (length > limit || strips > Math.floor(stripsIn(batch) * (1 + MORE_STRIPS)) + 1) return null;
  const groups = Array.from({ length: times }, () => ({ kits: size, result: group }));
  if (last !== null) groups.push({ kits: rest, result: last });
  return { result: together(batch, groups, length), groups };
}

function sectionsOf({ layouts }: PackingResult): StripSection[] {
  return layouts.flatMap(({ sections }) => sections.filter((section) => section.kind === "strips"));
}

function stripsIn(result: PackingResult): number {
  return sectionsOf(result).reduce((sum, { count }) => sum + count, 0);
}

/** The groups as one plan of the batch. Its bound stays what was proved of the batch. */
function together(batch: PackingResult, groups: Split["groups"], length: number): PackingResult {
  const sections = groups.flatMap(({ result }) => sectionsOf(result));
  return {
    ...batch,
    status: batch.bound.value === length ? batch.status : "best-found",
    objective: length,
    rollLength: length,
    layouts: [{ stock: "roll", sheet: -1, count: 1, firstCut: "across", sections }],
  };
}

/**
 * Which strips of all bolts fill which kits: every group is laid by itself, and takes of each kind of strip the first that
 * no group before it has.
 */
export function kitShares(
  lays: readonly Lay[],
  { groups }: Split,
  chosen: Chosen,
  settings: PlanSettings,
): KitShare[] {
  // Strips are told apart by how they are cut up.
  const cutting = cuttingOf(settings);
  const free = new Map<string, { bolt: number; number: number }[]>();
  for (const [bolt, { root }] of lays.entries())
    for (const part of everyPart(root))
      if (part.role === "strip")
        free.set(likeness(part), [...(free.get(likeness(part)) ?? []), { bolt, number: part.number }]);
  let first = 1;
  return groups.map(({ kits, result }) => {
    const own = buildLay(
      {
        source: "bolt",
        name: "bolt",
        across: usableWidth(chosen.cutList.fabric),
        along: result.rollLength,
        straighten: 0,
        strip: false,
        ...cutting,
      },
      result.layouts,
      laidItems(chosen.problem.items, chosen.cutList.pieces),
    );
    const strips: { bolt: number; number: number }[] = [];
    for (const part of everyPart(own.root)) {
      if (part.role !== "strip") continue;
      const strip = free.get(likeness(part))?.shift();
      if (strip === undefined) throw new Error("a group of kits has a strip that the batch has not");
      strips.push(strip);
    }
    strips.sort((a, b) => a.bolt - b.bolt || a.number - b.number);
    const share: KitShare = { first, last: first + kits - 1, strips: strips.map(({ number }) => number) };
    if (lays.length > 1) share.bolts = strips.map(({ bolt }) => bolt);
    first += kits;
    return share;
  });
}
