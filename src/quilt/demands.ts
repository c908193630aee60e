import { unitUnsuited } from "../diagnostics/quilt.ts";
import type { Diagnostic } from "../diagnostics/types.ts";
import type { QuiltSpec } from "../spec/quilt-types.ts";
import type { UnitInstance } from "./builder.ts";
import type { LaidUnit } from "./laid-types.ts";
import { saySize } from "./say.ts";
import { spotFacts } from "./spot-facts.ts";
import { howMade } from "./triangles.ts";
import type { Recipe } from "./units/types.ts";
import type { UnitDemand } from "./work-types.ts";

/** Gathers the units of the quilt by what is sewn alike, and works out the ways to make each. */
export function demandsOf(
  instances: readonly UnitInstance[],
  spec: QuiltSpec,
  diagnostics: Diagnostic[],
): UnitDemand[] {
  const demands = new Map<string, UnitDemand | null>();
  for (const instance of instances) {
    const key = JSON.stringify(
      [
        instance.unit.kind.name,
        instance.unit.design,
        instance.unit.method,
        Object.entries(instance.fabrics).sort(([a], [b]) => (a < b ? -1 : 1)),
      ],
      (_key, value) => (typeof value === "bigint" ? value.toString() : value),
    );
    let demand = demands.get(key);
    if (demand === undefined) {
      demand = newDemand(instance, spec, diagnostics);
      demands.set(key, demand);
    }
    if (demand !== null) addTo(demand, instance);
  }
  return [...demands.values()].filter((demand) => demand !== null);
}

function addTo(demand: UnitDemand, { prints, label, count }: UnitInstance): void {
  const same = demand.wants.find((want) => JSON.stringify(want.prints) === JSON.stringify(prints));
  if (same === undefined) demand.wants.push({ prints, count });
  else same.count += count;
  const use = demand.uses.find((each) => each.text === label);
  if (use === undefined) demand.uses.push({ text: label, count });
  else use.count += count;
}

/** Recipes of the kind that suit the size, the wanted one first; null when the wanted one does not suit. */
function newDemand(instance: UnitInstance, spec: QuiltSpec, diagnostics: Diagnostic[]): UnitDemand | null {
  const { unit } = instance;
  const how = howMade(spec);
  const recipes: Recipe[] = [];
  for (const method of inOrder(unit)) {
    const answer = method.recipe(unit.design, how);
    if (answer.ok) recipes.push(answer.recipe);
    else if (method.name === unit.method) {
      diagnostics.push(
        unitUnsuited(unit.cell, unit.kind.name, `made ${method.name}`, answer.reason, answer.hint),
      );
      return null;
    }
  }
  return {
    text: describe(unit, spec),
    recipes,
    chosen: unit.method !== null,
    fabrics: instance.fabrics,
    spots: spotFacts(unit, spec),
    wants: [],
    uses: [],
    path: unit.cell.path,
    at: unit.cell.at,
  };
}

function inOrder(unit: LaidUnit): LaidUnit["kind"]["methods"] {
  const wanted = unit.kind.methods.filter((method) => method.name === unit.method);
  return [...wanted, ...unit.kind.methods.filter((method) => method.name !== unit.method)];
}

function describe(unit: LaidUnit, spec: QuiltSpec): string {
  return `${unit.kind.name} finishing ${saySize(unit.design.across, unit.design.along, spec.ruler)}`;
}
