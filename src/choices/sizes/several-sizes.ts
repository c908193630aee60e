import { type InBlocksSaid, nothingToRepeat, sizeNotMet, sizeOutOfReach } from "../../diagnostics/choices.ts";
import type { BorderName } from "../../diagnostics/purposes.ts";
import type { Diagnostic, Outcome } from "../../diagnostics/types.ts";
import { formatLength, formatSize } from "../../length/index.ts";
import type { Ticks } from "../../length/types.ts";
import { type PlanOptions, planSpec } from "../../pipeline.ts";
import type { Solve } from "../../plan/index.ts";
import { leastBought } from "../../plan/proved/index.ts";
import type { Plan } from "../../plan/types.ts";
import { exactToNumber } from "../../quilt/index.ts";
import type { QuiltSpec, Spec } from "../../spec/index.ts";
import { quickSolve, withoutEasing } from "../quick-solve.ts";
import { type Fit, fitSize, inBlocks, type Sized } from "./fit-size.ts";
import type { InBlocks, SizeAsked, SizeFrom } from "./read-sizes.ts";

/** What one size takes of one fabric. */
export interface SizeFabric {
  fabric: string;
  /** As the shop says it; empty when nothing is bought. */
  buy: string;
  /** What is bought from the bolt. */
  length: Ticks;
  /** Hundredths; null without a price. */
  cost: number | null;
  /** No smaller purchase can do. */
  proven: boolean;
}

/** What one size of the quilt takes. */
export interface SizePlanned {
  /** As typed. */
  asked: string;
  /** Short enough for a column: the bed without its drop, where no other size is of the same bed. */
  heading: string;
  /** The finished size asked for; null where blocks were. */
  target: string | null;
  /** What a bed's size comes from; null for a size as it was asked for. */
  from: SizeFrom | null;
  blocks: InBlocks;
  /** Finished size, to the nearest tick, and as the maker's ruler reads it. */
  across: Ticks;
  down: Ticks;
  finished: string;
  /** Width of the outer border where it is made to fit, sides / ends when they differ; null: as the file has it. */
  border: { name: BorderName; width: string } | null;
  /** Blocks to make, by design. */
  make: { block: string; count: number }[];
  fabrics: SizeFabric[];
  /** Hundredths; null when a fabric has no price. */
  cost: number | null;
  /** Size of the wadding; null when the file has none. */
  wadding: string | null;
}

/** One design in several sizes. Plain data. */
export interface SeveralSizes {
  name: string;
  currency: string;
  /** Usable widths the amounts are for, as the ruler reads, each once. */
  usable: string[];
  sizes: SizePlanned[];
}

/** A size with its whole plan. */
export interface WholeSize {
  size: SizePlanned;
  plan: Plan;
}

/** A further size of a pattern, with its whole plan. */
export interface SizeBeside {
  heading: string;
  finished: SizePlanned["finished"];
  plan: Plan;
}

const extentOf = ({ top }: Plan): string => JSON.stringify([top?.across, top?.down]);

/** The sizes of a pattern beside that of the quilt's own plan, which has a column already. */
export function sizesBeside(plan: Plan, sizes: readonly WholeSize[]): SizeBeside[] {
  return sizes
    .filter((whole) => extentOf(whole.plan) !== extentOf(plan))
    .map(({ size: { heading, finished }, plan: own }) => ({ heading, finished, plan: own }));
}

/** One design in several finished sizes, each planned. A size that cannot be made ends it, and all such are told. */
export async function severalSizes(
  spec: Spec,
  asked: readonly SizeAsked[],
  options: PlanOptions,
  solve: Solve,
  told: (done: number, of: number) => void = () => {},
): Promise<Outcome<SeveralSizes>> {
  const { value, diagnostics } = await wholeSizes(
    spec,
    asked,
    options,
    withoutEasing(quickSolve(solve)),
    told,
  );
  if (value === null) return { value, diagnostics };
  const widths = new Set(
    value.flatMap(({ plan }) => plan.fabrics.map(({ usable }) => formatLength(usable, spec.ruler))),
  );
  const currency = spec.fabrics.find(({ price }) => price !== null)?.price?.currency ?? "";
  const sizes = value.map(({ size }) => size);
  return { value: { name: spec.name, currency, usable: [...widths], sizes }, diagnostics };
}

/** The same with the whole plan of each size, as `solve` finds it. */
export async function wholeSizes(
  spec: Spec,
  asked: readonly SizeAsked[],
  options: PlanOptions,
  solve: Solve,
  told: (done: number, of: number) => void = () => {},
): Promise<Outcome<WholeSize[]>> {
  if (spec.kind === "cut-list") return { value: null, diagnostics: [nothingToRepeat()] };
  const diagnostics: Diagnostic[] = [];
  const fits = asked.map((size) => settled(spec, size, diagnostics));
  if (diagnostics.some(({ severity }) => severity === "error")) return { value: null, diagnostics };
  const found: WholeSize[] = [];
  for (const [done, fit] of fits.entries()) {
    const size = asked[done];
    if (fit === null || size === undefined) continue;
    told(done, fits.length);
    const outcome = await planSpec(fit.spec, options, solve);
    const { value } = outcome;
    if (value === null || value.top === null)
      return { value: null, diagnostics: [...diagnostics, ...outcome.diagnostics] };
    found.push({ size: planned(value, fit, size, spec), plan: value });
  }
  const sizes = headed(found.map(({ size }) => size));
  return {
    value: found.map(({ plan, size }, i) => ({ plan, size: sizes[i] ?? size })),
    diagnostics,
  };
}

function headed(sizes: readonly SizePlanned[]): SizePlanned[] {
  const short = ({ asked, from }: SizePlanned) =>
    from === null ? asked : asked.replace(/\s+(drop|tuck)\b.*$/i, "");
  const all = sizes.map(short);
  return sizes.map((size, i) => {
    const name = all[i] ?? "";
    return { ...size, heading: all.filter((other) => other === name).length === 1 ? name : size.asked };
  });
}

/** A size settled on: the quilt it is, in how many blocks. */
export type Settled = Pick<Fit, "spec" | "border"> & { blocks: InBlocks };

/** The quilt of one size; a target that is not met is told. */
export function settled(
  spec: QuiltSpec,
  { asked, wanted }: SizeAsked,
  diagnostics: Diagnostic[],
): Settled | null {
  if (wanted.kind === "blocks") {
    return { spec: inBlocks(spec, wanted.blocks), blocks: wanted.blocks, border: null };
  }
  const { target } = wanted;
  const fit = fitSize(spec, target);
  const said = saySize(target.across, target.down, spec);
  if (fit === null) {
    diagnostics.push(sizeOutOfReach(asked, said, null));
    return null;
  }
  const { taken, met, below, above } = fit;
  if (!met && farOff(taken, target)) {
    diagnostics.push(sizeOutOfReach(asked, said, sayBlocks(taken, spec)));
    return null;
  }
  if (!met) {
    const other = (one: Sized | null) => (one === null ? null : sayBlocks(one, spec));
    diagnostics.push(sizeNotMet(asked, said, sayBlocks(taken, spec), other(below), other(above)));
  }
  return { spec: fit.spec, blocks: taken.blocks, border: fit.border };
}

/** Off by more than half: no quilt for that bed. */
function farOff(taken: Sized, target: { across: Ticks; down: Ticks }): boolean {
  const off = (is: number, wanted: number) => Math.abs(is - wanted) > wanted / 2;
  return off(taken.across, target.across) || off(taken.down, target.down);
}

function planned(
  plan: Plan,
  { blocks, border }: Settled,
  { asked, wanted }: SizeAsked,
  spec: QuiltSpec,
): SizePlanned {
  const { top } = plan;
  if (top === null) throw new Error("a quilt without a top");
  const [across, down] = [Math.round(exactToNumber(top.across)), Math.round(exactToNumber(top.down))];
  const fabrics = plan.fabrics.map((fabric) => ({
    fabric: fabric.name,
    buy: fabric.purchase?.text ?? "",
    length: fabric.purchase?.length ?? 0,
    cost: fabric.purchase === null ? 0 : fabric.purchase.cost,
    proven: leastBought(fabric),
  }));
  const costs = fabrics.map(({ cost }) => cost);
  const wadding = plan.making?.finishing.wadding ?? null;
  return {
    asked,
    heading: asked,
    target: wanted.kind === "target" ? saySize(wanted.target.across, wanted.target.down, spec) : null,
    from: wanted.kind === "target" ? wanted.target.from : null,
    blocks,
    across,
    down,
    finished: saySize(across, down, spec),
    border:
      border === null
        ? null
        : {
            name: border.name,
            width:
              border.side === border.end
                ? formatLength(border.side, spec.ruler)
                : `${formatLength(border.side, spec.ruler)} / ${formatLength(border.end, spec.ruler)}`,
          },
    make: top.designs.flatMap(({ name, colourway, count }) =>
      count === 0 ? [] : [{ block: colourway === "" ? name : `${name}, ${colourway}`, count }],
    ),
    fabrics,
    cost: costs.includes(null) ? null : costs.reduce<number>((sum, cost) => sum + (cost ?? 0), 0),
    wadding: wadding === null ? null : saySize(wadding.across, wadding.down, spec),
  };
}

/** A finished size by the nearest marks of the ruler: quilts on point have sizes no ruler shows. */
export function saySize(across: number, down: number, { ruler }: Spec): string {
  const near = (ticks: number): Ticks => Math.round(ticks / ruler.mark) * ruler.mark;
  return formatSize(near(across), near(down), ruler);
}

function sayBlocks({ blocks, across, down }: Sized, spec: Spec): InBlocksSaid {
  return { ...blocks, size: saySize(across, down, spec) };
}
