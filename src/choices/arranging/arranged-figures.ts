import type { CutPiece, Subcut } from "../../cutlist/types.ts";
import type { UnitTold } from "../../diagnostics/quilts/quilt.ts";
import type { Diagnostic } from "../../diagnostics/types.ts";
import { formatSize } from "../../length/index.ts";
import type { Ticks } from "../../length/types.ts";
import type { Listed } from "../../pipeline.ts";
import { leastBought } from "../../plan/proved/index.ts";
import type { FabricPlan, Plan } from "../../plan/types.ts";
import { exactToNumber, type QuiltTop } from "../../quilt/index.ts";
import type { QuiltSpec } from "../../spec/index.ts";

/** One size to cut for an arrangement. */
export interface ArrangedPiece {
  letter: string;
  across: Ticks;
  along: Ticks;
  /** Across x along, as the ruler reads. */
  size: string;
  count: number;
  /** How it is cut further: squares are halved on one diagonal, which a print with an up decides, or on both. */
  subcut: Subcut;
  diagonal: CutPiece["diagonal"];
}

/** What one fabric comes to in an arrangement. */
export interface ArrangedFabric {
  fabric: string;
  /** As the shop says it; empty when nothing is bought. */
  buy: string;
  /** What is bought from the bolt. */
  length: Ticks;
  /** Hundredths; null without a price. */
  cost: number | null;
  /** No smaller purchase can do. */
  proven: boolean;
  pieces: ArrangedPiece[];
}

/** How the seams of an arrangement nest, pressed as well as can be. */
export interface Nesting {
  /** Places where two seams meet across a joining seam. */
  places: number;
  /** Those where they lie on one another. */
  unNested: number;
  /** No pressing leaves fewer un-nested. */
  proven: boolean;
  /** Blocks of one design are pressed in this many ways. */
  ways: 1 | 2;
  /** As the blocks lie when none is turned for it; null where nothing is gained by turns that do not show. */
  otherwise: { unNested: number; ways: 1 | 2 } | null;
}

/** Whether seams nest better: fewer that do not, then one way of pressing. */
export function nestsBetter(
  a: Pick<Nesting, "unNested" | "ways">,
  b: Pick<Nesting, "unNested" | "ways">,
): boolean {
  return a.unNested < b.unNested || (a.unNested === b.unNested && a.ways < b.ways);
}

/** Units of one kind and size, and the way they are made in an arrangement. */
interface MadeUnits {
  unit: UnitTold;
  method: string;
  count: number;
}

/** What one arrangement takes. */
export interface Taken {
  top: QuiltTop;
  fabrics: ArrangedFabric[];
  /** Hundredths; null when a fabric has no price. */
  cost: number | null;
  /** Square ticks bought. */
  bought: number;
  /** How units are made, of those that are sewn of several patches. */
  methods: MadeUnits[];
  /** Null when the top is not laid in rows of whole blocks. */
  nesting: Nesting | null;
  /** What this arrangement makes necessary, as units made another way to keep a print upright. */
  notes: Diagnostic[];
}

function fabricOf(fabric: FabricPlan, { ruler }: Plan): ArrangedFabric {
  const { name, purchase, pieces } = fabric;
  return {
    fabric: name,
    buy: purchase?.text ?? "",
    length: purchase?.length ?? 0,
    cost: purchase === null ? 0 : purchase.cost,
    proven: leastBought(fabric),
    pieces: pieces.map(({ letter, across, along, count, subcut, diagonal }) => ({
      letter,
      across,
      along,
      size: formatSize(across, along, ruler),
      count,
      subcut,
      diagonal,
    })),
  };
}

/** How the seams of a quilt nest; null when it is not laid in rows of whole blocks. */
export function nestingOf({ making }: { making?: Listed["making"] | undefined }): Nesting | null {
  const pressing = making?.pressing ?? null;
  if (pressing === null) return null;
  const { junctions, open, proven, variants } = pressing;
  return { places: junctions, unNested: open.length, proven, ways: variants, otherwise: null };
}

const noted = (diagnostics: readonly Diagnostic[]): Diagnostic[] =>
  diagnostics.filter(({ told }) => told === "directionByOtherMethod" || told === "directionSpares");

function withoutMethods(plan: Plan, top: QuiltTop): Omit<Taken, "methods"> {
  const fabrics = plan.fabrics.map((fabric) => fabricOf(fabric, plan));
  const costs = fabrics.map(({ cost }) => cost);
  const cost = costs.includes(null) ? null : costs.reduce<number>((sum, one) => sum + (one ?? 0), 0);
  const bought = plan.fabrics.reduce((sum, { width, purchase }) => sum + width * (purchase?.length ?? 0), 0);
  const notes = noted(plan.diagnostics);
  return { top, fabrics, cost, bought, nesting: nestingOf(plan), notes };
}

/** What a top looks like: every patch with its fabric and where its print points; the same words for the same look. */
export function pictureOf({ patches }: QuiltTop, { fabrics }: QuiltSpec): string {
  const twoWay = new Set(fabrics.flatMap(({ name, print }) => (print.kind === "two-way" ? [name] : [])));
  return patches
    .map(({ fabric, up, outline }) => {
      const corners = outline.map(
        ({ x, y }) => `${Math.round(exactToNumber(x))},${Math.round(exactToNumber(y))}`,
      );
      return `${fabric} ${up === null ? "" : twoWay.has(fabric) ? up % 180 : up} ${corners.sort().join(" ")}`;
    })
    .sort()
    .join("; ");
}

/** How the units of a plan are made, of those that are sewn of several patches. */
function methodsOf({ making }: Plan): MadeUnits[] {
  const found = new Map<string, MadeUnits>();
  for (const { told: unit, method, units, seams } of making?.units ?? []) {
    if (seams.length === 0) continue;
    const key = JSON.stringify([unit, method]);
    found.set(key, { unit, method, count: (found.get(key)?.count ?? 0) + units });
  }
  const order = ({ unit, method }: MadeUnits): string => JSON.stringify([unit, method]);
  return [...found.values()].sort((a, b) => (order(a) < order(b) ? -1 : 1));
}

/** What a plan of an arrangement takes. */
export function takenBy(plan: Plan, top: QuiltTop): Taken {
  return { ...withoutMethods(plan, top), methods: methodsOf(plan) };
}
