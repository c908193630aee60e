import { type Outline, type Paint, region, type SceneNode } from "./scene.ts";

/*
 * Textures and hatches are lines over a ground, clipped to its outline. A browser that prints a page turns every tiled
 * ground into a picture of dots, and a book of sixty drawings into ten megabytes; lines stay lines.
 */

/** What a texture repeats: marks in a square tile, in page units. */
export interface Tile {
  size: number;
  nodes: readonly SceneNode[];
}

/** Lines that go on from tile to tile; `dash`: how much of a tile is drawn across, from `from` on; null for all of it. */
interface Mark {
  way: "across" | "down" | "rising" | "falling";
  /** Where in the tile: down it for `across`, across it for `down`, along its upper edge for slanting ones. */
  at: number;
  from: number;
  dash: number | null;
  ink: string;
  width: number;
}

interface Bounds {
  left: number;
  top: number;
  right: number;
  bottom: number;
}

type Run = [readonly [number, number], readonly [number, number]];

/** Decimals of a place and a length in a drawing's own units, which may be millimetres of cloth. */
const tidy = (value: number): number => Number(value.toFixed(2));

const within = (value: number, size: number): number => ((value % size) + size) % size;

function markOfLine([[x1, y1], [x2, y2]]: Run, size: number): Omit<Mark, "ink" | "width"> {
  const share = (a: number, b: number): number | null => (Math.abs(b - a) >= size ? null : Math.abs(b - a));
  if (y1 === y2) return { way: "across", at: y1, from: Math.min(x1, x2), dash: share(x1, x2) };
  if (x1 === x2) return { way: "down", at: x1, from: Math.min(y1, y2), dash: share(y1, y2) };
  const rising = x2 > x1 !== y2 > y1;
  const at = within(rising ? x1 + y1 : x1 - y1, size);
  return { way: rising ? "rising" : "falling", at, from: Math.min(x1, x2), dash: share(x1, x2) };
}

/** A dot is so small that a square one looks the same; a ring is drawn by its four sides. */
function marksOfCircle(x: number, y: number, r: number, paint: Paint): Mark[] {
  const { fill = "none", stroke = "none", strokeWidth = 1 } = paint;
  if (fill !== "none") return [{ way: "across", at: y, from: x - r, dash: 2 * r, ink: fill, width: 2 * r }];
  const look = { ink: stroke, width: strokeWidth };
  const long = 2 * r + strokeWidth;
  return [-r, r].flatMap((off): Mark[] => [
    { way: "across", at: y + off, from: x - long / 2, dash: long, ...look },
    { way: "down", at: x + off, from: y - long / 2, dash: long, ...look },
  ]);
}

function marksOf({ size, nodes }: Tile): Mark[] {
  const marks = nodes.flatMap((node): Mark[] => {
    if (node.kind === "circle") return marksOfCircle(node.x, node.y, node.radius, node.paint);
    if (node.kind !== "line") throw new Error(`A tile cannot hold a ${node.kind}`);
    const run: Run = [
      [node.x1, node.y1],
      [node.x2, node.y2],
    ];
    const { stroke = "none", strokeWidth = 1 } = node.paint;
    return [{ ...markOfLine(run, size), ink: stroke, width: strokeWidth }];
  });
  // The ends of a slanting line carried over into its neighbours lie on the same line.
  const whole = new Set(marks.filter(({ dash }) => dash === null).map(({ way, at }) => `${way} ${at}`));
  return marks.filter(({ way, at, dash }) => dash === null || !whole.has(`${way} ${at}`));
}

function boundsOf(outline: Outline): Bounds {
  const bounds = { left: Infinity, top: Infinity, right: -Infinity, bottom: -Infinity };
  for (const [x, y] of outline) {
    bounds.left = Math.min(bounds.left, x);
    bounds.right = Math.max(bounds.right, x);
    bounds.top = Math.min(bounds.top, y);
    bounds.bottom = Math.max(bounds.bottom, y);
  }
  return bounds;
}

const areaOf = ({ left, top, right, bottom }: Bounds): number => (right - left) * (bottom - top);

/** The boxes lines are drawn in: one round all outlines, or each its own where they are far apart. */
function boxesOf(outlines: readonly Outline[]): Bounds[] {
  const own = outlines.map(boundsOf);
  const all = own.reduce((a, b) => ({
    left: Math.min(a.left, b.left),
    top: Math.min(a.top, b.top),
    right: Math.max(a.right, b.right),
    bottom: Math.max(a.bottom, b.bottom),
  }));
  return own.reduce((sum, box) => sum + areaOf(box), 0) < areaOf(all) * 0.5 ? own : [all];
}

/** Places a tile apart, the first at `at` in its tile, from before `low` to `high`. */
function places(at: number, tile: number, low: number, high: number): number[] {
  const first = Math.floor((low - at) / tile) * tile + at;
  const count = Math.max(0, Math.floor((high - first) / tile) + 1);
  return Array.from({ length: count }, (_, i) => first + i * tile);
}

/** The lines of one mark in a box; `per`: a drawing's own units to a page unit. */
function runsOf(mark: Mark, size: number, per: number, box: Bounds): Run[] {
  const tile = size * per;
  const at = mark.at * per;
  // What lies just outside still reaches in with half its width.
  const pad = (mark.width * per) / 2;
  // Where dashes are counted from, so that they lie alike in every box.
  const begin = (low: number): number =>
    mark.dash === null ? low : Math.floor((low - mark.from * per) / tile) * tile + mark.from * per;
  const run = (x1: number, y1: number, x2: number, y2: number): Run => [
    [tidy(x1), tidy(y1)],
    [tidy(x2), tidy(y2)],
  ];
  /** A slanting line from one place across to another, as far as it lies in the box. */
  const slanting = (from: number, to: number, down: (x: number) => number): Run[] => {
    const [a, b] = [Math.max(from, box.left), Math.min(to, box.right)];
    return a >= b ? [] : [run(begin(a), down(begin(a)), b, down(b))];
  };
  switch (mark.way) {
    case "across":
      return places(at, tile, box.top - pad, box.bottom + pad).map((y) =>
        run(begin(box.left), y, box.right, y),
      );
    case "down":
      return places(at, tile, box.left - pad, box.right + pad).map((x) =>
        run(x, begin(box.top), x, box.bottom),
      );
    case "rising":
      return places(at, tile, box.left + box.top - pad, box.right + box.bottom + pad).flatMap((c) =>
        slanting(c - box.bottom, c - box.top, (x) => c - x),
      );
    case "falling":
      return places(at, tile, box.left - box.bottom - pad, box.right - box.top + pad).flatMap((c) =>
        slanting(c + box.top, c + box.bottom, (x) => x - c),
      );
  }
}

/**
 * The marks of a tile over these outlines, as one clipped group; nothing where there is no outline.
 * @param scale page units to a unit of the drawing the outlines are in: a texture has its size on the page
 */
export function textureLines(tile: Tile, outlines: readonly Outline[], scale: number): SceneNode[] {
  const drawn = outlines.filter((outline) => outline.length > 2);
  if (drawn.length === 0 || tile.nodes.length === 0) return [];
  const per = 1 / scale;
  const boxes = boxesOf(drawn);
  const lines = marksOf(tile).map((mark): SceneNode => {
    const long = (mark.way === "rising" || mark.way === "falling" ? Math.SQRT2 : 1) * per;
    const paint: Paint = { fill: "none", stroke: mark.ink, strokeWidth: mark.width * per };
    if (mark.dash !== null)
      paint.dash = `${Number((mark.dash * long).toFixed(3))} ${Number(((tile.size - mark.dash) * long).toFixed(3))}`;
    const runs = boxes.flatMap((box) => runsOf(mark, tile.size, per, box));
    return { ...region(runs, paint), open: true };
  });
  return [{ kind: "group", id: null, title: null, move: null, clip: drawn, paint: {}, nodes: lines }];
}
