import { type KitList, waysForClass } from "../cutlist/for-class.ts";
import { forKits } from "../cutlist/for-kits.ts";
import type { CutList } from "../cutlist/types.ts";
import { type JoinedWay, waysOfJoining } from "../cutlist/ways-of-joining.ts";
import { joinCompared } from "../diagnostics/planning.ts";
import type { Diagnostic } from "../diagnostics/types.ts";
import { hasPlan } from "../engine/index.ts";
import type { PackingProblem, PackingResult } from "../engine/types.ts";
import { formatLength } from "../length/format.ts";
import { nth } from "../length/nth.ts";
import { purchaseFor, usableWidth } from "../stock/index.ts";
import { stackLimit } from "./lays/flag-steps.ts";
import { packShared } from "./pack-shared.ts";
import { type FixedPiece, posePackingProblem, UNSQUARED } from "./pose-problem.ts";
import type { Bolt, PlanSettings, Search } from "./request.ts";

/** A fabric with the cut list that was settled on and its first packing. */
export interface Chosen {
  cutList: CutList;
  problem: PackingProblem;
  result: PackingResult;
  /** No less can come off the bolt, whichever way the long pieces are made. */
  least: number;
  fixedStock: readonly FixedPiece[];
  /** The long pieces can be made in this way only. */
  onlyWay: boolean;
  diagnostics: Diagnostic[];
  /** The cloth it is cut from was chosen with all there is in view. */
  ordered?: boolean;
}

/** A fabric, and the cloth it may be cut from. */
export interface Fabric {
  cutList: CutList;
  /** For a class of several sorts of kits: what each takes. `cutList` then holds all of it, made in one way. */
  sorts?: readonly KitList[];
  fixedStock: readonly FixedPiece[];
  bolt: Bolt;
}

/**
 * Packs every fabric, all of them side by side. Where long pieces may be joined or cut along the selvage,
 * each way is packed and the one to buy least of is taken; on a tie the shorter, then the one with fewer
 * joins.
 */
export async function chooseCutLists(
  fabrics: readonly Fabric[],
  kits: number,
  { settings, limits, effort, solve }: Search,
): Promise<Chosen[]> {
  const ways = fabrics.map((fabric) => {
    const { fixedStock, bolt } = fabric;
    const sources = { usable: bolt === "none" ? null : usableWidth(fabric.cutList.fabric), fixedStock };
    return waysOf(fabric, kits, settings).map((way) => {
      const cutList = sources.usable === null ? asLongAsCloth(way.cutList, fixedStock) : way.cutList;
      const problem = posePackingProblem(cutList, sources, settings.style, stackLimit(settings));
      return { ...way, cutList, fixedStock, problem };
    });
  });
  const problems = ways.flat().map(({ problem }) => problem);
  const results = await packShared(problems, limits, effort, solve);
  let next = 0;
  return ways.map((alternatives) => {
    const packed = alternatives.map((way) => ({ ...way, result: nth(results, next++) }));
    return choose(packed, settings);
  });
}

/** Without a bolt runs may be joined from strips as long as the widest cloth there is, however short those are. */
function asLongAsCloth({ fabric, pieces }: CutList, fixedStock: readonly FixedPiece[]): CutList {
  const widest = fixedStock.reduce(
    (most, { across, squareUp = UNSQUARED }) => Math.max(most, across - squareUp.across),
    1,
  );
  const shortened = pieces.map(({ joined, ...piece }) =>
    joined === undefined
      ? piece
      : { ...piece, joined: { ...joined, leastEnd: Math.min(joined.leastEnd, widest) } },
  );
  return { fabric, pieces: shortened };
}

type Way = JoinedWay & { untried: boolean };

/** What may be cut of a fabric: all kits of a class, whose strips are joined within one of them. */
function waysOf({ cutList, sorts }: Fabric, kits: number, settings: PlanSettings): Way[] {
  const usable = usableWidth(cutList.fabric);
  if (sorts === undefined)
    return waysOfJoining(cutList, usable, settings).map((way) => ({
      ...way,
      cutList: forKits(way.cutList, kits),
      untried: false,
    }));
  // Made in the way that was settled on already.
  if (sorts.length === 0) return [{ way: "whole", cutList, untried: true }];
  const { ways, all } = waysForClass(sorts, usable, settings);
  return ways.map((way) => ({ ...way, untried: !all }));
}

type Packed = Way & {
  fixedStock: readonly FixedPiece[];
  problem: PackingProblem;
  result: PackingResult;
};

function choose(packed: readonly Packed[], settings: PlanSettings): Chosen {
  const possible = packed.filter(({ result }) => hasPlan(result));
  const ranked = possible
    .map((way) => ({ ...way, buy: purchaseFor(way.cutList.fabric, way.result.rollLength) }))
    .sort((a, b) => a.buy.length - b.buy.length || a.result.objective - b.result.objective);
  const best = ranked[0] ?? nth(packed, 0);
  const diagnostics =
    ranked.length > 1 ? [compared(best.cutList.fabric.name, best.way, ranked, settings)] : [];
  const bounds = possible.map(({ problem, result }) => (problem.roll === null ? 0 : result.bound.value));
  const { cutList, problem, result, fixedStock, untried } = best;
  // What was not packed may come to less.
  const least = untried ? 0 : Math.min(...bounds, result.rollLength);
  const onlyWay = packed.length === 1 && !untried;
  return { cutList, problem, result, least, fixedStock, onlyWay, diagnostics };
}

function compared(
  fabric: string,
  chosen: Packed["way"],
  ranked: readonly (Packed & { buy: { text: string } })[],
  { ruler }: PlanSettings,
): Diagnostic {
  const costs = ranked.map(({ way, buy, result }) => ({
    way,
    buy: buy.text,
    used: formatLength(result.rollLength, ruler),
  }));
  return joinCompared(fabric, chosen, costs);
}
