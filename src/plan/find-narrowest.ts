import type { CutList } from "../cutlist/types.ts";
import { atMost, type EngineJob, hasPlan } from "../engine/index.ts";
import type { CuttingStyle, PackingResult, SearchLimits, StackLimit } from "../engine/types.ts";
import { nth } from "../length/nth.ts";
import type { Ticks } from "../length/types.ts";
import { lengthLimit } from "../stock/index.ts";
import { everyPart } from "./lays/parts.ts";
import { lengthsOf, ontoBolts, purchaseOf, tooLongForBolt } from "./packing/onto-bolts.ts";
import { posePackingProblem } from "./pose-problem.ts";
import type { Lay, Purchase } from "./types.ts";

/** One fabric whose purchase is to be tried on narrower cloth. */
export interface Trial {
  cutList: CutList;
  style: CuttingStyle;
  /** Where strips may be cut into stacks. Default: anywhere. */
  stacks?: StackLimit;
  usable: Ticks;
  /** What is to be enough. */
  purchase: Purchase;
  /** A plan that works at the full width. */
  lays: readonly Lay[];
}

/** Most length the purchase gives, of one bolt or of several. */
function mostOf({ cutList: { fabric }, purchase }: Trial): Ticks {
  const lengths = lengthsOf(purchase).map(({ length }) => lengthLimit({ ...fabric, spare: 0 }, length));
  return lengths.reduce((sum, length) => sum + length, -fabric.spare);
}

/** Whether a plan can be cut from the purchase, however it is dealt out to bolts. */
function isEnough({ cutList: { fabric }, purchase }: Trial, result: PackingResult): boolean {
  if (!hasPlan(result) || tooLongForBolt(fabric, result)) return false;
  return (purchaseOf(fabric, ontoBolts(fabric, result))?.length ?? 0) <= purchase.length;
}

/** Most work spent on one width; what is not settled by then counts as not working. */
const BUDGET = 150;

/** Rounds of halving. Cloth that much narrower than the file says is another fabric. */
const ROUNDS = 6;

/** Widths are told apart this many ruler marks: finer than cloth is ever measured across. */
const MARKS = 2;

/**
 * For each trial the narrowest usable width at which the same purchase is known to work. Widening never
 * lengthens a plan, so the widths that work are all above one width, which is found by halving. What is
 * given always works; it is the least such width unless the search was cut short. All fabrics take each
 * step together, so that they can be worked on side by side. The answer is a ruler mark, except where
 * nothing narrower than the full width works.
 */
export async function findNarrowest(
  trials: readonly Trial[],
  rulerMark: Ticks,
  limits: SearchLimits,
  solve: (jobs: readonly EngineJob[]) => Promise<PackingResult[]>,
): Promise<Ticks[]> {
  const mark = MARKS * rulerMark;
  const open = trials.map((trial) => {
    // Everything in these steps: `works` is known to work, nothing below `least` can.
    const works = Math.ceil(widthInUse(trial) / mark);
    return { trial, works, least: Math.min(works, Math.ceil(leastWidth(trial) / mark)) };
  });
  for (let round = 0; round < ROUNDS; round++) {
    const asked = open.filter(({ works, least }) => least < works);
    if (asked.length === 0) break;
    const widths = asked.map(({ works, least }) => Math.floor((works + least) / 2));
    const results = await solve(
      asked.map(({ trial }, i) => jobAt(trial, nth(widths, i) * mark, atMost(limits, BUDGET))),
    );
    asked.forEach((state, i) => {
      if (isEnough(state.trial, nth(results, i))) state.works = nth(widths, i);
      else state.least = nth(widths, i) + 1;
    });
  }
  return open.map(({ trial, works }) => Math.min(trial.usable, works * mark));
}

function jobAt(trial: Trial, usable: Ticks, limits: SearchLimits): EngineJob {
  const { cutList, style, stacks } = trial;
  const problem = posePackingProblem(cutList, { usable, fixedStock: [] }, style, stacks);
  return { kind: "pack", problem, limits: { ...limits, target: mostOf(trial) } };
}

/**
 * The width the plan itself needs: cloth beyond the last segment of every strip is not missed. Full-width
 * strips shrink with the cloth, as far as joined ones still make their length.
 */
function widthInUse({ cutList, lays, usable }: Trial): Ticks {
  let most = leastForJoined(cutList, usable);
  for (const part of lays.flatMap(({ root }) => [...everyPart(root)])) {
    const inWidth = part.cut === "along" && part.x + part.across === usable;
    if (!inWidth || part.role === "segment") continue;
    const kept = part.parts.filter(({ cause }) => cause === null);
    const wide = kept.every(({ piece }) => piece !== null && cutList.pieces[piece]?.fullWidth === true);
    const last = kept.at(-1);
    // The rest of a lengthwise section ends where its own strips end, which are looked at by themselves.
    if (last !== undefined && !wide && last.role !== "rest") most = Math.max(most, last.x + last.across);
  }
  return Math.min(most, usable);
}

/** No narrower cloth can do: for its widest piece, for its area, or for what must be joined. */
function leastWidth(trial: Trial): Ticks {
  const { cutList, usable } = trial;
  let area = 0;
  let length = mostOf(trial);
  let most = leastForJoined(cutList, usable);
  for (const piece of cutList.pieces) {
    if (piece.nest !== undefined) {
      most = Math.max(most, Math.min(...piece.nest.across.map(({ first }) => first)));
      continue;
    }
    const free = piece.fullWidth ? 0 : piece.turnable ? Math.min(piece.across, piece.along) : piece.across;
    most = Math.max(most, free);
    // A full-width strip takes its length of the bolt at any width.
    if (!piece.fullWidth) area += piece.across * piece.along * piece.count;
    else length -= piece.along * piece.count;
  }
  return Math.max(most, length > 0 ? Math.ceil(area / length) : most);
}

/**
 * Narrowest width at which every joined run is still made of as many whole strips, beside the ends of strips that are
 * joined to them; the usual width where a run has no whole strip.
 */
function leastForJoined(cutList: CutList, usable: Ticks): Ticks {
  let most = 0;
  for (const piece of cutList.pieces) {
    const { joined, count, fullWidth } = piece;
    if (joined === undefined || joined.perKit === true || !fullWidth) continue;
    const ends = cutList.pieces.filter(
      (other) => other !== piece && joined.run !== undefined && other.joined?.run === joined.run,
    );
    const sources = ends.reduce((sum, end) => sum + end.count, count);
    const length = ends.reduce((sum, end) => sum + end.across * end.count, 0);
    const least = Math.ceil((joined.length + (sources - 1) * joined.loss - length) / count);
    if (least <= joined.loss) return usable;
    most = Math.max(most, least);
  }
  return most;
}
