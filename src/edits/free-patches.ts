import { nth } from "../length/nth.ts";
import type { Value } from "./values.ts";

type Point = readonly [number, number];
/** Corners of a patch in whole points of the paper, in the order they were tapped. */
export type Ring = readonly Point[];

interface Edge {
  from: Point;
  to: Point;
}

const key = ([x, y]: Point): string => `${x},${y}`;
const cross = (a: Point, b: Point, c: Point): number =>
  (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);

/** Twice the area; above zero when the corners run clockwise as seen (y down). */
function area2(ring: Ring): number {
  return ring.reduce((sum, [x1, y1], i) => {
    const [x2, y2] = nth(ring, (i + 1) % ring.length);
    return sum + x1 * y2 - x2 * y1;
  }, 0);
}

const clockwise = (ring: Ring): Ring => (area2(ring) < 0 ? [...ring].reverse() : ring);

/** Strictly between the ends of an edge, on it. */
function on(point: Point, { from, to }: Edge): boolean {
  if (cross(from, to, point) !== 0) return false;
  const along = (point[0] - from[0]) * (to[0] - from[0]) + (point[1] - from[1]) * (to[1] - from[1]);
  const whole = (to[0] - from[0]) ** 2 + (to[1] - from[1]) ** 2;
  return along > 0 && along < whole;
}

const edgesOf = (ring: Ring): Edge[] =>
  ring.map((from, i) => ({ from, to: nth(ring, (i + 1) % ring.length) }));

/** Two edges that cross in a point inside both: such patches lie on one another. */
function crosses(a: Edge, b: Edge): boolean {
  const side = (edge: Edge, point: Point): number => Math.sign(cross(edge.from, edge.to, point));
  return side(a, b.from) * side(a, b.to) < 0 && side(b, a.from) * side(b, a.to) < 0;
}

/** An edge in parts, from every point that lies on it to the next. */
function parted(edge: Edge, points: readonly Point[]): Edge[] {
  const inner = points
    .filter((point) => on(point, edge))
    .sort((a, b) => distance(edge.from, a) - distance(edge.from, b));
  const all = [edge.from, ...inner, edge.to];
  return all.slice(0, -1).map((from, i) => ({ from, to: nth(all, i + 1) }));
}

const distance = (a: Point, b: Point): number => (a[0] - b[0]) ** 2 + (a[1] - b[1]) ** 2;

/**
 * What patches leave of the paper, as patches themselves, without a new corner anywhere: edges that a patch shares
 * with the paper's edge or another patch go, what stays runs round the rest.
 * @returns null when the patches lie on one another or one lies free in the middle, so that the rest has a hole
 */
export function restOf(rings: readonly Ring[], columns: number, rows: number): Ring[] | null {
  const frame: Ring = [
    [0, 0],
    [columns, 0],
    [columns, rows],
    [0, rows],
  ];
  const patches = rings.map(clockwise);
  const edges = patches.flatMap(edgesOf);
  if (patches.some((ring) => ring.length < 3 || area2(ring) === 0)) return null;
  if (edges.some((a, i) => edges.some((b, j) => j > i && crosses(a, b)))) return null;
  const points = [...new Map([frame, ...patches].flat().map((point) => [key(point), point])).values()];
  const reversed = edges.map(({ from, to }) => ({ from: to, to: from }));
  const open = new Map<string, Edge>();
  for (const edge of [...edgesOf(frame), ...reversed].flatMap((one) => parted(one, points))) {
    const [own, back] = [`${key(edge.from)} ${key(edge.to)}`, `${key(edge.to)} ${key(edge.from)}`];
    if (open.has(back)) open.delete(back);
    // The same edge twice the same way: two patches on one side of it.
    else if (open.has(own)) return null;
    else open.set(own, edge);
  }
  const loops: Ring[] = [];
  while (open.size > 0) {
    const [first] = open.values();
    const ring: Point[] = [];
    let at = first!;
    for (let steps = 0; steps < 1000; steps++) {
      open.delete(`${key(at.from)} ${key(at.to)}`);
      ring.push(at.from);
      if (key(at.to) === key(first!.from)) break;
      const next = nextEdge(at, [...open.values()]);
      if (next === null) return null;
      at = next;
    }
    loops.push(ring);
  }
  const left = columns * rows * 2 - patches.reduce((sum, ring) => sum + area2(ring), 0);
  if (loops.some((loop) => area2(loop) <= 0) || loops.reduce((sum, loop) => sum + area2(loop), 0) !== left)
    return null;
  return loops.map(straightened);
}

/** Where several edges leave a corner, the one that turns most to the right: it keeps the smallest patch. */
function nextEdge({ from, to }: Edge, open: readonly Edge[]): Edge | null {
  const heading = Math.atan2(to[1] - from[1], to[0] - from[0]);
  const turn = (edge: Edge): number => {
    const angle = Math.atan2(edge.to[1] - to[1], edge.to[0] - to[0]) - heading;
    return ((angle + 3 * Math.PI) % (2 * Math.PI)) - Math.PI;
  };
  const leaving = open.filter((edge) => key(edge.from) === key(to));
  return leaving.reduce<Edge | null>(
    (best, edge) => (best === null || turn(edge) > turn(best) ? edge : best),
    null,
  );
}

/** Without corners at which the edge runs straight on. */
function straightened(ring: Ring): Ring {
  return ring.filter((point, i) => cross(ring.at(i - 1)!, point, nth(ring, (i + 1) % ring.length)) !== 0);
}

/**
 * Patches drawn by their corners as the file says them: each with its part and corners, the rest of the paper filled
 * with the ground.
 * @returns null where the corners make no patches
 */
export function freePatches(
  drawn: readonly { ring: Ring; fabric: string }[],
  ground: string,
  columns: number,
  rows: number,
): { patches: Value; words: Record<string, string> } | null {
  const rest = restOf(
    drawn.map(({ ring }) => ring),
    columns,
    rows,
  );
  if (rest === null || drawn.length === 0) return null;
  const fabrics = [...new Set(drawn.map(({ fabric }) => fabric))];
  const partOf = (fabric: string): string => `shape ${fabrics.indexOf(fabric) + 1}`;
  const written = (part: string, ring: Ring): Value => ({
    part,
    corners: ring.map(([x, y]): Value => [x, y]),
  });
  const patches = [
    ...drawn.map(({ ring, fabric }) => written(partOf(fabric), clockwise(ring))),
    ...rest.map((ring) => written("ground", ring)),
  ];
  const words = Object.fromEntries(fabrics.map((fabric) => [partOf(fabric), fabric]));
  return { patches, words: rest.length === 0 ? words : { ...words, ground } };
}
