import { nothingToTurn } from "../diagnostics/choices.ts";
import type { Outcome } from "../diagnostics/types.ts";
import { type PlanOptions, planSpec } from "../pipeline.ts";
import type { Solve } from "../plan/index.ts";
import type { Plan } from "../plan/types.ts";
import { fillRows, type QuiltTop } from "../quilt/index.ts";
import type { QuarterTurn, QuiltSpec, Spec } from "../spec/index.ts";
import type { Told } from "./compare-methods.ts";
import { quickSolve } from "./quick-solve.ts";

/** The blocks of a quilt turned one way, and what that takes. */
export interface Arrangement {
  name: string;
  /** Null when the quilt cannot be set so; `why` then says why not. */
  planned: {
    top: QuiltTop;
    fabrics: { fabric: string; buy: string; cost: number | null; sizes: number; pieces: number }[];
    cost: number | null;
    /** Square ticks bought. */
    bought: number;
  } | null;
  why: string;
}

export interface Arrangements {
  name: string;
  seed: number;
  arrangements: Arrangement[];
  /** All of them buy and cut the same. */
  alike: boolean;
}

/** Where a block stands, from 0, and how many stand across and down. */
type Turn = (row: number, column: number, across: number, down: number) => QuarterTurn;

const QUARTERS: readonly QuarterTurn[] = [0, 90, 180, 270];

/** Numbers of chance that are the same for the same seed: the mixing steps of a linear congruence. */
function chance(seed: number): () => QuarterTurn {
  let state = (seed * 2654435761 + 12345) % 2 ** 31;
  return () => {
    state = (state * 1103515245 + 12345) % 2 ** 31;
    return QUARTERS[Math.floor(state / 2 ** 16) % 4] ?? 0;
  };
}

/**
 * About the centre, each quarter of the quilt turned a quarter on from the one before:
 *
 *     0    90
 *     270 180
 */
function aboutCentre(row: number, column: number, across: number, down: number): QuarterTurn {
  const right = column >= across / 2;
  const below = row >= down / 2;
  if (right) return below ? 180 : 90;
  return below ? 270 : 0;
}

function ways(seed: number): { name: string; turn: Turn }[] {
  const random = chance(seed);
  return [
    { name: "all upright", turn: () => 0 },
    { name: "all turned right", turn: () => 90 },
    { name: "all upside down", turn: () => 180 },
    { name: "all turned left", turn: () => 270 },
    { name: "left and right by turns", turn: (row, column) => ((row + column) % 2 === 0 ? 270 : 90) },
    { name: "about the centre", turn: aboutCentre },
    { name: "pairs facing", turn: (_, column) => (column % 2 === 0 ? 90 : 270) },
    { name: `by chance, seed ${seed}`, turn: random },
  ];
}

/** The same quilt with every block of the setting turned so, whatever the file says of its turn. */
export function turnBlocks(spec: QuiltSpec, turn: Turn): QuiltSpec {
  const blocks = new Set(spec.blocks.map(({ key }) => key));
  const rows = fillRows(spec);
  const across = Math.max(0, ...rows.map(({ cells }) => cells.length));
  const turned = rows.map((row, r) => ({
    ...row,
    cells: row.cells.map((cell, c) =>
      blocks.has(cell.code) ? { ...cell, turn: turn(r, c, across, rows.length) } : cell,
    ),
  }));
  return { ...spec, setting: { ...spec.setting, rows: turned, fill: null } };
}

function summed(plan: Plan, top: QuiltTop): NonNullable<Arrangement["planned"]> {
  const fabrics = plan.fabrics.map(({ name, purchase, pieces }) => ({
    fabric: name,
    buy: purchase?.text ?? "",
    cost: purchase === null ? 0 : purchase.cost,
    sizes: pieces.length,
    pieces: pieces.reduce((sum, { count }) => sum + count, 0),
  }));
  const costs = fabrics.map(({ cost }) => cost);
  const cost = costs.includes(null) ? null : costs.reduce<number>((sum, one) => sum + (one ?? 0), 0);
  const bought = plan.fabrics.reduce((sum, { width, purchase }) => sum + width * (purchase?.length ?? 0), 0);
  return { top, fabrics, cost, bought };
}

/**
 * The quarter-turn arrangements of the blocks of a quilt, each planned: as the file has it, all one way in the
 * four ways, left and right by turns, about the centre, in facing pairs, and by chance.
 */
export async function arrangeBlocks(
  spec: Spec,
  seed: number,
  options: PlanOptions,
  solve: Solve,
  told: Told = () => {},
): Promise<Outcome<Arrangements>> {
  if (spec.kind === "cut-list") return { value: null, diagnostics: [nothingToTurn()] };
  const quick = quickSolve(solve);
  const all = [
    { name: "as the file has it", asked: spec },
    ...ways(seed).map(({ name, turn }) => ({ name, asked: turnBlocks(spec, turn) })),
  ];
  const arrangements: Arrangement[] = [];
  for (const [done, { name, asked }] of all.entries()) {
    told(done, all.length);
    const { value, diagnostics } = await planSpec(asked, options, quick);
    if (done === 0 && value === null) return { value: null, diagnostics };
    const error = diagnostics.find(({ severity }) => severity === "error");
    const planned = value === null || value.top === null ? null : summed(value, value.top);
    arrangements.push({ name, planned, why: planned === null ? (error?.message ?? "") : "" });
  }
  const figures = arrangements.flatMap(({ planned }) =>
    planned === null ? [] : [JSON.stringify(planned.fabrics)],
  );
  const alike = new Set(figures).size === 1;
  return { value: { name: spec.name, seed, arrangements, alike }, diagnostics: [] };
}
