import {
  methodUnknown,
  rolesUncovered,
  roleUnknown,
  unitUnknown,
  unitUnsuited,
} from "../../diagnostics/quilts/quilt.ts";
import type { Diagnostic } from "../../diagnostics/types.ts";
import { div, fromInteger, mul, type Rational } from "../../length/rational.ts";
import type { CellSpec, FabricWord, FractionTicks, QuiltSpec } from "../../spec/quilt-types.ts";
import { rationalOfFraction } from "../exact.ts";
import type { LaidUnit } from "../laid-types.ts";
import { saySides, saySize } from "../say.ts";
import { plainDesign } from "../units/design.ts";
import { findUnitKind, UNIT_KINDS } from "../units/registry.ts";
import type { UnitDesign, UnitKind } from "../units/types.ts";

/**
 * What a cell's unit is, at its finished size before it is turned; its method, and whether each part has a
 * fabric word. Faults are reported where the cell's code is explained.
 */
export function checkUnit(
  cell: CellSpec,
  across: Rational,
  along: Rational,
  spec: QuiltSpec,
  diagnostics: Diagnostic[],
): Pick<LaidUnit, "kind" | "design" | "method"> | null {
  const kind = findUnitKind(cell.unit);
  if (kind === null) {
    diagnostics.push(
      unitUnknown(
        cell,
        cell.unit,
        UNIT_KINDS.map((each) => each.name),
      ),
    );
    return null;
  }
  const design = designOf(cell, across, along);
  const problem = kind.check(design);
  if (problem !== null) {
    const size = saySize(across, along, spec.ruler);
    const patch = cell.patches?.[problem.patch ?? -1];
    const place = problem.place === undefined ? null : saySides(problem.place.x, problem.place.y, spec.ruler);
    const unsuited = { unit: kind.name, asked: { finished: size }, fault: problem.fault, place };
    diagnostics.push(unitUnsuited(patch ?? cell, unsuited));
    return null;
  }
  const rolesFound = checkRoles(cell, kind, design, diagnostics);
  const method = methodOf(cell, kind, spec, diagnostics);
  return rolesFound && method !== undefined ? { kind, design, method } : null;
}

function designOf(cell: CellSpec, across: Rational, along: Rational): UnitDesign {
  const base = plainDesign(across, along);
  return {
    ...base,
    corner: cell.corner === null ? base.corner : rationalOfFraction(cell.corner),
    corners: cell.corners ?? base.corners,
    strips: cell.strips === null ? base.strips : cell.strips.map(rationalOfFraction),
    count: cell.count ?? railsNamed(cell) ?? base.count,
    centre: cell.centre === null ? base.centre : rationalOfFraction(cell.centre),
    leaning: cell.leaning ?? base.leaning,
    patches:
      cell.patches?.map((patch, i) => ({
        role: patch.role,
        spot: `${patch.role} ${i + 1}`,
        corners: patch.corners.map(({ x, y }) => cornerOf(x, y, cell, across, along)),
      })) ?? base.patches,
  };
}

/** A corner as finished lengths from the unit's top left corner. */
function cornerOf(
  x: FractionTicks,
  y: FractionTicks,
  { drawnOn }: CellSpec,
  across: Rational,
  along: Rational,
): { x: Rational; y: Rational } {
  const [right, down] = [rationalOfFraction(x), rationalOfFraction(y)];
  if (drawnOn === null) return { x: right, y: down };
  return {
    x: div(mul(right, across), fromInteger(drawnOn.columns)),
    y: div(mul(down, along), fromInteger(drawnOn.rows)),
  };
}

/** A list of fabrics for rails says how many rails there are. */
function railsNamed(cell: CellSpec): number | null {
  return cell.inOrder.length > 1 && findUnitKind(cell.unit)?.reads.includes("strips")
    ? cell.inOrder.length
    : null;
}

/** Fabric words of a unit by role. One word alone stands for every part; a list goes by the usual order. */
export function wordsByRole(cell: CellSpec, roles: readonly string[]): Record<string, FabricWord> {
  const words: Record<string, FabricWord> = {};
  roles.forEach((role, i) => {
    const inOrder = cell.inOrder.length === 1 ? cell.inOrder[0] : cell.inOrder[i];
    const word = Object.hasOwn(cell.byRole, role) ? cell.byRole[role] : inOrder;
    if (word !== undefined) words[role] = word;
  });
  return words;
}

function checkRoles(cell: CellSpec, kind: UnitKind, design: UnitDesign, diagnostics: Diagnostic[]): boolean {
  const roles = kind.roles(design);
  const words = wordsByRole(cell, roles);
  let good = true;
  for (const [role, word] of Object.entries(cell.byRole)) {
    if (roles.includes(role)) continue;
    diagnostics.push(roleUnknown(word, kind.name, role, roles));
    good = false;
  }
  const missing = roles.find((role) => words[role] === undefined);
  if (missing !== undefined) {
    diagnostics.push(rolesUncovered(cell, kind.name, missing, roles));
    good = false;
  }
  if (cell.inOrder.length > Math.max(1, roles.length)) {
    diagnostics.push(roleUnknown(cell, kind.name, { number: roles.length + 1 }, roles));
    good = false;
  }
  return good;
}

/** The kind's own name of a method, hyphens and capitals aside. */
function methodNamed(kind: UnitKind, written: string): string | null {
  const plain = (name: string): string => name.toLowerCase().replaceAll(/[\s_-]+/g, " ");
  return kind.methods.find((method) => plain(method.name) === plain(written))?.name ?? null;
}

/** The method wanted: the cell's own, else the file's for this kind, else none in particular. */
function methodOf(
  cell: CellSpec,
  kind: UnitKind,
  spec: QuiltSpec,
  diagnostics: Diagnostic[],
): string | null | undefined {
  const known = kind.methods.map((method) => method.name);
  if (cell.method !== null) {
    const named = methodNamed(kind, cell.method);
    if (named !== null) return named;
    diagnostics.push(
      methodUnknown({ path: `${cell.path}.method`, at: cell.at }, kind.name, cell.method, known),
    );
    return undefined;
  }
  const wanted = spec.methods.find((each) => findUnitKind(each.unit) === kind);
  return wanted === undefined ? null : methodNamed(kind, wanted.method);
}

/** Reports methods of the file that no unit or method answers to; a unit kind left unused is no fault. */
export function checkMethods(spec: QuiltSpec, diagnostics: Diagnostic[]): void {
  for (const each of spec.methods) {
    const kind = findUnitKind(each.unit);
    if (kind === null) {
      diagnostics.push(
        unitUnknown(
          each,
          each.unit,
          UNIT_KINDS.map((one) => one.name),
        ),
      );
      continue;
    }
    const known = kind.methods.map((method) => method.name);
    if (methodNamed(kind, each.method) === null)
      diagnostics.push(methodUnknown(each, kind.name, each.method, known));
  }
}
