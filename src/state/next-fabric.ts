import { bagKey, forKits, letterPieces, waysOfJoining } from "../cutlist/index.ts";
import type { CutList, CutPiece } from "../cutlist/types.ts";
import type { Outcome } from "../diagnostics/types.ts";
import type { PlanOptions } from "../pipeline.ts";
import type { FixedPiece, Search } from "../plan/index.ts";
import type { FabricPlan } from "../plan/types.ts";
import { amountsOf } from "./changes.ts";
import { clothInHand, restPiece, tookOf } from "./cloth-in-hand.ts";
import { keepRest } from "./keep-rest.ts";
import { planRest } from "./plan-rest.ts";
import { putBack } from "./put-back.ts";
import { type Cut, isRun, type StillWanted, stillWanted } from "./still-wanted.ts";
import type { Work } from "./take-stock.ts";

/** A fabric, and what there is to go on from. */
export interface Next {
  fabric: FabricPlan;
  list: CutList;
  work: Work;
  bolt: "none" | "as-needed";
  /** Cloth ready cut that there is to buy besides what the file says. */
  offers: readonly FixedPiece[];
  options: PlanOptions;
  search: Search;
  /** How many letters the bags of the quilt have taken. */
  taken: number;
}

/** The plan of one fabric from what is there of it. */
export async function nextFabric({
  fabric,
  list,
  work,
  bolt,
  offers,
  options,
  search,
  taken,
}: Next): Promise<Outcome<{ fabric: FabricPlan; served: StillWanted["served"] }>> {
  const { ruler, keepFrom } = search.settings;
  const bought = [...(fabric.done?.bought ?? []), ...amountsOf(fabric)];
  const standing = keepRest(fabric, work, bought, search.settings, options.kits);
  if (standing !== null) return { value: { fabric: standing, served: [] }, diagnostics: [] };
  const there = clothInHand(fabric, work, ruler);
  const ways = waysOfJoining(list, work.width, search.settings);
  const pieces = settledWay(ways, fabric, options.kits, taken);
  const cut = fabric.pieces.flatMap((piece, i): Cut[] => {
    const count = work.bags[i] ?? 0;
    // A strip is as long as the fabric is wide, whatever was thought of that.
    return count === 0 ? [] : [{ piece: piece.fullWidth ? { ...piece, across: work.width } : piece, count }];
  });
  const { wanted, served, over } = stillWanted(pieces, cut);
  const still = wanted.flatMap((each) => (each.still === null ? [] : [asOneWay(each.still)]));
  const cloth = [
    ...over.map(({ rectangle, count }) => restPiece(rectangle, count, ruler)),
    ...there.cloth,
    ...offers,
  ];
  const left = { fabric: list.fabric, pieces: still };
  const planned = await planRest(left, { ...there, cloth }, bolt, work.width, search);
  if (planned.value === null) return { value: null, diagnostics: planned.diagnostics };
  const { rest, kept } = planned.value;
  const made = putBack({
    ...{ rest, wanted, bought, kept, took: tookOf(fabric, work) },
    keepFrom,
    kits: options.kits,
  });
  return { value: { fabric: made, served }, diagnostics: planned.diagnostics };
}

/** A long piece that is kept whole is not to be joined after all. */
function asOneWay(piece: CutPiece): CutPiece {
  return piece.cut === "either" && piece.joined === undefined && piece.join !== "no"
    ? { ...piece, join: "no" }
    : piece;
}

/** Of the ways of making long pieces, the one in which they were made: its list, in the bags that there are. */
function settledWay(
  joined: ReturnType<typeof waysOfJoining>,
  fabric: FabricPlan,
  kits: number,
  taken: number,
): CutPiece[] {
  const ways = joined.map(({ cutList }) => forKits(cutList, kits).pieces);
  const [only = [], another] = ways;
  if (another === undefined) return only;
  const keys = new Set(fabric.pieces.map(bagKey));
  const alike = (pieces: readonly CutPiece[]) => pieces.filter((piece) => keys.has(bagKey(piece))).length;
  const runs = (pieces: readonly CutPiece[]) => pieces.filter(isRun).length;
  const wanted = new Set(fabric.pieces.filter(isRun).map(({ joined }) => joined?.run)).size;
  const [best = only] = [...ways].sort(
    (a, b) => Math.abs(runs(a) - wanted) - Math.abs(runs(b) - wanted) || alike(b) - alike(a),
  );
  return letterPieces(best, 0, { bags: fabric.pieces, next: taken });
}
