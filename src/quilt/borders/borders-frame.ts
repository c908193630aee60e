import type { BorderSpec } from "../../spec/quilt-types.ts";
import { addExact, point, scaleExact, subExact } from "../exact.ts";
import type { Exact, Point } from "../types.ts";

/** One border's frame: the inner edge it is sewn to, and its widths. */
export interface Frame {
  x: Exact;
  y: Exact;
  across: Exact;
  down: Exact;
  side: Exact;
  end: Exact;
}

export interface Piece {
  name: "top" | "right" | "bottom" | "left";
  x: Exact;
  y: Exact;
  across: Exact;
  down: Exact;
}

export const SIDE = { top: 0, right: 90, bottom: 180, left: 270 } as const;

/** The four rectangles of a border, by which pair is sewn first. */
export function piecesOf(frame: Frame, corners: BorderSpec["corners"]): Piece[] {
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
export function mitred(frame: Frame, name: Piece["name"]): Point[] {
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
