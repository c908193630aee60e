import { blockUnused, fabricUnused, printTilted } from "../diagnostics/quilts/quilt.ts";
import type { Diagnostic, Outcome } from "../diagnostics/types.ts";
import { fromInteger, ZERO } from "../length/rational.ts";
import type { DrawnRow, QuiltSpec } from "../spec/quilt-types.ts";
import { warnOfBias } from "./bias.ts";
import { borderOffsets, placeBorders } from "./borders/borders.ts";
import { borderWidths } from "./borders/borders-fit.ts";
import { demandsOf } from "./demands.ts";
import { addExact, scaleExact, shiftPoint, surdOfExact, turnPoint } from "./exact.ts";
import { findFoundation } from "./foundation/find-foundation.ts";
import type { LaidBlock } from "./laid-types.ts";
import { layOutBlock } from "./layout/block-grid.ts";
import { type Builder, blockPlacings, newBuilder, tooLarge, unitInstances } from "./layout/builder.ts";
import {
  centreTooLarge,
  onPointSize,
  placeOnPoint,
  placeStraight,
  sashingOnPoint,
  straightSize,
} from "./layout/centre.ts";
import { prepareColours } from "./layout/colours.ts";
import { checkOnPoint, checkStraight, fillRows, type SetRow, setRows } from "./layout/setting.ts";
import { cutLengthOf, onMarkAbove } from "./layout/strips.ts";
import { placeTriangles } from "./layout/triangles.ts";
import { checkMethods } from "./layout/unit-of-cell.ts";
import { checkMotifs } from "./turning/find-motifs.ts";
import type { Exact, Point, QuiltTop, TopBorder } from "./types.ts";
import type { QuiltWork, StripDemand, TriangleDemand } from "./work-types.ts";

/** The finished top, and all that is to be sewn to make it. */
export interface LaidQuilt {
  top: QuiltTop;
  work: QuiltWork;
}

/**
 * Lays out the quilt: blocks on their grids, the setting with its sashes or triangles, the borders from the
 * inside out; exact throughout. Every fault of the design is reported in one run; an error leaves no value.
 */
export function layOutQuilt(spec: QuiltSpec): Outcome<LaidQuilt> {
  const diagnostics: Diagnostic[] = [];
  const builder = newBuilder(spec, prepareColours(spec, diagnostics), diagnostics);
  checkMethods(spec, diagnostics);
  const blocks = new Map(spec.blocks.map((block) => [block.key, layOutBlock(block, spec, diagnostics)]));
  for (const block of blocks.values()) if (block !== null) checkMotifs(block, spec, diagnostics);
  for (const word of [
    spec.binding?.fabric,
    spec.backing?.fabric,
    spec.wadding?.fabric,
    spec.foundation?.fabric,
  ]) {
    if (word !== undefined && word !== null) builder.find(word, null, "");
  }
  const laid = layOutTop(builder, blocks);
  reportUnused(builder);
  const all = once(diagnostics);
  const failed = all.some((each) => each.severity === "error");
  return { value: failed ? null : laid, diagnostics: all };
}

function layOutTop(builder: Builder, blocks: ReadonlyMap<string, LaidBlock | null>): LaidQuilt | null {
  const { spec } = builder;
  const drawn = fillRows(spec);
  // Hundreds of rows by hundreds of blocks are refused before anything is made of them.
  if (tooLarge(builder, countCells(drawn))) return null;
  const rows = setRows(drawn, blocks, builder);
  if (rows === null || rows.length === 0) return null;
  const onPoint = spec.setting.layout === "on-point";
  const fits = onPoint
    ? checkOnPoint(rows, builder) && !sashingOnPoint(builder)
    : checkStraight(rows, builder);
  if (!fits || centreTooLarge(builder, rows)) return null;
  const centre = onPoint ? onPointSize(rows) : straightSize(rows, spec.setting.sashing);
  const { turn } = spec.setting;
  const lying = turn % 180 === 0 ? centre : { across: centre.down, down: centre.across };
  const widths = borderWidths(builder, blocks, lying);
  const corner = borderOffsets(widths);
  const carry = (p: Point): Point => shiftPoint(turnPoint(p, turn, centre.across, centre.down), corner);
  const strips: StripDemand[] = [];
  const plan = { rows, blocks, carry };
  let triangles: TriangleDemand[] = [];
  if (onPoint) {
    placeOnPoint(builder, plan);
    triangles = placeTriangles(
      builder,
      rows[0]?.blocks.length ?? 0,
      (rows.length + 1) / 2,
      rows[0]?.down ?? ZERO,
      carry,
    );
  } else placeStraight(builder, plan, strips);
  const frame = { ...corner, ...lying };
  const borders = placeBorders(builder, blocks, frame, widths, strips);
  return finish(builder, { rows, onPoint, frame, borders }, { strips, triangles });
}

function countCells(rows: readonly DrawnRow[]): number {
  return rows.reduce((sum, row) => sum + row.cells.length, 0);
}

/** The setting as laid: its rows, where the centre lies in the quilt, and what is round it. */
interface LaidSetting {
  rows: readonly SetRow[];
  onPoint: boolean;
  frame: { x: Exact; y: Exact; across: Exact; down: Exact };
  borders: TopBorder[];
}

function finish(
  builder: Builder,
  { rows, onPoint, frame, borders }: LaidSetting,
  { strips, triangles }: Pick<QuiltWork, "strips" | "triangles">,
): LaidQuilt {
  const { spec, diagnostics } = builder;
  const foundation = findFoundation(builder);
  const placings = blockPlacings(builder);
  const pieced = foundation?.pieced ?? new Set();
  const units = demandsOf(unitInstances(builder), spec, pieced, placings, diagnostics);
  for (const fabric of builder.tilted) {
    const at = spec.fabrics.find((each) => each.name === fabric)?.at ?? null;
    diagnostics.push(printTilted({ path: spec.setting.path, at }, fabric));
  }
  const across = addExact(frame.across, scaleExact(frame.x, 2));
  const down = addExact(frame.down, scaleExact(frame.y, 2));
  const top: QuiltTop = {
    name: spec.name,
    across,
    down,
    designs: builder.designs,
    blocks: builder.blocks,
    centre: {
      ...frame,
      onPoint,
      blocksAcross: rows[0]?.blocks.length ?? 0,
      blocksDown: onPoint ? (rows.length + 1) / 2 : rows.length,
    },
    borders,
    patches: builder.patches,
    seams: [],
  };
  warnOfBias(top, spec, diagnostics);
  const raw = (length: Exact): number =>
    onMarkAbove(cutLengthOf(surdOfExact(length), fromInteger(spec.seam), false), spec).ticks;
  return {
    top,
    work: {
      units,
      placings,
      strips,
      triangles,
      foundation: foundation?.work ?? null,
      top: { across: raw(across), down: raw(down) },
    },
  };
}

function reportUnused(builder: Builder): void {
  const { spec, diagnostics } = builder;
  if (diagnostics.some((each) => each.severity === "error")) return;
  const placed = new Set(builder.designs.map((design) => design.name));
  for (const block of spec.blocks)
    if (!placed.has(block.name)) diagnostics.push(blockUnused(block, block.name));
  const used = new Set([
    ...builder.patches.map((patch) => patch.fabric),
    ...[spec.binding?.fabric, spec.backing?.fabric, spec.wadding?.fabric, spec.foundation?.fabric].map(
      (word) => (word === undefined || word === null ? "" : (builder.find(word, null, "") ?? "")),
    ),
  ]);
  // What takes the place of another fabric in kits of a class is used there.
  for (const { swaps } of spec.class.colourways) for (const { to } of swaps) used.add(to.word);
  spec.fabrics.forEach((fabric, i) => {
    if (used.has(fabric.name) || fabric.pieces.length > 0) return;
    diagnostics.push(fabricUnused({ path: `fabrics[${i}]`, at: fabric.at }, fabric.name));
  });
}

/** A cell drawn many times would say the same thing many times. */
function once(diagnostics: readonly Diagnostic[]): Diagnostic[] {
  const seen = new Set<string>();
  return diagnostics.filter((each) => {
    const key = `${each.code}\n${each.path}\n${JSON.stringify([each.told, each.facts])}`;
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}
