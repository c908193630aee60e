import type { CutList, CutPiece } from "../cutlist/types.ts";
import { hasPlan } from "../engine/index.ts";
import type { PackingResult, Section, SegmentUse } from "../engine/types.ts";
import { nth } from "../length/nth.ts";
import { purchaseFor } from "../stock/index.ts";
import type { Chosen } from "./choose-cut-lists.ts";
import type { Mix } from "./types.ts";

/** A fabric packed to the end: what was settled on, its packing with the work eased, and how its purchase was weighed. */
export interface Packed {
  chosen: Chosen;
  eased: PackingResult;
  mix: Mix | null;
}

/**
 * Borders of a pair that would be cut from different grains: one across the fabric, the other along the selvage. The two
 * stretch differently, and the quilt does not lie flat.
 * @returns indices of the pieces, of which an odd number lies turned
 */
export function splitPairs({ pieces }: CutList, { layouts }: PackingResult): number[] {
  const turned = new Map<number, number>();
  const segment = ({ count, stack }: SegmentUse, times: number): void => {
    for (const use of stack)
      if (use.turned) turned.set(use.item, (turned.get(use.item) ?? 0) + use.count * count * times);
  };
  const visit = (sections: readonly Section[], times: number): void => {
    for (const section of sections) {
      const all = times * section.count;
      if (section.kind === "strips") for (const use of section.column.segments) segment(use, all);
      else {
        for (const band of section.bands) segment(band, all);
        visit(section.rest, all);
      }
    }
  };
  for (const layout of layouts) visit(layout.sections, layout.count);
  return pieces.flatMap(({ pair, count }, i) =>
    pair === true && count % 2 === 0 && (turned.get(i) ?? 0) % 2 === 1 ? [i] : [],
  );
}

/** The cut list with one of its pieces laid one way only: across as written, or turned. */
function pinned({ fabric, pieces }: CutList, index: number, turned: boolean): CutList {
  const lie = (piece: CutPiece): CutPiece => ({
    ...piece,
    ...(turned ? { across: piece.along, along: piece.across } : {}),
    turnable: false,
  });
  return { fabric, pieces: pieces.map((piece, i) => (i === index ? lie(piece) : piece)) };
}

/** Most pairs of one fabric that are looked at one after another. */
const MOST_PAIRS = 6;

/**
 * Cuts both borders of every pair from one grain: where a packing splits a pair it is made anew with the pair lying one
 * way and the other, and the one to buy less of is taken. What was proved of the length still holds of the free choice.
 * @param again packs fabrics to the end, each by its number and with another cut list
 */
export async function fromOneGrain(
  packed: readonly Packed[],
  cutLists: readonly CutList[],
  again: (asked: readonly { fabric: number; cutList: CutList }[]) => Promise<Packed[]>,
): Promise<Packed[]> {
  const found = [...packed];
  const lists = [...cutLists];
  for (let round = 0; round < MOST_PAIRS; round += 1) {
    const open = found.flatMap(({ chosen, eased }, fabric) => {
      const [split] = splitPairs(chosen.cutList, eased).map((i) => chosen.cutList.pieces[i]);
      // Letters may differ between ways of joining; what a piece is for does not.
      const use = JSON.stringify(split?.uses[0]?.purpose);
      const index =
        lists[fabric]?.pieces.findIndex(({ uses }) => JSON.stringify(uses[0]?.purpose) === use) ?? -1;
      return split === undefined || index < 0 ? [] : [{ fabric, index }];
    });
    if (open.length === 0) break;
    const asked = open.flatMap(({ fabric, index }) =>
      [false, true].map((turned) => ({ fabric, cutList: pinned(nth(lists, fabric), index, turned) })),
    );
    const results = await again(asked);
    for (const { fabric } of open) {
      const ways = asked.flatMap((ask, i) => {
        const result = results[i];
        return ask.fabric === fabric && result !== undefined && hasPlan(result.eased)
          ? [{ cutList: ask.cutList, result }]
          : [];
      });
      const [best] = ways.sort((a, b) => byCost(a.result, b.result));
      if (best === undefined) continue;
      lists[fabric] = best.cutList;
      const least = Math.min(nth(found, fabric).chosen.least, best.result.chosen.least);
      found[fabric] = { ...best.result, chosen: { ...best.result.chosen, least } };
    }
  }
  return found;
}

/** The less to pay for comes first, then the less to buy, then the shorter. */
function byCost(a: Packed, b: Packed): number {
  const buys = ({ chosen, eased }: Packed): number =>
    eased.rollLength === 0 ? 0 : purchaseFor(chosen.cutList.fabric, eased.rollLength).length;
  return (
    (a.mix?.cost ?? 0) - (b.mix?.cost ?? 0) || buys(a) - buys(b) || a.eased.objective - b.eased.objective
  );
}
