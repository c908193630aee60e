import { nothingToCompare } from "../../diagnostics/choices.ts";
import type { Outcome } from "../../diagnostics/types.ts";
import { effortFor, listAll, type PlanOptions, sharedFor } from "../../pipeline.ts";
import type { Solve } from "../../plan/index.ts";
import { findUnitKind, layOutQuilt, type UnitDemand } from "../../quilt/index.ts";
import type { Spec, StepMinutes } from "../../spec/index.ts";
import { quickSolve } from "../quick-solve.ts";
import { combineMethods } from "./combine-methods.ts";
import type { Comparison, MethodRow, UnitChoice } from "./comparison.ts";
import type { Figures } from "./making-figures.ts";
import { type Made, waysOfMaking } from "./ways-of-making.ts";

/** Told what is being planned, of how much. */
export type Told = (done: number, of: number) => void;

/**
 * Every method of every kind of unit the quilt has, each really planned on the whole quilt, and the best of their
 * combinations: the least price where all fabrics have one, else the least cloth; then the least time.
 */
export async function compareMethods(
  spec: Spec,
  options: PlanOptions,
  minutes: StepMinutes,
  solve: Solve,
  told: Told = () => {},
): Promise<Outcome<Comparison>> {
  if (spec.kind === "cut-list") return { value: null, diagnostics: [nothingToCompare("cut-list")] };
  const laid = layOutQuilt(spec);
  if (laid.value === null) return { value: null, diagnostics: laid.diagnostics };
  const kinds = choicesOf(laid.value.work.units);
  if (kinds.length === 0) return { value: null, diagnostics: [nothingToCompare("one-way")] };
  // Every way is planned as long as the quilt itself would be.
  const listed = listAll(spec);
  if (listed.value === null) return { value: null, diagnostics: listed.diagnostics };
  const effort = effortFor(listed.value.cutLists, options);
  const shared = sharedFor(options);
  const ways = waysOfMaking(spec, { ...options, effort, shared }, minutes, quickSolve(solve));

  const filed = await ways({});
  if (filed.made === null) return { value: null, diagnostics: filed.diagnostics };
  const made = filed.made.madeBy;
  const units = kinds.map(
    ({ unit, count }): UnitChoice => ({
      unit,
      count,
      filed: [...new Set(made.flatMap(({ recipe }) => (recipe.kind === unit ? [recipe.method] : [])))],
    }),
  );
  const all = kinds.flatMap(({ unit, methods }) => methods.map((method) => ({ unit, method })));
  const tried: { row: MethodRow; made: Made | null }[] = [];
  for (const [done, { unit, method }] of all.entries()) {
    told(done, all.length);
    const { made, why } = await ways({ [unit]: method });
    const used = units.find((one) => one.unit === unit)?.filed ?? [];
    const row = {
      unit,
      method,
      filed: used.length === 1 && used[0] === method,
      figures: made?.figures ?? null,
      why,
    };
    tried.push({ row, made });
  }
  const rows = tried.map(({ row }) => row);
  const best = await combineMethods(
    { spec, units, minutes, filed: filed.made, tried, ways },
    (looked, most) => told(all.length + looked, all.length + most),
  );
  const currency = spec.fabrics.find(({ price }) => price !== null)?.price?.currency ?? "";
  const measure = filed.made.figures.cost === null ? "cloth" : "cost";
  const { figures } = filed.made;
  return {
    value: { name: spec.name, currency, measure, minutes, units, filed: figures, rows, best },
    diagnostics: laid.diagnostics,
  };
}

interface Kind {
  unit: string;
  count: number;
  methods: string[];
}

/** Kinds of unit that can be made in more than one way, in the order the quilt first has them. */
function choicesOf(units: readonly UnitDemand[]): Kind[] {
  const counts = new Map<string, number>();
  for (const { recipes, wants } of units) {
    const [recipe] = recipes;
    if (recipe === undefined) continue;
    const own = wants.reduce((sum, { count }) => sum + count, 0);
    counts.set(recipe.kind, own + (counts.get(recipe.kind) ?? 0));
  }
  return [...counts].flatMap(([unit, count]): Kind[] => {
    const methods = findUnitKind(unit)?.methods.map(({ name }) => name) ?? [];
    return methods.length < 2 ? [] : [{ unit, count, methods }];
  });
}

/** Below zero when `a` is the better. */
export function compareFigures(a: Figures, b: Figures): number {
  if (a.cost !== null && b.cost !== null && a.cost !== b.cost) return a.cost - b.cost;
  return a.bought - b.bought || a.minutes - b.minutes;
}
