import { addExact, exactOfRational, overRoot2, shiftPoint, subExact, turnPoint } from "../exact.ts";
import type { LaidBlock } from "../laid-types.ts";
import type { Point } from "../types.ts";

/**
 * The way from an upright block to its place: turned in its own rectangle, moved, then carried into the top.
 * @param corner where the top left corner of the turned block lies in the centre's frame
 */
export function straightMove(
  block: LaidBlock,
  turn: number,
  corner: Point,
  carry: (p: Point) => Point,
): (p: Point) => Point {
  const [across, down] = [exactOfRational(block.across), exactOfRational(block.down)];
  return (p) => carry(shiftPoint(turnPoint(p, turn, across, down), corner));
}

/**
 * The same on point: the block's corner that was top left (after its own turn) points up.
 * @param top where that corner lies
 */
export function tiltedMove(
  block: LaidBlock,
  turn: number,
  top: Point,
  carry: (p: Point) => Point,
): (p: Point) => Point {
  const [across, down] = [exactOfRational(block.across), exactOfRational(block.down)];
  return (p) => {
    const { x, y } = turnPoint(p, turn, across, down);
    return carry({
      x: addExact(top.x, overRoot2(subExact(x, y))),
      y: addExact(top.y, overRoot2(addExact(x, y))),
    });
  };
}
