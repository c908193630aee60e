import { biasOutside } from "../diagnostics/quilts/quilt.ts";
import type { Diagnostic } from "../diagnostics/types.ts";
import type { QuiltSpec } from "../spec/quilt-types.ts";
import { exactToNumber, rationalOfExact } from "./exact.ts";
import { howMade } from "./layout/triangles.ts";
import type { DesignUnit, Patch, QuiltTop } from "./types.ts";
import { plainDesign } from "./units/design.ts";
import { findUnitKind } from "./units/registry.ts";

const SIDES = ["top", "right", "bottom", "left"] as const;

/** Warns when a method with bias edges puts one on the outside of the quilt, where nothing holds it. */
export function warnOfBias(top: QuiltTop, spec: QuiltSpec, diagnostics: Diagnostic[]): void {
  const warned = new Set<string>();
  const known = new Map<string, readonly (typeof SIDES)[number][]>();
  for (const patch of top.patches) {
    const { block, unit } = patch.origin;
    const placed = block === null ? undefined : top.blocks[block];
    const design = placed === undefined ? undefined : top.designs[placed.design];
    const made = unit === null ? undefined : design?.units[unit];
    if (placed === undefined || made === undefined || design === undefined) continue;
    const key = `${made.kind} ${made.method}`;
    const outer = warned.has(key) ? null : outerSide(patch, top);
    if (outer === null) continue;
    const size = JSON.stringify([key, made.across, made.down, made.turn]);
    const bias = known.get(size) ?? biasSides(made, spec);
    known.set(size, bias);
    const turns = (made.turn + placed.turn) / 90;
    const side = SIDES[(SIDES.indexOf(outer) - turns + 8) % 4];
    if (side === undefined || !bias.includes(side)) continue;
    warned.add(key);
    const at = spec.blocks.find((each) => each.name === design.name);
    const where = { path: at?.path ?? "blocks", at: at?.at ?? null };
    diagnostics.push(biasOutside(where, made.kind, made.method));
  }
}

function biasSides(unit: DesignUnit, spec: QuiltSpec): readonly (typeof SIDES)[number][] {
  const kind = findUnitKind(unit.kind);
  const method = kind?.methods.find((each) => each.name === unit.method);
  const turned = unit.turn % 180 !== 0;
  const [across, along] = turned ? [unit.down, unit.across] : [unit.across, unit.down];
  const design = plainDesign(rationalOfExact(across), rationalOfExact(along));
  if (kind === null || method === undefined || kind.check(design) !== null) return [];
  const answer = method.recipe(design, howMade(spec));
  return answer.ok ? answer.recipe.biasSides : [];
}

/** The side of the quilt on which the patch has an edge; null when it lies inside. */
function outerSide(patch: Patch, top: QuiltTop): (typeof SIDES)[number] | null {
  const [across, down] = [exactToNumber(top.across), exactToNumber(top.down)];
  const on = {
    top: (_x: number, y: number) => y <= 0,
    right: (x: number) => x >= across,
    bottom: (_x: number, y: number) => y >= down,
    left: (x: number) => x <= 0,
  };
  const points = patch.outline.map(({ x, y }) => [exactToNumber(x), exactToNumber(y)] as const);
  return SIDES.find((side) => points.filter(([x, y]) => on[side](x, y)).length >= 2) ?? null;
}
