import { foundationMethod } from "../diagnostics/quilts/foundation.ts";
import { type UnitTold, unitUnsuited } from "../diagnostics/quilts/quilt.ts";
import type { Diagnostic } from "../diagnostics/types.ts";
import type { QuiltSpec } from "../spec/quilt-types.ts";
import type { LaidUnit } from "./laid-types.ts";
import type { UnitInstance } from "./layout/builder.ts";
import { howMade } from "./layout/triangles.ts";
import { saySize } from "./say.ts";
import { markFor } from "./sizes/as-sewn.ts";
import { spotFacts } from "./spot-facts.ts";
import { FROM_RECTANGLES, foundationRecipe, ON_FOUNDATION } from "./units/on-foundation.ts";
import type { Recipe } from "./units/types.ts";
import type { BlockPlacing, SpotFacts, UnitDemand } from "./work-types.ts";

/**
 * Gathers the units of the quilt by what is sewn alike, and works out the ways to make each.
 * @param placings blocks placed alike; which of the units they take is filled in
 * @param pieced units whose patches are added one by one on gridded foundation: they have one way only
 */
export function demandsOf(
  instances: readonly UnitInstance[],
  spec: QuiltSpec,
  pieced: ReadonlySet<LaidUnit>,
  placings: readonly BlockPlacing[],
  diagnostics: Diagnostic[],
): UnitDemand[] {
  const demands = new Map<string, UnitDemand | null>();
  const orders = new Map<UnitDemand, number>();
  const known = new Map<string, Made>();
  for (const one of instances) {
    const instance = pieced.has(one.unit) ? onFoundation(one, diagnostics) : one;
    const key = JSON.stringify(
      [
        instance.unit.kind.name,
        instance.unit.design,
        instance.unit.asSewn ?? null,
        instance.unit.method,
        Object.entries(instance.fabrics).sort(([a], [b]) => (a < b ? -1 : 1)),
      ],
      plainly,
    );
    let demand = demands.get(key);
    if (demand === undefined) {
      demand = newDemand(instance, spec, known, diagnostics);
      demands.set(key, demand);
      if (demand !== null) orders.set(demand, orders.size);
    }
    if (demand === null) continue;
    const want = addTo(demand, instance);
    const units = placings[instance.placing]?.units;
    if (units !== undefined) units[instance.cell] = { demand: orders.get(demand) ?? 0, want };
  }
  return [...demands.values()].filter((demand) => demand !== null);
}

/** The same unit with the one method it can have there. */
function onFoundation(instance: UnitInstance, diagnostics: Diagnostic[]): UnitInstance {
  const { unit } = instance;
  const { method, kind, cell } = unit;
  if (method !== null && kind.patches(unit.design).length > 1)
    diagnostics.push(foundationMethod(cell, kind.name, method));
  return { ...instance, unit: { ...unit, method: ON_FOUNDATION } };
}

/** Counts the unit where it belongs. Returns the index of its want. */
function addTo(demand: UnitDemand, { prints, label, count }: UnitInstance): number {
  const same = demand.wants.findIndex((want) => JSON.stringify(want.prints) === JSON.stringify(prints));
  const found = demand.wants[same];
  if (found === undefined) demand.wants.push({ prints, count });
  else found.count += count;
  const key = JSON.stringify(label);
  const use = demand.uses.find(({ place }) => JSON.stringify(place) === key);
  if (use === undefined) demand.uses.push({ place: label, count });
  else use.count += count;
  return found === undefined ? demand.wants.length - 1 : same;
}

/** What one unit needs, the wanted method first; null when that does not suit. */
function newDemand(
  instance: UnitInstance,
  spec: QuiltSpec,
  known: Map<string, Made>,
  diagnostics: Diagnostic[],
): UnitDemand | null {
  const { unit, fabrics, prints } = instance;
  // Other methods are needed only where the wanted one may fail: on a print with an up, or a segment too long.
  const printed = Object.keys(prints).sort();
  const key = JSON.stringify(
    [unit.kind.name, unit.design, unit.asSewn ?? null, unit.method, printed],
    plainly,
  );
  let made = known.get(key);
  if (made === undefined) {
    made = { recipes: recipesOf(unit, spec, new Set(printed), diagnostics), spots: spotFacts(unit, spec) };
    known.set(key, made);
  }
  if (made.recipes === null) return null;
  return {
    told: describe(unit, spec),
    recipes: made.recipes,
    chosen: unit.method !== null,
    fabrics,
    spots: made.spots,
    wants: [],
    uses: [],
    path: unit.cell.path,
    at: unit.cell.at,
  };
}

/** Worked out once for units alike in all but their fabrics. */
interface Made {
  recipes: Recipe[] | null;
  spots: SpotFacts[];
}

function recipesOf(
  unit: LaidUnit,
  spec: QuiltSpec,
  printed: ReadonlySet<string>,
  diagnostics: Diagnostic[],
): Recipe[] | null {
  const how = howMade(spec);
  const every = printed.size > 0;
  if (unit.method === ON_FOUNDATION) {
    const ease = spec.foundation?.ease ?? 0;
    const methods = every ? ([ON_FOUNDATION, FROM_RECTANGLES] as const) : ([ON_FOUNDATION] as const);
    return methods.map((method) => foundationRecipe(unit.kind, unit.design, how, ease, { method, printed }));
  }
  const recipes: Recipe[] = [];
  const unsuited: Diagnostic[] = [];
  // With one way of making it, that is the way wanted.
  const wanted = unit.kind.methods.length === 1 ? unit.kind.methods[0]?.name : unit.method;
  for (const method of inOrder(unit)) {
    const design = unit.asSewn ?? unit.design;
    const mark = unit.asSewn === undefined ? how.mark : markFor(design, how);
    const between = mark === how.mark ? {} : { ruler: how.mark };
    const answer = method.recipe(design, { ...how, mark, ...between });
    if (answer.ok) recipes.push(answer.recipe);
    else
      unsuited.push(
        unitUnsuited(unit.cell, {
          unit: unit.kind.name,
          asked: { method: method.name },
          fault: answer.fault,
          place: null,
        }),
      );
    if (!answer.ok && method.name === wanted) break;
    if (!every && recipes[0]?.stripSets.length === 0) break;
  }
  if (recipes.length === 0) {
    diagnostics.push(...unsuited.slice(0, 1));
    return null;
  }
  return recipes;
}

function plainly(_key: string, value: unknown): unknown {
  return typeof value === "bigint" ? value.toString() : value;
}

function inOrder(unit: LaidUnit): LaidUnit["kind"]["methods"] {
  const wanted = unit.kind.methods.filter((method) => method.name === unit.method);
  return [...wanted, ...unit.kind.methods.filter((method) => method.name !== unit.method)];
}

function describe({ kind, design }: LaidUnit, { ruler }: QuiltSpec): UnitTold {
  return { kind: kind.name, finished: saySize(design.across, design.along, ruler) };
}
