import { forKits } from "../cutlist/for-kits.ts";
import type { CutList } from "../cutlist/types.ts";
import { waysOfJoining } from "../cutlist/ways-of-joining.ts";
import { joinCompared } from "../diagnostics/planning.ts";
import type { Diagnostic } from "../diagnostics/types.ts";
import { hasPlan } from "../engine/index.ts";
import type { PackingProblem, PackingResult, SearchLimits } from "../engine/types.ts";
import { formatLength } from "../length/format.ts";
import { purchaseFor, usableWidth } from "../stock/index.ts";
import { stackLimit } from "./flag-steps.ts";
import { packShared, type SharedEffort } from "./pack-shared.ts";
import { type FixedPiece, posePackingProblem } from "./pose-problem.ts";
import type { Bolt, PlanSettings, Solve } from "./request.ts";

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
  settings: PlanSettings,
  limits: SearchLimits,
  solve: Solve,
  effort: SharedEffort | null = null,
): Promise<Chosen[]> {
  const ways = fabrics.map(({ cutList, fixedStock, bolt }) => {
    const usable = usableWidth(cutList.fabric);
    const sources = { usable: bolt === "none" ? null : usable, fixedStock };
    return waysOfJoining(cutList, usable, settings.ruler).map((way) => {
      // Strips are joined within one kit: only then is everything cut so many times.
      const times = forKits(way.cutList, kits);
      return {
        ...way,
        cutList: times,
        fixedStock,
        problem: posePackingProblem(times, sources, settings.style, stackLimit(settings)),
      };
    });
  });
  const problems = ways.flat().map(({ problem }) => problem);
  const results = await packShared(problems, limits, effort, solve);
  let next = 0;
  return ways.map((alternatives) => {
    const packed = alternatives.map((way) => ({ ...way, result: results[next++]! }));
    return choose(packed, settings);
  });
}

type Packed = ReturnType<typeof waysOfJoining>[number] & {
  fixedStock: readonly FixedPiece[];
  problem: PackingProblem;
  result: PackingResult;
};

function choose(packed: readonly Packed[], settings: PlanSettings): Chosen {
  const possible = packed.filter(({ result }) => hasPlan(result));
  const ranked = possible
    .map((way) => ({ ...way, buy: purchaseFor(way.cutList.fabric, way.result.rollLength) }))
    .sort((a, b) => a.buy.length - b.buy.length || a.result.objective - b.result.objective);
  const best = ranked[0] ?? packed[0]!;
  const diagnostics =
    ranked.length > 1 ? [compared(best.cutList.fabric.name, best.way, ranked, settings)] : [];
  const bounds = possible.map(({ problem, result }) => (problem.roll === null ? 0 : result.bound.value));
  const least = Math.min(...bounds, best.result.rollLength);
  const { cutList, problem, result, fixedStock } = best;
  return { cutList, problem, result, least, fixedStock, onlyWay: packed.length === 1, diagnostics };
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
