import type { Corner } from "../quilt/patches.ts";
import type { Box } from "../scene/scene.ts";
import { boundsOf, holds } from "./geometry.ts";

/** What marks and letters of one picture keep clear of, in page units. */
export interface Taken {
  strokes: (readonly [Corner, Corner])[];
  boxes: Box[];
}

const GRID = 17;
const AIR = 1.4;

function farFrom([px, py]: Corner, [[x1, y1], [x2, y2]]: readonly [Corner, Corner]): number {
  const [dx, dy] = [x2 - x1, y2 - y1];
  const along = Math.min(1, Math.max(0, ((px - x1) * dx + (py - y1) * dy) / (dx * dx + dy * dy || 1)));
  return Math.hypot(px - x1 - along * dx, py - y1 - along * dy);
}

/** On which side of the line through `p` and `q` a point lies, by the sign. */
const side = (p: Corner, q: Corner, x: number, y: number): number =>
  (q[0] - p[0]) * (y - p[1]) - (q[1] - p[1]) * (x - p[0]);

/** Whether a stroke comes into a box: one of its ends does, or it crosses a diagonal of it. */
function enters([a, b]: readonly [Corner, Corner], { x, y, width, height }: Box): boolean {
  const [right, bottom] = [x + width, y + height];
  // Nearly every stroke lies wholly to one side of the box.
  if ((a[0] <= x && b[0] <= x) || (a[0] >= right && b[0] >= right)) return false;
  if ((a[1] <= y && b[1] <= y) || (a[1] >= bottom && b[1] >= bottom)) return false;
  if (a[0] > x && a[0] < right && a[1] > y && a[1] < bottom) return true;
  if (b[0] > x && b[0] < right && b[1] > y && b[1] < bottom) return true;
  const crosses = (c: Corner, d: Corner): boolean =>
    side(a, b, c[0], c[1]) * side(a, b, d[0], d[1]) < 0 &&
    side(c, d, a[0], a[1]) * side(c, d, b[0], b[1]) < 0;
  return crosses([x, y], [right, bottom]) || crosses([right, y], [x, bottom]);
}

const edgesOf = (corners: readonly Corner[]): (readonly [Corner, Corner])[] =>
  corners.map((a, i) => [a, corners[(i + 1) % corners.length] ?? a] as const);

/** How far a point is from lines and from the middles of boxes; nought as soon as it is no more than `most`. */
function airAt(
  at: Corner,
  edges: readonly (readonly [Corner, Corner])[],
  strokes: readonly (readonly [Corner, Corner])[],
  boxes: readonly Box[],
  most: number,
): number {
  let air = Infinity;
  for (const lines of [edges, strokes]) {
    for (const line of lines) {
      air = Math.min(air, farFrom(at, line));
      if (air <= most) return 0;
    }
  }
  for (const { x, y, width, height } of boxes) {
    air = Math.min(air, Math.hypot(x + width / 2 - at[0], y + height / 2 - at[1]) / 1.5);
    if (air <= most) return 0;
  }
  return air;
}

/**
 * Where a box of a size has most air inside an outline, off what lies on it and off strokes and boxes already there;
 * null where it does not fit.
 * @param above outlines that cover this one in places
 */
export function roomIn(
  outline: readonly Corner[],
  above: readonly (readonly Corner[])[],
  taken: Taken,
  width: number,
  height: number,
): Corner | null {
  const box = boundsOf(outline);
  if (box.right - box.x < width || box.bottom - box.y < height) return null;
  const near = (b: ReturnType<typeof boundsOf>): boolean =>
    b.x < box.right && b.right > box.x && b.y < box.bottom && b.bottom > box.y;
  const covers = above.filter((other) => near(boundsOf(other)));
  const strokes = taken.strokes.filter(([a, b]) => {
    const { x, y, right, bottom } = boundsOf([a, b]);
    return near({ x: x - AIR, y: y - AIR, right: right + AIR, bottom: bottom + AIR });
  });
  const boxes = taken.boxes.filter(({ x, y, width: w, height: h }) =>
    near({ x: x - AIR, y: y - AIR, right: x + w + AIR, bottom: y + h + AIR }),
  );
  const edges = [...edgesOf(outline), ...covers.flatMap(edgesOf)];
  let best: Corner | null = null;
  let most = 0;
  for (let i = 0; i < GRID; i += 1) {
    const across = box.x + ((i + 0.5) / GRID) * (box.right - box.x);
    if (across - width / 2 < box.x || across + width / 2 > box.right) continue;
    for (let k = 0; k < GRID; k += 1) {
      const down = box.y + ((k + 0.5) / GRID) * (box.bottom - box.y);
      if (down - height / 2 < box.y || down + height / 2 > box.bottom) continue;
      const at: Corner = [across, down];
      if (!holds(outline, at) || covers.some((other) => holds(other, at))) continue;
      const own = {
        x: at[0] - width / 2 - AIR,
        y: at[1] - height / 2 - AIR,
        width: width + 2 * AIR,
        height: height + 2 * AIR,
      };
      if (boxes.some((other) => meets(own, other))) continue;
      const core = { x: at[0] - width / 2, y: at[1] - height / 2, width, height };
      if (edges.some((edge) => enters(edge, core))) continue;
      if (strokes.some((stroke) => enters(stroke, own))) continue;
      const air = airAt(at, edges, strokes, boxes, most);
      if (air > most) [best, most] = [at, air];
    }
  }
  return best;
}

export function meets(a: Box, b: Box): boolean {
  return a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;
}
