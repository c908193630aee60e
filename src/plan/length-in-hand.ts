import { hasPlan } from "../engine/index.ts";
import type { PackingResult } from "../engine/types.ts";
import { nth } from "../length/nth.ts";
import type { Ticks } from "../length/types.ts";
import { LENGTH_IN_HAND, usableWidth } from "../stock/index.ts";
import { type Chosen, chooseCutLists, type Fabric } from "./choose-cut-lists.ts";
import type { FixedPiece } from "./pose-problem.ts";
import type { Search } from "./request.ts";

/** A length of the bolt that is there already. */
export interface LengthInHand {
  length: Ticks;
  /** Taken off its end before the first strip; 0 where strips were cut from it. */
  straighten: Ticks;
}

/** A fabric with the first packing of its cut list, and the length in hand that all of it comes from. */
export interface FromHand {
  chosen: Chosen;
  /** Null where there is none, or where it is one cloth among others and more is bought. */
  length: LengthInHand | null;
}

/** The length as one cloth among others. */
function asCloth(
  { cutList: { fabric } }: Pick<Fabric, "cutList">,
  { length, straighten }: LengthInHand,
): FixedPiece {
  const squareUp = { across: 0, along: straighten };
  const across = usableWidth(fabric);
  return { name: LENGTH_IN_HAND, across, along: length, available: 1, from: "to-hand", squareUp };
}

function withCloth<F extends Fabric>(fabric: F, length: LengthInHand): F {
  return { ...fabric, fixedStock: [...fabric.fixedStock, asCloth(fabric, length)] };
}

/**
 * The first packing where lengths of the bolt are in hand. Each is packed as a bolt, with all that a bolt can do; where
 * it is too short it is laid on the table beside a bolt to buy, which then gives the least that will do.
 * @param lengths for each fabric; null where the bolt is still to be bought
 */
export async function chooseFromHand<F extends Fabric>(
  fabrics: readonly F[],
  lengths: readonly (LengthInHand | null)[],
  kits: number,
  search: Search,
): Promise<FromHand[]> {
  const asBolt = (i: number) => lengths[i] != null && nth(fabrics, i).bolt !== "none";
  const posed = fabrics.map((fabric, i) => {
    const length = lengths[i] ?? null;
    return length === null || asBolt(i) ? fabric : withCloth(fabric, length);
  });
  const first = await chooseCutLists(posed, kits, search);
  const enough = first.map(({ result }, i) => {
    const length = lengths[i] ?? null;
    return length !== null && hasPlan(result) && result.rollLength <= length.length - length.straighten;
  });
  const short = fabrics.flatMap((fabric, i) => {
    const length = asBolt(i) && !enough[i] ? (lengths[i] ?? null) : null;
    if (length === null || length.length <= length.straighten) return [];
    return [{ i, fabric: withCloth(fabric, length) }];
  });
  const again =
    short.length === 0
      ? []
      : await chooseCutLists(
          short.map(({ fabric }) => fabric),
          kits,
          search,
        );
  return first.map((chosen, i) => {
    if (asBolt(i) && enough[i]) return { chosen, length: nth(lengths, i) };
    const at = short.findIndex((one) => one.i === i);
    return { chosen: at < 0 ? chosen : nth(again, at), length: null };
  });
}

/** The packing of a bolt as that of the length in hand it was meant for: nothing of it is bought. */
export function ontoLength(
  chosen: Chosen,
  result: PackingResult,
  length: LengthInHand,
): { chosen: Chosen; result: PackingResult } {
  const cloth = asCloth(chosen, length);
  const sheet = chosen.fixedStock.length;
  const onRoll = result.layouts.filter(({ stock }) => stock === "roll");
  const sections = onRoll.flatMap((layout) =>
    Array.from({ length: layout.count }, () => layout.sections).flat(),
  );
  const others = result.layouts.filter(({ stock }) => stock === "sheet");
  const laid =
    sections.length === 0 ? [] : [{ stock: "sheet", sheet, count: 1, firstCut: "across", sections } as const];
  const { problem } = chosen;
  const along = cloth.along - length.straighten;
  const posed = { across: cloth.across, along, available: 1, cost: 0, firstCut: "either" } as const;
  return {
    chosen: {
      ...chosen,
      least: 0,
      fixedStock: [...chosen.fixedStock, cloth],
      problem: { ...problem, sheets: [...problem.sheets, posed] },
    },
    result: {
      ...result,
      objective: 0,
      rollLength: 0,
      bound: { ...result.bound, value: 0 },
      status: "proven",
      layouts: [...others, ...laid],
    },
  };
}
