import { foundationBlock, foundationMarks } from "../../diagnostics/quilts/foundation.ts";
import { formatLength } from "../../length/format.ts";
import { add, fromInteger, toTicksExact } from "../../length/rational.ts";
import type { FoundationSpec } from "../../spec/foundation-types.ts";
import type { LaidUnit } from "../laid-types.ts";
import type { Builder, Coloured } from "../layout/builder.ts";
import { howMade } from "../layout/triangles.ts";
import { saySize } from "../say.ts";
import { patchesAsPlaced, placedAlike } from "../turning/placed-alike.ts";
import { asQuarterTurn } from "../turning/whole-turns.ts";
import { ON_FOUNDATION } from "../units/on-foundation.ts";
import { type Area, foldedParts } from "./folded.ts";
import { onGrid } from "./on-grid.ts";
import { type GridDesign, piecedParts } from "./pieced.ts";
import type { FoundationPart, FoundationWork } from "./types.ts";

/** What is made on the foundation, and the units whose patches go onto it one by one. */
export interface Found {
  work: FoundationWork;
  pieced: ReadonlySet<LaidUnit>;
}

/** The drawn designs of blocks that are made on the foundation. */
function designsOn({ spec, coloured }: Builder, foundation: FoundationSpec): Coloured[] {
  const keys = foundation.blocks?.map(({ word }) => word) ?? null;
  return [...coloured.values()].filter((one): one is Coloured => {
    if (one === null || one.design < 0) return false;
    const { block } = one;
    const pieces = one.units.reduce((sum, { patches }) => sum + patches.length, 0);
    if (!spec.blocks.includes(block.spec)) return false;
    return keys === null ? pieces > 1 : keys.includes(block.spec.key);
  });
}

/**
 * Everything made on the gridded foundation: which pieces of it, how many, and what goes onto each in which order.
 * Seams that would miss the printed lines, and blocks that cannot be made so, are told; null when there is no
 * foundation.
 */
export function findFoundation(builder: Builder): Found | null {
  const { spec, diagnostics } = builder;
  const { foundation } = spec;
  if (foundation === null) return null;
  const on = designsOn(builder, foundation);
  const pieced = new Set<LaidUnit>();
  const parts: FoundationPart[] =
    foundation.way === "pieced"
      ? piecedOn(builder, on, foundation, pieced)
      : foldedParts(
          areasOf(builder, on, foundation),
          foundation.grid,
          foundation.allowance,
          spec.ruler,
          diagnostics,
        );
  if (parts.length === 0 && !diagnostics.some(({ severity }) => severity === "error"))
    diagnostics.push(foundationBlock(foundation, { why: "nothing", way: foundation.way }));
  const { fabric, grid, halves, way, per, allowance, ease, hold, after } = foundation;
  return {
    work: { fabric: fabric.word, grid, halves, way, per, allowance, ease, hold, after, parts },
    pieced,
  };
}

function piecedOn(
  builder: Builder,
  on: readonly Coloured[],
  foundation: FoundationSpec,
  pieced: Set<LaidUnit>,
): FoundationPart[] {
  const { spec, designs, diagnostics } = builder;
  const { grid, halves } = foundation;
  const lines = { grid, step: halves ? grid / 2 : grid, halves, ruler: spec.ruler };
  const grids = on.flatMap((one): GridDesign[] => {
    const design = designs[one.design];
    if (design === undefined) return [];
    const where = { units: one.units.map(({ unit }) => unit.cell), block: one.block.spec };
    const patches = onGrid(design, lines, where, diagnostics);
    if (patches === null) return [];
    const alike = placedAlike(builder, one);
    return alike.map(({ patches: placed, count, turns }) => ({
      index: one.design,
      design: { ...design, count },
      patches: patches.map(({ corners, patch }, i) => ({ corners, patch: placed[i] ?? patch })),
      blockTurns: alike.length > 1 ? turns : null,
      where,
    }));
  });
  const parts = piecedParts(
    grids,
    foundation,
    lines,
    { how: howMade(spec), ease: foundation.ease },
    diagnostics,
  );
  const placed = new Set(parts.flatMap(({ places }) => places.map(({ design }) => design)));
  for (const { places } of parts) {
    for (const { design, units } of places) {
      const own = on.find((one) => one.design === design);
      for (const unit of units) {
        const laid = own?.units[unit]?.unit;
        if (laid !== undefined) pieced.add(laid);
        nameMethod(builder, design, unit);
      }
    }
  }
  for (const one of on) if (placed.has(one.design)) checkMarks(one, pieced, builder);
  return parts;
}

/** What is sewn between foundation pieces is cut with the ruler, and has to be as large as the printed lines say. */
function checkMarks(
  { block, units }: Coloured,
  pieced: ReadonlySet<LaidUnit>,
  { spec, diagnostics }: Builder,
): void {
  const { ruler, seam } = spec;
  const seams = fromInteger(2 * seam);
  for (const { unit } of units) {
    if (pieced.has(unit)) continue;
    const raw = [unit.across, unit.down].map((side) => toTicksExact(add(side, seams)));
    if (raw.every((side) => side !== null && side % ruler.mark === 0)) continue;
    diagnostics.push(
      foundationMarks(unit.cell, {
        block: block.spec.name,
        size: saySize(add(unit.across, seams), add(unit.down, seams), ruler),
        mark: formatLength(ruler.mark, ruler),
      }),
    );
    return;
  }
}

/** In the picture of the block the unit is told as it is made. */
function nameMethod({ designs }: Builder, index: number, unit: number): void {
  const design = designs[index];
  if (design === undefined) return;
  const units = design.units.map((one, i) => (i === unit ? { ...one, method: ON_FOUNDATION } : one));
  designs[index] = { ...design, units };
}

function areasOf(builder: Builder, on: readonly Coloured[], foundation: FoundationSpec): Area[] {
  const { designs } = builder;
  if (foundation.per === "row") return rowsOf(builder, on, foundation);
  return on.flatMap((one): Area[] => {
    const index = one.design;
    const design = designs[index];
    if (design === undefined) return [];
    return placedAlike(builder, one).map(({ patches, count }) => ({
      name: { block: design.name },
      blocks: [{ index, design: { ...design, patches }, turn: 0 as const }],
      count,
      asked: foundation.blocks !== null,
      where: one.block.spec,
    }));
  });
}

/** The rows of blocks of a straight setting without sashes; anything else is refused. */
function rowsOf(builder: Builder, on: readonly Coloured[], foundation: FoundationSpec): Area[] {
  const { spec, designs, blocks, diagnostics } = builder;
  const { setting } = spec;
  const where = { path: `${foundation.path}.per`, at: foundation.at };
  if (setting.layout === "on-point" || setting.sashing !== null || setting.turn !== 0) {
    diagnostics.push(foundationBlock(where, { why: "row-setting" }));
    return [];
  }
  const known = new Map(on.map((one) => [one.design, one]));
  const rows = new Map<number, Area["blocks"]>();
  for (const { place, design: index, row, turn } of blocks) {
    const design = designs[index];
    if (place !== "block" || design === undefined) continue;
    if (!known.has(index) && foundation.blocks !== null) {
      diagnostics.push(foundationBlock(where, { why: "row-with-other", row: row + 1, block: design.name }));
      return [];
    }
    const own = rows.get(row) ?? [];
    const coloured = known.get(index);
    const patches =
      coloured === undefined
        ? design.patches
        : patchesAsPlaced(builder, coloured, { turn, placement: 0, tilted: false });
    rows.set(row, [...own, { index, design: { ...design, patches }, turn: asQuarterTurn(turn) }]);
  }
  return [...rows].map(([row, own]) => ({
    name: { row: row + 1 },
    blocks: own,
    count: 1,
    asked: true,
    where,
  }));
}
