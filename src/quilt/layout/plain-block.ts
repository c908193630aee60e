import { blockUnknown } from "../../diagnostics/quilts/quilt.ts";
import { equal, type Rational, ZERO } from "../../length/rational.ts";
import type { BlockSpec, CellSpec, FabricWord, PlainOrBlock } from "../../spec/quilt-types.ts";
import type { LaidBlock } from "../laid-types.ts";
import { plainDesign } from "../units/design.ts";
import { findUnitKind } from "../units/registry.ts";
import { type Builder, colourwayKnown } from "./builder.ts";

/** One piece of cloth as a block of one unit, so that sashes and cornerstones are counted like any block. */
function plainBlock(word: FabricWord, across: Rational, down: Rational): LaidBlock {
  const unit = equal(across, down) ? "square" : "rectangle";
  const kind = findUnitKind(unit);
  if (kind === null) throw new Error(`unit kind ${unit} is missing`);
  const cell: CellSpec = {
    code: "",
    unit,
    byRole: {},
    inOrder: [word],
    turn: 0,
    span: null,
    method: null,
    prints: null,
    corner: null,
    corners: null,
    strips: null,
    count: null,
    centre: null,
    leaning: null,
    patches: null,
    drawnOn: null,
    path: word.path,
    at: word.at,
  };
  const spec: BlockSpec = {
    key: `${across.n}/${across.d} ${down.n}/${down.d} ${word.word}`,
    name: "",
    across: null,
    down: null,
    columns: null,
    lines: null,
    grid: [],
    cells: [cell],
    roles: {},
    motifs: null,
    path: word.path,
    at: word.at,
  };
  const size = { across, down };
  const place = {
    turn: 0 as const,
    column: 0,
    row: 0,
    columns: 1,
    rows: 1,
    x: ZERO,
    y: ZERO,
    ...size,
  };
  const laid = {
    cell,
    kind,
    design: plainDesign(across, down),
    method: null,
    ...place,
  };
  return { spec, ...size, columns: 1, rows: 1, units: [laid] };
}

/** What fills a rectangle: plain cloth, or a block that must be of its size (perhaps after a quarter-turn). */
export interface Filling {
  block: LaidBlock;
  turn: number;
  colourway: string;
  plain: boolean;
}

/**
 * Finds the filling for a rectangle.
 * @param space.turned true when the rectangle stands the other way than the block is drawn
 * @returns null after reporting an unknown block; a block of the wrong size is the caller's to report
 */
export function fillingOf(
  of: PlainOrBlock,
  { across, down, turned }: { across: Rational; down: Rational; turned: boolean },
  blocks: ReadonlyMap<string, LaidBlock | null>,
  builder: Builder,
): Filling | null {
  if (of.block === null) {
    if (of.fabric === null) return null;
    return {
      block: plainBlock(of.fabric, across, down),
      turn: 0,
      colourway: of.colourway,
      plain: true,
    };
  }
  const block = blocks.get(of.block);
  if (block === undefined) {
    builder.diagnostics.push(blockUnknown(of, of.block, [...blocks.keys()]));
    return null;
  }
  if (block === null || !colourwayKnown(builder, of.colourway, of)) return null;
  return {
    block,
    turn: (of.turn + (turned ? 90 : 0)) % 360,
    colourway: of.colourway,
    plain: false,
  };
}

/** Size of a filling as it lies. */
export function lyingSize(filling: Filling): {
  across: Rational;
  down: Rational;
} {
  const { block, turn } = filling;
  return turn % 180 === 0
    ? { across: block.across, down: block.down }
    : { across: block.down, down: block.across };
}
