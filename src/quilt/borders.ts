import { blockUnknown, borderDoesNotFit } from "../diagnostics/quilt.ts";
import { ceil, compare, div, equal, floor, fromInteger, mul, type Rational } from "../length/rational.ts";
import type { BorderSpec, FabricWord } from "../spec/quilt-types.ts";
import { type Builder, patchCount, placeBlock, straightMove, tooLarge } from "./builder.ts";
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
    const kind = border.block !== null ? "pieced" : border.corners;
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
  if (border.corners === "mitred" && (border.block !== null || !sameWidth(border))) {
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
    if (border.block !== null) placePieced(builder, blocks, border, index, piece);
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

/** Stands blocks side by side along one side of the border, their tops to the outside. */
function placePieced(
  builder: Builder,
  blocks: ReadonlyMap<string, LaidBlock | null>,
  border: BorderSpec,
  index: number,
  piece: Piece,
): void {
  if (border.block === null) return;
  const block = blocks.get(border.block.key);
  if (block === undefined) {
    builder.diagnostics.push(blockUnknown(border, border.block.key, [...blocks.keys()]));
    return;
  }
  if (block === null) return;
  const upright = piece.name === "left" || piece.name === "right";
  const width = rationalOfFraction(upright ? border.side : border.end);
  const length = upright ? piece.down : piece.across;
  const where = upright ? "sides" : "top and bottom";
  const say = (value: Rational): string => sayLength(value, builder.spec.ruler);
  if (!equal(block.down, width)) {
    builder.diagnostics.push(
      borderDoesNotFit(
        border,
        `${border.name} is ${say(width)} wide, but block ${block.spec.name} is ${say(block.down)} high.`,
        "Make the two alike.",
      ),
    );
    return;
  }
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
  const count = div(exact, block.across);
  if (count.d !== 1n || compare(count, fromInteger(1)) < 0) {
    const near = [floor(count), ceil(count)]
      .filter((n) => n > 0n)
      .map((n) => `${sayCount(n, "block")} ${say(div(exact, { n, d: 1n }))} wide`);
    builder.diagnostics.push(
      borderDoesNotFit(
        border,
        `${border.name}: its ${where} are ${say(exact)} long, which ${say(block.across)} blocks do not fill.`,
        `Fits: ${near.join(" or ")}; or sew a plain border first so that the sides come to ${say(mul(block.across, { n: ceil(count), d: 1n }))}.`,
      ),
    );
    return;
  }
  const pieces = Number(count.n);
  if (tooLarge(builder, builder.patches.length + pieces * patchCount(block))) return;
  const turn = SIDE[piece.name];
  const step = exactOfRational(block.across);
  for (let i = 0; i < pieces; i += 1) {
    const along = scaleExact(step, i);
    const corner = upright
      ? point(piece.x, addExact(piece.y, along))
      : point(addExact(piece.x, along), piece.y);
    const lying = { turn, placement: 0, tilted: false };
    placeBlock(
      builder,
      block,
      border.block.colourway,
      lying,
      straightMove(block, turn, corner, (p) => p),
      {
        place: "border",
        border: index,
        row: 0,
        column: i,
        label: `${border.name}, block ${block.spec.name}`,
        plain: false,
      },
    );
  }
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
