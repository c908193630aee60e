import { nothingToTurn, sizeUnreadable } from "../diagnostics/choices.ts";
import type { Outcome } from "../diagnostics/types.ts";
import { formatLength } from "../length/index.ts";
import type { Ticks } from "../length/types.ts";
import { type PlanOptions, planSpec } from "../pipeline.ts";
import type { Solve } from "../plan/index.ts";
import { exactToNumber } from "../quilt/index.ts";
import type { QuiltSpec, Spec } from "../spec/index.ts";
import { quickSolve } from "./quick-solve.ts";

/** A quilt so many blocks across and down. */
export interface InBlocks {
  across: number;
  down: number;
}

/** What one size of the quilt takes. */
export interface SizePlanned {
  blocks: InBlocks;
  /** Finished size, to the nearest tick, and as the maker's ruler reads it. */
  across: Ticks;
  down: Ticks;
  finished: string;
  fabrics: { fabric: string; buy: string; cost: number | null }[];
}

/** Most blocks one way: more make no quilt anyone sews. */
const MOST = 60;

/** Reads `3x3,4x5`. */
export function readSizes(text: string): Outcome<InBlocks[]> {
  const found = text.split(",").map((part) => {
    const [, across = "", down = ""] = /^\s*(\d{1,2})\s*[x×]\s*(\d{1,2})\s*$/i.exec(part) ?? [];
    const size = { across: Number(across), down: Number(down) };
    const good = [size.across, size.down].every((count) => count >= 1 && count <= MOST);
    return good ? { size, fault: null } : { size: null, fault: sizeUnreadable(part.trim()) };
  });
  const faults = found.flatMap(({ fault }) => (fault === null ? [] : [fault]));
  if (faults.length > 0) return { value: null, diagnostics: faults };
  return { value: found.flatMap(({ size }) => (size === null ? [] : [size])), diagnostics: [] };
}

/** The same quilt with so many blocks, its drawing repeated or cut short to fill them. */
export function inBlocks(spec: QuiltSpec, blocks: InBlocks): QuiltSpec {
  return { ...spec, setting: { ...spec.setting, fill: { ...blocks } } };
}

/** One design in several finished sizes, each planned. The first that cannot be made ends it, and says why. */
export async function severalSizes(
  spec: Spec,
  sizes: readonly InBlocks[],
  options: PlanOptions,
  solve: Solve,
): Promise<Outcome<{ name: string; sizes: SizePlanned[] }>> {
  if (spec.kind === "cut-list") return { value: null, diagnostics: [nothingToTurn()] };
  const quick = quickSolve(solve);
  const planned: SizePlanned[] = [];
  for (const blocks of sizes) {
    const { value, diagnostics } = await planSpec(inBlocks(spec, blocks), options, quick);
    if (value === null || value.top === null) return { value: null, diagnostics };
    const [across, down] = [value.top.across, value.top.down].map((size) => Math.round(exactToNumber(size)));
    const said = [across, down].map((ticks) => formatLength(nearest(ticks ?? 0, spec), spec.ruler));
    planned.push({
      blocks,
      across: across ?? 0,
      down: down ?? 0,
      finished: said.join(" x "),
      fabrics: value.fabrics.map(({ name, purchase }) => ({
        fabric: name,
        buy: purchase?.text ?? "",
        cost: purchase === null ? 0 : purchase.cost,
      })),
    });
  }
  return { value: { name: spec.name, sizes: planned }, diagnostics: [] };
}

/** The nearest mark of the ruler: quilts on point have sizes no ruler shows. */
function nearest(ticks: Ticks, { ruler }: Spec): Ticks {
  return Math.round(ticks / ruler.mark) * ruler.mark;
}
