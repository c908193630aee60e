import type { CutList } from "../../cutlist/types.ts";
import {
  noneFound,
  notProven,
  pieceLongerThanBolt,
  pieceTooWide,
  stockShort,
  type Wanting,
} from "../../diagnostics/planning.ts";
import type { Diagnostic } from "../../diagnostics/types.ts";
import { formatLength, formatSize } from "../../length/format.ts";
import { roomToMark } from "../../length/marks.ts";
import { nth } from "../../length/nth.ts";
import type { Chosen } from "../choose-cut-lists.ts";
import type { PlanSettings } from "../request.ts";
import type { FabricPlan } from "../types.ts";

/** With a bolt of any length only width can be what is missing; without one, cloth is. */
export function tellMissing(
  { cutList, problem, result }: Chosen,
  wanting: Wanting | null,
  stacked: boolean,
  { ruler }: PlanSettings,
): Diagnostic[] {
  const { fabric, pieces } = cutList;
  const missing = result.missing.map(({ item, count }) => ({ piece: nth(pieces, item), count }));
  const width = problem.roll?.width ?? null;
  if (width === null) {
    const said = missing.map(({ piece: { across, along, letter }, count }) => ({
      count,
      size: formatSize(across, along, ruler),
      letter,
    }));
    if (result.status === "none-found") return [noneFound(fabric.name, said, wanting, fabric.at)];
    return [stockShort(fabric.name, said, wanting, fabric.at, stacked)];
  }
  if (result.status === "none-found") return [noneFound(fabric.name, [], wanting, fabric.at)];
  return missing.map(({ piece }) => {
    const least = piece.turnable ? Math.min(piece.across, piece.along) : piece.across;
    return pieceTooWide(
      {
        piece: { for: "label", label: piece.label || piece.letter },
        ruler,
        fabric: fabric.name,
        path: "",
        at: fabric.at,
      },
      {
        size: formatSize(piece.across, piece.along, ruler),
        usable: formatLength(width, ruler),
        over: formatLength(Math.max(0, least - width), ruler),
        turnHelps: !piece.turnable && !piece.fullWidth && piece.along <= width,
        lengthwiseHelps: false,
      },
    );
  });
}

/** The longest piece of a fabric that no bolt holds. */
export function tellTooLong({ cutList: { fabric, pieces } }: Chosen, { ruler }: PlanSettings): Diagnostic {
  const least = (piece: CutList["pieces"][number]) =>
    piece.turnable && !piece.fullWidth ? Math.min(piece.across, piece.along) : piece.along;
  const [longest] = [...pieces].sort((a, b) => least(b) - least(a));
  const piece = {
    for: "label" as const,
    label: longest === undefined ? "" : longest.label || longest.letter,
  };
  const size = formatLength(longest === undefined ? 0 : least(longest), ruler);
  const bolt = formatLength(fabric.bolt?.length ?? 0, { ...ruler, unit: fabric.sold.unit });
  return pieceLongerThanBolt({ piece, ruler, fabric: fabric.name, path: "", at: fabric.at }, { size, bolt });
}

/** What is not proved of the length of a fabric; nothing where all is. */
export function tellUnproven(
  plan: FabricPlan,
  { result, least }: Chosen,
  { ruler }: PlanSettings,
): Diagnostic[] {
  if (result.rollLength === least || plan.bound.lengthProven) return [];
  // What is proved of shapes lies off the marks: a little less is proved as well.
  const proved = formatLength(roomToMark(least, ruler), ruler);
  return [notProven(plan.name, formatLength(plan.bound.used, ruler), proved)];
}

/** Where a bolt ends that the file says nothing of, for the fabrics of which it is of account. */
export function boltsAssumed(
  plans: readonly FabricPlan[],
  chosen: readonly Chosen[],
): PlanSettings["assumptions"] {
  return plans.flatMap(({ name, purchase, sold }, i) => {
    const { bolt } = nth(chosen, i).cutList.fabric;
    if (purchase?.lengths === undefined || bolt === undefined || bolt.told) return [];
    return [{ fabric: name, of: { is: "bolt", length: bolt.length, unit: sold.unit } }];
  });
}

/** What was assumed, without what no fabric depends on: how short an end may be where every run is joined from whole strips. */
export function ofAccount(
  assumptions: PlanSettings["assumptions"],
  plans: readonly FabricPlan[],
): PlanSettings["assumptions"] {
  const joinsEnds = plans.some(({ pieces }) =>
    pieces.some(({ joined, fullWidth }) => joined !== undefined && !fullWidth),
  );
  return joinsEnds ? assumptions : assumptions.filter(({ of }) => of.is !== "joined-from");
}
