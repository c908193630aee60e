import type { BorderPair } from "../../diagnostics/quilts/design-faults.ts";
import { blockUnknown, borderDoesNotFit } from "../../diagnostics/quilts/quilt.ts";
import {
  add,
  ceil,
  compare,
  div,
  equal,
  floor,
  fromInteger,
  type Rational,
  sub,
  ZERO,
} from "../../length/rational.ts";
import type { SpokenLength } from "../../length/spoken.ts";
import type { BorderSpec, DrawnCell } from "../../spec/quilt-types.ts";
import {
  addExact,
  exactOfRational,
  exactToNumber,
  point,
  rationalOfExact,
  rationalOfFraction,
  sameExact,
} from "../exact.ts";
import type { LaidBlock } from "../laid-types.ts";
import { straightMove } from "../layout/block-moves.ts";
import {
  type Builder,
  colourwayKnown,
  type Lying,
  patchCount,
  placeBlock,
  tooLarge,
} from "../layout/builder.ts";
import { sayLength } from "../say.ts";
import type { Exact } from "../types.ts";
import { type BorderWidths, copingFor } from "./borders-fit.ts";
import { type Frame, type Piece, SIDE } from "./borders-frame.ts";

/** A block of a pieced border, its size as it lies in a top border. */
interface RowBlock {
  block: LaidBlock;
  drawn: DrawnCell;
  across: Rational;
  down: Rational;
}

/** The blocks of one round of the drawing; null after reporting what is unknown or too high. */
function rowBlocks(
  builder: Builder,
  blocks: ReadonlyMap<string, LaidBlock | null>,
  border: BorderSpec,
  width: Rational,
): RowBlock[] | null {
  const say = (value: Rational): SpokenLength => sayLength(value, builder.spec.ruler);
  const found: RowBlock[] = [];
  for (const drawn of border.row ?? []) {
    const block = blocks.get(drawn.code);
    if (block === undefined) builder.diagnostics.push(blockUnknown(border, drawn.code, [...blocks.keys()]));
    if (block === undefined || block === null || !colourwayKnown(builder, drawn.colourway, border))
      return null;
    const upright = drawn.turn % 180 === 0;
    const [across, down] = upright ? [block.across, block.down] : [block.down, block.across];
    if (!equal(down, width)) {
      builder.diagnostics.push(
        borderDoesNotFit(border, {
          why: "block-height",
          border: border.name,
          width: say(width),
          block: block.spec.name,
          high: say(down),
        }),
      );
      return null;
    }
    found.push({ block, drawn, across, down });
  }
  return found;
}

/** Prints in the blocks of a border that says how they lie: upright, or turning with their block round the quilt. */
export function followIn({ prints }: BorderSpec): Pick<Lying, "follow"> {
  return prints === null ? {} : { follow: prints === "upright" ? "quilt" : "block" };
}

/** A border where it goes round what is inside it. */
export interface BorderPlace {
  border: BorderSpec;
  /** From the inside out. */
  index: number;
  frame: Frame;
}

/** Stands blocks side by side along one side of the border, clockwise, their tops to the outside. */
export function placePieced(
  builder: Builder,
  blocks: ReadonlyMap<string, LaidBlock | null>,
  { border, index, frame }: BorderPlace,
  piece: Piece,
): void {
  const upright = piece.name === "left" || piece.name === "right";
  const length = upright ? piece.down : piece.across;
  const row = rowBlocks(builder, blocks, border, rationalOfFraction(upright ? border.side : border.end));
  if (row === null) return;
  if (length.r !== 0) {
    builder.diagnostics.push(borderDoesNotFit(border, { why: "beside-on-point", border: border.name }));
    return;
  }
  const exact = rationalOfExact(length);
  const pieces = fillSide(row, exact);
  if (pieces === null) {
    const coping = copingFor(builder, blocks, border, frame);
    reportMisfit(builder, border, row, { length: exact, pair: upright ? "sides" : "ends" }, coping);
    return;
  }
  const patches = pieces.reduce((sum, { block }) => sum + patchCount(block), builder.patches.length);
  if (tooLarge(builder, patches)) return;
  const turn = SIDE[piece.name];
  let gone = ZERO;
  pieces.forEach(({ block, drawn, across }, i) => {
    // Clockwise: the bottom runs from right to left, the left side from the bottom up.
    const backwards = turn === 180 || turn === 270;
    const along = exactOfRational(backwards ? sub(sub(exact, gone), across) : gone);
    gone = add(gone, across);
    const corner = upright
      ? point(piece.x, addExact(piece.y, along))
      : point(addExact(piece.x, along), piece.y);
    const lying = { turn: (turn + drawn.turn) % 360, placement: 0, tilted: false, ...followIn(border) };
    const move = straightMove(block, lying.turn, corner, (p) => p);
    placeBlock(builder, { block, colourway: drawn.colourway, plain: false }, lying, move, {
      place: "border",
      border: index,
      row: 0,
      column: i,
      label: { in: "border", border: border.name, block: block.spec.name },
    });
  });
}

/** Most blocks one side of a border can hold. */
const MOST_IN_ROW = 2000;

/** The drawing again and again until the side is full; null when it does not come out. */
function fillSide(row: readonly RowBlock[], length: Rational): RowBlock[] | null {
  const pieces: RowBlock[] = [];
  let gone = ZERO;
  while (compare(gone, length) < 0 && pieces.length < MOST_IN_ROW) {
    const next = row[pieces.length % row.length];
    if (next === undefined) return null;
    pieces.push(next);
    gone = add(gone, next.across);
  }
  return equal(gone, length) && pieces.length > 0 ? pieces : null;
}

function reportMisfit(
  builder: Builder,
  border: BorderSpec,
  row: readonly RowBlock[],
  { length, pair }: { length: Rational; pair: BorderPair },
  coping: BorderWidths | null,
): void {
  const say = (value: Rational): SpokenLength => sayLength(value, builder.spec.ruler);
  const round = row.reduce((sum, { across }) => add(sum, across), ZERO);
  const count = div(length, round);
  const fits = [floor(count), ceil(count)]
    .filter((n) => n > 0n)
    .map((n) => ({ count: Number(n), long: say(div(length, { n, d: 1n })) }));
  builder.diagnostics.push(
    borderDoesNotFit(border, {
      why: "not-filled",
      border: border.name,
      pair,
      long: say(length),
      of: row.length === 1 ? "block" : "round",
      round: say(round),
      fits,
      coping: coping === null ? null : copingTold(coping, builder),
    }),
  );
}

/** Widths of a plain border that makes a pieced one come out. */
function copingTold(
  { side, end }: BorderWidths,
  builder: Builder,
): { side: SpokenLength; end: SpokenLength | null } {
  const say = (width: Exact): SpokenLength =>
    width.r === 0
      ? sayLength(rationalOfExact(width), builder.spec.ruler)
      : sayLength(fromInteger(Math.round(exactToNumber(width))), builder.spec.ruler);
  return { side: say(side), end: sameExact(side, end) ? null : say(end) };
}
