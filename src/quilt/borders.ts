import { blockUnknown, borderDoesNotFit } from "../diagnostics/quilt.ts";
import { add, ceil, compare, div, equal, floor, mul, type Rational, sub, ZERO } from "../length/rational.ts";
import type { BorderSpec, DrawnCell, FabricWord } from "../spec/quilt-types.ts";
import { type Builder, colourwayKnown, patchCount, placeBlock, straightMove, tooLarge } from "./builder.ts";
import {
  addExact,
  exactOfFraction,
  exactOfRational,
  point,
  rationalOfExact,
  rationalOfFraction,
  rectangle,
  scaleExact,
  subExact,
} from "./exact.ts";
import type { LaidBlock } from "./laid-types.ts";
import { fillingOf, lyingSize } from "./plain-block.ts";
import { sayCount, sayLength } from "./say.ts";
import { addStrip } from "./strips.ts";
import type { Exact, Point, TopBorder } from "./types.ts";
import type { StripDemand } from "./work-types.ts";

/** One border's frame: the inner edge it is sewn to, and its widths. */
interface Frame {
  x: Exact;
  y: Exact;
  across: Exact;
  down: Exact;
  side: Exact;
  end: Exact;
}

interface Piece {
  name: "top" | "right" | "bottom" | "left";
  x: Exact;
  y: Exact;
  across: Exact;
  down: Exact;
}

const SIDE = { top: 0, right: 90, bottom: 180, left: 270 } as const;

/** How far borders reach out on each side altogether: where the centre begins. */
export function borderOffsets(borders: readonly BorderSpec[]): {
  x: Exact;
  y: Exact;
} {
  const zero = { n: 0, r: 0, d: 1 };
  return {
    x: borders.reduce((sum, border) => addExact(sum, exactOfFraction(border.side)), zero),
    y: borders.reduce((sum, border) => addExact(sum, exactOfFraction(border.end)), zero),
  };
}

/** The four rectangles of a border, by which pair is sewn first. */
function piecesOf(frame: Frame, corners: BorderSpec["corners"]): Piece[] {
  const { x, y, across, down, side, end } = frame;
  const [left, top] = [subExact(x, side), subExact(y, end)];
  const [right, bottom] = [addExact(x, across), addExact(y, down)];
  const longEnds = corners === "sides-first";
  const longSides = corners === "tops-first";
  const endX = longEnds ? left : x;
  const endAcross = longEnds ? addExact(across, scaleExact(side, 2)) : across;
  const sideY = longSides ? top : y;
  const sideDown = longSides ? addExact(down, scaleExact(end, 2)) : down;
  return [
    { name: "top", x: endX, y: top, across: endAcross, down: end },
    { name: "right", x: right, y: sideY, across: side, down: sideDown },
    { name: "bottom", x: endX, y: bottom, across: endAcross, down: end },
    { name: "left", x: left, y: sideY, across: side, down: sideDown },
  ];
}

/** A mitred strip: its outer edge runs over both corners, its inner edge is the side it is sewn to. */
function mitred(frame: Frame, name: Piece["name"]): Point[] {
  const { x, y, across, down, side, end } = frame;
  const [l, t] = [subExact(x, side), subExact(y, end)];
  const [r, b] = [addExact(addExact(x, across), side), addExact(addExact(y, down), end)];
  const [ir, ib] = [addExact(x, across), addExact(y, down)];
  switch (name) {
    case "top":
      return [point(l, t), point(r, t), point(ir, y), point(x, y)];
    case "right":
      return [point(r, t), point(r, b), point(ir, ib), point(ir, y)];
    case "bottom":
      return [point(x, ib), point(ir, ib), point(r, b), point(l, b)];
    case "left":
      return [point(l, t), point(x, y), point(x, ib), point(l, b)];
  }
}

/** Sews the borders on from the inside out. */
export function placeBorders(
  builder: Builder,
  blocks: ReadonlyMap<string, LaidBlock | null>,
  centre: { x: Exact; y: Exact; across: Exact; down: Exact },
  strips: StripDemand[],
): TopBorder[] {
  let inner = centre;
  return builder.spec.borders.map((border, index): TopBorder => {
    const [side, end] = [exactOfFraction(border.side), exactOfFraction(border.end)];
    const frame: Frame = { ...inner, side, end };
    placeBorder(builder, blocks, border, index, frame, strips);
    inner = {
      x: subExact(inner.x, side),
      y: subExact(inner.y, end),
      across: addExact(inner.across, scaleExact(side, 2)),
      down: addExact(inner.down, scaleExact(end, 2)),
    };
    const kind = border.row !== null ? "pieced" : border.corners;
    const named = {
      "sides-first": "butted-sides-first",
      "tops-first": "butted-tops-first",
    } as const;
    return {
      number: index + 1,
      name: border.name,
      kind: kind === "sides-first" || kind === "tops-first" ? named[kind] : kind,
      side,
      end,
      ...inner,
    };
  });
}

function placeBorder(
  builder: Builder,
  blocks: ReadonlyMap<string, LaidBlock | null>,
  border: BorderSpec,
  index: number,
  frame: Frame,
  strips: StripDemand[],
): void {
  if (border.corners === "mitred" && (border.row !== null || !sameWidth(border))) {
    builder.diagnostics.push(
      borderDoesNotFit(
        border,
        `${border.name} cannot be mitred.`,
        "A mitre needs a plain border with one width all round; give a pieced one `cornerstones`.",
      ),
    );
    return;
  }
  for (const piece of piecesOf(frame, border.corners)) {
    if (border.row !== null) placePieced(builder, blocks, border, index, piece);
    else if (border.fabric !== null) placePlain(builder, border, border.fabric, index, frame, piece, strips);
  }
  if (border.cornerstones !== null) placeCornerstones(builder, blocks, border, index, frame);
}

function sameWidth(border: BorderSpec): boolean {
  return equal(rationalOfFraction(border.side), rationalOfFraction(border.end));
}

function placePlain(
  builder: Builder,
  border: BorderSpec,
  word: FabricWord,
  index: number,
  frame: Frame,
  piece: Piece,
  strips: StripDemand[],
): void {
  const upright = piece.name === "left" || piece.name === "right";
  const isMitred = border.corners === "mitred";
  const inside = upright ? piece.down : piece.across;
  const width = upright ? frame.side : frame.end;
  addStrip(builder, strips, {
    text: `${border.name}, ${upright ? "sides" : "top and bottom"}`,
    word,
    colourway: "",
    outline: isMitred ? mitred(frame, piece.name) : rectangle(piece.x, piece.y, piece.across, piece.down),
    length: isMitred ? addExact(inside, scaleExact(width, 2)) : inside,
    width,
    upright,
    side: SIDE[piece.name],
    mitred: isMitred,
    extra: border.extra,
    cut: border.cut,
    join: border.join,
    note: border.extra > 0 ? "cut over-long, trim after sewing" : "",
    place: "border",
    border: index,
    path: border.path,
    at: border.at,
  });
}

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
  const say = (value: Rational): string => sayLength(value, builder.spec.ruler);
  const found: RowBlock[] = [];
  for (const drawn of border.row ?? []) {
    const block = blocks.get(drawn.code);
    if (block === undefined) builder.diagnostics.push(blockUnknown(border, drawn.code, [...blocks.keys()]));
    if (block === undefined || block === null || !colourwayKnown(builder, drawn.colourway, border))
      return null;
    const upright = drawn.turn % 180 === 0;
    const [across, down] = upright ? [block.across, block.down] : [block.down, block.across];
    if (!equal(down, width)) {
      const message = `${border.name} is ${say(width)} wide, but block ${block.spec.name} is ${say(down)} high.`;
      builder.diagnostics.push(borderDoesNotFit(border, message, "Make the two alike."));
      return null;
    }
    found.push({ block, drawn, across, down });
  }
  return found;
}

/** Stands blocks side by side along one side of the border, clockwise, their tops to the outside. */
function placePieced(
  builder: Builder,
  blocks: ReadonlyMap<string, LaidBlock | null>,
  border: BorderSpec,
  index: number,
  piece: Piece,
): void {
  const upright = piece.name === "left" || piece.name === "right";
  const length = upright ? piece.down : piece.across;
  const row = rowBlocks(builder, blocks, border, rationalOfFraction(upright ? border.side : border.end));
  if (row === null) return;
  if (length.r !== 0) {
    builder.diagnostics.push(
      borderDoesNotFit(
        border,
        `${border.name}: beside an on-point centre no number of blocks comes out exactly.`,
        "Sew a plain border first, of a width that makes the sum come out, or leave the border plain.",
      ),
    );
    return;
  }
  const exact = rationalOfExact(length);
  const pieces = fillSide(row, exact);
  if (pieces === null) {
    reportMisfit(builder, border, row, exact, upright ? "sides" : "top and bottom");
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
    const lying = { turn: (turn + drawn.turn) % 360, placement: 0, tilted: false };
    placeBlock(
      builder,
      block,
      drawn.colourway,
      lying,
      straightMove(block, lying.turn, corner, (p) => p),
      {
        place: "border",
        border: index,
        row: 0,
        column: i,
        label: `${border.name}, block ${block.spec.name}`,
        plain: false,
      },
    );
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
  length: Rational,
  where: string,
): void {
  const say = (value: Rational): string => sayLength(value, builder.spec.ruler);
  const round = row.reduce((sum, { across }) => add(sum, across), ZERO);
  const count = div(length, round);
  const one = row.length === 1 ? "block" : "round";
  const near = [floor(count), ceil(count)]
    .filter((n) => n > 0n)
    .map((n) => `${sayCount(n, one)} ${say(div(length, { n, d: 1n }))} long`);
  const what = row.length === 1 ? "blocks" : "rounds of blocks";
  builder.diagnostics.push(
    borderDoesNotFit(
      border,
      `${border.name}: its ${where} are ${say(length)} long, which ${what} of ${say(round)} do not fill.`,
      `Fits: ${near.join(" or ")}; or sew a plain border first so that the sides come to ${say(mul(round, { n: ceil(count), d: 1n }))}.`,
    ),
  );
}

function placeCornerstones(
  builder: Builder,
  blocks: ReadonlyMap<string, LaidBlock | null>,
  border: BorderSpec,
  index: number,
  frame: Frame,
): void {
  const of = border.cornerstones;
  if (of === null) return;
  const [across, down] = [rationalOfFraction(border.side), rationalOfFraction(border.end)];
  const [left, top] = [subExact(frame.x, frame.side), subExact(frame.y, frame.end)];
  const [right, bottom] = [addExact(frame.x, frame.across), addExact(frame.y, frame.down)];
  // A pieced corner turns with its place, so that its top left always lies at the outer corner.
  const places = [
    { x: left, y: top, turn: 0 },
    { x: right, y: top, turn: 90 },
    { x: right, y: bottom, turn: 180 },
    { x: left, y: bottom, turn: 270 },
  ];
  places.forEach((place, i) => {
    const filling = fillingOf(of, across, down, false, blocks, builder);
    if (filling === null) return;
    const turn = filling.plain ? 0 : (filling.turn + place.turn) % 360;
    const size = lyingSize({ ...filling, turn });
    if (!equal(size.across, across) || !equal(size.down, down)) {
      const say = (value: Rational): string => sayLength(value, builder.spec.ruler);
      builder.diagnostics.push(
        borderDoesNotFit(
          of,
          `The corners of ${border.name} are ${say(across)} by ${say(down)}, but block ${filling.block.spec.name} is ${say(size.across)} by ${say(size.down)} there.`,
          "Use a square block as wide as the border.",
        ),
      );
      return;
    }
    const lying = { turn, placement: 0, tilted: false };
    placeBlock(
      builder,
      filling.block,
      filling.colourway,
      lying,
      straightMove(filling.block, turn, point(place.x, place.y), (p) => p),
      {
        place: "cornerstone",
        border: index,
        row: 0,
        column: i,
        label: `corners of ${border.name}`,
        plain: filling.plain,
      },
    );
  });
}
