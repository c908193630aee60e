import type { CutPiece } from "../cutlist/types.ts";
import { fatQuarterTooSmall } from "../diagnostics/choices.ts";
import type { Diagnostic, Outcome } from "../diagnostics/types.ts";
import { familyOf, formatSize } from "../length/index.ts";
import { listAll, type PlanOptions, planSpec } from "../pipeline.ts";
import type { Solve } from "../plan/index.ts";
import type { Plan } from "../plan/types.ts";
import type { Spec } from "../spec/index.ts";
import { clothToHand, type Stash } from "../stash/index.ts";
import { boughtName, type TradeSize, tradeSize } from "../stock/index.ts";

/** Cloth a plan may start from. */
export interface Sources {
  /** Used before anything is bought; null: none. */
  stash: Stash | null;
  /** Every colour from fat quarters, as many as it takes, where its pieces fit one. */
  fatQuarters: boolean;
}

/** A plan, and the fabrics of it that are cut from bought fat quarters. */
export interface Sourced {
  plan: Plan;
  fromFatQuarters: string[];
}

/**
 * The plan of a file that uses the stash first, or takes its colours from fat quarters.
 * @param make plans the file with what is to hand; without it one quilt, or kits that are alike
 */
export async function planWith(
  spec: Spec,
  options: PlanOptions,
  { stash, fatQuarters }: Sources,
  solve: Solve,
  make: typeof planSpec = planSpec,
): Promise<Outcome<Sourced>> {
  const told: Diagnostic[] = [];
  let asked = options;
  if (stash !== null) {
    const names = spec.fabrics.map(({ name }) => name);
    const { toHand, diagnostics } = clothToHand(stash, names, spec.ruler);
    told.push(...diagnostics);
    asked = { ...asked, toHand };
  }
  const fromFatQuarters: string[] = [];
  if (fatQuarters) {
    const chosen = inFatQuarters(spec, told);
    if (chosen.value === null) return { value: null, diagnostics: [...told, ...chosen.diagnostics] };
    const { size, fabrics } = chosen.value;
    fromFatQuarters.push(...fabrics.map(({ name }) => name));
    const bought = fabrics.map(({ name, most, offered }) => {
      const own = asked.toHand.find(({ fabric }) => fabric === name)?.pieces ?? [];
      const more = {
        ...size,
        name: boughtName(size.name),
        available: most * asked.kits,
        from: "shop",
      } as const;
      return { fabric: name, pieces: offered ? own : [...own, more] };
    });
    const others = asked.toHand.filter(({ fabric }) => !fromFatQuarters.includes(fabric));
    asked = { ...asked, toHand: [...others, ...bought], notBought: fromFatQuarters };
  }
  const { value, diagnostics } = await make(spec, asked, solve);
  const all = [...told, ...diagnostics];
  return {
    value: value === null ? null : { plan: { ...value, diagnostics: all }, fromFatQuarters },
    diagnostics: all,
  };
}

interface FatQuarters {
  size: { name: string; across: number; along: number };
  /**
   * Fabrics all of whose pieces fit, each with the most that could be needed: one for a piece. `offered`: the file
   * says itself at what price they are sold.
   */
  fabrics: { name: string; most: number; offered: boolean }[];
}

function inFatQuarters(spec: Spec, told: Diagnostic[]): Outcome<FatQuarters> {
  const listed = listAll(spec);
  if (listed.value === null) return { value: null, diagnostics: listed.diagnostics };
  const trade = tradeSize(familyOf(spec.ruler.unit) === "imperial" ? "fat quarter" : "metric fat quarter");
  const { name, across, along } = trade as TradeSize & { across: number };
  const said = formatSize(across, along, spec.ruler);
  const foundation = spec.kind === "quilt" ? spec.foundation?.fabric.word : undefined;
  const fabrics = listed.value.cutLists.flatMap(({ fabric, pieces }) => {
    // Printed foundation is no colour and is not sold so.
    if (fabric.name === foundation) return [];
    const large = pieces.find((piece) => !fits(piece, across, along, fabric.squareUp ?? 0));
    if (large === undefined) {
      const most = pieces.reduce((sum, { count }) => sum + count, 0);
      return [{ name: fabric.name, most, offered: fabric.readyCut.some((cut) => cut.name === name) }];
    }
    const size = large.fullWidth ? null : sizeOf(large, spec);
    told.push(fatQuarterTooSmall(fabric.name, size, said));
    return [];
  });
  return { value: { size: { name, across, along }, fabrics }, diagnostics: [] };
}

function sizeOf({ across, along }: CutPiece, { ruler }: Spec): string {
  return formatSize(across, along, ruler);
}

/** The piece comes from cloth so large, squared. */
function fits(piece: CutPiece, across: number, along: number, squareUp: number): boolean {
  if (piece.fullWidth) return false;
  const lies = (x: number, y: number) => x <= across - squareUp && y <= along - squareUp;
  return lies(piece.across, piece.along) || (piece.turnable && lies(piece.along, piece.across));
}
