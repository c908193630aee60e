import { onPointUneven, sizesDoNotAddUp } from "../../diagnostics/quilts/quilt.ts";
import { add, equal, type Rational, ZERO } from "../../length/rational.ts";
import type { PlainOrBlock, SashingSpec } from "../../spec/quilt-types.ts";
import {
  diagonalExact,
  exactOfFraction,
  exactOfRational,
  point,
  rationalOfFraction,
  rectangle,
  scaleExact,
  ZERO_EXACT,
} from "../exact.ts";
import type { LaidBlock } from "../laid-types.ts";
import { saySides } from "../say.ts";
import type { Exact, Point } from "../types.ts";
import type { StripDemand } from "../work-types.ts";
import { straightMove, tiltedMove } from "./block-moves.ts";
import { type Builder, patchCount, placeBlock, tooLarge } from "./builder.ts";
import { fillingOf, lyingSize } from "./plain-block.ts";
import type { SetBlock, SetRow } from "./setting.ts";
import { addStrip } from "./strips.ts";

/** Finished size of the centre before it is turned, known before anything is placed. */
export interface CentreSize {
  across: Exact;
  down: Exact;
}

/** Everything the placing of the centre needs. */
export interface CentrePlan {
  rows: readonly SetRow[];
  blocks: ReadonlyMap<string, LaidBlock | null>;
  /** From the centre's unturned frame into the top. */
  carry: (p: Point) => Point;
}

function sashWidth(sashing: SashingSpec | null): Rational {
  return sashing === null ? ZERO : rationalOfFraction(sashing.width);
}

/** Size of a straight centre, sashes and outer ring included. */
export function straightSize(rows: readonly SetRow[], sashing: SashingSpec | null): CentreSize {
  const width = sashWidth(sashing);
  const sum = (sizes: readonly Rational[]): Rational => {
    const gaps = sizes.length - 1 + (sashing?.ring ? 2 : 0);
    return Array<Rational>(Math.max(0, gaps)).fill(width).reduce(add, sizes.reduce(add, ZERO));
  };
  return {
    across: exactOfRational(sum(rows[0]?.blocks.map((each) => each.across) ?? [])),
    down: exactOfRational(sum(rows.map((row) => row.down))),
  };
}

/** Size of an on-point centre: as many block diagonals as there are blocks in a full row, and full rows. */
export function onPointSize(rows: readonly SetRow[]): CentreSize {
  const diagonal = diagonalExact(exactOfRational(rows[0]?.down ?? ZERO));
  return {
    across: scaleExact(diagonal, rows[0]?.blocks.length ?? 0),
    down: scaleExact(diagonal, (rows.length + 1) / 2),
  };
}

function placeSetBlock(
  builder: Builder,
  { block, drawn }: SetBlock,
  move: (p: Point) => Point,
  tilted: boolean,
  at: { row: number; column: number },
): void {
  const lying = { turn: drawn.turn, placement: builder.spec.setting.turn, tilted };
  const label = { in: "block" as const, block: block.spec.name };
  const as = { place: "block" as const, border: null, ...at, label };
  placeBlock(builder, { block, colourway: drawn.colourway, plain: false }, lying, move, as);
}

/** Places the blocks of an on-point centre, each standing on its corner. */
export function placeOnPoint(builder: Builder, plan: CentrePlan): void {
  const diagonal = diagonalExact(exactOfRational(plan.rows[0]?.down ?? ZERO));
  plan.rows.forEach((row, i) => {
    row.blocks.forEach((each, j) => {
      const top = point(scaleExact(diagonal, 2 * j + 1 + (i % 2), 2), scaleExact(diagonal, i, 2));
      const move = tiltedMove(each.block, each.drawn.turn, top, plan.carry);
      placeSetBlock(builder, each, move, true, { row: i, column: j });
    });
  });
}

/** Places the blocks of a straight centre with their sashes and cornerstones. */
export function placeStraight(builder: Builder, plan: CentrePlan, strips: StripDemand[]): void {
  const { sashing } = builder.spec.setting;
  const width = sashWidth(sashing);
  const lead = sashing?.ring ? width : ZERO;
  let y = lead;
  plan.rows.forEach((row, i) => {
    let x = lead;
    row.blocks.forEach((each, j) => {
      const corner = point(exactOfRational(x), exactOfRational(y));
      const move = straightMove(each.block, each.drawn.turn, corner, plan.carry);
      placeSetBlock(builder, each, move, false, { row: i, column: j });
      x = add(add(x, each.across), width);
    });
    y = add(add(y, row.down), width);
  });
  if (sashing !== null) placeSashes(builder, plan, sashing, strips);
}

/** Where gaps between blocks begin: before the first only with an outer ring, after the last likewise. */
function gaps(
  sizes: readonly Rational[],
  width: Rational,
  ring: boolean,
): { gaps: Rational[]; starts: Rational[] } {
  let at = ZERO;
  const found: Rational[] = [];
  const starts: Rational[] = [];
  if (ring) {
    found.push(at);
    at = add(at, width);
  }
  sizes.forEach((size, i) => {
    starts.push(at);
    at = add(at, size);
    if (i < sizes.length - 1 || ring) {
      found.push(at);
      at = add(at, width);
    }
  });
  return { gaps: found, starts };
}

function placeSashes(builder: Builder, plan: CentrePlan, sashing: SashingSpec, strips: StripDemand[]): void {
  const width = rationalOfFraction(sashing.width);
  const columnSizes = plan.rows[0]?.blocks.map((each) => each.across) ?? [];
  const rowSizes = plan.rows.map((row) => row.down);
  const columns = gaps(columnSizes, width, sashing.ring);
  const rows = gaps(rowSizes, width, sashing.ring);
  const sash = (at: Place, turned: boolean): void =>
    placeFilled(builder, plan, { of: sashing.of, place: "sash", turned }, at);
  rowSizes.forEach((down, i) => {
    for (const x of columns.gaps) sash({ x, y: rows.starts[i] ?? ZERO, across: width, down }, false);
  });
  if (sashing.cornerstones === null) {
    for (const y of rows.gaps) placeLongSash(builder, plan, sashing, y, strips);
    return;
  }
  for (const y of rows.gaps) {
    for (const [j, across] of columnSizes.entries()) {
      sash({ x: columns.starts[j] ?? ZERO, y, across, down: width }, true);
    }
    const square = { of: sashing.cornerstones, place: "cornerstone", turned: false } as const;
    for (const x of columns.gaps) placeFilled(builder, plan, square, { x, y, across: width, down: width });
  }
}

/** A rectangle of the centre. */
interface Place {
  x: Rational;
  y: Rational;
  across: Rational;
  down: Rational;
}

/** Fills a rectangle with cloth or a block of its size. */
function placeFilled(
  builder: Builder,
  plan: CentrePlan,
  { of, place, turned }: { of: PlainOrBlock; place: "sash" | "cornerstone"; turned: boolean },
  at: Place,
): void {
  const filling = fillingOf(of, { ...at, turned }, plan.blocks, builder);
  if (filling === null) return;
  const size = lyingSize(filling);
  if (!equal(size.across, at.across) || !equal(size.down, at.down)) {
    const { ruler } = builder.spec;
    builder.diagnostics.push(
      sizesDoNotAddUp(of, {
        why: "filling",
        place,
        needs: saySides(at.across, at.down, ruler),
        block: filling.block.spec.name,
        is: saySides(size.across, size.down, ruler),
      }),
    );
    return;
  }
  const corner = point(exactOfRational(at.x), exactOfRational(at.y));
  const lying = {
    turn: filling.turn,
    placement: builder.spec.setting.turn,
    tilted: false,
  };
  const label = {
    in: place === "sash" ? ("sashes" as const) : ("cornerstones" as const),
    block: filling.plain ? null : filling.block.spec.name,
  };
  const move = straightMove(filling.block, filling.turn, corner, plan.carry);
  placeBlock(builder, filling, lying, move, { place, border: null, row: 0, column: 0, label });
}

/** A sash that runs the length of the rows, when there are no cornerstones. */
function placeLongSash(
  builder: Builder,
  plan: CentrePlan,
  sashing: SashingSpec,
  y: Rational,
  strips: StripDemand[],
): void {
  if (sashing.of.fabric === null) {
    builder.diagnostics.push(sizesDoNotAddUp(sashing, { why: "sashes-without-cornerstones" }));
    return;
  }
  const { across } = straightSize(plan.rows, sashing);
  const width = exactOfFraction(sashing.width);
  const turn = builder.spec.setting.turn;
  addStrip(builder, strips, {
    purpose: { for: "long-sashes" },
    part: "long-sash",
    word: sashing.of.fabric,
    colourway: sashing.of.colourway,
    outline: rectangle(ZERO_EXACT, exactOfRational(y), across, width).map(plan.carry),
    length: across,
    width,
    upright: turn % 180 !== 0,
    side: turn,
    mitred: false,
    extra: 0,
    cut: "strips",
    join: "straight",
    place: "sash",
    border: null,
    prints: null,
    path: sashing.path,
    at: sashing.at,
  });
}

/** Refuses a centre too large to lay out, before any of it is. */
export function centreTooLarge(builder: Builder, rows: readonly SetRow[]): boolean {
  const each = new Map<LaidBlock, number>();
  let patches = 0;
  for (const row of rows) {
    for (const { block } of row.blocks) {
      const count = each.get(block) ?? patchCount(block);
      each.set(block, count);
      patches += count;
    }
  }
  return tooLarge(builder, patches);
}

/** Sashing is laid straight only. */
export function sashingOnPoint(builder: Builder): boolean {
  const { setting } = builder.spec;
  if (setting.layout === "straight" || setting.sashing === null) return false;
  builder.diagnostics.push(onPointUneven(setting.sashing, { why: "sashing" }));
  return true;
}
