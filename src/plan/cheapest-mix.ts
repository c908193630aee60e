import type { CutList } from "../cutlist/types.ts";
import { atMost, hasPlan } from "../engine/index.ts";
import type { PackingProblem, PackingResult, SearchLimits } from "../engine/types.ts";
import { purchaseFor, usableWidth } from "../stock/index.ts";
import type { Chosen } from "./choose-cut-lists.ts";
import { type FixedPiece, posePackingProblem } from "./pose-problem.ts";
import type { PlanSettings, Solve } from "./request.ts";
import type { Mix, MixChoice } from "./types.ts";

/** A fabric whose yardage is to be weighed against cloth sold ready cut. */
export interface Weighed {
  /** The plan from the bolt alone, cloth to hand used first. */
  chosen: Chosen;
  /** All of them priced. */
  offers: readonly FixedPiece[];
}

/** A fabric as it is bought for least money. */
export interface Mixed {
  chosen: Chosen;
  mix: Mix;
}

/** Choices listed, and those really packed. The rest is left open, and the mix is then not called proved. */
const MOST_LISTED = 20_000;
const MOST_PACKED = 24;
/** Packed side by side in one round. */
const AT_ONCE = 2;
/** Most counted milliseconds for one choice, and for all choices of a fabric together. */
const BUDGET = 1500;
const TOGETHER = 3000;
/** With less than this left no choice is taken up. */
const LEAST_EFFORT = 50;
/** A choice may take so many times what a plan gets, since one choice decides on money. */
const TIMES = 3;

/** How many of each offer, and what that costs. */
interface Choice {
  counts: number[];
  paid: number;
  /** No plan with these pieces costs less, the bolt included. */
  least: number;
}

/** A choice that was packed. Only what is cut into is paid for. */
interface Packed {
  counts: number[];
  problem: PackingProblem;
  fixedStock: FixedPiece[];
  result: PackingResult;
  cost: number;
}

interface State {
  weighed: Weighed;
  open: Choice[];
  best: Packed;
  /** What was packed, for telling. */
  tried: Packed[];
  /** Least cost proved of the choices packed. */
  proved: number;
  /** Not every choice was listed. */
  cut: boolean;
  /** Counted milliseconds still to be had. */
  left: number;
}

/**
 * The cheapest mix of pieces ready cut and yardage at the prices given, the shop's rounding included. Choices of
 * how many pieces of each kind are taken in order of the least they can cost; each is packed with the least length
 * of bolt beside it. With fewer pieces the bolt is never shorter, so one choice packed rules out many. Fabrics take
 * each round together.
 */
export async function cheapestMix(
  fabrics: readonly Weighed[],
  settings: PlanSettings,
  limits: SearchLimits,
  solve: Solve,
): Promise<Mixed[]> {
  const states = fabrics.map((one) => begin(one, limits.effort ?? Infinity));
  for (let round = 0; round * AT_ONCE < MOST_PACKED; round++) {
    const asked = states.flatMap((state) =>
      state.open.splice(0, AT_ONCE).map((choice) => ({ state, choice })),
    );
    if (asked.length === 0) break;
    const posed = asked.map(({ state, choice }) => pose(state.weighed, choice.counts, settings));
    const results = await solve(
      posed.map(({ problem }, i) => {
        const { state } = asked[i]!;
        return {
          kind: "pack",
          problem,
          limits: atMost(limits, Math.min(BUDGET, state.left / AT_ONCE), TIMES),
        };
      }),
    );
    asked.forEach(({ state, choice }, i) => {
      state.left -= results[i]!.stats.milliseconds;
      learn(state, choice, { ...posed[i]!, result: results[i]! });
    });
    for (const state of states) {
      state.open = state.open.filter(({ least }) => least < state.best.cost);
      // What is left open is told as such: the mix is then not called proved.
      if (state.left < LEAST_EFFORT) {
        state.cut ||= state.open.length > 0;
        state.open = [];
      }
    }
  }
  return states.map(conclude);
}

function begin(weighed: Weighed, effort: number): State {
  const { chosen, offers } = weighed;
  const { problem, result, fixedStock } = chosen;
  const counts = offers.map(() => 0);
  const cost = !hasPlan(result) ? Infinity : boltCost(chosen.cutList, result.rollLength);
  const best: Packed = { counts, problem, fixedStock: [...fixedStock], result, cost };
  const { listed, cut } = choicesOf(weighed, cost);
  const proved = Number.isFinite(cost) ? boltCost(chosen.cutList, chosen.least) : cost;
  const left = TOGETHER * Math.min(1, (TIMES * effort) / BUDGET);
  return { weighed, open: listed, best, tried: [best], proved, cut, left };
}

/** Every choice that may cost less than `most`, the least costly first. */
function choicesOf({ chosen, offers }: Weighed, most: number): { listed: Choice[]; cut: boolean } {
  const { cutList, problem, fixedStock } = chosen;
  const width = usableWidth(cutList.fabric);
  const area = (list: readonly { across: number; along: number; available: number }[]) =>
    list.reduce((sum, { across, along, available }) => sum + across * along * available, 0);
  const wanted = problem.items.reduce((sum, item) => sum + item.across * item.along * item.demand, 0);
  const missing = wanted - area(fixedStock);
  const leastCost = (counts: readonly number[], paid: number): number => {
    const held = area(offers.map((offer, i) => ({ ...offer, available: counts[i] ?? 0 })));
    const length = width === 0 ? 0 : Math.max(0, Math.ceil((missing - held) / width));
    return paid + (length === 0 ? 0 : boltCost(cutList, length));
  };
  let choices: { counts: number[]; paid: number }[] = [{ counts: [], paid: 0 }];
  let cut = false;
  for (const { available, price } of offers) {
    const grown: typeof choices = [];
    for (const { counts, paid } of choices) {
      for (let n = 0; n <= available; n++) {
        const cost = paid + n * (price ?? 0);
        if (cost >= most || grown.length >= MOST_LISTED) {
          cut ||= cost < most;
          break;
        }
        grown.push({ counts: [...counts, n], paid: cost });
      }
    }
    choices = grown;
  }
  const listed = choices
    .filter(({ counts }) => counts.some((count) => count > 0))
    .map(({ counts, paid }): Choice => ({ counts, paid, least: leastCost(counts, paid) }))
    .filter(({ least }) => least < most)
    .sort((a, b) => a.least - b.least || a.paid - b.paid || compareCounts(a.counts, b.counts));
  return { listed, cut };
}

function compareCounts(a: readonly number[], b: readonly number[]): number {
  const at = a.findIndex((count, i) => count !== b[i]);
  return at < 0 ? 0 : (a[at] ?? 0) - (b[at] ?? 0);
}

function boltCost({ fabric }: CutList, used: number): number {
  return used === 0 ? 0 : (purchaseFor(fabric, used).cost ?? 0);
}

/** The cloth to hand and so many of each offer, all free: what is paid for them is the same for every plan. */
function pose(
  { chosen: { cutList, fixedStock }, offers }: Weighed,
  counts: readonly number[],
  { style }: PlanSettings,
): Omit<Packed, "result" | "cost"> {
  const bought = offers.flatMap((offer, i) => {
    const available = counts[i] ?? 0;
    return available === 0 ? [] : [{ ...offer, available }];
  });
  const stock = [...fixedStock, ...bought];
  const problem = posePackingProblem(
    cutList,
    { usable: usableWidth(cutList.fabric), fixedStock: stock },
    style,
  );
  return { counts: [...counts], problem, fixedStock: stock };
}

function learn(state: State, choice: Choice, packed: Omit<Packed, "cost">): void {
  const { chosen, offers } = state.weighed;
  const { result } = packed;
  if (!hasPlan(result)) {
    // With neither plan nor proof of none the choice stays open; with that proof so are those with fewer pieces dead.
    if (result.status === "none-found") state.cut = true;
    else
      state.open = state.open.filter(({ counts }) =>
        counts.some((count, i) => count > (choice.counts[i] ?? 0)),
      );
    return;
  }
  const used = usedOf(packed);
  const paid = used.reduce((sum, { piece, count }) => sum + (piece.price ?? 0) * count, 0);
  const cost = paid + boltCost(chosen.cutList, result.rollLength);
  const counts = offers.map(({ name }) => used.find(({ piece }) => piece.name === name)?.count ?? 0);
  const whole: Packed = { ...packed, counts, cost };
  state.tried.push(whole);
  if (cost < state.best.cost) state.best = whole;
  // Fewer pieces never make the bolt shorter. This very choice may still be short of proof.
  const proved = boltCost(chosen.cutList, result.bound.value);
  const raised = (other: Choice): Choice => {
    const fewer = other.counts.every((count, i) => count <= (choice.counts[i] ?? 0));
    return fewer ? { ...other, least: Math.max(other.least, other.paid + proved) } : other;
  };
  state.open = state.open.map(raised).sort((a, b) => a.least - b.least || a.paid - b.paid);
  state.proved = Math.min(state.proved, choice.paid + proved);
}

/** How many of each kind of cloth a packing cuts into. */
export function usedOf({ result, fixedStock }: { result: PackingResult; fixedStock: readonly FixedPiece[] }) {
  return fixedStock.map((piece, sheet) => {
    const own = result.layouts.filter((layout) => layout.stock === "sheet" && layout.sheet === sheet);
    return { piece, count: own.reduce((sum, { count }) => sum + count, 0) };
  });
}

function conclude(state: State): Mixed {
  const { weighed, best, open, tried, proved, cut } = state;
  const { chosen } = weighed;
  const { problem, result } = best;
  // Of the offers only as many are on the table as are paid for, so that making the work easier takes no more.
  const used = usedOf(best);
  const fixedStock = best.fixedStock.map((piece, i) =>
    piece.from === "shop" ? { ...piece, available: used[i]?.count ?? 0 } : piece,
  );
  const mix: Mix = {
    cost: best.cost,
    currency: currencyOf(weighed.offers),
    proven: !cut && chosen.onlyWay && proved >= best.cost && open.every(({ least }) => least >= best.cost),
    choices: toldChoices(weighed, best, tried),
  };
  const least = best === tried[0] ? chosen.least : Math.min(result.bound.value, result.rollLength);
  const asPosed = {
    ...problem,
    sheets: problem.sheets.map((s, i) => ({ ...s, available: fixedStock[i]!.available })),
  };
  return { chosen: { ...chosen, problem: asPosed, result, least, fixedStock }, mix };
}

/** What was taken, then yardage alone and ready cut alone where they are something else. */
function toldChoices(
  { chosen: { cutList }, offers }: Weighed,
  best: Packed,
  tried: readonly Packed[],
): MixChoice[] {
  const possible = tried.filter(({ cost }) => Number.isFinite(cost));
  const onBolt = possible.find(({ counts }) => counts.every((count) => count === 0));
  const readyCut = possible
    .filter(({ result }) => result.rollLength === 0)
    .sort((a, b) => a.cost - b.cost)[0];
  const told = [best, onBolt, readyCut].filter((one) => one !== undefined);
  return [...new Set(told)].map(({ counts, result, cost }) => ({
    bought: offers.flatMap(({ name }, i) => {
      const count = counts[i] ?? 0;
      return count === 0 ? [] : [{ name, count }];
    }),
    yardage: result.rollLength === 0 ? null : purchaseFor(cutList.fabric, result.rollLength).text,
    cost,
  }));
}

function currencyOf(pieces: readonly FixedPiece[]): string {
  return pieces.find(({ currency = "" }) => currency !== "")?.currency ?? "";
}

/** The purchase of a fabric that is cut from pieces alone; null when none of them is bought. */
export function mixOfPieces({ problem, result, fixedStock, onlyWay }: Chosen): Mix | null {
  if (problem.roll !== null || fixedStock.every(({ from }) => from !== "shop")) return null;
  const bought = usedOf({ result, fixedStock }).filter(
    ({ piece, count }) => piece.from === "shop" && count > 0,
  );
  const prices = bought.map(({ piece }) => piece.price ?? null);
  const cost = bought.reduce((sum, { piece, count }) => sum + (piece.price ?? 0) * count, 0);
  const priced = !prices.includes(null);
  const told = bought.map(({ piece, count }) => ({ name: piece.name, count }));
  return {
    cost: priced ? cost : null,
    currency: currencyOf(bought.map(({ piece }) => piece)),
    proven: onlyWay && result.status === "proven",
    choices: priced ? [{ bought: told, yardage: null, cost }] : [],
  };
}
