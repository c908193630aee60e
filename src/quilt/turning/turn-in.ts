/**
 * A place in a rectangle of `across` x `down`, in the frame of the rectangle turned clockwise. Whatever lies in a
 * unit, a block or a piece of cloth is turned by this one rule; only the kind of number differs.
 *
 *      +----+          +--------+
 *      | o  |   90     |   o    |      x' = down - y
 *      |    |  ---->   |        |      y' = x
 *      +----+          +--------+
 */
export function turnIn<N>(
  { x, y }: { x: N; y: N },
  turn: number,
  across: N,
  down: N,
  minus: (a: N, b: N) => N,
): { x: N; y: N } {
  switch (turn) {
    case 90:
      return { x: minus(down, y), y: x };
    case 180:
      return { x: minus(across, x), y: minus(down, y) };
    case 270:
      return { x: y, y: minus(across, x) };
    default:
      return { x, y };
  }
}
