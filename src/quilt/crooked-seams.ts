import type { DivideTold } from "../diagnostics/quilts/design-faults.ts";
import { partialSeam, setInSeam } from "../diagnostics/quilts/quilt.ts";
import type { Diagnostic } from "../diagnostics/types.ts";
import { fromInteger, type Rational, toNumber } from "../length/rational.ts";
import { surdToNumber } from "../length/surd.ts";
import type { BlockSpec, QuiltSpec } from "../spec/quilt-types.ts";
import type { LaidUnit } from "./laid-types.ts";
import { straightSeams } from "./piecing.ts";
import { sayLength } from "./say.ts";
import { type Divide, type FlatPoint, straightSplit } from "./straight-split.ts";

/** In larger blocks no better split is looked for. */
const MOST_SPLIT = 200;

function boxOf({ x, y, across, down }: LaidUnit): FlatPoint[] {
  const [left, top] = [toNumber(x), toNumber(y)];
  const [right, bottom] = [left + toNumber(across), top + toNumber(down)];
  return [
    { x: left, y: top },
    { x: right, y: top },
    { x: right, y: bottom },
    { x: left, y: bottom },
  ];
}

/** Where to divide a unit of a block. */
function divideTold({ patch, from, to }: Divide, units: readonly LaidUnit[], spec: QuiltSpec): DivideTold[] {
  const unit = units[patch];
  if (unit === undefined) return [];
  const upright = Math.abs(from.x - to.x) < Math.abs(from.y - to.y);
  const start: Rational = upright ? unit.x : unit.y;
  const at = Math.round((upright ? from.x : from.y) - toNumber(start));
  return [
    {
      unit: unit.cell.unit,
      column: unit.column + 1,
      line: unit.row + 1,
      at: sayLength(fromInteger(at), spec.ruler),
      from: upright ? "left" : "upper",
    },
  ];
}

/** Warns where straight seams alone do not do, and says which unit or patch to divide so that they would. */
export function warnOfCrookedSeams(
  block: BlockSpec,
  units: readonly LaidUnit[],
  spec: QuiltSpec,
  diagnostics: Diagnostic[],
): void {
  if (!straightSeams(units)) {
    const divides = units.length > MOST_SPLIT ? null : straightSplit(units.map(boxOf));
    const where = (divides ?? []).flatMap((divide) => divideTold(divide, units, spec));
    diagnostics.push(partialSeam(block, block.name, where));
  }
  const told = new Set<string>();
  for (const { cell, kind, design } of units) {
    if (told.has(cell.code)) continue;
    told.add(cell.code);
    const patches = kind.patches(design);
    const split = straightSplit(
      patches.map(({ outline }) => outline.map(({ x, y }) => ({ x: surdToNumber(x), y: surdToNumber(y) }))),
    );
    if (split !== null && split.length === 0) continue;
    const roles = new Map<string, number>();
    for (const { patch } of split ?? []) {
      const { role = "" } = patches[patch] ?? {};
      roles.set(role, (roles.get(role) ?? 0) + 1);
    }
    const cuts = [...roles].map(([role, count]) => ({ role, count }));
    diagnostics.push(setInSeam(cell, kind.name, cuts));
  }
}
