import { seenBehind } from "./compare.ts";
import {
  areaOf,
  clipped,
  type Line,
  type Polygon,
  rectangleOf,
  reflected,
  reflectedAngle,
} from "./polygon.ts";
import type { Seen } from "./types.ts";

/*
 * Sewing seen as folding: what lies on top, face down, is sewn along a line, cut a seam allowance beyond it and folded
 * out over the seam, so that the seam is its mirror.
 */

/** Cloth that lies face down: as seen from above, on its wrong side. */
interface Down {
  polygon: Polygon;
  fabric: string;
  /** Where its print's up points, seen so. */
  faceDown: number | null;
}

const ROOT_HALF = Math.SQRT1_2;

/** Lines through a square's corners, looking to one side of them. */
const looking = {
  /** From the rising diagonal `/` of a square of that side towards its lower right. */
  lowerRight: (side: number): Line => ({ out: { x: ROOT_HALF, y: ROOT_HALF }, at: side * ROOT_HALF }),
  upperLeft: (side: number): Line => ({ out: { x: -ROOT_HALF, y: -ROOT_HALF }, at: -side * ROOT_HALF }),
  /** From the falling diagonal `\` towards its lower left. */
  lowerLeft: (): Line => ({ out: { x: -ROOT_HALF, y: ROOT_HALF }, at: 0 }),
  upperRight: (): Line => ({ out: { x: ROOT_HALF, y: -ROOT_HALF }, at: 0 }),
} as const;

/** The same line so much nearer to the side it looks from. */
function back(line: Line, by: number): Line {
  return { out: line.out, at: line.at - by };
}

/** What is to be seen once `over` is folded out: all that lies behind the seam, and its mirror image beyond. */
function folded(base: readonly Seen[], over: readonly Down[], seam: Line): Seen[] {
  const out = over
    .map(({ polygon, fabric, faceDown }) => ({
      polygon: reflected(clipped(polygon, seam), seam),
      fabric,
      up: faceDown === null ? null : reflectedAngle(faceDown, seam),
    }))
    .filter(({ polygon }) => polygon.length > 2 && areaOf(polygon) > 1);
  return [...seenBehind(base, seam), ...out];
}

/** A piece of a set, as it is laid. */
export interface Piece {
  across: number;
  along: number;
  fabric: string;
  up: number | null;
  faceDown: number | null;
}

function upwards({ across, along, fabric, up }: Piece, x = 0, y = 0): Seen {
  return { polygon: rectangleOf(across, along, x, y), fabric, up };
}

function downwards({ across, along, fabric, faceDown }: Piece, x = 0, y = 0): Down {
  return { polygon: rectangleOf(across, along, x, y), fabric, faceDown };
}

/** The two units of a pair sewn a seam allowance from one diagonal on both sides: upper (left) half of `under` first. */
export function pairOnLine(
  under: Piece,
  over: Piece,
  line: "rising" | "falling",
  seam: number,
): [Seen[], Seen[]] {
  const side = under.across;
  const [first, second] =
    line === "rising"
      ? [looking.lowerRight(side), looking.upperLeft(side)]
      : [looking.lowerLeft(), looking.upperRight()];
  return [
    folded([upwards(under)], [downwards(over)], back(first, seam)),
    folded([upwards(under)], [downwards(over)], back(second, seam)),
  ];
}

/** Eight units: cut apart down the middle both ways, each quarter sewn along the large diagonal that crosses it. */
export function pairOnBoth(under: Piece, over: Piece, seam: number): Seen[][] {
  const half = (piece: Piece): Piece => ({ ...piece, across: piece.across / 2, along: piece.along / 2 });
  return (["rising", "falling", "rising", "falling"] as const).flatMap((line) =>
    pairOnLine(half(under), half(over), line, seam),
  );
}

/** Four units: sewn all round inside the edge, cut on both diagonals; upper, right, lower, left quarter of `under`. */
export function pairOnEdges(under: Piece, over: Piece, seam: number): Seen[][] {
  const side = under.across;
  const [a, b, c, d] = rectangleOf(side, side);
  const middle = { x: side / 2, y: side / 2 };
  const edges: Line[] = [
    { out: { x: 0, y: -1 }, at: 0 },
    { out: { x: 1, y: 0 }, at: side },
    { out: { x: 0, y: 1 }, at: side },
    { out: { x: -1, y: 0 }, at: 0 },
  ];
  const corners = [a, b, c, d];
  return edges.map((edge, i) => {
    const polygon = [corners[i] ?? middle, corners[(i + 1) % 4] ?? middle, middle];
    const sewn = folded(
      [{ ...upwards(under), polygon }],
      [{ ...downwards(over), polygon }],
      back(edge, seam),
    );
    // It stands on its point: a quarter of the square is a half of the unit, its seam the unit's diagonal.
    return sewn.map((one) => ({
      ...one,
      polygon: one.polygon.map(({ x, y }) => ({ x: (x - y) * ROOT_HALF, y: (x + y) * ROOT_HALF })),
      up: one.up === null ? null : one.up + 45,
    }));
  });
}

/** Two units of a pair laid on each other, unlike fabrics facing, seams together, and sewn along the other diagonal. */
export function crossPair(
  [one, other]: readonly [Seen[], Seen[]],
  line: "rising" | "falling",
  seam: number,
): Seen[][] {
  // Both lie as they came off the pair; each is brought to the frame of a square of its size.
  const whole = one.concat(other).flatMap(({ polygon }) => polygon);
  const side =
    Math.max(...one.flatMap(({ polygon }) => polygon.map(({ x }) => x))) -
    Math.min(...one.flatMap(({ polygon }) => polygon.map(({ x }) => x)));
  if (whole.length === 0 || !Number.isFinite(side)) return [];
  const inFrame = (unit: readonly Seen[]): Seen[] => {
    const x = Math.min(...unit.flatMap(({ polygon }) => polygon.map((spot) => spot.x)));
    const y = Math.min(...unit.flatMap(({ polygon }) => polygon.map((spot) => spot.y)));
    return unit.map((each) => ({ ...each, polygon: each.polygon.map((p) => ({ x: p.x - x, y: p.y - y })) }));
  };
  const [mirror, sides] =
    line === "rising"
      ? [looking.lowerLeft(), [looking.lowerLeft(), looking.upperRight()]]
      : [looking.lowerRight(side), [looking.lowerRight(side), looking.upperLeft(side)]];
  // Turned over about the diagonal that is to be sewn, each half keeps its side and unlike fabrics meet.
  const over = inFrame(other).map(
    ({ polygon, fabric, up }): Down => ({
      polygon: reflected(polygon, mirror),
      fabric,
      faceDown: up === null ? null : reflectedAngle(up, mirror),
    }),
  );
  return sides.map((cut) => folded(inFrame(one), over, back(cut, seam)));
}

/**
 * Four geese out of one large square; their bases are its lower, right, upper and left edge, in this order.
 * @param small squares on its lower right, upper right, upper left and lower left corner
 */
export function smallOnLarge(large: Piece, small: readonly Piece[], seam: number): Seen[][] {
  const side = large.across;
  const at = (i: number): Down => {
    const piece = small[i] as Piece;
    const far = side - piece.across;
    return downwards(piece, i < 2 ? far : 0, i === 0 || i === 3 ? far : 0);
  };
  const heart = (cut: Line): Seen[] => folded([upwards(large)], [at(2), at(0)], back(cut, seam));
  const [upperRight, lowerLeft] = [heart(looking.lowerLeft()), heart(looking.upperRight())];
  const goose = (half: readonly Seen[], corner: number, cut: Line): Seen[] =>
    folded(half, [at(corner)], back(cut, seam));
  return [
    goose(lowerLeft, 3, looking.upperLeft(side)),
    goose(upperRight, 1, looking.upperLeft(side)),
    goose(upperRight, 1, looking.lowerRight(side)),
    goose(lowerLeft, 3, looking.lowerRight(side)),
  ];
}

type Corner = "top-left" | "top-right" | "bottom-right" | "bottom-left";

/** A base with small squares sewn corner to corner on its corners, one after another, and folded out. */
export function flipped(base: Piece, squares: readonly { piece: Piece; corner: Corner }[]): Seen[] {
  let seen: Seen[] = [upwards(base)];
  for (const { piece, corner } of squares) {
    const { across: side, along } = piece;
    const right = corner.endsWith("right");
    const low = corner.startsWith("bottom");
    const [x, y] = [right ? base.across - side : 0, low ? base.along - along : 0];
    const out = { x: right ? ROOT_HALF : -ROOT_HALF, y: low ? ROOT_HALF : -ROOT_HALF };
    // The line runs through the two corners of the square that lie on the edges of the base.
    const through = { x: right ? x : x + side, y: low ? y + along : y };
    seen = folded(seen, [downwards(piece, x, y)], { out, at: through.x * out.x + through.y * out.y });
  }
  return seen;
}
