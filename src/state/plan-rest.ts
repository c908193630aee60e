import type { CutList, CutPiece } from "../cutlist/types.ts";
import type { Outcome } from "../diagnostics/types.ts";
import {
  assembleFabric,
  type Bolt,
  type FixedPiece,
  gatherFixed,
  type PlanSettings,
  planCutLists,
  type Search,
} from "../plan/index.ts";
import type { FabricPlan } from "../plan/types.ts";
import type { FabricSpec } from "../spec/index.ts";
import { SHORTER_LENGTH } from "../stock/index.ts";
import type { ClothThere } from "./cloth-in-hand.ts";

/** The plan of what is left, and the cloth that was not offered to it. */
export interface RestPlanned {
  rest: FabricPlan;
  kept: FixedPiece[];
}

/** Whether anything that is still to cut can come from a cloth. */
function holdsAny(
  { across, along, strip = false }: FixedPiece,
  pieces: readonly CutPiece[],
  usable: number,
): boolean {
  return pieces.some((piece) => {
    if (piece.joined !== undefined && piece.joined.perKit !== true)
      return across >= piece.joined.leastEnd && along >= piece.along;
    const wide = piece.fullWidth ? usable : piece.across;
    const lies = wide <= across && piece.along <= along;
    // What is cut already is only subcut.
    return lies || (!strip && piece.turnable && piece.along <= across && wide <= along);
  });
}

/** Plans what is still to cut of one fabric from the cloth there is; more is bought only where that is too little. */
export async function planRest(
  { fabric, pieces }: CutList,
  { cloth, roll }: ClothThere,
  bolt: Bolt,
  usable: number,
  search: Search,
): Promise<Outcome<RestPlanned>> {
  const { settings, limits, effort, solve } = search;
  const own: FabricSpec = { ...fabric, have: [] };
  const useful = cloth.filter((piece) => holdsAny(piece, pieces, usable));
  const others = cloth.filter((piece) => !useful.includes(piece));
  if (pieces.length === 0)
    return {
      value: { rest: nothingLeft(own, settings), kept: named(others, roll, usable) },
      diagnostics: [],
    };
  const planned = await planCutLists({
    spec: { ...settings, assumptions: [] },
    cutLists: [{ fabric: own, pieces: [...pieces] }],
    fixedStock: [useful],
    bolt: [bolt],
    inHand: [roll],
    limits,
    effort,
    solve,
  });
  const [rest] = planned.value?.fabrics ?? [];
  if (rest === undefined) return { value: null, diagnostics: planned.diagnostics };
  return { value: { rest, kept: named(others, null, usable) }, diagnostics: planned.diagnostics };
}

/** Cloth that is put by, each kind with a name of its own; the bolt among it where nothing more is cut. */
function named(cloth: readonly FixedPiece[], roll: ClothThere["roll"], usable: number): FixedPiece[] {
  const length: FixedPiece[] =
    roll === null
      ? []
      : [
          {
            name: SHORTER_LENGTH,
            across: usable,
            along: roll.length,
            available: 1,
            from: "to-hand",
            squareUp: { across: 0, along: roll.straighten },
          },
        ];
  return gatherFixed([...length, ...cloth]);
}

/** The plan of a fabric of which all is cut. */
function nothingLeft(fabric: FabricSpec, settings: PlanSettings): FabricPlan {
  const problem = { style: settings.style, items: [], roll: null, sheets: [] };
  const result = {
    status: "proven",
    objective: 0,
    rollLength: 0,
    bound: { value: 0, kind: "exhausted", style: settings.style },
    layouts: [],
    missing: [],
    stats: { milliseconds: 0, cutShort: null },
  } as const;
  const chosen = {
    cutList: { fabric, pieces: [] },
    problem,
    result: { ...result, layouts: [], missing: [] },
    least: 0,
    fixedStock: [],
    onlyWay: true,
    diagnostics: [],
  };
  return assembleFabric(chosen, chosen.result, { thumb: null, mix: null }, settings, 1);
}
