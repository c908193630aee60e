interface Point {
  x: number;
  y: number;
}

/**
 * Whether two outlines whose corners all point outwards overlap in more than their edges: none of their edges has them
 * on different sides. Whole numbers, exact.
 */
export function overlap(a: readonly Point[], b: readonly Point[]): boolean {
  return !parted(a, b) && !parted(b, a);
}

function parted(a: readonly Point[], b: readonly Point[]): boolean {
  return a.some((from, i) => {
    const to = a[(i + 1) % a.length]!;
    const side = ({ x, y }: Point) => (to.x - from.x) * (y - from.y) - (to.y - from.y) * (x - from.x);
    const own = a.map(side);
    const others = b.map(side);
    return (
      (own.every((each) => each <= 0) && others.every((each) => each >= 0)) ||
      (own.every((each) => each >= 0) && others.every((each) => each <= 0))
    );
  });
}
