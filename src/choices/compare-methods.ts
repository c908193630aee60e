import { nothingToCompare } from "../diagnostics/choices.ts";
import type { Diagnostic, Outcome } from "../diagnostics/types.ts";
import { type PlanOptions, planSpec } from "../pipeline.ts";
import type { Solve } from "../plan/index.ts";
import { findUnitKind, layOutQuilt } from "../quilt/index.ts";
import type { QuiltSpec, Spec } from "../spec/index.ts";
import { type Figures, makingFigures, type StepMinutes } from "./making-figures.ts";
import { quickSolve } from "./quick-solve.ts";
import { type Methods, withMethods } from "./with-methods.ts";

/** One way of making all units of a kind, the others as the file says. */
export interface MethodRow {
  unit: string;
  method: string;
  /** The way the file has it. */
  filed: boolean;
  /** Null when it cannot be made this way; `why` then says why not. */
  figures: Figures | null;
  why: string;
}

export interface Comparison {
  name: string;
  minutes: StepMinutes;
  /** The quilt as the file has it. */
  filed: Figures;
  rows: MethodRow[];
  best: { methods: Methods; figures: Figures };
  /** Combinations there are, and how many of them were planned: all, or the ones nearest the best. */
  combinations: number;
  tried: number;
}

/** So many combinations are all planned. */
const ALL = 24;
/** Most combinations planned where there are more. */
const MOST = 24;

/** Told what is being planned, of how much. */
export type Told = (done: number, of: number) => void;

/** The same quilt, planned one way. */
type Try = { figures: Figures; why: "" } | { figures: null; why: string };

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
  const choices = choicesOf(laid.value.work.units.map(({ recipes }) => recipes[0]));
  if (choices.length === 0) return { value: null, diagnostics: [nothingToCompare("one-way")] };
  const trial = tryOf(spec, options, minutes, quickSolve(solve));

  const asFiled = await trial.plan({});
  if (asFiled.figures === null) return { value: null, diagnostics: asFiled.diagnostics };
  const rows: MethodRow[] = [];
  const all = choices.flatMap(({ unit, methods }) => methods.map((method) => ({ unit, method })));
  for (const [done, { unit, method }] of all.entries()) {
    told(done, all.length);
    const used = choices.find((choice) => choice.unit === unit)?.filed ?? [];
    const made = await trial.plan({ [unit]: method });
    const { figures, why } = made;
    rows.push({ unit, method, filed: used.length === 1 && used[0] === method, figures, why });
  }
  const found = await bestOf(rows, asFiled.figures, trial.plan, told);
  const value = { name: spec.name, minutes, filed: asFiled.figures, rows, ...found };
  return { value, diagnostics: laid.diagnostics };
}

interface Choice {
  unit: string;
  methods: string[];
  /** Ways the file has it made. */
  filed: string[];
}

function choicesOf(recipes: readonly ({ kind: string; method: string } | undefined)[]): Choice[] {
  const filed = new Map<string, Set<string>>();
  for (const recipe of recipes) {
    if (recipe === undefined) continue;
    filed.set(recipe.kind, (filed.get(recipe.kind) ?? new Set()).add(recipe.method));
  }
  return [...filed].flatMap(([unit, used]): Choice[] => {
    const methods = findUnitKind(unit)?.methods.map(({ name }) => name) ?? [];
    return methods.length < 2 ? [] : [{ unit, methods, filed: [...used] }];
  });
}

interface Trial {
  plan(methods: Methods): Promise<Try & { diagnostics: Diagnostic[] }>;
}

function tryOf(spec: QuiltSpec, options: PlanOptions, minutes: StepMinutes, solve: Solve): Trial {
  const known = new Map<string, Try & { diagnostics: Diagnostic[] }>();
  const plan = async (methods: Methods): Promise<Try & { diagnostics: Diagnostic[] }> => {
    const asked = withMethods(spec, methods);
    const laid = layOutQuilt(asked);
    if (laid.value === null) return refused(laid.diagnostics);
    const { value, diagnostics } = await planSpec(asked, options, solve);
    if (value === null) return refused(diagnostics);
    // Of the kinds chosen here only: another kind may be made two ways in the file too.
    const other = diagnostics.find(
      ({ code, message }) =>
        code === "DIRECTION-OTHER-METHOD" &&
        Object.keys(methods).some((unit) => message.startsWith(`${unit} finishing `)),
    );
    if (other !== undefined) return { figures: null, why: other.message, diagnostics };
    const uses = value.fabrics.flatMap(({ pieces }) => pieces.flatMap((piece) => piece.uses));
    const missed = Object.entries(methods).find(([unit, method]) =>
      uses.some(({ text }) => text.includes(`: ${unit}, `) && !text.includes(`: ${unit}, ${method}, `)),
    );
    // A segment longer than the fabric is wide is cut some other way.
    if (missed !== undefined) return { figures: null, why: "its pieces do not fit the fabric", diagnostics };
    return { figures: makingFigures(value, laid.value.work, minutes), why: "", diagnostics };
  };
  return {
    async plan(methods) {
      const key = JSON.stringify(Object.entries(methods).sort(([a], [b]) => (a < b ? -1 : 1)));
      const before = known.get(key) ?? (await plan(methods));
      known.set(key, before);
      return before;
    },
  };
}

function refused(diagnostics: Diagnostic[]): Try & { diagnostics: Diagnostic[] } {
  const error = diagnostics.find(({ severity }) => severity === "error");
  return { figures: null, why: error?.message ?? "it cannot be planned", diagnostics };
}

/** Below zero when `a` is the better. */
export function compareFigures(a: Figures, b: Figures): number {
  if (a.cost !== null && b.cost !== null && a.cost !== b.cost) return a.cost - b.cost;
  return a.bought - b.bought || a.minutes - b.minutes;
}

/** All combinations while they are few; else from the best of each kind, one kind changed at a time. */
async function bestOf(
  rows: readonly MethodRow[],
  filed: Figures,
  plan: Trial["plan"],
  told: Told,
): Promise<Pick<Comparison, "best" | "combinations" | "tried">> {
  const possible = rows.filter((row): row is MethodRow & { figures: Figures } => row.figures !== null);
  const kinds = [...new Set(possible.map(({ unit }) => unit))].map((unit) =>
    possible.filter((row) => row.unit === unit).sort((a, b) => compareFigures(a.figures, b.figures)),
  );
  const combinations = kinds.reduce((product, methods) => product * methods.length, 1);
  let best: Comparison["best"] = { methods: {}, figures: filed };
  let tried = 0;
  const offer = async (methods: Methods): Promise<boolean> => {
    tried += 1;
    told(tried, Math.min(combinations, combinations <= ALL ? ALL : MOST));
    const { figures } = await plan(methods);
    if (figures === null || compareFigures(figures, best.figures) >= 0) return false;
    best = { methods, figures };
    return true;
  };
  for (const { unit, method, figures } of possible) {
    if (compareFigures(figures, best.figures) < 0) best = { methods: { [unit]: method }, figures };
  }
  if (combinations <= ALL) {
    for (const methods of everyCombination(kinds)) await offer(methods);
    return { best, combinations, tried };
  }
  const start = Object.fromEntries(kinds.flatMap(([first]) => (first ? [[first.unit, first.method]] : [])));
  let at: Methods = start;
  await offer(at);
  for (let better = true; better && tried < MOST; ) {
    better = false;
    for (const { unit, method } of kinds.flat()) {
      if (tried >= MOST || at[unit] === method) continue;
      const next = { ...at, [unit]: method };
      if (await offer(next)) {
        at = next;
        better = true;
      }
    }
  }
  return { best, combinations, tried };
}

function everyCombination(kinds: readonly (readonly MethodRow[])[]): Methods[] {
  return kinds.reduce<Methods[]>(
    (made, rows) => made.flatMap((before) => rows.map(({ unit, method }) => ({ ...before, [unit]: method }))),
    [{}],
  );
}
